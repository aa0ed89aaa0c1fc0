package propcap.evidence.germination;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Whether a curve fits the counts that it was drawn through.
 *
 * @param statistic chi-square
 * @param chance of a worse fit, were the curve true
 */
public record GoodnessOfFit(double statistic, int degreesOfFreedom, double chance) {
  /** Common practice: below this the curve is called a poor one. */
  private static final double POOR = 0.05;

  static GoodnessOfFit of(double statistic, int degreesOfFreedom) {
    double x = Math.max(0, statistic);
    double chance = 1 - new ChiSquaredDistribution(null, degreesOfFreedom).cumulativeProbability(x);
    return new GoodnessOfFit(x, degreesOfFreedom, chance);
  }

  public boolean isPoor() {
    return chance < POOR;
  }
}
