package propcap.evidence;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How far from its sample mean, in sample deviations, a quantile of a normal may lie: the exact
 * distribution of {@code W = (mu + z sigma - mean) / sd} for n independent values. With N standard
 * normal and V chi-squared with n - 1 degrees of freedom, {@code W = (z - N / sqrt(n)) / sqrt(V /
 * (n - 1))}, a noncentral t over the root of n (Hahn and Meeker 1991, Statistical Intervals,
 * section 4.4).
 */
final class NormalLimits {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Leaves out a part of V's distribution that no limit can notice. */
  private static final double TAIL = 1e-9;

  private static final double PRECISION = 1e-8;
  private static final int MOST_STEPS = 100_000;

  private final int n;
  private final double z;
  private final ChiSquaredDistribution v;

  NormalLimits(int n, double z) {
    this.n = n;
    this.z = z;
    this.v = new ChiSquaredDistribution(null, n - 1);
  }

  /** The chance that W is no more than this: the mean over V of the chance given V. */
  double cumulative(double w) {
    // Over the levels of V, which all count alike, the integrand is smooth and bounded.
    UnivariateFunction given =
        level -> {
          double sd = Math.sqrt(v.inverseCumulativeProbability(level) / (n - 1));
          return NORMAL.cumulativeProbability(Math.sqrt(n) * (w * sd - z));
        };
    return new IterativeLegendreGaussIntegrator(16, PRECISION, PRECISION)
        .integrate(MOST_STEPS, given, TAIL, 1 - TAIL);
  }

  /** The W that is not passed with this chance. */
  double quantile(double level) {
    double reach = 4 + Math.abs(z);
    while (cumulative(-reach) > level || cumulative(reach) < level) {
      reach *= 4;
    }
    return new BrentSolver(1e-6).solve(MOST_STEPS, w -> cumulative(w) - level, -reach, reach);
  }
}
