package propcap.study.statistics;

import java.util.Arrays;

/**
 * The commonest of some numbers.
 *
 * @param number one of those that occur most often; the smallest of them
 * @param others how many of the numbers are others
 */
record Commonest(double number, int others) {
  /** Sums of money that differ by less are alike. */
  private static final double ALIKE = 1e-6;

  /** The commonest of one number or more. */
  static Commonest of(double[] numbers) {
    double[] sorted = numbers.clone();
    Arrays.sort(sorted);
    int start = 0;
    int most = 0;
    double commonest = sorted[0];
    for (int i = 0; i < sorted.length; i++) {
      if (sorted[i] - sorted[start] > ALIKE) {
        start = i;
      }
      if (i - start + 1 > most) {
        most = i - start + 1;
        commonest = sorted[start];
      }
    }
    return new Commonest(commonest, sorted.length - most);
  }
}
