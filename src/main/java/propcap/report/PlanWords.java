package propcap.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import propcap.farm.Step;
import propcap.study.Difference;
import propcap.study.Forecast;
import propcap.study.Forecast.SowingForecast;
import propcap.study.Planned;

/** A better plan in sentences. */
record PlanWords(Planned planned, Optional<Money> money) {
  private static final int NAMED = 3;

  static PlanWords of(Planned planned) {
    return new PlanWords(planned, Money.of(planned.start()));
  }

  /** What the new plan is worth, or that the old one is kept. */
  String verdict() {
    String springs = Words.count(planned.before().seasons()) + " fresh springs";
    if (!planned.isConfirmed()) {
      return "Keep the plan as it is: "
          + (planned.found().scenario().sowings().equals(planned.start().sowings())
              ? "nothing tried was better."
              : "the best found ("
                  + gain(planned.gain())
                  + ") is not better beyond doubt on "
                  + springs
                  + ".");
    }
    return money
        .map(
            m ->
                "The new plan brings "
                    + m.difference(planned.gain())
                    + " a spring against the plan as it was, on "
                    + springs
                    + ".")
        .orElseGet(
            () ->
                "The new plan takes "
                    + trays()
                    + " than the plan as it was, and "
                    + Words.difference(planned.met())
                    + " sowings more have their plants on time a spring, on "
                    + springs
                    + ".");
  }

  private String gain(Difference gain) {
    return money.map(m -> m.difference(gain)).orElseGet(this::trays);
  }

  /** Where no money is asked, the gain is in trays. */
  private String trays() {
    double fewer = planned.gain().mean();
    return fewer == 0
        ? "no more trays"
        : Words.plural(Math.abs(fewer), "tray") + (fewer > 0 ? " fewer" : " more");
  }

  /** How many sowings reach their goal, before and now. */
  String goals() {
    int all = planned.goals().size();
    long before = reached(planned.before());
    String words = "Sowings that reach their goal: " + before + " of " + all;
    return planned.isConfirmed()
        ? words + " as it was, " + reached(planned.kept()) + " now."
        : words + ".";
  }

  private long reached(Forecast forecast) {
    return IntStream.range(0, planned.goals().size())
        .filter(s -> forecast.sowings().get(s).chanceMet() >= planned.goals().get(s))
        .count();
  }

  /** How far from the best it can be. */
  String bound() {
    Difference best = planned.bound().toBest();
    if (money.isEmpty()) {
      return best.mean() > 0
          ? "With "
              + endless()
              + ", each sowing at its own best, it would take "
              + Words.plural(best.mean(), "tray")
              + " fewer: a better plan saves at most about so many."
          : "Even with "
              + endless()
              + ", each sowing at its own best, it would take no fewer trays.";
    }
    return "No plan can be better by more than about "
        + Money.level(Math.max(0, best.mean()), best.halfWidth())
        + " "
        + money.get().currency()
        + " a spring: that is what "
        + endless()
        + " would add, with each sowing at its own best.";
  }

  /** What the bound does without. */
  private String endless() {
    return hasHandsLimited() ? "endless room and hands" : "endless room";
  }

  private boolean hasHandsLimited() {
    return planned.start().labour().isLimited();
  }

  /** Each sowing that misses its goal, and what it lacks. */
  List<String> missed() {
    return planned.missed().stream()
        .map(s -> planned.kept().sowings().get(s).sowing().id() + ": " + lacks(s))
        .toList();
  }

  /** Sowings that come out below their goal by no more than the error. */
  Optional<String> nearlyThere() {
    List<String> names =
        IntStream.range(0, planned.goals().size())
            .filter(
                s ->
                    planned.kept().sowings().get(s).chanceMet() < planned.goals().get(s)
                        && !planned.missed().contains(s))
            .mapToObj(s -> planned.kept().sowings().get(s).sowing().id())
            .toList();
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Words.list(names)
                + (names.size() == 1 ? " comes" : " come")
                + " out below the goal by no more than the error of the fresh springs.");
  }

  /** How many trays are sown, before and now. */
  String traysSown() {
    return "The new plan sows "
        + Words.plural(planned.kept().scenario().trays(), "tray")
        + ", the plan as it was "
        + Words.count(planned.start().trays())
        + ".";
  }

  private String lacks(int s) {
    SowingForecast forecast = planned.kept().sowings().get(s);
    String chance = "in " + Words.springs(forecast.chanceMet()) + "; ";
    double goal = planned.goals().get(s);
    if (planned.bound().chances().get(s) < goal) {
      return chance
          + "not even alone with "
          + endless()
          + " would it reach "
          + Words.chance(goal)
          + ": it needs other days, or more trays than it may have";
    }
    String lacking =
        Stream.concat(lackOfRoom(forecast).stream(), lackOfHands().stream())
            .collect(Collectors.joining("; "));
    return chance
        + (lacking.isEmpty() ? "the room that it needs on its best days goes to others" : lacking);
  }

  private Optional<String> lackOfRoom(SowingForecast forecast) {
    return Stream.of(Step.values())
        .filter(step -> waits(forecast, step) >= 1)
        .max(Comparator.comparingDouble(step -> waits(forecast, step)))
        .map(
            step ->
                "it lacks room "
                    + place(step, forecast)
                    + ": "
                    + Words.plural(waits(forecast, step), "tray-day")
                    + " of waiting "
                    + TradeWords.step(step));
  }

  private Optional<String> lackOfHands() {
    return hasHandsLimited() && planned.kept().hands().daysShort().mean() >= 1
        ? Optional.of("hands: hours run out on " + HandsSection.daysShort(planned.kept().hands()))
        : Optional.empty();
  }

  private static double waits(SowingForecast forecast, Step step) {
    return forecast.waiting().getOrDefault(step, 0.0);
  }

  private String place(Step step, SowingForecast forecast) {
    return switch (step) {
      case SOW ->
          "in the " + String.join(" or ", planned.start().cropOf(forecast.sowing()).germinateIn());
      case LEAVE, POT -> "on the tables";
      case HARDEN -> "in the hardening area";
    };
  }

  /** How the search went. */
  String search() {
    Planned.Search search = planned.search();
    String from =
        switch (search.startedFrom()) {
          case AS_IT_WAS -> "the plan as it was";
          case TIMETABLE -> "a timetable of mean days";
          case EACH_ALONE -> "each sowing at its own best";
        };
    return "The search began with "
        + from
        + " and tried "
        + Words.plural((double) search.tries(), "plan")
        + " on "
        + search.springs()
        + " springs"
        + (search.isStopped() ? "; it was stopped, and this is the best until then." : ".");
  }

  /** The changes that do the most, in sentences. */
  List<String> foremost() {
    List<PlanChange> changes = new ArrayList<>(PlanChange.of(planned));
    changes.sort(Comparator.comparingDouble(PlanChange::gained).reversed());
    return changes.stream().limit(NAMED).map(PlanChange::sentence).toList();
  }
}
