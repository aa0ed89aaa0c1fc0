package propcap.evidence;

import java.time.LocalDate;
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
public final class TableWarmth {
  private final Season season;
  private final Rounds rounds;
  private final List<WeatherYear> years;

  public TableWarmth(Scenario scenario) {
    season = scenario.season();
    rounds = scenario.rounds();
    years = scenario.weather();
  }

  /** Degree days above a crop's base in a place, from one day's round to another's. */
  double degreeDays(Crop.GrowingOn growing, Climate climate, LocalDate from, LocalDate to) {
    if (!from.isBefore(to)) {
      return 0;
    }
    double afterRound = 1 - rounds.shareOfDay();
    double sum = afterRound * rate(growing, climate, from);
    for (LocalDate day = from.plusDays(1); day.isBefore(to); day = day.plusDays(1)) {
      sum += rate(growing, climate, day);
    }
    return sum + rounds.shareOfDay() * rate(growing, climate, to);
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
  public boolean isRecorded(LocalDate date) {
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
