package propcap.study.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.BadQuestionException;
import propcap.study.NamesInQuestions;
import propcap.study.Period;

/**
 * What may be chosen for a sowing.
 *
 * @param days of the season on which it may be sown, in order: working days, and the day that it
 *     had
 * @param sownTrays it has no fewer, for they have been sown
 * @param mostTrays it may have from one to so many
 * @param places open places in which its crop germinates, best first
 * @param goal chance with which its plants must be on time
 * @param mayGiveUp whether it may be given up for the sake of others
 */
record Choice(
    Sowing sowing,
    List<Integer> days,
    int sownTrays,
    int mostTrays,
    List<String> places,
    double goal,
    boolean mayGiveUp) {

  /** One way to sow it: the day, the trays, and which of the places is tried first. */
  record Setting(int day, int trays, int place) {
    Setting onDay(int newDay) {
      return new Setting(newDay, trays, place);
    }

    Setting withTrays(int newTrays) {
      return new Setting(day, newTrays, place);
    }

    Setting in(int newPlace) {
      return new Setting(day, trays, newPlace);
    }
  }

  /**
   * What may be chosen for each sowing of a scenario.
   *
   * @throws BadQuestionException naming every sowing for which there is no day, or where what may
   *     be given up names none
   */
  static List<Choice> of(Scenario scenario, PlanningQuestion question) throws BadQuestionException {
    List<Choice> choices = new ArrayList<>();
    List<String> impossible = new ArrayList<>();
    Set<Integer> giveUp = new HashSet<>();
    for (String match : question.giveUp()) {
      giveUp.addAll(NamesInQuestions.sowings(scenario, match));
    }
    for (int s = 0; s < scenario.sowings().size(); s++) {
      Sowing sowing = scenario.sowings().get(s);
      LocalDate from = from(sowing, question);
      LocalDate to = to(sowing, question);
      List<Integer> days =
          IntStream.range(0, scenario.season().days())
              .filter(d -> isOpen(scenario, sowing, scenario.season().date(d), from, to))
              .boxed()
              .toList();
      if (days.isEmpty()) {
        impossible.add(sowing.id() + " (" + from + " to " + to + ")");
      }
      choices.add(
          new Choice(
              sowing,
              days,
              scenario.leastTrays(sowing),
              Math.max(1, (int) Math.floor(question.mostTrays() * sowing.trays() + 1e-9)),
              openPlaces(scenario, sowing),
              sowing.leeway().goalOr(question.goal()),
              giveUp.contains(s)));
    }
    if (choices.isEmpty()) {
      throw new BadQuestionException("nothing is sown, so that there is nothing to plan");
    }
    if (!impossible.isEmpty()) {
      throw new BadQuestionException(
          "no working day of the season lies in the days in which these may be sown: "
              + String.join(", ", impossible)
              + "; widen sow-from and sow-to, or the season");
    }
    return choices;
  }

  private static LocalDate from(Sowing sowing, PlanningQuestion question) {
    LocalDate from = sowing.leeway().from();
    return from != null
        ? from
        : Period.earlier(sowing.sow().minusDays(question.earlierDays()), sowing.leeway().to());
  }

  private static LocalDate to(Sowing sowing, PlanningQuestion question) {
    LocalDate to = sowing.leeway().to();
    return to != null
        ? to
        : Period.later(sowing.sow().plusDays(question.laterDays()), sowing.leeway().from());
  }

  private static boolean isOpen(
      Scenario scenario, Sowing sowing, LocalDate date, LocalDate from, LocalDate to) {
    boolean isAsItWas = date.equals(sowing.sow());
    if (scenario.leastTrays(sowing) > 0) {
      return isAsItWas;
    }
    boolean isToCome = scenario.rounds().isWorkingDay(date) && !date.isBefore(scenario.today());
    return (isToCome || isAsItWas) && !date.isBefore(from) && !date.isAfter(to);
  }

  private static List<String> openPlaces(Scenario scenario, Sowing sowing) {
    List<String> open = scenario.places().stream().filter(Place::isOpen).map(Place::name).toList();
    return scenario.cropOf(sowing).germinateIn().stream().filter(open::contains).toList();
  }

  /** A scenario with as many trays of each sowing as it may have. */
  static Scenario widest(Scenario scenario, List<Choice> choices) {
    return scenario.withSowings(
        choices.stream().map(c -> c.sowing().withTrays(c.mostTrays())).toList());
  }

  /** The sowing as it was written, on a day on which it may not be chosen perhaps. */
  Setting asItWas(Scenario scenario) {
    return new Setting(scenario.season().dayOf(sowing.sow()), sowing.trays(), ownPlace());
  }

  /** The sowing as it is, or as near to it as may be chosen. */
  Setting asItIs(Scenario scenario) {
    Setting was = asItWas(scenario);
    int nearest = Collections.min(days, Comparator.comparingInt(d -> Math.abs(d - was.day())));
    return was.onDay(nearest);
  }

  private int ownPlace() {
    String own = sowing.germinateIn();
    return own == null ? 0 : Math.max(0, places.indexOf(own));
  }

  /** The sowing as it is chosen. */
  Sowing with(Scenario scenario, Setting setting) {
    Sowing chosen =
        sowing
            .shifted(setting.day() - scenario.season().dayOf(sowing.sow()))
            .withTrays(Math.max(sownTrays, setting.trays()));
    if (setting.place() == ownPlace()) {
      return chosen;
    }
    return chosen.germinatingIn(setting.place() == 0 ? null : places.get(setting.place()));
  }
}
