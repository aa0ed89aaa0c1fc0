package propcap.study.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which of several has the largest mean, as far as seasons that are common to all of them tell: the
 * differences from the one that leads, each with its limits.
 *
 * @param leader the first of those with the largest mean, by its place in the list
 * @param beaten those whose means are clearly below the leader's
 * @param behind by how much another may be better than the leader, at most
 */
public record BestSelection(int leader, List<Integer> beaten, double behind) {

  /**
   * Compares all with the one that leads.
   *
   * @param numbers of each, season by season
   * @param strata of the seasons
   * @param confidence of each difference's limits
   */
  public static BestSelection of(List<double[]> numbers, Strata strata, double confidence) {
    double[] means = numbers.stream().mapToDouble(Samples::mean).toArray();
    int leader = 0;
    for (int i = 1; i < means.length; i++) {
      leader = means[i] > means[leader] ? i : leader;
    }
    // No two of them can differ by more, as far as was seen of any of them.
    double reach = any(numbers).getMax() - any(numbers).getMin();
    List<Integer> beaten = new ArrayList<>();
    double behind = 0;
    for (int i = 0; i < means.length; i++) {
      double ahead =
          i == leader ? 0 : ahead(numbers.get(leader), numbers.get(i), strata, reach, confidence);
      behind = Math.max(behind, -ahead);
      if (ahead > 0) {
        beaten.add(i);
      }
    }
    return new BestSelection(leader, List.copyOf(beaten), behind);
  }

  /** What was seen of any of them in any season. */
  public static DoubleSummaryStatistics any(List<double[]> numbers) {
    return numbers.stream().flatMapToDouble(Arrays::stream).summaryStatistics();
  }

  /** By how much the one is ahead of the other, at least. */
  private static double ahead(
      double[] one, double[] other, Strata strata, double reach, double confidence) {
    double[] differences =
        IntStream.range(0, one.length).mapToDouble(s -> one[s] - other[s]).toArray();
    return MeanLimits.within(differences, strata, -reach, reach, confidence).low();
  }
}
