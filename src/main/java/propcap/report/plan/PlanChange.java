package propcap.report.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.Season;
import propcap.farm.TrayMove;
import propcap.report.kit.Dates;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.Difference;
import propcap.study.Forecast;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SowingForecast;
import propcap.study.Forecast.Span;
import propcap.study.Planned;

/**
 * What a better plan changes of one sowing, and why, in words: what was seen of it under the plan
 * as it was, and what the change does by itself.
 *
 * @param effect what was measured of it; empty: nothing was
 */
record PlanChange(Planned planned, Planned.Change change, Optional<Planned.Effect> effect) {
  /** Fewer tray-days of waiting saved than this are no reason to move. */
  private static final double WORTH_SAYING = 2;

  /** A place is called full on a day when it is so in this share of the springs. */
  private static final double FULL = 0.4;

  /** Days around a sowing's own within which a full place has to do with it. */
  private static final int NEAR = 4;

  static List<PlanChange> of(Planned planned) {
    List<Planned.Change> changes = planned.changes();
    List<Planned.Effect> effects = planned.effects();
    return IntStream.range(0, changes.size())
        .mapToObj(
            c ->
                new PlanChange(
                    planned,
                    changes.get(c),
                    effects.isEmpty() ? Optional.empty() : Optional.of(effects.get(c))))
        .toList();
  }

  private SowingForecast before() {
    return planned.before().sowings().get(change.sowing());
  }

  private SowingForecast after() {
    return planned.kept().sowings().get(change.sowing());
  }

  Season season() {
    return planned.start().season();
  }

  /** How much it does for a chance, its own or another's: what does most is told first. */
  double gained() {
    return effect
        .map(e -> Math.max(e.own().mean(), mean(e.others())))
        .orElse(after().chanceMet() - before().chanceMet());
  }

  private static double mean(@Nullable Difference difference) {
    return difference == null ? 0 : difference.mean();
  }

  /** Such as {@code tomato-2 moves 6 days later: the tables were full until 14 April; …} */
  String sentence() {
    return change.to().id() + " " + Words.list(what()) + ": " + why() + ".";
  }

  /** What is changed, such as {@code moves 6 days later}. */
  List<String> what() {
    List<String> what = new ArrayList<>();
    if (change.daysLater() != 0) {
      what.add("moves " + Dates.shift(change.daysLater()));
    }
    if (change.traysMore() != 0) {
      what.add(
          (change.daysLater() == 0 ? "has " : "")
              + Words.plural(Math.abs(change.traysMore()), "tray")
              + (change.traysMore() > 0 ? " more" : " fewer"));
    }
    if (change.place() != null) {
      what.add("goes to the " + change.place() + " first");
    }
    return what;
  }

  /** Why: what was seen of its day as it was, then of its trays, and what the change does. */
  String why() {
    List<String> why = new ArrayList<>();
    if (change.daysLater() != 0 || change.place() != null) {
      saved().map(this::full).or(this::standing).ifPresent(why::add);
    }
    if (change.traysMore() != 0) {
      asManyTrays().ifPresent(why::add);
    }
    why.add(effect.map(this::does).orElse("what it does by itself was not measured"));
    return String.join("; ", why);
  }

  /** Such as {@code by itself it raises its chance by 31 ± 6 points and saves 2 trays}. */
  private String does(Planned.Effect effect) {
    List<String> does = new ArrayList<>();
    Integer other = effect.other();
    Difference others = effect.others();
    if (effect.own().low() > 0) {
      does.add("raises its chance by " + points(effect.own()));
    }
    if (other != null && others != null) {
      String id = planned.start().sowings().get(other).id();
      String chance = does.isEmpty() ? "raises the chance of " : "that of ";
      does.add(chance + id + " by " + points(others));
    }
    worth(effect.worth()).ifPresent(does::add);
    return "by itself it "
        + (does.isEmpty() ? "does nothing that could be told from chance" : Words.list(does));
  }

  private static String points(Difference chance) {
    return Words.estimate(100 * chance.mean(), 100 * chance.halfWidth()) + " points";
  }

  private Optional<String> worth(Difference worth) {
    if (!worth.isClear()) {
      return Optional.empty();
    }
    double amount = Math.abs(worth.mean());
    return Optional.of(
        Money.of(planned.start())
            .map(
                money ->
                    (worth.mean() > 0 ? "brings " : "costs ")
                        + Money.level(amount, worth.halfWidth())
                        + " "
                        + money.currency())
            .orElseGet(
                () -> (worth.mean() > 0 ? "saves " : "takes ") + Words.plural(amount, "tray")));
  }

  /** The step at which it waits clearly less than before. */
  private Optional<RoomWait> saved() {
    return Stream.of(RoomWait.values())
        .filter(s -> waits(before(), s) - waits(after(), s) >= WORTH_SAYING)
        .max(Comparator.comparingDouble(s -> waits(before(), s) - waits(after(), s)));
  }

  private static double waits(SowingForecast forecast, RoomWait step) {
    return forecast.waiting().getOrDefault(step, 0.0);
  }

  /** Such as {@code the tables are full until 14 April}. */
  private String full(RoomWait step) {
    return switch (step) {
      case SOW -> fullPlace(step, sowPlace(), "no space was free in the " + sowPlaceName());
      case LEAVE, POT -> fullPlace(step, ofKind(PlaceKind.TABLE), "the tables were full");
      case HARDEN -> fullPlace(step, ofKind(PlaceKind.HARDENING), "the hardening area was full");
    };
  }

  private String fullPlace(RoomWait step, Optional<Occupancy> place, String words) {
    TrayMove move =
        switch (step) {
          case SOW -> TrayMove.SOWN;
          case LEAVE -> TrayMove.OFF_HEAT;
          case POT -> TrayMove.POTTED_ON;
          case HARDEN -> TrayMove.MOVED_OUT;
        };
    Span span = before().milestones().get(move);
    if (place.isEmpty() || span == null) {
      return words;
    }
    return words + fullDays(place.get(), (int) span.first() - NEAR, (int) span.last() + NEAR);
  }

  /** Since or until when a place is full that is so at some time between two days. */
  private String fullDays(Occupancy place, int from, int to) {
    List<Forecast.DayUse> days = place.days();
    int first = -1;
    int last = -1;
    for (int day = 0; day < days.size(); day++) {
      boolean isFull = days.get(day).chanceFull() >= FULL;
      if (isFull && (last == day - 1 || day <= to) && day > 0) {
        first = last == day - 1 && first >= 0 ? first : day;
        last = day;
      } else if (last >= from) {
        break;
      }
    }
    if (last < from) {
      return " in some springs";
    }
    return change.daysLater() < 0
        ? " from " + Dates.day(season().date(first), season()) + " on"
        : " until " + Dates.day(season().date(last), season());
  }

  private String sowPlaceName() {
    String own = change.from().germinateIn();
    return own == null ? planned.start().cropOf(change.from()).germinateIn().get(0) : own;
  }

  private Optional<Occupancy> sowPlace() {
    String name = sowPlaceName();
    return planned.before().places().stream().filter(p -> p.name().equals(name)).findFirst();
  }

  private Optional<Occupancy> ofKind(PlaceKind kind) {
    return planned.before().kinds().stream().filter(k -> k.kind() == kind).findFirst();
  }

  /** Sown as before it stood about for days, waiting for its release or its bed. */
  private Optional<String> standing() {
    double tables =
        between(before(), TrayMove.OFF_HEAT, TrayMove.MOVED_OUT)
            - between(after(), TrayMove.OFF_HEAT, TrayMove.MOVED_OUT);
    double outside =
        between(before(), TrayMove.MOVED_OUT, TrayMove.PLANTED_OUT)
            - between(after(), TrayMove.MOVED_OUT, TrayMove.PLANTED_OUT);
    if (change.daysLater() <= 0 || Math.max(tables, outside) < WORTH_SAYING) {
      return Optional.empty();
    }
    LocalDate release = planned.before().release().get(change.from().crop());
    return Optional.of(
        tables >= outside
            ? "as it was it stood "
                + Words.plural(Math.rint(tables), "day")
                + " longer on the tables"
                + (release == null
                    ? ""
                    : ", and may not go out before " + Dates.day(release, season()))
            : "as it was it stood "
                + Words.plural(Math.rint(outside), "day")
                + " longer outdoors, for its bed is not free before "
                + Dates.day(change.from().bedFrom(), season()));
  }

  private static double between(SowingForecast forecast, TrayMove first, TrayMove second) {
    Span from = forecast.milestones().get(first);
    Span to = forecast.milestones().get(second);
    return from == null || to == null ? 0 : to.mean() - from.mean();
  }

  /** What its trays came to as they were. */
  private Optional<String> asManyTrays() {
    double spare = before().onTime().mean() - change.from().plantsNeeded();
    if (change.traysMore() > 0) {
      return before().chanceMet() < planned.goals().get(change.sowing())
          ? Optional.of("it had too few plants in " + Words.springs(1 - before().chanceMet()))
          : Optional.empty();
    }
    return spare > 0
        ? Optional.of("it had " + Words.plural(Math.rint(spare), "plant") + " to spare")
        : Optional.empty();
  }
}
