package propcap.report.kit;

import java.util.List;
import java.util.Optional;
import propcap.farm.Place;
import propcap.study.money.Investment.Change;
import propcap.study.money.Investment.How;
import propcap.study.money.Investment.Price;

/** A place that is changed, and what that costs, in words. */
public final class ChangeWords {
  private ChangeWords() {}

  /** Such as {@code Chamber 2 and 14 more spaces of Mats (80 in all)}. */
  public static String bought(List<Change> changes) {
    return Words.list(changes.stream().map(ChangeWords::bought).toList());
  }

  private static String bought(Change change) {
    Place place = change.place();
    if (change.how() == How.OTHER) {
      return "the change to " + place.name();
    }
    return change.spacesNow() == 0
        ? place.name()
        : more(place.spaces() - change.spacesNow())
            + " of "
            + place.name()
            + " ("
            + Words.count(place.spaces())
            + " in all)";
  }

  /** Such as {@code 14 more spaces}. */
  public static String more(int spaces) {
    return spaces == 1 ? "one more space" : Words.count(spaces) + " more spaces";
  }

  public static String names(List<Change> changes) {
    return Words.list(changes.stream().map(c -> c.place().name()).toList());
  }

  // What is given up: to do, as it is done, and as it is then.

  public static String give(Change change) {
    return change.place().isOpen()
        ? "make " + change.place().name() + " smaller (" + spaces(change) + ")"
        : "close " + change.place().name();
  }

  public static String gives(Change change) {
    return change.place().isOpen()
        ? "makes " + change.place().name() + " smaller (" + spaces(change) + ")"
        : "closes " + change.place().name();
  }

  public static String given(Change change) {
    return change.place().isOpen()
        ? change.place().name() + " smaller (" + spaces(change) + ")"
        : change.place().name() + " closed";
  }

  private static String spaces(Change change) {
    return Words.plural(change.place().spaces(), "space");
  }

  /** What is paid and saved for a change; empty where nothing is. */
  public static Optional<String> costs(Change change, Money money) {
    Price price = change.price();
    if (price == null || (change.how() == How.LESS && price.keepPerYear().signum() == 0)) {
      return Optional.empty();
    }
    if (change.how() == How.LESS) {
      return Optional.of(
          given(change)
              + upkeep(price, money)
              + "; what it was bought for is spent, and no sale of it is reckoned with");
    }
    return Optional.of(
        "buying %s costs %s once%s, lasts %s%s"
            .formatted(
                bought(change),
                money.amount(price.buy()),
                share(change, price, money),
                Words.plural(price.lastsYears(), "year"),
                upkeep(price, money)));
  }

  private static String share(Change change, Price price, Money money) {
    Place.Cost cost = change.place().cost();
    return !price.isShare() || cost == null
        ? ""
        : " (of the %s for %s, the share of those added)"
            .formatted(money.amount(cost.buy()), Words.plural(change.spacesNow(), "space"));
  }

  private static String upkeep(Price price, Money money) {
    int sign = price.keepPerYear().signum();
    String amount = money.amount(price.keepPerYear().abs()) + " a year";
    if (sign == 0) {
      return price.isShare() ? " and leaves the upkeep as it is" : "";
    }
    return sign > 0 ? " and takes " + amount + " of upkeep" : " saves " + amount + " of upkeep";
  }
}
