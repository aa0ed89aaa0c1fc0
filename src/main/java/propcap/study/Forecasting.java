package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;

/** The first question: how will the spring go? */
public final class Forecasting {
  /** Seasons between two looks at the precision, and before the first. */
  private static final int BATCH = 100;

  /** Seasons with endless room, enough for the mean demand's line in a chart. */
  private static final int DEMAND_SEASONS = 200;

  private Forecasting() {}

  /**
   * Runs a scenario's seasons.
   *
   * @param progress told, from any thread, the share done, 0 to 1
   * @throws InterruptedException if the thread is interrupted; nothing is left behind
   */
  public static Forecast forecast(Scenario scenario, RunSettings settings, DoubleConsumer progress)
      throws InterruptedException {
    List<SeasonOutcome> seasons = seasons(scenario, settings, progress);
    int forDemand =
        Math.min(RunSettings.whole(DEMAND_SEASONS, scenario.weather().size()), seasons.size());
    try (Seasons endless =
        new Seasons(List.of(scenario.withEndlessRoom()), settings.seed(), settings.threads())) {
      List<SeasonOutcome> unhindered = outcomes(endless, 0, forDemand, done -> {});
      return new Summary(scenario, settings, seasons, unhindered).forecast();
    }
  }

  private static List<SeasonOutcome> seasons(
      Scenario scenario, RunSettings settings, DoubleConsumer progress)
      throws InterruptedException {
    Double precision = settings.precision();
    List<SeasonOutcome> all = new ArrayList<>();
    try (Seasons runs = new Seasons(List.of(scenario), settings.seed(), settings.threads())) {
      int block = scenario.weather().size();
      int step = precision == null ? settings.seasons() : RunSettings.whole(BATCH, block);
      int most = settings.seasons();
      while (all.size() < most && !(precision != null && isPrecise(scenario, all, precision))) {
        int from = all.size();
        int to = Math.min(most, from + step);
        all.addAll(
            outcomes(
                runs,
                from,
                to,
                done -> progress.accept((from + done) / (double) settings.seasons())));
        if (precision != null) {
          most = (int) Math.min(most, TooLargeException.fitting(all.get(0).bytes()));
        }
      }
    }
    return all;
  }

  private static List<SeasonOutcome> outcomes(Seasons runs, int from, int to, IntConsumer done)
      throws InterruptedException {
    return runs.run(List.of(0), from, to, (scenario, outcome) -> outcome, done).get(0);
  }

  /**
   * Whether Student's 95 % half-width of total on-time plants is below a share of their mean.
   * Looked at after each batch, which makes the interval cover slightly less than it says.
   */
  private static boolean isPrecise(
      Scenario scenario, List<SeasonOutcome> seasons, double precision) {
    if (seasons.size() < BATCH) {
      return false;
    }
    Samples onTime = Samples.of(seasons, Strata.of(scenario, seasons), Forecasting::onTime);
    return onTime.halfWidth() <= precision * onTime.mean();
  }

  /** Whether a forecast is as precise as was asked for, by the same measure. */
  public static boolean isPrecise(Forecast forecast, double precision) {
    Samples onTime =
        Samples.of(
            forecast.rows(),
            Strata.of(forecast.scenario(), forecast.settings().seed(), forecast.seasons()),
            Forecast.SeasonRow::onTime);
    return onTime.halfWidth() <= precision * onTime.mean();
  }

  static long onTime(SeasonOutcome season) {
    return IntStream.range(0, season.sowings()).mapToLong(season::onTime).sum();
  }
}
