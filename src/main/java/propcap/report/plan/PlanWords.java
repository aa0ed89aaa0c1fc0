package propcap.report.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Safety;
import propcap.study.plan.Planned;
import propcap.study.plan.Planned.GivenUp;
import propcap.study.statistics.Difference;

/** A better plan in sentences. */
record PlanWords(Planned planned, Optional<Money> money) {
  private static final int NAMED = 3;

  /** A bound that is further away than this part says nothing. */
  private static final double FAR = 0.1;

  static PlanWords of(Planned planned) {
    return new PlanWords(planned, Money.of(planned.start()));
  }

  /** What the new plan gives up; said before all else. */
  Optional<String> givenUp() {
    return planned.isConfirmed() && !planned.givenUp().isEmpty()
        ? Optional.of("The new plan gives up " + each(planned.givenUp()) + ".")
        : Optional.empty();
  }

  /** Sowings that are given up, each with what becomes of it. */
  private String each(List<GivenUp> givenUp) {
    return Words.list(
        givenUp.stream()
            .map(
                g -> {
                  SowingForecast was = planned.before().sowings().get(g.sowing());
                  SowingForecast is = planned.found().sowings().get(g.sowing());
                  return "%s (%s of its %s plants on time, %s as it was%s)"
                      .formatted(
                          is.sowing().id(),
                          Words.count(is.onTime().mean()),
                          Words.count(is.sowing().plantsNeeded()),
                          Words.count(was.onTime().mean()),
                          enough(was, is));
                })
            .toList());
  }

  private static String enough(SowingForecast was, SowingForecast is) {
    return was.chanceMet() == 0 && is.chanceMet() == 0
        ? ""
        : "; all of them in %s, %s as it was"
            .formatted(Words.springs(is.chanceMet()), Words.springs(was.chanceMet()));
  }

  /** What the new plan is worth, or that the old one is kept. */
  String verdict() {
    String springs = Words.count(planned.before().seasons()) + " fresh springs";
    if (!planned.isConfirmed()) {
      return "Keep the plan as it is: " + whyKept(springs);
    }
    return money
        .map(
            m ->
                "The new plan brings %s a spring against the plan as it was, on %s."
                    .formatted(m.difference(planned.gain()), springs))
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

  private String whyKept(String springs) {
    List<GivenUp> notAllowed = planned.givenUp().stream().filter(g -> !g.isAllowed()).toList();
    if (!notAllowed.isEmpty()) {
      return "the best found gives up " + each(notAllowed) + ", which is not allowed.";
    }
    return planned.found().scenario().sowings().equals(planned.start().sowings())
        ? "nothing tried was better."
        : "the best found (%s) is not better beyond doubt on %s."
            .formatted(gain(planned.gain()), springs);
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
    String words = "Sowings safe: " + before + " of " + all;
    // Not those of the forecast, which may count one more or one fewer.
    String springs = " on the same " + Words.count(planned.before().seasons()) + " fresh springs.";
    return planned.isConfirmed()
        ? words + " as it was, " + reached(planned.kept()) + " now, both" + springs
        : words + "," + springs;
  }

  private long reached(Forecast forecast) {
    return IntStream.range(0, planned.goals().size())
        .filter(
            s ->
                Safety.of(forecast.sowings().get(s).chanceMet(), planned.goals().get(s))
                    == Safety.SAFE)
        .count();
  }

  /** How far from the best it can be; nothing where all that is known is too far from it. */
  Optional<String> bound() {
    Difference best = planned.bound().toBest();
    if (best.mean() < 0 || best.mean() > FAR * Math.abs(planned.bound().of())) {
      return Optional.empty();
    }
    if (money.isEmpty()) {
      return Optional.of(
          "The sowings at their goal have %s; no plan reaches these goals with fewer than %s."
              .formatted(
                  Words.plural(planned.bound().of(), "tray"),
                  Words.count(planned.bound().of() - best.mean())));
    }
    String more = Money.level(best.mean(), best.halfWidth());
    return Optional.of(
        "No plan that sows all its trays brings more"
            + (Words.isNothing(more)
                ? ""
                : " than " + more + " " + money.get().currency() + " a spring more")
            + ": that is with no plant lost to waiting, heat, frost or time.");
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
    return "The new plan sows %s, the plan as it was %s."
        .formatted(
            Words.plural(planned.kept().scenario().trays(), "tray"),
            Words.count(planned.start().trays()));
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
    return "The search began with %s and tried %s on %s springs%s%s"
        .formatted(
            from,
            Words.plural((double) search.tries(), "plan"),
            search.springs(),
            search.isStopped() ? "; it was stopped, and this is the best until then." : ".",
            takenBack());
  }

  private String takenBack() {
    int back = planned.search().changed() - planned.changes().size();
    return planned.isConfirmed() && back > 0
        ? " Of "
            + Words.plural((double) planned.search().changed(), "sowing")
            + " that it changed "
            + back
            + (back == 1 ? " is" : " are")
            + " as before: taken back together, those changes cost no goal and, on other springs, no"
            + " more than their error or a twentieth of the gain."
        : "";
  }

  /** The changes that do the most, in sentences. */
  List<String> foremost() {
    List<PlanChange> changes = new ArrayList<>(PlanChange.of(planned));
    changes.sort(Comparator.comparingDouble(PlanChange::gained).reversed());
    return changes.stream().limit(NAMED).map(PlanChange::sentence).toList();
  }
}
