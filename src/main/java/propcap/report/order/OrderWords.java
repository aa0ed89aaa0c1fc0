package propcap.report.order;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Words;
import propcap.study.order.Supplies;
import propcap.study.order.Supplies.ByMoney;
import propcap.study.order.Supplies.ForSowing;
import propcap.study.order.Supplies.Item;
import propcap.study.order.Supplies.Kind;

/** What the order list says, in sentences and short words. */
final class OrderWords {
  private static final double GRAMS_PER_KG = 1000;
  private static final int NAMED = 4;

  private OrderWords() {}

  static String verdict(Supplies supplies) {
    int planned = supplies.scenario().trays();
    int ordered = supplies.sowings().stream().mapToInt(ForSowing::ordered).sum();
    String chance = Words.given(supplies.chance());
    return "For every sowing to have its plants on time with "
        + chance
        + ", if there is room, it takes "
        + Words.plural(ordered, "tray")
        + "; planned are "
        + Words.count(planned)
        + ".";
  }

  /** How many sowings are safe: as planned, with the trays ordered, and as planned with room. */
  static String safe(Supplies supplies) {
    return "Sowings safe in the house as it is: "
        + supplies.safe()
        + " of "
        + supplies.sowings().size()
        + " as planned, "
        + supplies.safeAsOrdered()
        + " with the trays ordered. With room for all it would be "
        + supplies.safeWithRoom()
        + " as planned"
        + (supplies.lackingRoom() > 0
            ? ": "
                + (supplies.lackingRoom() == 1 ? "one lacks" : supplies.lackingRoom() + " lack")
                + " room now, not trays."
            : ".");
  }

  /** Sowings that no number of trays helps, the least likely first. */
  static Optional<String> beyond(Supplies supplies) {
    List<ForSowing> beyond =
        supplies.sowings().stream()
            .filter(s -> s.trays() == null)
            .sorted(Comparator.comparingDouble(ForSowing::most))
            .toList();
    if (beyond.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        "More trays alone do not help "
            + names(beyond)
            + ": even with room for all "
            + (beyond.size() == 1 ? "it is" : "they are")
            + " too late too often. Sow earlier; the list has the trays of the plan.");
  }

  /** Sowings that lack trays, and those that have too many, the most first. */
  static String changes(Supplies supplies) {
    List<ForSowing> byChange =
        supplies.sowings().stream()
            .sorted(Comparator.comparingInt(s -> -Math.abs(change(s))))
            .toList();
    List<ForSowing> more = byChange.stream().filter(s -> change(s) > 0).toList();
    List<ForSowing> fewer = byChange.stream().filter(s -> change(s) < 0).toList();
    return (more.isEmpty() ? "No sowing needs more" : "More are needed for " + names(more))
        + "; "
        + (fewer.isEmpty() ? "none needs fewer." : "fewer would do for " + names(fewer) + ".");
  }

  static int change(ForSowing sowing) {
    return sowing.ordered() - sowing.sowing().trays();
  }

  private static String names(List<ForSowing> sowings) {
    List<String> first =
        sowings.stream()
            .limit(NAMED)
            .map(
                s -> s.sowing().id() + (change(s) == 0 ? "" : " (" + Words.signed(change(s)) + ")"))
            .toList();
    return sowings.size() > NAMED
        ? String.join(", ", first) + " and " + Words.count(sowings.size() - NAMED) + " more"
        : Words.list(first);
  }

  /** The sum of a kind, such as {@code 131,600 seeds}. */
  static String total(Supplies supplies, Kind kind) {
    List<Item> items = supplies.items().stream().filter(i -> i.kind() == kind).toList();
    if (kind == Kind.MIX) {
      return items.isEmpty() ? "no mix" : amount(items.get(items.size() - 1)) + " of mix";
    }
    double sum = items.stream().mapToDouble(Item::amount).sum();
    String unit = items.isEmpty() ? kind.word() : items.get(0).unit();
    return Words.count(sum) + " " + unit;
  }

  static String amount(Item item) {
    return Words.amount(item.amount()) + " " + item.unit();
  }

  static String weight(@Nullable Double grams) {
    if (grams == null) {
      return "–";
    }
    return grams >= GRAMS_PER_KG
        ? String.format(Locale.ENGLISH, "%.2f kg", Words.finite(grams) / GRAMS_PER_KG)
        : Words.amount(grams) + " g";
  }

  static String orNone(@Nullable Integer number) {
    return number == null ? "–" : Words.count(number);
  }

  static String kind(Kind kind) {
    return switch (kind) {
      case SEED -> "Seed";
      case TRAYS -> "Trays";
      case POTS -> "Pots";
      case MIX -> "Mix";
      case LABELS -> "Labels";
    };
  }

  /** What money says to a sowing's trays, such as {@code 18}. */
  static String byMoney(@Nullable ByMoney money) {
    if (money == null) {
      return "–";
    }
    return money.costs().criticalRatio() >= 1 ? "the more the better" : orNone(money.trays());
  }
}
