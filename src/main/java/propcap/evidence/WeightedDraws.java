package propcap.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What is believed of several figures together after they were held against records: points, each
 * with a weight.
 *
 * <p>Importance sampling: the points are drawn from Student distributions about where the weight is
 * thought to lie, and each weighs by how much likelier it is than these have it. To find that place
 * the records are let in bit by bit, so that enough points always count. If too few count in the
 * end, for the weight may lie in two places, one more distribution is laid about the heaviest
 * point, again and again (incremental mixture importance sampling; Raftery and Bao 2010, Biometrics
 * 66, 1162-1173). No luck is in it: the same records give the same answer.
 */
final class WeightedDraws {
  private static final int ROUGH = 1 << 11;
  private static final int CLOSER = 1 << 12;
  private static final int FINE = 1 << 12;
  private static final int MOST_ROUNDS = 60;

  /** Of the rough points so many must still count when more of the records is let in. */
  private static final double LEAST_SHARE = 0.3;

  /** So many points of equal weight put a 95 % limit between those of 94 and 96 %. */
  private static final int ENOUGH = 600;

  private static final int NEIGHBOURS = 256;
  private static final int MOST_ADDED = 16;

  private final List<StudentShape> shapes = new ArrayList<>();
  private final List<Integer> sizes = new ArrayList<>();
  private final List<double[]> points = new ArrayList<>();
  private final List<Double> logTargets = new ArrayList<>();
  private double[] weights = {};

  private WeightedDraws() {}

  /**
   * Draws.
   *
   * @param logPrior logarithm of the density before the records, up to a constant
   * @param logLikelihood logarithm of the chance of the records, up to a constant
   * @param mean of each figure before the records
   * @param sd of each figure before the records
   */
  static WeightedDraws of(
      ToDoubleFunction<double[]> logPrior,
      ToDoubleFunction<double[]> logLikelihood,
      double[] mean,
      double[] sd) {
    StudentShape before = StudentShape.of(mean, sd);
    StudentShape shape = before;
    double letIn = 0;
    for (int round = 0; round < MOST_ROUNDS && letIn < 1; round++) {
      Round rough = new Round(shape, ROUGH, logPrior, logLikelihood);
      letIn = rough.mostToLetIn(letIn);
      shape = rough.shape(letIn);
    }
    shape = new Round(shape, CLOSER, logPrior, logLikelihood).shape(1);
    ToDoubleFunction<double[]> logTarget =
        point -> logPrior.applyAsDouble(point) + logLikelihood.applyAsDouble(point);
    WeightedDraws draws = new WeightedDraws();
    draws.add(shape, FINE, logTarget);
    for (int added = 0; added < MOST_ADDED && draws.size() < ENOUGH; added++) {
      draws.add(draws.aboutTheHeaviest(before), CLOSER, logTarget);
    }
    return draws;
  }

  private void add(StudentShape shape, int size, ToDoubleFunction<double[]> logTarget) {
    shapes.add(shape);
    sizes.add(size);
    for (double[] point : shape.draw(size)) {
      points.add(point);
      logTargets.add(logTarget.applyAsDouble(point));
    }
    double[] logs = new double[points.size()];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = logTargets.get(i) - logDrawn(points.get(i));
    }
    weights = WeightedPoints.exp(logs);
  }

  /** Logarithm of the density of all that points were drawn from, as if they were one. */
  private double logDrawn(double[] point) {
    double[] logs = new double[shapes.size()];
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      logs[i] = shapes.get(i).logDensity(point) + Math.log(sizes.get(i));
      most = Math.max(most, logs[i]);
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - most);
    }
    return most + Math.log(sum);
  }

  /** About the heaviest point, as the points nearest to it are spread. */
  private StudentShape aboutTheHeaviest(StudentShape before) {
    int heaviest =
        IntStream.range(0, weights.length)
            .boxed()
            .max(Comparator.comparingDouble(i -> weights[i]))
            .orElseThrow();
    StudentShape there = before.movedTo(points.get(heaviest));
    double sum = Arrays.stream(weights).sum();
    double[] away = points.stream().mapToDouble(there::squaredDistance).toArray();
    int[] nearest =
        IntStream.range(0, away.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> away[i]))
            .limit(NEIGHBOURS)
            .mapToInt(Integer::intValue)
            .toArray();
    return StudentShape.about(
        points.get(heaviest),
        Arrays.stream(nearest).mapToObj(points::get).toArray(double[][]::new),
        Arrays.stream(nearest).mapToDouble(i -> weights[i] / sum + 1.0 / weights.length).toArray());
  }

  /** How many points of equal weight would be as good. */
  double size() {
    return effectiveSize(weights);
  }

  private static double effectiveSize(double[] weights) {
    double sum = 0;
    double squares = 0;
    for (double weight : weights) {
      sum += weight;
      squares += weight * weight;
    }
    return sum * sum / squares;
  }

  /** The distribution of one figure, or of what follows from all of them. */
  WeightedPoints of(ToDoubleFunction<double[]> figure) {
    double[] values = points.stream().mapToDouble(figure).toArray();
    int[] order =
        IntStream.range(0, values.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> values[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    return new WeightedPoints(
        Arrays.stream(order).mapToDouble(i -> values[i]).toArray(),
        Arrays.stream(order).mapToDouble(i -> weights[i]).toArray());
  }

  /** Points of one shape, with a part of the records let in. */
  private static final class Round {
    private final double[][] points;
    private final double[] logPrior;
    private final double[] logLikelihood;

    Round(
        StudentShape shape,
        int size,
        ToDoubleFunction<double[]> prior,
        ToDoubleFunction<double[]> likelihood) {
      points = shape.draw(size);
      logPrior =
          Arrays.stream(points)
              .mapToDouble(p -> prior.applyAsDouble(p) - shape.logDensity(p))
              .toArray();
      logLikelihood = Arrays.stream(points).mapToDouble(likelihood).toArray();
    }

    private double[] weights(double letIn) {
      double[] logs = new double[points.length];
      for (int i = 0; i < logs.length; i++) {
        logs[i] = logPrior[i] + letIn * logLikelihood[i];
      }
      return WeightedPoints.exp(logs);
    }

    StudentShape shape(double letIn) {
      return StudentShape.of(points, weights(letIn));
    }

    /** The largest part of the records with which enough of the points still count. */
    double mostToLetIn(double least) {
      double enough = LEAST_SHARE * points.length;
      if (effectiveSize(weights(1)) >= enough) {
        return 1;
      }
      double low = least;
      double high = 1;
      for (int i = 0; i < 30; i++) {
        double middle = (low + high) / 2;
        if (effectiveSize(weights(middle)) >= enough) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return low;
    }
  }
}
