package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.study.RunSettings;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

class ForecastingTest {
  private static final long SEED = 7;

  /** One tray a season that damping-off may take: on-time plants differ much between seasons. */
  private static Scenario risky() {
    Crops crop = new Crops();
    crop.dampingOff = new Crop.DampingOff(0.3, 0.5);
    return of(crop);
  }

  private static Scenario of(Crops crop) {
    Farms farm = new Farms();
    farm.crops = List.of(crop.make());
    farm.sowings.add(Farms.sowing("sowing", 0, 1));
    return farm.make();
  }

  private static Forecast run(Scenario scenario, RunSettings settings) throws InterruptedException {
    return Forecasting.forecast(scenario, settings, share -> {});
  }

  /** Half-width of the mean on-time plants of the first seasons, as a share of that mean. */
  private static double precision(Forecast forecast, int seasons) {
    Samples onTime =
        Samples.of(
            forecast.rows().subList(0, seasons),
            Strata.of(forecast.scenario(), SEED, seasons),
            Forecast.SeasonRow::onTime);
    return onTime.halfWidth() / onTime.mean();
  }

  @Test
  void withoutAPrecisionAllSeasonsAreRun() throws InterruptedException {
    Forecast forecast = run(risky(), new RunSettings(SEED, 137, null, 2));
    assertThat(forecast.seasons()).isEqualTo(137);
    assertThat(forecast.rows()).extracting(Forecast.SeasonRow::season).startsWith(0, 1, 2);
    assertThat(forecast.rows()).hasSize(137);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.03, 0.02})
  void aRunStopsAtTheFirstHundredThatIsPreciseEnough(double wanted) throws InterruptedException {
    Forecast forecast = run(risky(), new RunSettings(SEED, 10_000, wanted, 2));
    int seasons = forecast.seasons();
    assertThat(seasons % 100).isZero();
    assertThat(precision(forecast, seasons)).isLessThanOrEqualTo(wanted);
    for (int earlier = 100; earlier < seasons; earlier += 100) {
      assertThat(precision(forecast, earlier)).isGreaterThan(wanted);
    }
  }

  @Test
  void aFinerPrecisionTakesMoreSeasonsAndTheMostThatAreAllowedEndTheRun()
      throws InterruptedException {
    assertThat(run(risky(), new RunSettings(SEED, 10_000, 0.02, 1)).seasons()).isGreaterThan(300);
    assertThat(run(risky(), new RunSettings(SEED, 250, 0.001, 1)).seasons()).isEqualTo(250);
  }

  @Test
  void aSureFarmIsPreciseAfterTheFirstHundred() throws InterruptedException {
    assertThat(run(of(new Crops()), new RunSettings(SEED, 10_000, 0.01, 1)).seasons())
        .isEqualTo(100);
  }

  @Test
  void threadsDoNotChangeWhereAPreciseRunStops() throws InterruptedException {
    Forecast one = run(risky(), new RunSettings(SEED, 10_000, 0.03, 1));
    Forecast eight = run(risky(), new RunSettings(SEED, 10_000, 0.03, 8));
    assertThat(eight.rows()).isEqualTo(one.rows());
    assertThat(eight.onTime()).isEqualTo(one.onTime());
  }

  @Test
  void anotherSeedGivesOtherSeasons() throws InterruptedException {
    Forecast one = run(risky(), new RunSettings(1, 50, null, 1));
    Forecast two = run(risky(), new RunSettings(2, 50, null, 1));
    assertThat(two.rows()).isNotEqualTo(one.rows());
  }

  @Test
  void aLongerRunBeginsWithTheShorterOne() throws InterruptedException {
    Forecast shorter = run(risky(), new RunSettings(SEED, 30, null, 1));
    Forecast longer = run(risky(), new RunSettings(SEED, 60, null, 2));
    assertThat(longer.rows().subList(0, 30)).isEqualTo(shorter.rows());
  }

  @Test
  void progressEndsAtTheWhole() throws InterruptedException {
    ConcurrentLinkedQueue<Double> told = new ConcurrentLinkedQueue<>();
    Forecasting.forecast(risky(), new RunSettings(SEED, 40, null, 2), told::add);
    assertThat(told).contains(1.0).allMatch(share -> share > 0 && share <= 1);
  }

  @Test
  void anInterruptedRunSaysSo() {
    Thread.currentThread().interrupt();
    assertThatExceptionOfType(InterruptedException.class)
        .isThrownBy(() -> run(risky(), new RunSettings(SEED, 1000, null, 2)));
    assertThat(Thread.interrupted()).isFalse();
  }
}
