package propcap.evidence.stages;

import propcap.evidence.Estimate;
import umontreal.ssj.probdist.BetaDist;

/**
 * What is believed of a chance: a beta distribution, as if so many had been lost and so many kept.
 * It weighs as many plants (or trays) as these.
 *
 * @param lost above 0
 * @param kept above 0
 */
record BetaBelief(double lost, double kept) {
  /** Believes next to nothing: Jeffreys (1946), Proc. R. Soc. A 186. */
  static final BetaBelief NONE = new BetaBelief(0.5, 0.5);

  /** Nothing that a grower writes is taken as impossible or as sure. */
  static final double NEARLY_IMPOSSIBLE = 0.001;

  BetaBelief {
    if (!(lost > 0 && kept > 0 && Double.isFinite(lost + kept))) {
      throw new IllegalArgumentException("counts must be above 0, were " + lost + ", " + kept);
    }
  }

  /** A listed chance that weighs as much as so many plants (or trays). */
  static BetaBelief of(double chance, double weight) {
    double held = Math.max(NEARLY_IMPOSSIBLE, Math.min(1 - NEARLY_IMPOSSIBLE, chance));
    return new BetaBelief(held * weight, (1 - held) * weight);
  }

  double quantile(double share) {
    return BetaDist.inverseF(lost, kept, share);
  }

  /** The middle 95 % around a figure that is taken as it is listed. */
  Estimate around(double listed) {
    return Estimate.within(listed, this::quantile);
  }
}
