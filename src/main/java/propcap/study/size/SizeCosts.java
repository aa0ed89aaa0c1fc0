package propcap.study.size;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Capacity;
import propcap.study.money.InvestmentFormulas;

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
    List<Capacity> sized = new ArrayList<>();
    for (String name : question.places()) {
      sized.add(Capacity.named(scenario, name));
    }
    Prices prices = scenario.prices();
    boolean forMargin = question.goal().measure() == Goal.Measure.MARGIN;
    if (prices == null || (!forMargin && sized.stream().noneMatch(SizeCosts::isPriced))) {
      return new SizeCosts(sized.stream().map(p -> 1.0).toList());
    }
    // What hands cost by the hour is in the margin already.
    Optional<Capacity> unpriced =
        sized.stream().filter(c -> !isPriced(c) && !(forMargin && c.isHands())).findFirst();
    if (unpriced.isPresent()) {
      if (unpriced.get().isHands()) {
        throw new BadQuestionException(
            "hours a day have no yearly cost to set beside that of a place; size them by themselves");
      }
      throw new BadQuestionException(
          unpriced.get().name()
              + " has no cost, and "
              + (forMargin ? "a margin" : "the cheapest pair")
              + " is reckoned from it; give it such as cost: {buy: 5200, lasts: 12 years}, with buy: 0 if"
              + " it costs nothing");
    }
    Optional<Capacity> closed =
        sized.stream().filter(c -> c.size() == 0 && !c.isHands()).findFirst();
    if (closed.isPresent()) {
      throw new BadQuestionException(
          closed.get().name()
              + " is written with spaces: 0, so nobody can tell what a space of it costs; write it"
              + " with the spaces that its cost buys");
    }
    return new SizeCosts(sized.stream().map(c -> ofASpace(c.place(), prices)).toList());
  }

  private static boolean isPriced(Capacity capacity) {
    Place place = capacity.place();
    return place != null && place.cost() != null;
  }

  private static double ofASpace(@Nullable Place place, Prices prices) {
    Place.Cost cost = place == null ? null : place.cost();
    return place == null || cost == null
        ? 0
        : InvestmentFormulas.yearly(
                cost.buy().doubleValue(),
                cost.lastsYears(),
                cost.keepPerYear().doubleValue(),
                prices.discount())
            / place.spaces();
  }

  /** Of so many spaces of each place. */
  double of(List<Integer> spaces) {
    return IntStream.range(0, spaces.size())
        .mapToDouble(i -> ofASpace.get(i) * spaces.get(i))
        .sum();
  }
}
