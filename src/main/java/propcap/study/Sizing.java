package propcap.study;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;

/**
 * How large a place must be for a goal to hold.
 *
 * @param places one name, or two that are sized together; hands may be one of them
 * @param goal what is asked
 * @param match sowings that the goal is about: an id, where * stands for any letters
 * @param indifference how near the goal an answer may be wrong
 * @param confidence with which the answer is right or within the indifference
 * @param candidates every size, or pair of sizes, that was tried: sizes in rising order, pairs from
 *     the cheapest on
 * @param answer the smallest (or cheapest, or best) that holds; null: none does
 * @param nearest what the season is like with the candidate that comes nearest, where none holds
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
    double confidence,
    List<Candidate> candidates,
    @Nullable Candidate answer,
    @Nullable Forecast nearest,
    long seasonsRun,
    int most) {

  /** What was found of a candidate. */
  public enum Found {
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
   * @param se its standard error
   * @param yearlyCost of the places at this size, or the spaces where no place has a cost
   */
  public record Candidate(
      List<Integer> spaces, int seasons, double mean, double se, Found found, double yearlyCost) {}

  public Optional<Candidate> found() {
    return Optional.ofNullable(answer);
  }

  /** What the season is like with the candidate that comes nearest the goal; where none holds. */
  public Optional<Forecast> fallingShort() {
    return Optional.ofNullable(nearest);
  }

  /** The numbers of the sowings that the goal is about. */
  public List<Integer> sowings() {
    return Names.matching(scenario, match);
  }

  /** A scenario with some places, or its hands, at other sizes. */
  static Scenario sized(Scenario scenario, List<String> names, List<Integer> spaces) {
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
