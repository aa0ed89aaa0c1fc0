package propcap.study.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;

/** One number a season, in the seasons' order, and what is said of it. */
public final class Samples {

  private final double[] values;
  private final Strata strata;

  private Samples(double[] values, Strata strata) {
    this.values = values;
    this.strata = strata;
  }

  public static <T> Samples of(List<T> seasons, Strata strata, ToDoubleFunction<T> number) {
    return new Samples(seasons.stream().mapToDouble(number).toArray(), strata);
  }

  public static Samples of(double[] values, Strata strata) {
    return new Samples(values.clone(), strata);
  }

  /** One of the numbers that were kept of each season. */
  public static double[] column(List<double[]> seasons, int number) {
    return seasons.stream().mapToDouble(numbers -> numbers[number]).toArray();
  }

  public static <T> double mean(List<T> seasons, ToDoubleFunction<T> number) {
    return mean(seasons.stream().mapToDouble(number).toArray());
  }

  public static double mean(double[] values) {
    return new Mean().evaluate(values);
  }

  public int size() {
    return values.length;
  }

  public double mean() {
    return new Mean().evaluate(values);
  }

  /** Standard error of the mean; 0 for fewer than two seasons. */
  double standardError() {
    return values.length < 2 ? 0 : strata.error(values).se();
  }

  /** Half the width of Student's 95 % interval of the mean; infinite for fewer than two seasons. */
  public double halfWidth() {
    if (values.length < 2) {
      return Double.POSITIVE_INFINITY;
    }
    Strata.MeanError error = strata.error(values);
    return error.se()
        * new TDistribution(null, error.freedom()).inverseCumulativeProbability(0.975);
  }

  /** What is never seen below 0 has no mean below it. */
  private MeanLimits possible(MeanLimits limits) {
    return limits.low() < 0 && Arrays.stream(values).allMatch(v -> v >= 0)
        ? new MeanLimits(0, limits.high())
        : limits;
  }

  /** Quantiles by linear interpolation between order statistics (Hyndman and Fan 1996, type 7). */
  public Percentile quantiles() {
    Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
    percentile.setData(values);
    return percentile;
  }

  public Stat stat() {
    Percentile percentile = quantiles();
    return new Stat(
        mean(),
        standardError(),
        MeanLimits.of(values, strata, MeanLimits.CONFIDENCE).map(this::possible).orElse(null),
        values.length,
        Commonest.of(values).others(),
        percentile.evaluate(10),
        percentile.evaluate(50),
        percentile.evaluate(90));
  }
}
