package propcap.report.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import propcap.farm.RoomWait;
import propcap.report.kit.Dates;
import propcap.report.kit.TradeWords;
import propcap.report.kit.WaitingCauses;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.plan.Planned;

/**
 * The sowings that miss their goal under the plan to sow by, and what was seen to keep each from
 * it.
 */
record PlanMissed(Planned planned) {
  /**
   * A sowing that misses its goal.
   *
   * @param sowing its name
   * @param lacks in how many springs its plants are in time, and what keeps it from more
   */
  record Missed(String sowing, String lacks) {
    String told() {
      return sowing + ": " + lacks;
    }
  }

  /** Each sowing that misses its goal, and what it lacks. */
  List<Missed> all() {
    return planned.missed().stream()
        .map(s -> new Missed(planned.kept().sowings().get(s).sowing().id(), lacks(s)))
        .toList();
  }

  private String lacks(int s) {
    SowingForecast forecast = planned.kept().sowings().get(s);
    return "in " + Words.springs(forecast.chanceMet()) + "; " + why(s, forecast);
  }

  /** What was seen to keep it from its goal. */
  private String why(int s, SowingForecast forecast) {
    String goal = Words.chance(planned.goals().get(s));
    Planned.AloneInHouse alone = planned.alone().get(s);
    String trays = Words.plural((double) alone.sowing().trays(), "tray");
    if (planned.bound().chances().get(s) < planned.goals().get(s)) {
      return "it needs more trays: the most that it may have, "
          + trays
          + ", can hold its "
          + Words.count(forecast.sowing().plantsNeeded())
          + " plants in "
          + Words.springs(planned.bound().chances().get(s))
          + ", whatever is done with them";
    }
    String endless = "with endless room" + (hasHandsLimited() ? " and hands" : "");
    String best =
        "sown on %s in %s, the most that it may have"
            .formatted(Dates.day(alone.sowing().sow(), planned.start().season()), trays);
    if (alone.isOutOfReach() && alone.chance() < planned.goals().get(s)) {
      return "not even alone "
          + endless
          + " would it reach "
          + goal
          + ", on none of the days that were tried: at best "
          + Words.chance(alone.chance())
          + ", "
          + best;
    }
    return Stream.of(
            lackOfRoom(forecast),
            lackOfHands(),
            Optional.of(
                "alone %s it comes to %s at best, %s"
                    .formatted(endless, Words.chance(alone.chance()), best)))
        .flatMap(Optional::stream)
        .collect(Collectors.joining("; "));
  }

  private Optional<String> lackOfRoom(SowingForecast forecast) {
    return Stream.of(RoomWait.values())
        .filter(step -> waits(forecast, step) >= 1)
        .max(Comparator.comparingDouble(step -> waits(forecast, step)))
        .map(
            step ->
                "it lacks room %s: %s of waiting %s"
                    .formatted(
                        place(step, forecast),
                        Words.plural(waits(forecast, step), "tray-day"),
                        TradeWords.step(step)));
  }

  private Optional<String> lackOfHands() {
    return hasHandsLimited() && planned.kept().hands().daysShort().mean() >= 1
        ? Optional.of("hands: hours run out on " + WaitingCauses.daysShort(planned.kept().hands()))
        : Optional.empty();
  }

  private static double waits(SowingForecast forecast, RoomWait step) {
    return forecast.waiting().getOrDefault(step, 0.0);
  }

  private String place(RoomWait step, SowingForecast forecast) {
    return switch (step) {
      case SOW ->
          "in the " + String.join(" or ", planned.start().cropOf(forecast.sowing()).germinateIn());
      case LEAVE, POT -> "on the tables";
      case HARDEN -> "in the hardening area";
    };
  }

  private boolean hasHandsLimited() {
    return planned.start().labour().isLimited();
  }
}
