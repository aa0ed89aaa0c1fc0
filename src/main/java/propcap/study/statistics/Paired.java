package propcap.study.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Mean;

/**
 * The paired-t interval of the difference between two scenarios run on the same seasons (Law,
 * Simulation Modeling and Analysis, chapter on comparing alternatives), widened where the
 * differences are skewed: what a change does is often nothing in most seasons and much in a few.
 */
public final class Paired {
  private Paired() {}

  /** The difference by itself, where the second is ahead with the higher number. */
  public static Difference difference(double[] first, double[] second, Strata strata) {
    return difference(first, second, strata, true, 1);
  }

  /**
   * The difference, second minus first.
   *
   * @param first one number a season
   * @param second as many
   * @param strata of the seasons
   * @param moreIsBetter whether the second is ahead where its number is the higher
   * @param comparisons how many intervals are to hold together with {@link MeanLimits#CONFIDENCE},
   *     by Bonferroni
   * @throws IllegalArgumentException for fewer than two seasons, of which no error can be told
   */
  public static Difference difference(
      double[] first, double[] second, Strata strata, boolean moreIsBetter, int comparisons) {
    return difference(first, second, strata, moreIsBetter, MeanLimits.CONFIDENCE, comparisons);
  }

  /** The same with another confidence of all comparisons together. */
  static Difference difference(
      double[] first,
      double[] second,
      Strata strata,
      boolean moreIsBetter,
      double confidence,
      int comparisons) {
    int n = first.length;
    if (n < 2) {
      throw new IllegalArgumentException("a difference takes two seasons or more, not " + n);
    }
    double[] differences = IntStream.range(0, n).mapToDouble(i -> second[i] - first[i]).toArray();
    double mean = new Mean().evaluate(differences);
    Strata.MeanError error = strata.error(differences);
    double apart = strata.error(first).variance() + strata.error(second).variance();
    double level = 1 - (1 - confidence) / (2.0 * comparisons);
    double reach = new TDistribution(null, error.freedom()).inverseCumulativeProbability(level);
    if (n >= Difference.TOLD_FROM && error.variance() > 0) {
      reach +=
          forShape(
              error.skewness(),
              strata.kurtosis(differences),
              new NormalDistribution(null, 0, 1).inverseCumulativeProbability(level),
              n);
    }
    return new Difference(
        mean,
        reach * error.se(),
        error.se(),
        ahead(differences, moreIsBetter),
        error.variance() == 0 ? null : Math.sqrt(apart / error.variance()),
        (int) Arrays.stream(differences).filter(d -> d != 0).count());
  }

  /**
   * How many standard errors more it takes each way, by the Edgeworth expansion of Student's
   * statistic, inverted: z/n (skewness^2 (z^4 + 2 z^2 - 3) / 18 - kurtosis (z^2 - 3) / 12). Hall
   * (1988), "Theoretical comparison of bootstrap confidence intervals", Annals of Statistics 16,
   * has it in his table 1 for 95 % as 2.12 skewness^2 - 0.14 kurtosis, less what is Student's own
   * (Owen 2025, arXiv 2501.07645). Never less than none, for it is an estimate.
   *
   * @param kurtosis above that of the normal law
   * @param z the normal quantile of the level
   */
  static double forShape(double skewness, double kurtosis, double z, int n) {
    double square = z * z;
    double bySkewness = skewness * skewness * (square * square + 2 * square - 3) / 18;
    return Math.max(0, z / n * (bySkewness - kurtosis * (square - 3) / 12));
  }

  private static double ahead(double[] differences, boolean moreIsBetter) {
    return IntStream.range(0, differences.length)
            .filter(i -> moreIsBetter ? differences[i] > 0 : differences[i] < 0)
            .count()
        / (double) differences.length;
  }
}
