package propcap.evidence;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleValueChecker;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Finds where a log-likelihood is highest, and by its profile the 95 % limits of a parameter: the
 * values at which the highest log-likelihood that the other parameters can reach has fallen by half
 * the 95 % quantile of chi-square with one degree of freedom.
 */
final class MaximumLikelihood {
  /** Twice the fall of the log-likelihood at a 95 % limit. */
  static final double FALL_95 =
      new ChiSquaredDistribution(null, 1).inverseCumulativeProbability(0.95);

  private static final int MOST_EVALUATIONS = 4_000;
  private static final double VALUE_TOLERANCE = 1e-8;
  private static final double PROFILE_TOLERANCE = 1e-4;
  private static final int MOST_WIDENINGS = 60;
  private static final int MOST_CLIMBS = 5;

  /** Less than this hardly moves a limit. */
  private static final double SETTLED = 0.01;

  private final ToDoubleFunction<double[]> logLikelihood;
  private final double[] steps;
  private final double[] peak;
  private final double height;

  /**
   * Climbs.
   *
   * @param steps a fair first step for each parameter, about its likely error
   */
  MaximumLikelihood(ToDoubleFunction<double[]> logLikelihood, double[] start, double[] steps) {
    this.logLikelihood = logLikelihood;
    this.steps = steps.clone();
    // A simplex may settle too early; from where it did, a fresh one goes on.
    double[] point = climb(logLikelihood, start, steps, VALUE_TOLERANCE);
    double value = logLikelihood.applyAsDouble(point);
    double before = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < MOST_CLIMBS && value > before + 1e-6; i++) {
      before = value;
      point = climb(logLikelihood, point, steps, VALUE_TOLERANCE);
      value = logLikelihood.applyAsDouble(point);
    }
    this.peak = point;
    this.height = value;
  }

  private MaximumLikelihood(
      ToDoubleFunction<double[]> logLikelihood, double[] peak, double[] steps, double height) {
    this.logLikelihood = logLikelihood;
    this.peak = peak;
    this.steps = steps;
    this.height = height;
  }

  /** The same hill with its parameters measured otherwise, so that the peak is known. */
  static MaximumLikelihood knownAt(
      double[] peak, ToDoubleFunction<double[]> logLikelihood, double[] steps) {
    return new MaximumLikelihood(
        logLikelihood, peak.clone(), steps.clone(), logLikelihood.applyAsDouble(peak));
  }

  double[] peak() {
    return peak.clone();
  }

  /** The log-likelihood at the peak. */
  double height() {
    return height;
  }

  /** The lower 95 % limit of a parameter; {@code least} where it falls too little down to there. */
  double low(int parameter, double least) {
    return limit(parameter, -1, least);
  }

  /** The upper 95 % limit of a parameter; {@code most} where it falls too little up to there. */
  double high(int parameter, double most) {
    return limit(parameter, 1, most);
  }

  private double limit(int parameter, int direction, double end) {
    double[] others = without(peak, parameter);
    DoubleUnaryOperator excess =
        value -> FALL_95 - 2 * (height - profile(parameter, value, others));
    double inside = peak[parameter];
    double within = FALL_95;
    double step = steps[parameter] / 2;
    for (int i = 0; i < MOST_WIDENINGS; i++) {
      double outside = inside + direction * step;
      if (direction * (outside - end) >= 0) {
        outside = end;
      }
      double beyond = settled(excess, outside);
      if (beyond < 0) {
        return crossing(excess, inside, within, outside, beyond);
      }
      if (outside == end) {
        return end;
      }
      inside = outside;
      within = beyond;
      step *= 1.5;
    }
    return end;
  }

  /**
   * A simplex that has lost its way makes a limit too narrow: before one is believed, others go.
   */
  private static double settled(DoubleUnaryOperator excess, double value) {
    double best = excess.applyAsDouble(value);
    double before = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < MOST_CLIMBS && best < 0 && best > before + SETTLED; i++) {
      before = best;
      best = Math.max(best, excess.applyAsDouble(value));
    }
    return best;
  }

  /** Where the excess is 0, between two values at which it is known. */
  private double crossing(
      DoubleUnaryOperator excess, double inside, double within, double outside, double beyond) {
    double tolerance = 5e-4 * Math.abs(outside - inside);
    return new BrentSolver(tolerance)
        .solve(
            200,
            x -> x == inside ? within : x == outside ? beyond : excess.applyAsDouble(x),
            Math.min(inside, outside),
            Math.max(inside, outside));
  }

  /** The highest log-likelihood with one parameter held; others start, and end, at the best. */
  private double profile(int parameter, double value, double[] others) {
    if (others.length == 0) {
      return logLikelihood.applyAsDouble(new double[] {value});
    }
    ToDoubleFunction<double[]> held =
        rest -> logLikelihood.applyAsDouble(with(rest, parameter, value));
    double[] best = climb(held, others, without(steps, parameter), PROFILE_TOLERANCE);
    System.arraycopy(best, 0, others, 0, best.length);
    return held.applyAsDouble(best);
  }

  private static double[] climb(
      ToDoubleFunction<double[]> f, double[] start, double[] steps, double tolerance) {
    double[] best = start.clone();
    double[] height = {f.applyAsDouble(start)};
    ToDoubleFunction<double[]> noted =
        point -> {
          double value = f.applyAsDouble(point);
          if (value > height[0]) {
            height[0] = value;
            System.arraycopy(point, 0, best, 0, point.length);
          }
          return value;
        };
    try {
      new SimplexOptimizer(new SimpleValueChecker(-1, tolerance))
          .optimize(
              new MaxEval(MOST_EVALUATIONS),
              new ObjectiveFunction(noted::applyAsDouble),
              GoalType.MAXIMIZE,
              new InitialGuess(start),
              new NelderMeadSimplex(steps));
    } catch (TooManyEvaluationsException e) {
      // A ridge that rises for ever by ever less: what it has reached is as good as its end.
    }
    return best;
  }

  private static double[] without(double[] point, int parameter) {
    double[] rest = new double[point.length - 1];
    for (int i = 0; i < rest.length; i++) {
      rest[i] = point[i < parameter ? i : i + 1];
    }
    return rest;
  }

  private static double[] with(double[] rest, int parameter, double value) {
    double[] point = Arrays.copyOf(rest, rest.length + 1);
    System.arraycopy(rest, parameter, point, parameter + 1, rest.length - parameter);
    point[parameter] = value;
    return point;
  }
}
