package propcap.evidence;

import java.util.Arrays;
import java.util.List;
import propcap.evidence.TrayEvidence.Ripening;
import umontreal.ssj.probdist.NormalDist;

/** The degree days between which trays became ready, on the log scale. */
final class ReadyTimes {
  /** For a tray that is far off; two such still have a product. */
  private static final double LEAST_CHANCE = 1e-150;

  private final double[] lnAbove;
  private final double[] lnUpTo;

  ReadyTimes(List<Ripening> trays) {
    // The logarithm of 0, for those only known to have been ready by a time, is minus infinity.
    lnAbove = trays.stream().mapToDouble(r -> Math.log(r.above())).toArray();
    lnUpTo = trays.stream().mapToDouble(r -> Math.log(r.upTo())).toArray();
  }

  double least() {
    return Arrays.stream(lnUpTo).min().orElseThrow();
  }

  double most() {
    return Arrays.stream(lnUpTo).max().orElseThrow();
  }

  /** Logarithm of the chance of all of them. */
  double logLikelihood(double mu, double sigma) {
    double sum = 0;
    double product = 1;
    for (int i = 0; i < lnUpTo.length; i++) {
      double low = (lnAbove[i] - mu) / sigma;
      double high = (lnUpTo[i] - mu) / sigma;
      // In the upper tail the complements have the digits.
      double chance =
          low > 0
              ? NormalDist.barF01(low) - NormalDist.barF01(high)
              : NormalDist.cdf01(high) - NormalDist.cdf01(low);
      product *= Math.max(LEAST_CHANCE, chance);
      if (product < LEAST_CHANCE) {
        sum += Math.log(product);
        product = 1;
      }
    }
    return sum + Math.log(product);
  }
}
