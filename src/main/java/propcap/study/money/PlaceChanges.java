package propcap.study.money;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.study.money.Investment.Change;
import propcap.study.money.Investment.Price;

/**
 * The places that one scenario has otherwise than another, and what that costs. What is there is
 * paid: only what is added is bought, and nothing is sold.
 */
public final class PlaceChanges {
  private PlaceChanges() {}

  /** What it takes to go from one scenario to the other; what there is more of comes first. */
  public static List<Change> between(Scenario first, Scenario alternative) {
    Map<String, Place> now = byName(first);
    Map<String, Place> then = byName(alternative);
    List<Change> changes = new ArrayList<>();
    alternative.places().forEach(p -> change(now.get(p.name()), p).ifPresent(changes::add));
    first.places().stream()
        .filter(p -> !then.containsKey(p.name()))
        .forEach(p -> change(p, p.withSpaces(0)).ifPresent(changes::add));
    changes.sort(Comparator.comparing(c -> c.how() == Investment.How.LESS));
    return changes;
  }

  private static Map<String, Place> byName(Scenario scenario) {
    return scenario.places().stream().collect(Collectors.toMap(Place::name, Function.identity()));
  }

  private static Optional<Change> change(@Nullable Place now, Place then) {
    int spacesNow = now == null ? 0 : now.spaces();
    if (spacesNow == 0 && !then.isOpen()) {
      return Optional.empty();
    }
    Place.Cost before = now == null || !now.isOpen() ? null : now.cost();
    if (spacesNow == then.spaces() && Objects.equals(before, then.cost())) {
      return Optional.empty();
    }
    Price price = price(now, before, then);
    boolean isNothing = spacesNow == then.spaces() && price != null && price.isNothing();
    return isNothing ? Optional.empty() : Optional.of(new Change(then, spacesNow, price));
  }

  /** What a change costs; null where nobody said. */
  private static @Nullable Price price(
      @Nullable Place now, Place.@Nullable Cost before, Place then) {
    if (!then.isOpen()) {
      return before == null ? free() : saved(before);
    }
    Place.Cost cost = then.cost();
    if (cost == null) {
      boolean isSmaller = now != null && then.spaces() < now.spaces();
      return isSmaller && before == null ? free() : null;
    }
    if (now != null && before == null && isAlike(now, then)) {
      // A cost that only one of the two has: no one can say what it is of.
      return null;
    }
    BigDecimal keep =
        cost.keepPerYear().subtract(before == null ? BigDecimal.ZERO : before.keepPerYear());
    boolean isOwn = before == null || cost.buy().compareTo(before.buy()) != 0;
    int spacesNow = now == null ? 0 : now.spaces();
    if (isOwn) {
      boolean isBought = now == null || !isAlike(now, then);
      return new Price(isBought ? cost.buy() : BigDecimal.ZERO, false, cost.lastsYears(), keep);
    }
    int added = Math.max(0, then.spaces() - spacesNow);
    return new Price(share(cost.buy(), added, spacesNow), added > 0, cost.lastsYears(), keep);
  }

  /** Whether nothing but the cost is another: then what is there is bought already. */
  private static boolean isAlike(Place now, Place then) {
    return now.isOpen()
        && now.spaces() == then.spaces()
        && now.climate().equals(then.climate())
        && now.stretchLossPerDay() == then.stretchLossPerDay();
  }

  /** To the hundredth: what the whole place cost, in proportion to the spaces. */
  private static BigDecimal share(BigDecimal buy, int added, int spaces) {
    return added == 0
        ? BigDecimal.ZERO
        : buy.multiply(BigDecimal.valueOf(added))
            .divide(BigDecimal.valueOf(spaces), 2, RoundingMode.HALF_UP);
  }

  private static Price saved(Place.Cost before) {
    return new Price(BigDecimal.ZERO, false, before.lastsYears(), before.keepPerYear().negate());
  }

  private static Price free() {
    return new Price(BigDecimal.ZERO, false, 1, BigDecimal.ZERO);
  }
}
