package propcap.evidence.germination;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;
import propcap.evidence.Estimate;
import propcap.evidence.MaximumLikelihood;
import propcap.farm.CountedTray;

/**
 * How much alike two seeds of one tray fare, beyond what their lot and temperature explain: the
 * correlation of the beta-binomial law, by maximum likelihood, one for all groups of trays and a
 * share of its own for each group.
 */
final class TrayCorrelation {
  /** At more than this a tray comes up nearly whole or not at all. */
  private static final double MOST = 0.99;

  private static final double[] TRIED = {0, 0.001, 0.003, 0.01, 0.03, 0.1, 0.2, 0.4, 0.7, MOST};

  private final List<BetaBinomial> groups;

  private TrayCorrelation(List<List<CountedTray>> groups) {
    this.groups = groups.stream().map(BetaBinomial::new).toList();
  }

  /**
   * The correlation, with limits by its profile.
   *
   * @param groups of trays that should differ by chance alone, see {@link ReplicateGroups}
   * @return empty where no group tells anything: one tray in each, or all up or none
   */
  static Optional<Estimate> of(List<List<CountedTray>> groups) {
    List<List<CountedTray>> telling = groups.stream().filter(TrayCorrelation::tells).toList();
    return telling.isEmpty()
        ? Optional.empty()
        : Optional.of(new TrayCorrelation(telling).estimate());
  }

  private static boolean tells(List<CountedTray> trays) {
    return trays.size() > 1 && Tally.of(trays).isMixed();
  }

  private Estimate estimate() {
    int best = 0;
    double height = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < TRIED.length; i++) {
      double value = profile(TRIED[i]);
      if (value > height) {
        height = value;
        best = i;
      }
    }
    UnivariatePointValuePair top =
        highest(
            this::profile,
            TRIED[Math.max(0, best - 1)],
            TRIED[Math.min(TRIED.length - 1, best + 1)]);
    double peak = TRIED[best];
    if (top.getValue() > height + 1e-7) {
      peak = top.getPoint();
      height = top.getValue();
    }
    double least = height - MaximumLikelihood.FALL_95 / 2;
    DoubleUnaryOperator excess = rho -> profile(rho) - least;
    double low = excess.applyAsDouble(0) >= 0 ? 0 : solve(excess, 0, peak);
    double high = excess.applyAsDouble(MOST) >= 0 ? 1 : solve(excess, peak, MOST);
    return Estimate.within(peak, low, high);
  }

  private static double solve(DoubleUnaryOperator excess, double from, double to) {
    return new BrentSolver(1e-6).solve(200, excess::applyAsDouble, from, to);
  }

  /** The highest log-likelihood at a correlation, each group with the share that suits it best. */
  private double profile(double rho) {
    double sum = 0;
    for (BetaBinomial group : groups) {
      double pooled = group.share();
      sum +=
          rho == 0
              ? group.logLikelihood(pooled, 0)
              : highest(
                      share -> group.logLikelihood(share, rho),
                      pooled / 3,
                      pooled + (1 - pooled) / 1.5)
                  .getValue();
    }
    return sum;
  }

  private static UnivariatePointValuePair highest(
      DoubleUnaryOperator f, double least, double most) {
    return new BrentOptimizer(1e-7, 1e-9)
        .optimize(
            new MaxEval(1000),
            new UnivariateObjectiveFunction(f::applyAsDouble),
            GoalType.MAXIMIZE,
            new SearchInterval(least, most));
  }
}
