package propcap.evidence;

import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Finds where a log-likelihood is highest, and by its profile the 95 % limits of a parameter: the
 * values at which the highest log-likelihood that the other parameters can reach has fallen by half
 * the 95 % quantile of chi-square with one degree of freedom.
 *
 * <p>The parameters are searched one within the other, so that a ridge, along which two of them
 * make up for each other, is followed to its end.
 */
public final class MaximumLikelihood {
  /** Twice the fall of the log-likelihood at a 95 % limit. */
  public static final double FALL_95 =
      new ChiSquaredDistribution(null, 1).inverseCumulativeProbability(0.95);

  private static final int MOST_WIDENINGS = 60;
  private static final double WIDER = 1.5;

  private final ToDoubleFunction<double[]> logLikelihood;
  private final double[] steps;
  private final double[] peak;
  private final double height;

  /**
   * Climbs.
   *
   * @param start a point from which the way leads up
   * @param steps a fair first step for each parameter, about its likely error
   */
  public MaximumLikelihood(
      ToDoubleFunction<double[]> logLikelihood, double[] start, double[] steps) {
    this.logLikelihood = logLikelihood;
    this.steps = steps.clone();
    this.peak = start.clone();
    this.height = climb(peak, -1);
  }

  private MaximumLikelihood(
      ToDoubleFunction<double[]> logLikelihood, double[] peak, double[] steps, double height) {
    this.logLikelihood = logLikelihood;
    this.peak = peak;
    this.steps = steps;
    this.height = height;
  }

  /** A likelihood whose parameters are measured otherwise, so that its peak is known. */
  public static MaximumLikelihood knownAt(
      double[] peak, ToDoubleFunction<double[]> logLikelihood, double[] steps) {
    return new MaximumLikelihood(
        logLikelihood, peak.clone(), steps.clone(), logLikelihood.applyAsDouble(peak));
  }

  public double[] peak() {
    return peak.clone();
  }

  /** The log-likelihood at the peak. */
  public double height() {
    return height;
  }

  /** The highest point of those at which a parameter has a value. */
  public double[] highestWith(int parameter, double value) {
    double[] point = peak.clone();
    point[parameter] = value;
    profile(parameter, point);
    return point;
  }

  /** How high that is. */
  public double heightWith(int parameter, double value) {
    double[] point = peak.clone();
    point[parameter] = value;
    return profile(parameter, point);
  }

  /** The lower 95 % limit of a parameter; {@code least} where it falls too little down to there. */
  public double low(int parameter, double least) {
    return limit(parameter, -1, least);
  }

  /** The upper 95 % limit of a parameter; {@code most} where it falls too little up to there. */
  public double high(int parameter, double most) {
    return limit(parameter, 1, most);
  }

  private double limit(int parameter, int direction, double end) {
    double[] along = peak.clone();
    DoubleUnaryOperator excess =
        value -> {
          along[parameter] = value;
          return FALL_95 - 2 * (height - profile(parameter, along));
        };
    double inside = peak[parameter];
    double within = FALL_95;
    double step = steps[parameter] / 2;
    for (int i = 0; i < MOST_WIDENINGS; i++) {
      double outside = inside + direction * step;
      if (direction * (outside - end) >= 0) {
        outside = end;
      }
      double beyond = excess.applyAsDouble(outside);
      if (beyond < 0) {
        return crossing(excess, inside, within, outside, beyond);
      }
      if (outside == end) {
        return end;
      }
      inside = outside;
      within = beyond;
      step *= WIDER;
    }
    return end;
  }

  /** Where the excess is 0, between two values at which it is known. */
  private static double crossing(
      DoubleUnaryOperator excess, double inside, double within, double outside, double beyond) {
    double tolerance = 5e-4 * Math.abs(outside - inside);
    return new BrentSolver(tolerance)
        .solve(
            200,
            x -> x == inside ? within : x == outside ? beyond : excess.applyAsDouble(x),
            Math.min(inside, outside),
            Math.max(inside, outside));
  }

  /**
   * The highest log-likelihood with one parameter held, from where the others are; where that falls
   * below a limit, from the peak's others as well, for it may have been the wrong side of a hill.
   */
  private double profile(int held, double[] along) {
    double reached = climb(along, held);
    if (2 * (height - reached) > FALL_95) {
      double[] afresh = peak.clone();
      afresh[held] = along[held];
      double again = climb(afresh, held);
      if (again > reached) {
        System.arraycopy(afresh, 0, along, 0, along.length);
        reached = again;
      }
    }
    return reached;
  }

  /** Moves a point to the top, all its parameters but one free. */
  private double climb(double[] point, int held) {
    return climb(point, held, 0);
  }

  private double climb(double[] point, int held, int from) {
    int free = from == held ? from + 1 : from;
    if (free >= point.length) {
      return logLikelihood.applyAsDouble(point);
    }
    double[] best = point.clone();
    double[] highest = {Double.NEGATIVE_INFINITY};
    UnimodalMaximum.along(
        value -> {
          point[free] = value;
          double reached = climb(point, held, free + 1);
          if (reached > highest[0]) {
            highest[0] = reached;
            System.arraycopy(point, 0, best, 0, point.length);
          }
          return reached;
        },
        point[free],
        steps[free]);
    System.arraycopy(best, 0, point, 0, point.length);
    return highest[0];
  }
}
