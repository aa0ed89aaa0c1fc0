package propcap.evidence.germination;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import propcap.evidence.MaximumLikelihood;
import propcap.farm.CountedTray;

/**
 * How much more the trays of a lot differ in the number of their seedlings than chance lets trays
 * that are alike: Pearson's chi-square over its degrees of freedom. Where that is more than 1,
 * limits are those of so many fewer seeds, with Student's t for the normal deviate, as is common
 * practice in probit analysis (the heterogeneity factor; Finney, Probit Analysis, named from
 * memory). It holds whatever the correlation in a tray is, which so few trays cannot tell.
 *
 * @param degreesOfFreedom trays less one, of each group of trays that tells
 */
record Heterogeneity(double chiSquare, int degreesOfFreedom) {
  /**
   * Of two trays alone Student's t would say that nothing is known at all; they are read as three,
   * and the limits hold less often than they say if trays do differ.
   */
  private static final int LEAST_DEGREES = 2;

  private static final double UPPER = 0.975;

  /**
   * Of a lot.
   *
   * @param groups of trays that should differ by chance alone, see {@link ReplicateGroups}
   */
  static Heterogeneity of(List<List<CountedTray>> groups) {
    double chiSquare = 0;
    int degrees = 0;
    for (List<CountedTray> group : groups) {
      Tally tally = Tally.of(group);
      if (tally.isMixed()) {
        double share = tally.share();
        degrees += group.size() - 1;
        for (CountedTray tray : group) {
          double expected = tray.seeds() * share;
          chiSquare += Math.pow(tray.emerged() - expected, 2) / (expected * (1 - share));
        }
      }
    }
    return new Heterogeneity(chiSquare, degrees);
  }

  /** What a seed counts for beside one of trays that are alike, 0 to 1. */
  double weight() {
    if (degreesOfFreedom == 0 || chiSquare <= degreesOfFreedom) {
      return 1;
    }
    double factor = chiSquare / degreesOfFreedom;
    double t =
        new TDistribution(null, Math.max(LEAST_DEGREES, degreesOfFreedom))
            .inverseCumulativeProbability(UPPER);
    return MaximumLikelihood.FALL_95 / (factor * t * t);
  }
}
