package propcap.evidence.germination;

import java.util.List;
import java.util.TreeSet;
import propcap.farm.CountedTray;
import umontreal.ssj.probdist.BinomialDist;

/** How far apart the best and the worst of trays that are alike lie by chance alone. */
final class ReplicateRange {
  private static final double PERCENT = 100;
  private static final double ROUNDING = 1e-9;

  private ReplicateRange() {}

  /**
   * The chance that trays which all germinate with the pooled share lie so far apart, or further:
   * exactly, by the lowest of them.
   *
   * @param range points of percent
   */
  static double chanceOf(List<CountedTray> trays, double range) {
    double share = Tally.of(trays).share();
    List<BinomialDist> laws = trays.stream().map(t -> new BinomialDist(t.seeds(), share)).toList();
    TreeSet<Double> percents = new TreeSet<>();
    for (BinomialDist law : laws) {
      for (int up = 0; up <= law.getN(); up++) {
        percents.add(PERCENT * up / law.getN());
      }
    }
    double nearer = 0;
    for (double lowest : percents) {
      nearer +=
          allWithin(laws, lowest - ROUNDING, lowest + range - ROUNDING)
              - allWithin(laws, lowest + ROUNDING, lowest + range - ROUNDING);
    }
    return Math.max(0, Math.min(1, 1 - nearer));
  }

  private static double allWithin(List<BinomialDist> laws, double least, double most) {
    double chance = 1;
    for (BinomialDist law : laws) {
      double below = law.cdf((int) Math.ceil(least * law.getN() / PERCENT) - 1);
      chance *= Math.max(0, law.cdf((int) Math.floor(most * law.getN() / PERCENT)) - below);
    }
    return chance;
  }
}
