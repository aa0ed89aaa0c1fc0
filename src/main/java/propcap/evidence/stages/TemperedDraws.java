package propcap.evidence.stages;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import propcap.chance.RandomStream;
import umontreal.ssj.probdist.NormalDist;

/**
 * What is believed of several figures together after they were held against records: points that
 * lie as thickly as the belief does.
 *
 * <p>The points begin about what was believed before. The records are let in bit by bit: each time
 * points that have become unlikely give way to copies of likely ones, and all of them then wander
 * under what is believed by now (sequential Monte Carlo; Del Moral, Doucet and Jasra 2006, J. R.
 * Statist. Soc. B 68, 411-436). A step is a part of the way between two other points, so that it
 * fits the size and the slant of what is believed (differential evolution; ter Braak 2006, Stat.
 * Comput. 16, 239-249). The stream has one seed: the same records give the same answer.
 */
final class TemperedDraws {
  private static final int POINTS = 512;
  private static final int MOST_ROUNDS = 100;

  /** Of the points so many must still count when more of the records is let in. */
  private static final double LEAST_SHARE = 0.5;

  /** Steps of each point after each bit. */
  private static final int STEPS = 4;

  /** Steps of each point under all of the records, each of which is kept. */
  private static final int KEPT_STEPS = 32;

  /** Of ten steps one goes the whole way between two points: from one place to another. */
  private static final double WHOLE = 0.1;

  /** In parts of what was believed before; it keeps points off one line. */
  private static final double JITTER = 1e-5;

  private final RandomStream stream = new RandomStream(1, "draws");
  private final ToDoubleFunction<double[]> logPrior;
  private final ToDoubleFunction<double[]> logLikelihood;
  private final double[] mean;
  private final double[] sd;
  private final double[][] points = new double[POINTS][];
  private final double[][] kept = new double[POINTS * KEPT_STEPS][];

  /** Of each point the logarithm of its density at the start, and of what it has in the end. */
  private final double[] start = new double[POINTS];

  private final double[] end = new double[POINTS];

  private TemperedDraws(
      ToDoubleFunction<double[]> logPrior,
      ToDoubleFunction<double[]> logLikelihood,
      double[] mean,
      double[] sd) {
    this.logPrior = logPrior;
    this.logLikelihood = logLikelihood;
    this.mean = mean.clone();
    this.sd = sd.clone();
  }

  /**
   * Draws.
   *
   * @param logPrior logarithm of the density before the records, up to a constant
   * @param logLikelihood logarithm of the chance of the records, up to a constant
   * @param mean of each figure before the records
   * @param sd of each figure before the records
   */
  static TemperedDraws of(
      ToDoubleFunction<double[]> logPrior,
      ToDoubleFunction<double[]> logLikelihood,
      double[] mean,
      double[] sd) {
    TemperedDraws draws = new TemperedDraws(logPrior, logLikelihood, mean, sd);
    draws.begin();
    double letIn = 0;
    for (int round = 1; letIn < 1; round++) {
      letIn = round < MOST_ROUNDS ? draws.letInMore(letIn) : 1;
      for (int step = 0; step < STEPS; step++) {
        draws.wander(letIn);
      }
    }
    for (int step = 0; step < KEPT_STEPS; step++) {
      draws.wander(1);
      System.arraycopy(draws.points, 0, draws.kept, step * POINTS, POINTS);
    }
    return draws;
  }

  private void begin() {
    for (int i = 0; i < POINTS; i++) {
      double[] point = new double[mean.length];
      for (int f = 0; f < point.length; f++) {
        point[f] = mean[f] + sd[f] * normal();
      }
      points[i] = point;
      start[i] = logStart(point);
      end[i] = logEnd(point);
    }
  }

  private double normal() {
    return NormalDist.inverseF01(stream.next());
  }

  private double logStart(double[] point) {
    double sum = 0;
    for (int f = 0; f < point.length; f++) {
      double off = (point[f] - mean[f]) / sd[f];
      sum -= off * off / 2;
    }
    return sum;
  }

  private double logEnd(double[] point) {
    double log = logPrior.applyAsDouble(point) + logLikelihood.applyAsDouble(point);
    return Double.isNaN(log) ? Double.NEGATIVE_INFINITY : log;
  }

  /** Lets in as much more as leaves enough points that count, and has them give way. */
  private double letInMore(double before) {
    double most = 1 - before;
    double more = most;
    if (counting(more) < LEAST_SHARE * POINTS) {
      double least = 0;
      for (int i = 0; i < 40; i++) {
        more = (least + most) / 2;
        if (counting(more) < LEAST_SHARE * POINTS) {
          most = more;
        } else {
          least = more;
        }
      }
    }
    giveWay(weights(more));
    return more == 1 - before ? 1 : before + more;
  }

  private double[] weights(double more) {
    return WeightedPoints.exp(
        IntStream.range(0, POINTS).mapToDouble(i -> more * (end[i] - start[i])).toArray());
  }

  /** How many points of equal weight would be as good. */
  private double counting(double more) {
    double sum = 0;
    double squares = 0;
    for (double weight : weights(more)) {
      sum += weight;
      squares += weight * weight;
    }
    return sum * sum / squares;
  }

  /** Systematic resampling: of each point as many copies as its weight has it. */
  private void giveWay(double[] weights) {
    double each = Arrays.stream(weights).sum() / POINTS;
    double[][] before = points.clone();
    double[] startBefore = start.clone();
    double[] endBefore = end.clone();
    double here = each * stream.next();
    double upTo = weights[0];
    int from = 0;
    for (int i = 0; i < POINTS; i++) {
      while (here > upTo && from < POINTS - 1) {
        from++;
        upTo += weights[from];
      }
      points[i] = before[from];
      start[i] = startBefore[from];
      end[i] = endBefore[from];
      here += each;
    }
  }

  /** A step of each point by the rule of Metropolis. */
  private void wander(double letIn) {
    double usual = 2.38 / Math.sqrt(2.0 * mean.length);
    for (int i = 0; i < POINTS; i++) {
      double part = stream.next() < WHOLE ? 1 : usual * 2 * stream.next();
      double[] a = points[other(i)];
      double[] b = points[other(i)];
      double[] point = new double[mean.length];
      for (int f = 0; f < point.length; f++) {
        point[f] = points[i][f] + part * (a[f] - b[f]) + JITTER * sd[f] * normal();
      }
      double startThere = logStart(point);
      double endThere = logEnd(point);
      double gain = (1 - letIn) * (startThere - start[i]) + letIn * (endThere - end[i]);
      if (Math.log(stream.next()) < gain) {
        points[i] = point;
        start[i] = startThere;
        end[i] = endThere;
      }
    }
  }

  private int other(int than) {
    int other = (int) (stream.next() * (POINTS - 1));
    return other < than ? other : other + 1;
  }

  /** Each figure's median. */
  double[] medians() {
    return IntStream.range(0, mean.length)
        .mapToDouble(f -> of(point -> point[f]).quantile(0.5))
        .toArray();
  }

  /** The distribution of one figure, or of what follows from all of them. */
  WeightedPoints of(ToDoubleFunction<double[]> figure) {
    double[] values = Arrays.stream(kept).mapToDouble(figure).sorted().toArray();
    double[] weights = new double[values.length];
    Arrays.fill(weights, 1);
    return new WeightedPoints(values, weights);
  }
}
