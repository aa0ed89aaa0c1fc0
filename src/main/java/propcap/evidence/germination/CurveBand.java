package propcap.evidence.germination;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import propcap.evidence.Estimate;

/**
 * A fitted curve with its error at each time: 95 % limits by the curvature of the log-likelihood at
 * its peak, carried over (the delta method) to the logit of the share that has shown.
 */
public final class CurveBand {
  private static final double Z_95 = 1.959964;
  private static final double STEP = 1e-4;
  private static final double FLAT = 1e-3;

  private final CurveFamily family;
  private final double[] curve;
  private final double[] peak;
  private final Optional<RealMatrix> covariance;

  /**
   * A curve.
   *
   * @param curve logit of the share that germinates, log of the median, log of the spread
   * @param peak the same where they are likeliest, which the band goes round
   */
  CurveBand(
      CurveFamily family, double[] curve, double[] peak, ToDoubleFunction<double[]> logLikelihood) {
    this.family = family;
    this.curve = curve.clone();
    this.peak = peak.clone();
    this.covariance = covariance(peak, logLikelihood);
  }

  double shown(double days) {
    return days <= 0 ? 0 : logistic(logit(curve, days));
  }

  /** The 95 % limits at a time; none where the counts set none. */
  public Optional<Estimate> at(double days) {
    if (days <= 0 || covariance.isEmpty()) {
      return Optional.empty();
    }
    double[] gradient = new double[peak.length];
    for (int i = 0; i < peak.length; i++) {
      gradient[i] =
          (logit(moved(peak, i, STEP), days) - logit(moved(peak, i, -STEP), days)) / (2 * STEP);
    }
    double variance = 0;
    for (int i = 0; i < peak.length; i++) {
      for (int j = 0; j < peak.length; j++) {
        variance += gradient[i] * gradient[j] * covariance.get().getEntry(i, j);
      }
    }
    double middle = logit(peak, days);
    double half = Z_95 * Math.sqrt(variance);
    if (!Double.isFinite(middle) || !Double.isFinite(half)) {
      return Optional.empty();
    }
    return Optional.of(
        Estimate.within(shown(days), logistic(middle - half), logistic(middle + half)));
  }

  private double logit(double[] point, double days) {
    double share =
        logistic(point[0]) * family.below((Math.log(days) - point[1]) / Math.exp(point[2]));
    return Math.log(share / (1 - share));
  }

  static double logistic(double x) {
    return 1 / (1 + Math.exp(-x));
  }

  private static double[] moved(double[] point, int i, double by) {
    double[] moved = point.clone();
    moved[i] += by;
    return moved;
  }

  /** The inverse of the negative curvature, by differences; none where the peak is no peak. */
  private static Optional<RealMatrix> covariance(double[] peak, ToDoubleFunction<double[]> f) {
    int n = peak.length;
    RealMatrix curvature = new Array2DRowRealMatrix(n, n);
    double h = 1e-3;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double second =
            (f.applyAsDouble(moved(moved(peak, i, h), j, h))
                    - f.applyAsDouble(moved(moved(peak, i, h), j, -h))
                    - f.applyAsDouble(moved(moved(peak, i, -h), j, h))
                    + f.applyAsDouble(moved(moved(peak, i, -h), j, -h)))
                / (4 * h * h);
        curvature.setEntry(i, j, -second);
        curvature.setEntry(j, i, -second);
      }
    }
    if (curvature.getEntry(0, 0) < FLAT) {
      // Every seed came up: the share is at its edge and adds no error that a curvature could tell.
      curvature.setEntry(0, 0, 1 / FLAT);
    }
    LUDecomposition parts = new LUDecomposition(curvature, 1e-9);
    if (!parts.getSolver().isNonSingular()) {
      return Optional.empty();
    }
    RealMatrix inverse = parts.getSolver().getInverse();
    for (int i = 0; i < n; i++) {
      if (!(inverse.getEntry(i, i) > 0)) {
        return Optional.empty();
      }
    }
    return Optional.of(inverse);
  }
}
