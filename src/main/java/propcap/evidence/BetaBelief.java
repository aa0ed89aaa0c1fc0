package propcap.evidence;

import umontreal.ssj.probdist.BetaDist;
import umontreal.ssj.util.Num;

/**
 * What is believed of a chance: a beta distribution, as if so many had been lost and so many kept.
 * Counts that follow add to it, so that it weighs as many plants (or trays) as it has seen.
 *
 * @param lost above 0
 * @param kept above 0
 */
public record BetaBelief(double lost, double kept) {
  /** Believes next to nothing: Jeffreys (1946), Proc. R. Soc. A 186. */
  static final BetaBelief NONE = new BetaBelief(0.5, 0.5);

  /** Nothing that a grower writes is taken as impossible or as sure. */
  static final double NEARLY_IMPOSSIBLE = 0.001;

  public BetaBelief {
    if (!(lost > 0 && kept > 0 && Double.isFinite(lost + kept))) {
      throw new IllegalArgumentException("counts must be above 0, were " + lost + ", " + kept);
    }
  }

  /** A listed chance that weighs as much as so many plants (or trays). */
  static BetaBelief of(double chance, double weight) {
    double held = Math.max(NEARLY_IMPOSSIBLE, Math.min(1 - NEARLY_IMPOSSIBLE, chance));
    return new BetaBelief(held * weight, (1 - held) * weight);
  }

  public BetaBelief after(double moreLost, double moreKept) {
    return new BetaBelief(lost + moreLost, kept + moreKept);
  }

  public double mean() {
    return lost / (lost + kept);
  }

  public double quantile(double share) {
    return BetaDist.inverseF(lost, kept, share);
  }

  /** The mean and the middle 95 %. */
  public Estimate estimate() {
    return Estimate.within(mean(), quantile(Estimate.TAIL), quantile(1 - Estimate.TAIL));
  }

  /** The same around a figure that is taken as it is listed. */
  Estimate around(double listed) {
    Estimate all = estimate();
    return Estimate.within(listed, all.low(), all.high());
  }

  /** Logarithm of the density. */
  double logDensity(double chance) {
    return (lost - 1) * Math.log(chance)
        + (kept - 1) * Math.log1p(-chance)
        - Num.lnGamma(lost)
        - Num.lnGamma(kept)
        + Num.lnGamma(lost + kept);
  }

  static double lnChoose(int of, int taken) {
    return Num.lnGamma(of + 1.0) - Num.lnGamma(taken + 1.0) - Num.lnGamma(of - taken + 1.0);
  }
}
