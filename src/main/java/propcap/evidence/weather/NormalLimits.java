package propcap.evidence.weather;

import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How far from its sample mean, in sample deviations, a quantile of a normal may lie: the exact
 * distribution of {@code W = (mu + z sigma - mean) / sd} for n independent values. With N standard
 * normal and V chi-squared with n - 1 degrees of freedom, {@code W = (z - N / sqrt(n)) / sqrt(V /
 * (n - 1))}, a noncentral t over the root of n (Hahn and Meeker 1991, Statistical Intervals).
 */
final class NormalLimits {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Levels of V at which the chance is worked out; more change no limit by 1e-5. */
  private static final int NODES = 100;

  private static final int MOST_STEPS = 1000;

  private record Key(double z, double level) {}

  private final Map<Key, Double> known = new ConcurrentHashMap<>();
  private final int n;
  private final double[] weights = new double[NODES];

  /** The sample deviation over the true one, at each level. */
  private final double[] deviations = new double[NODES];

  /** For samples of so many values, 2 or more. */
  NormalLimits(int n) {
    this.n = n;
    ChiSquaredDistribution v = new ChiSquaredDistribution(null, n - 1);
    GaussIntegrator levels = new GaussIntegratorFactory().legendre(NODES, 0, 1);
    Arrays.setAll(weights, levels::getWeight);
    Arrays.setAll(
        deviations, i -> Math.sqrt(v.inverseCumulativeProbability(levels.getPoint(i)) / (n - 1)));
  }

  /** The chance that W is no more than w: the mean over V of the chance given V. */
  double cumulative(double z, double w) {
    double sum = 0;
    for (int i = 0; i < NODES; i++) {
      sum += weights[i] * NORMAL.cumulativeProbability(Math.sqrt(n) * (w * deviations[i] - z));
    }
    return sum;
  }

  /** The W that is not passed with a chance, for the quantile that lies z deviations up. */
  double quantile(double z, double level) {
    return known.computeIfAbsent(new Key(z, level), asked -> solved(z, level));
  }

  private double solved(double z, double level) {
    double reach = 4 + Math.abs(z);
    while (cumulative(z, -reach) > level || cumulative(z, reach) < level) {
      reach *= 4;
    }
    return new BrentSolver(1e-6).solve(MOST_STEPS, w -> cumulative(z, w) - level, -reach, reach);
  }
}
