package propcap.study;

import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.stat.descriptive.moment.Variance;

/**
 * The paired-t interval of the difference between two scenarios run on the same seasons (Law,
 * Simulation Modeling and Analysis, chapter on comparing alternatives); where they differ in few
 * seasons, an interval made for that.
 */
final class Paired {
  private Paired() {}

  /**
   * The difference, second minus first.
   *
   * @param first one number a season
   * @param second as many
   * @param moreIsBetter whether the second is ahead where its number is the higher
   * @param confidence of all of so many comparisons together, by Bonferroni
   * @param comparisons how many intervals are to hold together
   * @throws IllegalArgumentException for fewer than two seasons, of which no error can be told
   */
  static Difference difference(
      double[] first, double[] second, boolean moreIsBetter, double confidence, int comparisons) {
    int n = first.length;
    if (n < 2) {
      throw new IllegalArgumentException("a difference takes two seasons or more, not " + n);
    }
    double[] differences = IntStream.range(0, n).mapToDouble(i -> second[i] - first[i]).toArray();
    double mean = new Mean().evaluate(differences);
    double variance = new Variance().evaluate(differences);
    double apart = new Variance().evaluate(first) + new Variance().evaluate(second);
    double se = Math.sqrt(variance / n);
    return new Difference(
        mean,
        halfWidth(differences, mean, se, 1 - (1 - confidence) / comparisons),
        se,
        ahead(differences, moreIsBetter),
        variance == 0 ? null : Math.sqrt(apart / variance));
  }

  /** Student's; where fewer than half of the seasons differ, the farther of the skewed limits. */
  private static double halfWidth(double[] differences, double mean, double se, double confidence) {
    int n = differences.length;
    if (se > 0 && 2 * Commonest.of(differences).others() < n) {
      MeanLimits limits = MeanLimits.ofUnlike(differences, confidence);
      return Math.max(mean - limits.low(), limits.high() - mean);
    }
    return se * new TDistribution(null, n - 1).inverseCumulativeProbability((1 + confidence) / 2);
  }

  private static double ahead(double[] differences, boolean moreIsBetter) {
    return IntStream.range(0, differences.length)
            .filter(i -> moreIsBetter ? differences[i] > 0 : differences[i] < 0)
            .count()
        / (double) differences.length;
  }
}
