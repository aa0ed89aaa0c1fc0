package propcap.season;

import java.util.List;
import java.util.stream.IntStream;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.WeatherYear;
import propcap.past.LogWalk;
import propcap.past.WrittenTray;

/**
 * Simulated seasons whose log was kept up to a day, and what is forecast from it. All years have
 * the same days before that day, so that the forecast knows as much of the weather as there is to
 * know: in a record the days to come hang on those that were, in a year drawn from it they do not.
 */
final class FromADayOn {
  /** Whether luck is drawn given the log, or, as a twin that must fail, as before the season. */
  enum Drawn {
    GIVEN_THE_LOG,
    ANEW
  }

  /** A season, and what was forecast of it; plants on time are by sowing and, last, in all. */
  static final class Case {
    final int[] came;
    final int[][] forecast;

    /** What its log has. */
    final int rows;

    final int counted;

    private Case(int[] came, int[][] forecast, List<WrittenTray> log) {
      this.came = came;
      this.forecast = forecast;
      rows = log.stream().mapToInt(tray -> tray.entries().size()).sum();
      counted = log.stream().mapToInt(FromADayOn::lastCounted).sum();
    }
  }

  private final Scenario scenario;
  private final SeasonPlan plan;
  private final int today;
  private final PretendedLog.Counting counting;

  FromADayOn(Scenario varied, int today, PretendedLog.Counting counting) {
    scenario = withSameDaysBefore(varied, today);
    plan = new SeasonPlan(scenario);
    this.today = today;
    this.counting = counting;
  }

  private static Scenario withSameDaysBefore(Scenario varied, int today) {
    List<WeatherYear> years =
        varied
            .withSoFar(
                new SoFar(
                    varied.season().date(today),
                    List.of(),
                    varied.weather().get(0).first(today, varied.season().start())))
            .weatherFromToday();
    return new Scenario(
        varied.name(),
        varied.season(),
        varied.frostAtC(),
        varied.rounds(),
        varied.places(),
        varied.crops(),
        varied.sowings(),
        years,
        varied.prices(),
        varied.labour());
  }

  SeasonPlan plan() {
    return plan;
  }

  /** The scenario of a farm that goes on from a log. */
  Scenario from(List<WrittenTray> log) {
    return scenario.withSoFar(
        new SoFar(
            scenario.season().date(today),
            LogWalk.walk(scenario, scenario.season().date(today), log).trays(),
            scenario.weather().get(0).first(today, scenario.season().start())));
  }

  List<WrittenTray> log(SeasonLuck luck) {
    return PretendedLog.of(plan, luck, today, counting);
  }

  /** Seasons numbered from 0, each with the forecast that its log gives. */
  List<Case> cases(int seasons, int springs, long seed, Drawn drawn) {
    Luck.Reader reader = plan.luck(seed).reader();
    return IntStream.range(0, seasons)
        .mapToObj(
            n -> {
              SeasonLuck luck = reader.season(n);
              List<WrittenTray> log = log(luck);
              return new Case(
                  onTime(House.season(plan, luck)),
                  forecast(log, springs, seed + 1 + n, drawn),
                  log);
            })
        .toList();
  }

  private static int lastCounted(WrittenTray tray) {
    int counted = 0;
    for (WrittenTray.Entry entry : tray.entries()) {
      Integer plants = entry.plants();
      counted = plants == null ? counted : plants;
    }
    return counted;
  }

  int[][] forecast(List<WrittenTray> log, int springs, long seed, Drawn drawn) {
    Scenario now = from(log);
    SeasonPlan fromToday = new SeasonPlan(now);
    Luck.Reader reader =
        (drawn == Drawn.ANEW ? new Luck(now, seed) : fromToday.luck(seed)).reader();
    return IntStream.range(0, springs)
        .mapToObj(n -> onTime(House.season(fromToday, reader.season(n))))
        .toArray(int[][]::new);
  }

  static int[] onTime(SeasonOutcome season) {
    int[] onTime = new int[season.sowings() + 1];
    for (int s = 0; s < season.sowings(); s++) {
      onTime[s] = season.onTime(s);
      onTime[season.sowings()] += season.onTime(s);
    }
    return onTime;
  }
}
