package propcap.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import propcap.farm.Milestone;
import propcap.farm.PlaceKind;
import propcap.farm.Season;
import propcap.farm.Step;
import propcap.study.Forecast;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SowingForecast;
import propcap.study.Forecast.Span;
import propcap.study.Planned;

/** What a better plan changes of one sowing, and why, in words. */
record PlanChange(Planned planned, Planned.Change change) {
  /** Fewer tray-days of waiting saved than this are no reason to move. */
  private static final double WORTH_SAYING = 2;

  /** A place is called full on a day when it is so in this share of the springs. */
  private static final double FULL = 0.4;

  /** Days around a sowing's own within which a full place has to do with it. */
  private static final int NEAR = 4;

  /** Points of a chance that are a reason. */
  private static final double CHANCE = 0.02;

  static List<PlanChange> of(Planned planned) {
    return planned.changes().stream().map(c -> new PlanChange(planned, c)).toList();
  }

  private SowingForecast before() {
    return planned.before().sowings().get(change.sowing());
  }

  private SowingForecast after() {
    return planned.kept().sowings().get(change.sowing());
  }

  private Season season() {
    return planned.start().season();
  }

  /** How much better off it is: what is told first. */
  double gained() {
    return after().chanceMet() - before().chanceMet();
  }

  /** Such as {@code tomato-2 moves 6 days later: the tables are full until 14 April.} */
  String sentence() {
    return change.to().id() + " " + Words.list(what()) + ": " + why() + ".";
  }

  /** What is changed, such as {@code moves 6 days later}. */
  List<String> what() {
    List<String> what = new ArrayList<>();
    if (change.daysLater() != 0) {
      what.add("moves " + Words.shift(change.daysLater()));
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

  /** Why, the reason for its day before the one for its trays. */
  String why() {
    List<String> why = new ArrayList<>();
    if (change.daysLater() != 0 || change.place() != null) {
      whyMoved().ifPresent(why::add);
    }
    if (change.traysMore() != 0) {
      whyTrays().ifPresent(why::add);
    }
    return why.isEmpty() ? others() : String.join("; ", why);
  }

  private Optional<String> whyMoved() {
    return saved().map(this::full).or(this::standing).or(this::inTime);
  }

  /** The step at which it waits clearly less than before. */
  private Optional<Step> saved() {
    return Stream.of(Step.values())
        .filter(s -> waits(before(), s) - waits(after(), s) >= WORTH_SAYING)
        .max(Comparator.comparingDouble(s -> waits(before(), s) - waits(after(), s)));
  }

  private static double waits(SowingForecast forecast, Step step) {
    return forecast.waiting().getOrDefault(step, 0.0);
  }

  /** Such as {@code the tables are full until 14 April}. */
  private String full(Step step) {
    return switch (step) {
      case SOW -> fullPlace(step, sowPlace(), "no space is free in the " + sowPlaceName());
      case LEAVE, POT -> fullPlace(step, ofKind(PlaceKind.TABLE), "the tables are full");
      case HARDEN -> fullPlace(step, ofKind(PlaceKind.HARDENING), "the hardening area is full");
    };
  }

  private String fullPlace(Step step, Optional<Occupancy> place, String words) {
    Milestone move =
        switch (step) {
          case SOW -> Milestone.SOWN;
          case LEAVE -> Milestone.OFF_HEAT;
          case POT -> Milestone.POTTED_ON;
          case HARDEN -> Milestone.MOVED_OUT;
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
        ? " from " + Dates.day(season().date(first)) + " on"
        : " until " + Dates.day(season().date(last));
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
        between(before(), Milestone.OFF_HEAT, Milestone.MOVED_OUT)
            - between(after(), Milestone.OFF_HEAT, Milestone.MOVED_OUT);
    double outside =
        between(before(), Milestone.MOVED_OUT, Milestone.PLANTED_OUT)
            - between(after(), Milestone.MOVED_OUT, Milestone.PLANTED_OUT);
    if (change.daysLater() <= 0 || Math.max(tables, outside) < WORTH_SAYING) {
      return Optional.empty();
    }
    LocalDate release = planned.before().release().get(change.from().crop());
    return Optional.of(
        tables >= outside
            ? "sown earlier it stands "
                + Words.plural(Math.rint(tables), "day")
                + " longer on the tables"
                + (release == null ? "" : ", and may not go out before " + Dates.day(release))
            : "sown earlier it stands "
                + Words.plural(Math.rint(outside), "day")
                + " longer outdoors, for its bed is not free before "
                + Dates.day(change.from().bedFrom()));
  }

  private static double between(SowingForecast forecast, Milestone first, Milestone second) {
    Span from = forecast.milestones().get(first);
    Span to = forecast.milestones().get(second);
    return from == null || to == null ? 0 : to.mean() - from.mean();
  }

  private Optional<String> inTime() {
    if (gained() < CHANCE) {
      return Optional.empty();
    }
    return Optional.of(
        "on its old day its plants were in by "
            + Dates.day(change.from().bedBy())
            + " in "
            + Words.springs(before().chanceMet()));
  }

  private Optional<String> whyTrays() {
    double needed = change.from().plantsNeeded();
    double spare = before().onTime().mean() - needed;
    if (change.traysMore() > 0) {
      return before().chanceMet() < planned.goals().get(change.sowing())
          ? Optional.of("it had too few plants in " + Words.springs(1 - before().chanceMet()))
          : Optional.empty();
    }
    return spare > 0
        ? Optional.of("it had " + Words.plural(Math.rint(spare), "plant") + " to spare")
        : Optional.empty();
  }

  private String others() {
    return gained() < -CHANCE
        ? "it gives way to others, which need the room more"
        : "it does as well, and its room goes to others";
  }
}
