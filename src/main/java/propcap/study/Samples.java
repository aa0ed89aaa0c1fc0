package propcap.study;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.DoublePredicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;

/** One number a season, in the seasons' order, and what is said of it. */
final class Samples {
  private static final double CONFIDENCE = 0.95;

  private final double[] values;

  private Samples(double[] values) {
    this.values = values;
  }

  static <T> Samples of(List<T> seasons, ToDoubleFunction<T> number) {
    return new Samples(seasons.stream().mapToDouble(number).toArray());
  }

  static Samples of(double[] values) {
    return new Samples(values.clone());
  }

  double mean() {
    return new Mean().evaluate(values);
  }

  /** Standard error of the mean; 0 for fewer than two seasons. */
  double standardError() {
    return values.length < 2
        ? 0
        : new StandardDeviation().evaluate(values) / Math.sqrt(values.length);
  }

  /** Half the width of Student's 95 % interval of the mean; infinite for fewer than two seasons. */
  double halfWidth() {
    return values.length < 2 ? Double.POSITIVE_INFINITY : halfWidth(standardError(), values.length);
  }

  /** The same of a mean over so many values, at least two, by its standard error. */
  static double halfWidth(double standardError, int values) {
    return standardError * new TDistribution(null, values - 1).inverseCumulativeProbability(0.975);
  }

  double share(DoublePredicate holds) {
    return Arrays.stream(values).filter(holds).count() / (double) values.length;
  }

  /** What is never seen below 0 has no mean below it. */
  private MeanLimits possible(MeanLimits limits) {
    return limits.low() < 0 && Arrays.stream(values).allMatch(v -> v >= 0)
        ? new MeanLimits(0, limits.high())
        : limits;
  }

  /** The least of these counts that so large a share of them does not exceed; empty for none. */
  static OptionalInt reached(IntStream counts, double share) {
    int[] sorted = counts.sorted().toArray();
    // A whole product must stay whole: 0.55 * 100 is 55.00000000000001 in binary.
    int at = Math.max(0, (int) Math.ceil(share * sorted.length - 1e-9) - 1);
    return Arrays.stream(sorted).skip(at).findFirst();
  }

  /** Quantiles by linear interpolation between order statistics (Hyndman and Fan 1996, type 7). */
  Stat stat() {
    Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
    percentile.setData(values);
    return new Stat(
        mean(),
        standardError(),
        MeanLimits.of(values, CONFIDENCE).map(this::possible).orElse(null),
        values.length,
        Commonest.of(values).others(),
        percentile.evaluate(10),
        percentile.evaluate(50),
        percentile.evaluate(90));
  }
}
