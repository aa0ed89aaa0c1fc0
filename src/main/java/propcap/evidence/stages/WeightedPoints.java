package propcap.evidence.stages;

import java.util.Arrays;
import propcap.evidence.Estimate;

/** A distribution as points and their weights, each point in the middle of what it stands for. */
final class WeightedPoints {
  private final double[] points;
  private final double[] weights;

  /**
   * Takes points in rising order.
   *
   * @param weights not all 0, their sum does not matter
   */
  WeightedPoints(double[] points, double[] weights) {
    this.points = points.clone();
    double sum = Arrays.stream(weights).sum();
    this.weights = Arrays.stream(weights).map(w -> w / sum).toArray();
  }

  /** Weights from their logarithms, the largest of which is brought to 0. */
  static double[] exp(double[] logs) {
    double most = Arrays.stream(logs).max().orElse(0);
    return Arrays.stream(logs).map(log -> Math.exp(log - most)).toArray();
  }

  double mean() {
    double mean = 0;
    for (int i = 0; i < points.length; i++) {
      mean += weights[i] * points[i];
    }
    return mean;
  }

  double variance() {
    double mean = mean();
    double variance = 0;
    for (int i = 0; i < points.length; i++) {
      variance += weights[i] * (points[i] - mean) * (points[i] - mean);
    }
    return variance;
  }

  /** On the straight line between the points on both sides. */
  double quantile(double share) {
    double below = 0;
    double before = weights[0] / 2;
    if (share <= before) {
      return points[0];
    }
    for (int i = 1; i < points.length; i++) {
      below += weights[i - 1];
      double here = below + weights[i] / 2;
      if (here >= share && here > before) {
        return points[i - 1] + (points[i] - points[i - 1]) * (share - before) / (here - before);
      }
      before = here;
    }
    return points[points.length - 1];
  }

  /** The mean and the middle 95 %. */
  Estimate estimate() {
    return Estimate.within(mean(), this::quantile);
  }
}
