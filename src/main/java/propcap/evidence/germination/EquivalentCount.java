package propcap.evidence.germination;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import propcap.evidence.Estimate;
import umontreal.ssj.probdist.BetaDist;

/**
 * The test that would tell a share as well, were it long over and its trays alike: of so many seeds
 * so large a part came up. The simulator draws a lot's share from the beta distribution of such a
 * test (docs/model.md, section 4), so that its doubt is that of the limits that were told.
 *
 * @param rate share that came up, 0 to 1
 * @param seeds at least 1
 */
public record EquivalentCount(double rate, int seeds) {
  /** How much of their width the limits of the beta distribution may lie beside those told. */
  private static final double NEAR = 0.1;

  private static final double MOST_SEEDS = 1e7;

  /**
   * The test as it was counted, where that has about the limits told; else one of fewer seeds;
   * else, where limits lie as those of no such share can, one of another share as well.
   *
   * @param counted the share with its limits
   * @param isEndedEarly whether more may have come, so that the counts are no test of the share
   */
  static EquivalentCount of(Estimate counted, int seeds, boolean isEndedEarly) {
    if (!isEndedEarly && counted.value() > 0 && counted.value() < 1) {
      for (double n : new double[] {seeds, Math.min(seeds, ofWidth(counted))}) {
        if (isNear(counted, n)) {
          return rounded(counted.value() * n, (1 - counted.value()) * n);
        }
      }
    }
    return of(counted.low(), counted.high());
  }

  /** So many seeds that the limits of the beta distribution are as far apart. */
  private static double ofWidth(Estimate told) {
    double width = told.high() - told.low();
    return solved(n -> width - (upper(told, n) - lower(told, n)));
  }

  private static boolean isNear(Estimate told, double seeds) {
    double near = NEAR * (told.high() - told.low());
    return Math.abs(lower(told, seeds) - told.low()) <= near
        && Math.abs(upper(told, seeds) - told.high()) <= near;
  }

  private static double lower(Estimate told, double seeds) {
    return quantile(told, seeds, Estimate.TAIL);
  }

  private static double upper(Estimate told, double seeds) {
    return quantile(told, seeds, 1 - Estimate.TAIL);
  }

  private static double quantile(Estimate told, double seeds, double share) {
    return BetaDist.inverseF(told.value() * seeds, (1 - told.value()) * seeds, share);
  }

  /**
   * By both limits. At least one seed counts as up and one as not: where all of n came up and the
   * lower limit is the exact one, that makes n of n + 1.
   */
  private static EquivalentCount of(double low, double high) {
    double down = solved(d -> high - BetaDist.inverseF(upWith(low, d), d, 1 - Estimate.TAIL));
    return rounded(upWith(low, down), down);
  }

  private static double upWith(double low, double down) {
    return solved(up -> BetaDist.inverseF(up, down, Estimate.TAIL) - low);
  }

  private static EquivalentCount rounded(double up, double down) {
    return new EquivalentCount(up / (up + down), (int) Math.max(1, Math.round(up + down)));
  }

  /** Where a rising function is 0; 1 where it is above 0 from there on. */
  private static double solved(DoubleUnaryOperator rising) {
    if (rising.applyAsDouble(1) >= 0) {
      return 1;
    }
    if (rising.applyAsDouble(MOST_SEEDS) <= 0) {
      return MOST_SEEDS;
    }
    return Math.exp(
        new BrentSolver(1e-9)
            .solve(200, log -> rising.applyAsDouble(Math.exp(log)), 0, Math.log(MOST_SEEDS)));
  }
}
