package propcap.study;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;

/**
 * What places cost a year at other sizes than written: in proportion to the spaces that their cost
 * was given for.
 *
 * @param ofASpace yearly cost of one space of each place, or 1 where cost is counted in spaces
 */
record SizeCosts(List<Double> ofASpace) {

  /**
   * The costs of a question's places: in money where the goal is a margin or the places have a
   * cost, in spaces where none has.
   *
   * @throws BadQuestionException where a cost is lacking that the answer would hang on
   */
  static SizeCosts of(Scenario scenario, SizingQuestion question) throws BadQuestionException {
    List<Place> places =
        question.places().stream()
            .map(
                name ->
                    scenario.places().stream()
                        .filter(p -> p.name().equals(name))
                        .findFirst()
                        .orElseThrow())
            .toList();
    Prices prices = scenario.prices();
    boolean forMargin = question.goal().measure() == Goal.Measure.MARGIN;
    if (prices == null || (!forMargin && places.stream().allMatch(p -> p.cost() == null))) {
      return new SizeCosts(places.stream().map(p -> 1.0).toList());
    }
    Optional<Place> unpriced = places.stream().filter(p -> p.cost() == null).findFirst();
    if (unpriced.isPresent()) {
      throw new BadQuestionException(
          unpriced.get().name()
              + " has no cost, and "
              + (forMargin ? "a margin" : "the cheapest pair")
              + " hangs on it; give it such as cost: {buy: 5200, lasts: 12 years}, with buy: 0 if"
              + " it costs nothing");
    }
    Optional<Place> closed = places.stream().filter(p -> !p.isOpen()).findFirst();
    if (closed.isPresent()) {
      throw new BadQuestionException(
          closed.get().name()
              + " is written with spaces: 0, so nobody can tell what a space of it costs; write it"
              + " with the spaces that its cost buys");
    }
    return new SizeCosts(places.stream().map(p -> ofASpace(p, prices)).toList());
  }

  private static double ofASpace(Place place, Prices prices) {
    Place.Cost cost = place.cost();
    return cost == null ? 0 : Comparing.yearly(cost, prices.discount()) / place.spaces();
  }

  /** Of so many spaces of each place. */
  double of(List<Integer> spaces) {
    return IntStream.range(0, spaces.size())
        .mapToDouble(i -> ofASpace.get(i) * spaces.get(i))
        .sum();
  }
}
