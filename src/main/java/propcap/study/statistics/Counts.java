package propcap.study.statistics;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** How often each whole number was seen, from which means and quantiles are exact. */
public final class Counts {
  private static final int[] NONE = {};

  /** The number that {@code seen} begins with. */
  private int first;

  private int[] seen = NONE;
  private int size;
  private long sum;

  public static Counts of(IntStream numbers) {
    Counts counts = new Counts();
    numbers.forEach(counts::add);
    return counts;
  }

  public void add(int number) {
    if (seen == NONE) {
      first = number;
      seen = new int[1];
    } else if (number < first) {
      int more = Math.max(first - number, seen.length / 2);
      int[] wider = new int[seen.length + more];
      System.arraycopy(seen, 0, wider, more, seen.length);
      seen = wider;
      first -= more;
    } else if (number >= first + seen.length) {
      seen = Arrays.copyOf(seen, Math.max(number - first + 1, seen.length + seen.length / 2));
    }
    seen[number - first]++;
    size++;
    sum += number;
  }

  public int size() {
    return size;
  }

  public double mean() {
    return sum / (double) size;
  }

  public double share(IntPredicate holds) {
    return IntStream.range(0, seen.length)
            .filter(i -> holds.test(first + i))
            .mapToLong(i -> seen[i])
            .sum()
        / (double) size;
  }

  /** The number at a place among all of them in rising order, from 0. */
  public int inOrder(int place) {
    int i = 0;
    for (int below = seen[0]; below <= place; below += seen[i]) {
      i++;
    }
    return first + i;
  }

  /** The least number that so large a share of them does not exceed. */
  public int reached(double share) {
    // A whole product must stay whole: 0.55 * 100 is 55.00000000000001 in binary.
    return inOrder(Math.max(0, (int) Math.ceil(share * size - 1e-9) - 1));
  }

  /**
   * A quantile by linear interpolation between order statistics (Hyndman and Fan 1996, type 7).
   *
   * @param share 0 to 1
   */
  public double quantile(double share) {
    double position = share * (size - 1);
    int below = (int) position;
    int low = inOrder(below);
    int high = inOrder(Math.min(below + 1, size - 1));
    return low + (position - below) * (high - low);
  }
}
