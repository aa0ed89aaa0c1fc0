package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;

/** Trays of a germination test for tests: by hand, or drawn from a law. */
final class Trays {
  private Trays() {}

  static double[] numbers(String text) {
    return Arrays.stream(text.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();
  }

  /** A tray that was looked at every day, with the new seedlings of each of the first days. */
  static CountedTray daily(double tempC, String tray, int seeds, int lastDay, int... fresh) {
    List<Inspection> inspections = new ArrayList<>();
    int sum = 0;
    for (int day = 1; day <= lastDay; day++) {
      sum += day <= fresh.length ? fresh[day - 1] : 0;
      inspections.add(new Inspection(day, sum));
    }
    return new CountedTray("lot", "crop", tempC, tray, seeds, inspections);
  }

  /** A tray of which only the total is known. */
  static CountedTray total(double tempC, String tray, int seeds, int emerged) {
    return new CountedTray("lot", "crop", tempC, tray, seeds, List.of(new Inspection(14, emerged)));
  }

  /**
   * What a lot is, to be found again.
   *
   * @param every days between two inspections
   */
  record Law(
      double germinating,
      double correlation,
      double medianDays,
      double spread,
      double every,
      double lastDays) {

    CountedTray draw(RandomGenerator chance, double tempC, String tray, int seeds) {
      double share = germinating;
      if (correlation > 0) {
        double strength = (1 - correlation) / correlation;
        double a =
            new org.apache.commons.math3.distribution.GammaDistribution(
                    chance, germinating * strength, 1)
                .sample();
        double b =
            new org.apache.commons.math3.distribution.GammaDistribution(
                    chance, (1 - germinating) * strength, 1)
                .sample();
        share = a / (a + b);
      }
      int looks = (int) Math.round(lastDays / every);
      int[] fresh = new int[looks];
      for (int seed = 0; seed < seeds; seed++) {
        double days = medianDays * Math.exp(spread * chance.nextGaussian());
        int look = (int) Math.ceil(days / every) - 1;
        if (chance.nextDouble() < share && look < looks) {
          fresh[look]++;
        }
      }
      List<Inspection> inspections = new ArrayList<>();
      int sum = 0;
      for (int look = 0; look < looks; look++) {
        sum += fresh[look];
        inspections.add(new Inspection((look + 1) * every, sum));
      }
      return new CountedTray("lot", "crop", tempC, tray, seeds, inspections);
    }

    List<CountedTray> draw(RandomGenerator chance, double tempC, int trays, int seeds) {
      List<CountedTray> drawn = new ArrayList<>();
      for (int tray = 0; tray < trays; tray++) {
        drawn.add(draw(chance, tempC, "tray " + tray, seeds));
      }
      return drawn;
    }
  }
}
