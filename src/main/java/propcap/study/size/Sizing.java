package propcap.study.size;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Worded;
import propcap.study.Capacity;
import propcap.study.NamesInQuestions;
import propcap.study.RunSettings;
import propcap.study.compare.Comparison;
import propcap.study.forecast.Forecast;

/**
 * How large a place must be for a goal to hold.
 *
 * @param places one name, or two that are sized together; hands may be one of them
 * @param goal what is asked
 * @param match sowings that the goal is about: an id, where * stands for any letters
 * @param indifference how near the goal an answer may be wrong
 * @param reached how near the goal the answer is with the confidence: no farther than the
 *     indifference where the springs decided
 * @param confidence with which the answer is right or within the indifference
 * @param candidates every size, or pair of sizes, that was tried: sizes in rising order, that of
 *     today among them, pairs from the cheapest on
 * @param answer the smallest (or cheapest, or best) that holds; null: none does
 * @param nearest what the season is like with the candidate that comes nearest, where none holds
 * @param change what the answer, or else what comes nearest, changes against the scenario as it is,
 *     on the same seasons; null where it is as it is
 * @param seasonsRun of all candidates together
 * @param most seasons that one candidate may take
 */
public record Sizing(
    Scenario scenario,
    RunSettings settings,
    List<String> places,
    Goal goal,
    String match,
    double indifference,
    double reached,
    double confidence,
    List<Candidate> candidates,
    @Nullable Candidate answer,
    @Nullable Forecast nearest,
    @Nullable Comparison change,
    long seasonsRun,
    int most) {

  /** What was found of a candidate. */
  public enum Found implements Worded {
    HOLDS,
    FAILS,
    /**
     * So near the goal that the most seasons allowed did not tell; counted as its estimate says.
     */
    NEAR
  }

  /**
   * A size, or a pair of sizes.
   *
   * @param spaces one for each place; of hands, hours a day
   * @param seasons how many it took to tell
   * @param mean of the goal's measure
   * @param low its limit below, at the confidence of all candidates together, whenever they ended
   * @param high its limit above
   * @param yearlyCost of the places at this size, or the spaces where no place has a cost
   */
  public record Candidate(
      List<Integer> spaces,
      int seasons,
      double mean,
      double low,
      double high,
      Found found,
      double yearlyCost) {}

  public Optional<Candidate> found() {
    return Optional.ofNullable(answer);
  }

  /** What has the highest mean of all that was tried. */
  public Candidate nearestToGoal() {
    return candidates.stream().max(Comparator.comparingDouble(Candidate::mean)).orElseThrow();
  }

  /** The sizes that there are today, where they were tried. */
  public Optional<Candidate> asItIs() {
    return candidates.stream()
        .filter(c -> sized(scenario, places, c.spaces()).equals(scenario))
        .findFirst();
  }

  /** Whether today's sizes were tried and reach a goal that can be reached. */
  public boolean isEnoughAsItIs() {
    return goal.measure() != Goal.Measure.MARGIN
        && asItIs().filter(now -> now.found() == Found.HOLDS).isPresent();
  }

  /**
   * The scenario with the sizes of the answer; empty where none holds, or the goal is reached as it
   * is, for nobody asks for less room.
   */
  public Optional<Scenario> proposed() {
    return found()
        .filter(found -> !isEnoughAsItIs())
        .map(found -> sized(scenario, places, found.spaces()))
        .filter(sized -> !sized.equals(scenario));
  }

  /** What the answer, or else what comes nearest, changes against the scenario as it is. */
  public Optional<Comparison> changes() {
    return Optional.ofNullable(change);
  }

  /**
   * Whether the springs told the answer, so that it is right, or within the indifference, with the
   * confidence. Where they ran out before, it is what the estimates say.
   */
  public boolean isDecided() {
    if (answer == null) {
      return candidates.stream().allMatch(c -> c.found() == Found.FAILS);
    }
    return answer.found() == Found.HOLDS && before(answer).stream().noneMatch(this::isOpen);
  }

  /** Whether a candidate may be the answer as well, for all that the springs tell. */
  private boolean isOpen(Candidate candidate) {
    return goal.measure() != Goal.Measure.MARGIN && candidate.found() != Found.FAILS;
  }

  /** What comes before the answer: smaller sizes, or cheaper pairs, the nearest first. */
  public List<Candidate> before(Candidate candidate) {
    List<Candidate> before = new ArrayList<>(candidates.subList(0, candidates.indexOf(candidate)));
    Collections.reverse(before);
    return before;
  }

  /** What the season is like with the candidate that comes nearest the goal; where none holds. */
  public Optional<Forecast> fallingShort() {
    return Optional.ofNullable(nearest);
  }

  /** The numbers of the sowings that the goal is about. */
  public List<Integer> sowings() {
    return NamesInQuestions.matching(scenario, match);
  }

  /** A scenario with some places, or its hands, at other sizes. */
  public static Scenario sized(Scenario scenario, List<String> names, List<Integer> spaces) {
    Scenario sized =
        scenario.withPlaces(
            scenario.places().stream()
                .map(
                    place ->
                        names.contains(place.name())
                            ? place.withSpaces(spaces.get(names.indexOf(place.name())))
                            : place)
                .toList());
    for (int i = 0; i < names.size(); i++) {
      if (Capacity.isHands(scenario, names.get(i))) {
        sized = sized.withLabour(sized.labour().withHoursPerDay(spaces.get(i)));
      }
    }
    return sized;
  }
}
