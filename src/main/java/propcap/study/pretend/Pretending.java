package propcap.study.pretend;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.chance.Luck;
import propcap.chance.WeatherYears;
import propcap.farm.Scenario;
import propcap.farm.WeatherRecord;
import propcap.farm.WeatherYear;
import propcap.past.WrittenTray;
import propcap.season.PretendedLog;
import propcap.season.SeasonPlan;
import propcap.study.BadQuestionException;

/** What would have been written down of one simulated spring up to a day? */
public final class Pretending {
  /** Springs are numbered from 0 to one less than this. */
  public static final int SPRINGS = 100_000;

  private Pretending() {}

  /**
   * A spring so far that never was.
   *
   * @param season its number, as in a forecast's table of seasons
   * @param weatherYear the year of the record that it lives in
   * @param today the day on whose morning it stands
   * @param trays in the plan's order, each with a number for a name
   * @param weather its days before today
   */
  public record Pretended(
      int season,
      int weatherYear,
      LocalDate today,
      List<WrittenTray> trays,
      List<WeatherRecord.Day> weather) {
    public Pretended {
      trays = List.copyOf(trays);
      weather = List.copyOf(weather);
    }
  }

  /**
   * Lives through a spring up to a day.
   *
   * @param number of the spring, or where a year is asked for, of those that live in it; from 0
   * @param year of the weather record; null: whichever the spring has
   * @throws BadQuestionException where the day is no day of the season or one after it, or there is
   *     no such year
   */
  public static Pretended pretend(
      Scenario planned,
      long seed,
      int number,
      @Nullable Integer year,
      LocalDate today,
      PretendedLog.Counting counting)
      throws BadQuestionException {
    Scenario scenario = planned.asPlanned();
    LocalDate end = scenario.season().end().plusDays(1);
    if (!today.isAfter(scenario.season().start()) || today.isAfter(end)) {
      throw new BadQuestionException(
          "by %s nothing of this season can have been written down; --on takes a day from %s to %s"
              .formatted(today, scenario.season().start().plusDays(1), end));
    }
    int season = year == null ? number : inYear(scenario, seed, number, year);
    SeasonPlan plan = new SeasonPlan(scenario);
    var luck = new Luck(scenario, seed).reader().season(season);
    WeatherYear weather = scenario.weather().get(luck.weatherYear());
    int day = scenario.season().dayOf(today);
    return new Pretended(
        season,
        weather.year(),
        today,
        PretendedLog.of(plan, luck, day, counting),
        weather.first(day, scenario.season().start()));
  }

  /** The number of the spring that is so many-eth of those in a year of the record, from 0. */
  private static int inYear(Scenario scenario, long seed, int number, int year)
      throws BadQuestionException {
    List<WeatherYear> years = scenario.weather();
    int place =
        IntStream.range(0, years.size())
            .filter(y -> years.get(y).year() == year)
            .findFirst()
            .orElse(-1);
    if (place < 0) {
      throw new BadQuestionException(
          "the weather record has no spring of %s; it has %s to %s"
              .formatted(year, years.get(0).year(), years.get(years.size() - 1).year()));
    }
    // Each block of so many springs has every year once.
    WeatherYears dealt = new WeatherYears(seed, years.size());
    int first = number * years.size();
    return IntStream.range(first, first + years.size())
        .filter(n -> dealt.of(n) == place)
        .findFirst()
        .orElseThrow();
  }
}
