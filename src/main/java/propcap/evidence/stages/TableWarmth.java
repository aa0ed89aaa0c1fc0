package propcap.evidence.stages;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.WeatherYear;

/**
 * How warm it was on the dates of a log: by the weather record's rows of those very dates where it
 * has them, otherwise by the mean over its years of what that day of the year gives.
 */
final class TableWarmth {
  private final Season season;
  private final Rounds rounds;
  private final List<WeatherYear> years;

  TableWarmth(Scenario scenario) {
    season = scenario.season();
    rounds = scenario.rounds();
    years = scenario.weather();
  }

  /** Degree days above a crop's base in a place, from one day's round to another's. */
  double degreeDays(Crop.GrowingOn growing, Climate climate, LocalDate from, LocalDate to) {
    return from.isBefore(to) ? course(growing, climate, from, to).total() : 0;
  }

  /** How the degree days add up, in days since 1970: from one day's round to a later one's. */
  WarmthCourse course(Crop.GrowingOn growing, Climate climate, LocalDate from, LocalDate to) {
    int days = Math.toIntExact(ChronoUnit.DAYS.between(from, to));
    double[] times = new double[days + 2];
    double[] sums = new double[days + 2];
    times[0] = roundAt(from);
    for (int i = 0; i <= days; i++) {
      LocalDate day = from.plusDays(i);
      times[i + 1] = i == days ? roundAt(to) : day.toEpochDay() + 1.0;
      sums[i + 1] = sums[i] + (times[i + 1] - times[i]) * rate(growing, climate, day);
    }
    return new WarmthCourse(times, sums);
  }

  /** The time of a day's round, in days since 1970. */
  double roundAt(LocalDate day) {
    return day.toEpochDay() + rounds.shareOfDay();
  }

  /** The day of the last round before a day's own; the day before where all are rest days. */
  LocalDate roundBefore(LocalDate date) {
    LocalDate day = date.minusDays(1);
    while (!rounds.isWorkingDay(day)) {
      day = day.minusDays(1);
    }
    return day;
  }

  private double rate(Crop.GrowingOn growing, Climate climate, LocalDate date) {
    Optional<WeatherYear> year = recorded(date);
    int day = dayOf(date);
    if (year.isPresent()) {
      return growing.rate(climate.meanC(year.get().meanC(day)));
    }
    return years.stream()
        .mapToDouble(y -> growing.rate(climate.meanC(y.meanC(day))))
        .average()
        .orElseThrow(() -> new IllegalArgumentException("a scenario has a year of weather"));
  }

  /** Whether the record has the row of this very date. */
  boolean isRecorded(LocalDate date) {
    return season.contains(inSeason(date)) && recorded(date).isPresent();
  }

  /** The night's minimum, degrees C, where it is recorded. */
  OptionalDouble minC(LocalDate date) {
    return isRecorded(date)
        ? OptionalDouble.of(recorded(date).orElseThrow().minC(dayOf(date)))
        : OptionalDouble.empty();
  }

  private Optional<WeatherYear> recorded(LocalDate date) {
    int startYear = season.start().getYear() + date.getYear() - inSeason(date).getYear();
    return years.stream().filter(y -> y.year() == startYear).findFirst();
  }

  /** The date's day of the season; of one outside the season, its first or last day. */
  private int dayOf(LocalDate date) {
    return Math.max(0, Math.min(season.days() - 1, season.dayOf(inSeason(date))));
  }

  /** The same day of the year, in the year or two of the scenario's season. */
  private LocalDate inSeason(LocalDate date) {
    LocalDate that = date.withYear(season.start().getYear());
    return season.contains(that) || !season.contains(that.plusYears(1)) ? that : that.plusYears(1);
  }
}
