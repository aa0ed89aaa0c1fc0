package propcap.study;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Work;
import propcap.season.SeasonOutcome;

/** What people's hours went into, over many seasons. */
final class HandsSummary {
  private final Scenario scenario;
  private final List<SeasonOutcome> seasons;
  private final Strata strata;

  HandsSummary(Scenario scenario, List<SeasonOutcome> seasons, Strata strata) {
    this.scenario = scenario;
    this.seasons = seasons;
    this.strata = strata;
  }

  HandsForecast forecast() {
    int days = scenario.season().days();
    Map<Work, Stat> waiting = new EnumMap<>(Work.class);
    for (Work work : Work.values()) {
      waiting.put(work, Samples.of(seasons, strata, o -> waited(o, work)).stat());
    }
    return new HandsForecast(
        Samples.of(seasons, strata, SeasonOutcome::hours).stat(),
        byWork(0, days),
        (int) IntStream.range(0, days).filter(this::isWorkingDay).count(),
        Samples.of(seasons, strata, SeasonOutcome::daysShortOfHands).stat(),
        waiting,
        IntStream.range(0, days).mapToObj(this::day).toList(),
        weeks());
  }

  private boolean isWorkingDay(int day) {
    return scenario.rounds().isWorkingDay(scenario.season().date(day));
  }

  private double budget(int day) {
    return isWorkingDay(day) ? scenario.labour().hoursOn(scenario.season().date(day)) : 0;
  }

  private HandsForecast.Day day(int day) {
    Samples hours = Samples.of(seasons, strata, o -> o.hours(day));
    Stat stat = hours.stat();
    return new HandsForecast.Day(
        scenario.season().date(day),
        budget(day),
        stat.mean(),
        stat.p10(),
        stat.p50(),
        stat.p90(),
        Samples.mean(seasons, o -> o.isShortOfHands(day) ? 1 : 0),
        byWork(day, day + 1));
  }

  private List<HandsForecast.Week> weeks() {
    List<HandsForecast.Week> weeks = new ArrayList<>();
    LocalDate start = scenario.season().start();
    LocalDate monday = start.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    while (!monday.isAfter(scenario.season().end())) {
      int from = Math.max(0, scenario.season().dayOf(monday));
      monday = monday.plusWeeks(1);
      int to = Math.min(scenario.season().days(), scenario.season().dayOf(monday));
      weeks.add(week(monday.minusWeeks(1), from, to));
    }
    return weeks;
  }

  /** Days from one to before another. */
  private HandsForecast.Week week(LocalDate monday, int from, int to) {
    return new HandsForecast.Week(
        monday,
        IntStream.range(from, to).mapToDouble(this::budget).sum(),
        Samples.of(seasons, strata, o -> IntStream.range(from, to).mapToDouble(o::hours).sum())
            .stat(),
        byWork(from, to),
        Samples.mean(seasons, o -> IntStream.range(from, to).filter(o::isShortOfHands).count()));
  }

  /** Mean hours of days from one to before another. */
  private Map<Work, Double> byWork(int from, int to) {
    Map<Work, Double> hours = new EnumMap<>(Work.class);
    for (Work work : Work.values()) {
      hours.put(
          work,
          Samples.mean(
              seasons, o -> IntStream.range(from, to).mapToDouble(d -> o.hours(work, d)).sum()));
    }
    return hours;
  }

  private static long waited(SeasonOutcome season, Work work) {
    long sum = 0;
    for (int s = 0; s < season.sowings(); s++) {
      for (int month = 0; month < season.months(); month++) {
        sum += season.waitedForHands(work, s, month);
      }
    }
    return sum;
  }
}
