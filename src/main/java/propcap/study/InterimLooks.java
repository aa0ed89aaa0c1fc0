package propcap.study;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * When it is looked whether a question is told already: after some tens of seasons, and after twice
 * as many each time up to the most there may be. Limits that hold together at all the looks hold
 * whenever the question ends (a group sequential test, its error shared out evenly).
 *
 * @param after seasons run at each look, in rising order
 */
public record InterimLooks(List<Integer> after) {
  /** Fewer seasons tell nothing worth a look; planning default. */
  private static final int FEWEST = 40;

  /**
   * Looks after whole blocks, but for the last.
   *
   * @param most seasons that there may be
   * @param block seasons that hold every weather year once
   */
  public static InterimLooks upTo(int most, int block) {
    Deque<Integer> after = new ArrayDeque<>();
    after.push(most);
    for (int n = half(most, block); n >= FEWEST && n < after.peek(); n = half(n, block)) {
      after.push(n);
    }
    return new InterimLooks(List.copyOf(after));
  }

  private static int half(int seasons, int block) {
    return RunSettings.whole((seasons + 1) / 2, block);
  }

  /**
   * The confidence of one's limits at one look, at which those of all hold together at all looks.
   *
   * @param ofAll confidence of all together
   * @param many how many they are
   */
  public double ofEach(double ofAll, int many) {
    return 1 - (1 - ofAll) / (many * after.size());
  }
}
