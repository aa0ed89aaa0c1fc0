package propcap.chance;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * The germination rates that a tray may have around its lot's, on a grid of logits fine enough for
 * how much trays of the crop differ: {@code Beta(g(1-rho)/rho, (1-g)(1-rho)/rho)}.
 */
final class TrayRates {
  /**
   * A correlation below this is none here: the rates of two trays then differ by less than a tenth
   * of what counting a hundred cells leaves open.
   */
  static final double LEAST = 1e-4;

  private static final double WIDEST = 16;
  private static final double WIDEST_STEP = 0.05;

  /** Standard deviations from the lot's rate, to either side, beyond which no tray lies. */
  private static final double MOST_DEVIATIONS = 12;

  private final double sharpness;
  private final double step;
  private final int points;
  private final double[] logRate;
  private final double[] logLacking;

  TrayRates(double correlation) {
    sharpness = (1 - correlation) / correlation;
    step = Math.min(WIDEST_STEP, 0.5 / Math.sqrt(sharpness));
    points = 2 * (int) Math.ceil(WIDEST / step) + 1;
    logRate = new double[points];
    logLacking = new double[points];
    for (int i = 0; i < points; i++) {
      logRate[i] = -Math.log1p(Math.exp(-logit(i)));
      logLacking[i] = -Math.log1p(Math.exp(logit(i)));
    }
  }

  private double logit(double i) {
    return -WIDEST + i * step;
  }

  /** A function of a tray's rate at each point of the grid. */
  double[] of(DoubleUnaryOperator function) {
    double[] values = new double[points];
    for (int i = 0; i < points; i++) {
      values[i] = function.applyAsDouble(QuantileTable.logistic(logit(i)));
    }
    return values;
  }

  /** The trays of a lot with a rate, above 0 and below 1. */
  Around around(double lotRate) {
    return new Around(lotRate);
  }

  /** How likely each point is for a tray of one lot. */
  final class Around {
    private final int first;
    private final double[] weights;

    private Around(double g) {
      double alpha = g * sharpness;
      double beta = (1 - g) * sharpness;
      double middle = Math.log(g / (1 - g));
      double reach = MOST_DEVIATIONS * Math.sqrt(1 / alpha + 1 / beta);
      first = held((middle - reach + WIDEST) / step);
      int last = held((middle + reach + WIDEST) / step);
      weights = new double[last - first + 1];
      double most = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < weights.length; i++) {
        weights[i] = alpha * logRate[first + i] + beta * logLacking[first + i];
        most = Math.max(most, weights[i]);
      }
      double sum = 0;
      for (int i = 0; i < weights.length; i++) {
        weights[i] = Math.exp(weights[i] - most);
        // At the ends stands all that lies beyond: there the density falls as e^-alpha t.
        if (first + i == 0) {
          weights[i] *= 0.5 + 1 / (alpha * step);
        } else if (first + i == points - 1) {
          weights[i] *= 0.5 + 1 / (beta * step);
        }
        sum += weights[i];
      }
      for (int i = 0; i < weights.length; i++) {
        weights[i] /= sum;
      }
    }

    private int held(double position) {
      return (int) Math.max(0, Math.min(points - 1, Math.rint(position)));
    }

    /** The mean of a function over the trays. */
    double mean(double[] values) {
      double sum = 0;
      for (int i = 0; i < weights.length; i++) {
        sum += weights[i] * values[first + i];
      }
      return sum;
    }

    /**
     * The trays' rates given something so likely at each: chance to lie at or below each point, up
     * to a factor.
     */
    double[] cumulated(double[] likelihood) {
      double[] below = new double[weights.length];
      double sum = 0;
      for (int i = 0; i < weights.length; i++) {
        sum += weights[i] * likelihood[first + i];
        below[i] = sum;
      }
      if (sum == 0) {
        Arrays.setAll(below, i -> i + 1);
      }
      return below;
    }

    /** A tray's rate from its uniform: each point stands for what is nearest to it. */
    double at(double[] below, double u) {
      double share = u * below[below.length - 1];
      int found = Arrays.binarySearch(below, share);
      int i = Math.min(below.length - 1, found < 0 ? -found - 1 : found);
      double before = i == 0 ? 0 : below[i - 1];
      double width = below[i] - before;
      double inside = width > 0 ? (share - before) / width - 0.5 : 0;
      return QuantileTable.logistic(logit(first + i + inside));
    }
  }
}
