package propcap.study.forecast;

import java.util.List;
import java.util.function.DoubleConsumer;
import propcap.farm.Scenario;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.TooLargeException;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

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
    Summary summary = new Summary(scenario, settings);
    run(summary, scenario, settings, progress);
    int block = scenario.weather().size();
    int forDemand = Math.min(RunSettings.whole(DEMAND_SEASONS, block), summary.seasons());
    try (Seasons endless = new Seasons(List.of(scenario.withEndlessRoom()), settings)) {
      endless.run(0, forDemand, o -> o, done -> {}).forEach(summary::addUnhindered);
    }
    return summary.forecast();
  }

  /** Runs seasons a batch at a time, so that no more outcomes are kept than those of one. */
  private static void run(
      Summary summary, Scenario scenario, RunSettings settings, DoubleConsumer progress)
      throws InterruptedException {
    Double precision = settings.precision();
    int batch = RunSettings.whole(BATCH, scenario.weather().size());
    int most = settings.seasons();
    try (Seasons runs = new Seasons(List.of(scenario), settings)) {
      while (summary.seasons() < most
          && !(precision != null && isPrecise(summary.onTime(), precision))) {
        int from = summary.seasons();
        runs.run(
                from,
                Math.min(most, from + batch),
                o -> o,
                done -> progress.accept((from + done) / (double) settings.seasons()))
            .forEach(summary::add);
        long each = summary.bytesASeason();
        if (precision != null) {
          most = (int) Math.min(most, TooLargeException.fitting(each));
        } else {
          TooLargeException.check(most, each);
        }
      }
    }
  }

  /**
   * Whether Student's 95 % half-width of total on-time plants is below a share of their mean.
   * Looked at after each batch, which makes the interval cover slightly less than it says.
   */
  private static boolean isPrecise(Samples onTime, double precision) {
    return onTime.size() > 0 && onTime.halfWidth() <= precision * onTime.mean();
  }

  /** Whether a forecast is as precise as was asked for, by the same measure. */
  public static boolean isPrecise(Forecast forecast, double precision) {
    Strata strata = Strata.of(forecast.scenario(), forecast.settings().seed(), forecast.seasons());
    return isPrecise(Samples.of(forecast.rows(), strata, Forecast.SeasonRow::onTime), precision);
  }
}
