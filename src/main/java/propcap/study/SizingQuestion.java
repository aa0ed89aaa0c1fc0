package propcap.study;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;

/**
 * What is asked of a sizing.
 *
 * @param places names of one place, or of two that are sized together; {@link Capacity#HANDS} is
 *     people's hours a day
 * @param from smallest size tried, spaces or hours a day
 * @param to largest
 * @param step between sizes
 * @param match sowings that the goal is about: an id, where * stands for any letters
 * @param indifference how near the goal an answer may be wrong; null: a planning default
 */
public record SizingQuestion(
    List<String> places,
    int from,
    int to,
    int step,
    Goal goal,
    String match,
    @Nullable Double indifference) {
  /** The largest size that is tried, far above what a farm that raises its own plants has. */
  private static final int LARGEST = 100_000;

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
  void check(Scenario scenario) throws BadQuestionException {
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
    if (from < 0) {
      throw new BadQuestionException("--from must be 0 or more, was " + from + SUCH_AS);
    }
    ladder();
    if (to > LARGEST) {
      throw new BadQuestionException(
          String.format(
              Locale.ROOT, "--to %d is more than any farm has; at most %,d is tried", to, LARGEST));
    }
    if (goal.measure() == Goal.Measure.MARGIN && scenario.prices() == null) {
      throw new BadQuestionException("a goal of margin takes a money: block in the scenario");
    }
    if (indifference != null && !(indifference > 0 && Double.isFinite(indifference))) {
      throw new BadQuestionException("an indifference must be more than 0, was " + indifference);
    }
    Names.sowings(scenario, match);
  }

  /** Sizes of one place, in rising order. */
  List<Integer> ladder() throws BadQuestionException {
    return Ladder.of("sizes", from, to, step, EXAMPLE);
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
