package propcap.study.work;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/** Means of trays as whole trays that add up: nobody carries a third of one. */
final class WholeTrays {
  private static final double NEARLY = 1e-9;

  private WholeTrays() {}

  /**
   * Rounds shares so that they add up to their rounded sum, by largest remainder; of equal
   * remainders the first goes up.
   */
  static int[] of(double[] shares) {
    int[] whole = Arrays.stream(shares).mapToInt(s -> (int) Math.floor(s + NEARLY)).toArray();
    long missing = Math.round(Arrays.stream(shares).sum()) - Arrays.stream(whole).sum();
    IntStream.range(0, shares.length)
        .boxed()
        .sorted(Comparator.comparingDouble(i -> whole[i] - shares[i]))
        .limit(Math.max(0, missing))
        .forEach(i -> whole[i]++);
    return whole;
  }

  /**
   * Puts so many whole trays where their shares are, one after the other: the first where half of
   * the first tray's share has come, the second where half of the second's has, and so on. So each
   * stands on a day that is likely for it, however thinly the shares are spread.
   *
   * @param shares 0 or more; where one is 0, no tray is put
   * @param from the first share that may have a tray; what is earlier is put there
   * @param to the last, not 0; what is later is put there
   */
  static int[] along(double[] shares, int trays, int from, int to) {
    int[] whole = new int[shares.length];
    double all = Arrays.stream(shares).sum();
    double come = Arrays.stream(shares, 0, from).sum();
    int put = 0;
    for (int i = from; i <= to; i++) {
      come += shares[i];
      if (shares[i] > 0 && put < trays) {
        int upTo = i == to ? trays : (int) Math.floor(trays * come / all + 0.5 + NEARLY);
        whole[i] = upTo - put;
        put = upTo;
      }
    }
    return whole;
  }
}
