package propcap.study;

import java.util.List;
import java.util.stream.LongStream;

/** The rungs of what is tried: from so much to so much by a step. */
public final class Ladder {
  /** More than anyone would look at. */
  private static final int MOST_RUNGS = 1000;

  private Ladder() {}

  /**
   * The rungs, in rising order.
   *
   * @param what is tried, such as {@code sizes}, for the words of a refusal
   * @param example what would be right, for the same
   * @throws BadQuestionException where there are none, or too many to be tried
   */
  public static List<Integer> of(String what, int from, int to, int step, String example)
      throws BadQuestionException {
    if (step < 1) {
      throw new BadQuestionException(
          "the step must be 1 or more, was " + step + "; say such as " + example);
    }
    if (to < from) {
      throw new BadQuestionException(
          String.format("--to %d is below --from %d; say such as %s", to, from, example));
    }
    long rungs = ((long) to - from) / step + 1;
    if (rungs > MOST_RUNGS) {
      throw new BadQuestionException(
          String.format(
              "%s from %d to %d by %d are %d to be tried; at most %d can be: take a larger step",
              what, from, to, step, rungs, MOST_RUNGS));
    }
    return LongStream.range(0, rungs).mapToObj(i -> (int) (from + i * step)).toList();
  }
}
