package propcap.study.size;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Capacity;
import propcap.study.Ladder;
import propcap.study.NamesInQuestions;

/**
 * What is asked of a sizing.
 *
 * @param ranges of one place, or of two that are sized together
 * @param match sowings that the goal is about: an id, where * stands for any letters
 * @param indifference how near the goal an answer may be wrong; null: a planning default
 */
public record SizingQuestion(
    List<Range> ranges, Goal goal, String match, @Nullable Double indifference) {
  /** The most springs that one size may take; sizes that are clear take far fewer. */
  public static final int DEFAULT_SEASONS = 5000;

  /**
   * Sizes of a place that are tried.
   *
   * @param place its name; {@link Capacity#HANDS} is people's hours a day
   * @param from smallest size, spaces or hours a day
   * @param to largest
   * @param step between sizes
   */
  public record Range(String place, int from, int to, int step) {
    /** Sizes in rising order. */
    List<Integer> ladder() throws BadQuestionException {
      if (from < 0) {
        throw new BadQuestionException("--from must be 0 or more, was " + from + SUCH_AS);
      }
      List<Integer> sizes = Ladder.of("sizes", from, to, step, EXAMPLE);
      if (to > LARGEST) {
        throw new BadQuestionException(
            String.format(
                Locale.ROOT,
                "--to %d is more than any farm has; at most %,d is tried",
                to,
                LARGEST));
      }
      return sizes;
    }
  }

  /** The largest size that is tried, far above what a farm that raises its own plants has. */
  private static final int LARGEST = 100_000;

  private static final int MOST_SIZES = 2500;

  private static final String EXAMPLE = "--from 0 --to 400 --step 20";
  private static final String SUCH_AS = "; say such as " + EXAMPLE;

  /** Two hundredths of a chance; planning default. */
  private static final double OF_A_CHANCE = 0.02;

  /** A half percent of a share, of plants or of money; planning default. */
  private static final double OF_A_NUMBER = 0.005;

  /**
   * Checks the question by itself.
   *
   * @throws BadQuestionException saying what would be right
   */
  public void check(Scenario scenario) throws BadQuestionException {
    List<String> places = places();
    if (places.isEmpty() || places.size() > 2) {
      throw new BadQuestionException("one place is sized, or two together");
    }
    if (Set.copyOf(places).size() < places.size()) {
      throw new BadQuestionException(
          places.get(0) + " is named twice; to size two places together name two");
    }
    for (String place : places) {
      var unused = Capacity.named(scenario, place);
    }
    for (Range range : ranges) {
      var unused = range.ladder();
    }
    if (goal.measure() == Goal.Measure.MARGIN && scenario.prices() == null) {
      throw new BadQuestionException("a goal of margin takes a money: block in the scenario");
    }
    if (indifference != null) {
      check(indifference);
    }
    NamesInQuestions.sowings(scenario, match);
  }

  private void check(double indifference) throws BadQuestionException {
    if (!(indifference > 0 && Double.isFinite(indifference))) {
      throw new BadQuestionException("an indifference must be more than 0, was " + indifference);
    }
    if (goal.isShare() && indifference >= 1) {
      throw new BadQuestionException(
          "an indifference of a share is a share, such as 2%, was " + indifference);
    }
    if (!goal.isShare() && indifference < 1) {
      throw new BadQuestionException(
          "an indifference of plants or of money is a number of them, 1 or more, such as 400, was "
              + indifference);
    }
  }

  /** The places' names. */
  List<String> places() {
    return ranges.stream().map(Range::place).toList();
  }

  /**
   * Every size of the one place, or every pair of sizes of the two: the first's in rising order,
   * and with each of them the second's.
   */
  List<List<Integer>> sizes() throws BadQuestionException {
    List<Integer> first = ranges.get(0).ladder();
    if (ranges.size() == 1) {
      return first.stream().map(List::of).toList();
    }
    List<Integer> second = ranges.get(1).ladder();
    long pairs = (long) first.size() * second.size();
    if (pairs > MOST_SIZES) {
      throw new BadQuestionException(
          String.format(
              "%d and %d sizes make %d pairs, and at most %d can be tried; take a larger step",
              first.size(), second.size(), pairs, MOST_SIZES));
    }
    return first.stream().flatMap(a -> second.stream().map(b -> List.of(a, b))).toList();
  }

  /**
   * How near the goal an answer may be wrong.
   *
   * @param level the measure's mean at the largest size, for what has no natural scale
   */
  double indifference(double level) {
    if (indifference != null) {
      return indifference;
    }
    return switch (goal.measure()) {
      case MET -> OF_A_CHANCE;
      case ON_TIME_SHARE -> OF_A_NUMBER;
      case ON_TIME -> Math.max(1, OF_A_NUMBER * goal.least());
      case MARGIN -> Math.max(1, OF_A_NUMBER * Math.abs(level));
    };
  }
}
