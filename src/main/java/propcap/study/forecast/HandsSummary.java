package propcap.study.forecast;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.WorkKind;
import propcap.season.SeasonOutcome;
import propcap.study.Period;
import propcap.study.SeasonTotals;
import propcap.study.statistics.ByKind;
import propcap.study.statistics.Column;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/** What people's hours went into, over many seasons, counted as they come in. */
final class HandsSummary {
  private final Scenario scenario;

  /** By day, thousandths of a minute. */
  private final Column[] worked;

  /** The same by day and work, sums of all seasons. */
  private final long[][] byWork;

  /** Seasons in which the hours of a day ran out, by day. */
  private final int[] shortOn;

  private final Column daysShort = new Column();
  private final Map<WorkKind, Column> waited = ByKind.of(WorkKind.class, work -> new Column());

  HandsSummary(Scenario scenario) {
    this.scenario = scenario;
    int days = scenario.season().days();
    worked = new Column[days];
    Arrays.setAll(worked, day -> new Column());
    byWork = new long[days][WorkKind.values().length];
    shortOn = new int[days];
  }

  void add(SeasonOutcome season) {
    for (int day = 0; day < worked.length; day++) {
      for (WorkKind work : WorkKind.values()) {
        byWork[day][work.ordinal()] += season.thousandthsOfMinutes(work, day);
      }
      worked[day].add(season.thousandthsOfMinutes(day));
      shortOn[day] += season.isShortOfHands(day) ? 1 : 0;
    }
    daysShort.add(season.daysShortOfHands());
    waited.forEach((work, column) -> column.add((int) SeasonTotals.waitedForHands(season, work)));
  }

  /** What is kept of each season by itself. */
  Stream<Column> columns() {
    return Stream.of(Stream.of(worked), Stream.of(daysShort), waited.values().stream())
        .flatMap(c -> c);
  }

  HandsForecast forecast(Strata strata) {
    int days = worked.length;

    return new HandsForecast(
        Stat.of(hours(0, days), strata),
        byWork(0, days),
        (int) IntStream.range(0, days).filter(this::isWorkingDay).count(),
        daysShort.stat(strata),
        Column.stats(waited, strata),
        IntStream.range(0, days).mapToObj(day -> day(day, strata)).toList(),
        weeks(strata));
  }

  /** Hours of each season on days from one to before another. */
  private double[] hours(int from, int to) {
    double[] hours = new double[daysShort.size()];
    for (int season = 0; season < hours.length; season++) {
      long sum = 0;
      for (int day = from; day < to; day++) {
        sum += worked[day].get(season);
      }
      hours[season] = SeasonOutcome.inHours(sum);
    }
    return hours;
  }

  private double seasons(long sum) {
    return sum / (double) daysShort.size();
  }

  private boolean isWorkingDay(int day) {
    return scenario.rounds().isWorkingDay(scenario.season().date(day));
  }

  private double budget(int day) {
    return isWorkingDay(day) ? scenario.labour().hoursOn(scenario.season().date(day)) : 0;
  }

  private HandsForecast.Day day(int day, Strata strata) {
    Samples hours = Samples.of(hours(day, day + 1), strata);
    Percentile quantiles = hours.quantiles();
    return new HandsForecast.Day(
        scenario.season().date(day),
        budget(day),
        hours.mean(),
        quantiles.evaluate(10),
        quantiles.evaluate(50),
        quantiles.evaluate(90),
        seasons(shortOn[day]),
        byWork(day, day + 1));
  }

  private List<HandsForecast.Week> weeks(Strata strata) {
    return Period.of(scenario.season()).weeks().stream()
        .map(monday -> week(monday, strata))
        .toList();
  }

  private HandsForecast.Week week(LocalDate monday, Strata strata) {
    Season season = scenario.season();
    int from = Math.max(0, season.dayOf(monday));
    int to = Math.min(season.days(), season.dayOf(monday.plusWeeks(1)));
    return new HandsForecast.Week(
        monday,
        IntStream.range(from, to).mapToDouble(this::budget).sum(),
        Stat.of(hours(from, to), strata),
        byWork(from, to),
        seasons(IntStream.range(from, to).mapToLong(day -> shortOn[day]).sum()));
  }

  /** Mean hours of days from one to before another. */
  private Map<WorkKind, Double> byWork(int from, int to) {
    return ByKind.of(
        WorkKind.class,
        work -> {
          long sum = IntStream.range(from, to).mapToLong(d -> byWork[d][work.ordinal()]).sum();
          return SeasonOutcome.inHours(sum) / daysShort.size();
        });
  }
}
