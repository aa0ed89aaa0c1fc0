package propcap.chance;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import propcap.farm.Crop;
import umontreal.ssj.probdist.BetaDist;
import umontreal.ssj.probdist.NormalDist;

/** How likely the times of a tray are before anything is known of it; for one thread. */
public final class UsualTray {
  /** Normal scores of the rates that stand for all, to either side of the median. */
  private static final int SCORES = 6;

  private static final double SCORE_STEP = 0.75;

  /** Times that are the same but for rounding are the same where trays do not differ. */
  private static final double LEAST_SPREAD = 1e-9;

  private final CropLuck luck;
  private final Crop crop;

  /** Rates that a tray may have, and how much each counts, in all 1. */
  private final double[] rates;

  private final double[] weights;

  /** Trays of one sowing leave on the same few days. */
  private final Map<Double, Double> chances = new HashMap<>();

  /** A tray of a crop, of a lot whose germination test is all that is known of it. */
  public UsualTray(Crop crop) {
    this.crop = crop;
    luck = CropLuck.of(crop);
    double[] scores =
        IntStream.rangeClosed(-SCORES, SCORES).mapToDouble(i -> i * SCORE_STEP).toArray();
    double[] density = Arrays.stream(scores).map(z -> NormalDist.density(0, 1, z)).toArray();
    double all = Math.pow(Arrays.stream(density).sum(), 2);
    rates =
        Arrays.stream(scores)
            .mapToObj(z -> luck.lot(luck.lotRate(NormalDist.cdf01(z))))
            .flatMapToDouble(
                lot -> Arrays.stream(scores).map(z -> lot.trayRate(NormalDist.cdf01(z))))
            .toArray();
    weights =
        Arrays.stream(density)
            .flatMap(ofLot -> DoubleStream.of(density).map(ofTray -> ofLot * ofTray / all))
            .toArray();
  }

  /**
   * Chance, 0 to 1, that as many cells show as it takes to leave the heat.
   *
   * @param degreeDays since sowing
   */
  public double canLeaveBy(double degreeDays) {
    return chances.computeIfAbsent(degreeDays, this::chanceBy);
  }

  private double chanceBy(double degreeDays) {
    double seed = luck.curve().seed(degreeDays);
    double chance = 0;
    for (int i = 0; i < rates.length; i++) {
      chance += weights[i] * enough(luck.curve().shows(seed, rates[i]));
    }
    return chance;
  }

  private double enough(double share) {
    if (share <= 0 || share >= 1) {
      return share <= 0 ? 0 : 1;
    }
    return BetaDist.cdf(toLeave(), crop.cells() - toLeave() + 1, share);
  }

  private int toLeave() {
    return luck.cellsToLeave();
  }

  /**
   * The thermal time, degree days since sowing, by which every other tray has enough to leave the
   * heat; infinite where every other never has.
   */
  public double leavesAfter() {
    double share = BetaDist.inverseF(toLeave(), crop.cells() - toLeave() + 1, 0.5);
    return luck.curve().timeShown(share, crop.germination().rate());
  }

  /**
   * Chance, 0 to 1, that it has grown on long enough.
   *
   * @param pace thermal time on the table, as a multiple of what every other tray needs at most
   */
  public double canMoveOnBy(double pace) {
    if (pace <= 0) {
      return 0;
    }
    return NormalDist.cdf01(Math.log(pace) / Math.max(LEAST_SPREAD, luck.spread()));
  }
}
