package propcap.report;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/** Means of trays as whole trays that add up: nobody carries a third of one. */
final class WholeTrays {
  private WholeTrays() {}

  /**
   * Rounds shares so that they add up to their rounded sum, by largest remainder; of equal
   * remainders the first goes up.
   */
  static int[] of(double[] shares) {
    int[] whole = Arrays.stream(shares).mapToInt(s -> (int) Math.floor(s + 1e-9)).toArray();
    long missing = Math.round(Arrays.stream(shares).sum()) - Arrays.stream(whole).sum();
    IntStream.range(0, shares.length)
        .boxed()
        .sorted(Comparator.comparingDouble(i -> whole[i] - shares[i]))
        .limit(Math.max(0, missing))
        .forEach(i -> whole[i]++);
    return whole;
  }
}
