package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.study.RunSettings;
import propcap.study.statistics.Stat;

/** What must hold of every forecast, tried on farms made up from printed seeds. */
class RandomForecastsTest {
  private static final int SEASONS = 3;

  /** Each farm, its forecast by one thread: run once, looked at by many tests. */
  private static final Map<Long, Forecast> FORECASTS = new ConcurrentHashMap<>();

  static LongStream seeds() {
    return LongStream.range(0, 300);
  }

  private static Forecast forecast(long seed) {
    return FORECASTS.computeIfAbsent(seed, s -> run(RandomScenarios.from(s), s, 1));
  }

  private static Forecast run(Scenario scenario, long seed, int threads) {
    try {
      return Forecasting.forecast(
          scenario, new RunSettings(seed, SEASONS, null, threads), share -> {});
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Two threads on every other farm, eight on those between: more than there are seasons. */
  @ParameterizedTest
  @MethodSource("seeds")
  void threadsChangeNoDigit(long seed) {
    Forecast one = forecast(seed);
    Forecast more = run(one.scenario(), seed, seed % 2 == 0 ? 2 : 8);
    assertThat(withSettings(more, one.settings())).isEqualTo(one);
  }

  /** The settings alone may differ, for they tell the threads. */
  private static Forecast withSettings(Forecast f, RunSettings settings) {
    return new Forecast(
        f.scenario(),
        settings,
        f.seasons(),
        f.release(),
        f.onTime(),
        f.late(),
        f.cellsSown(),
        f.sowings(),
        f.losses(),
        f.lossesByCrop(),
        f.places(),
        f.kinds(),
        f.waiting(),
        f.waits(),
        f.sowBehindOverdue(),
        f.tablesBehindReady(),
        f.hands(),
        f.balance(),
        f.rows());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void everyCellSownIsOnTimeLateOrLostToOneCause(long seed) {
    Forecast f = forecast(seed);
    for (Forecast.SeasonRow row : f.rows()) {
      long lost = row.losses().values().stream().mapToLong(l -> l).sum();
      assertThat(row.onTime() + row.late() + lost).isEqualTo(row.cellsSown());
    }
    double lost = f.losses().values().stream().mapToDouble(Stat::mean).sum();
    assertThat(f.onTime().mean() + f.late().mean() + lost)
        .isCloseTo(f.cellsSown().mean(), within(1e-9));
    double byCrop =
        f.lossesByCrop().values().stream()
            .flatMap(causes -> causes.values().stream())
            .mapToDouble(Stat::mean)
            .sum();
    assertThat(byCrop).isCloseTo(lost, within(1e-9));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void theSowingsAddUpToTheFarm(long seed) {
    Forecast f = forecast(seed);
    assertThat(f.sowings().stream().mapToDouble(s -> s.onTime().mean()).sum())
        .isCloseTo(f.onTime().mean(), within(1e-9));
    assertThat(f.sowings().stream().mapToDouble(s -> s.late().mean()).sum())
        .isCloseTo(f.late().mean(), within(1e-9));
    f.waiting()
        .forEach(
            (step, wait) -> {
              double bySowing =
                  f.sowings().stream().mapToDouble(s -> s.waiting().getOrDefault(step, 0.0)).sum();
              double byMonth =
                  f.waits().stream()
                      .filter(w -> w.step() == step)
                      .mapToDouble(Forecast.Wait::trayDays)
                      .sum();
              assertThat(bySowing).isCloseTo(wait.mean(), within(1e-9));
              assertThat(byMonth).isCloseTo(wait.mean(), within(1e-9));
            });
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void thePlacesOfAKindAddUpToTheKind(long seed) {
    Forecast f = forecast(seed);
    for (Forecast.Occupancy kind : f.kinds()) {
      double use =
          f.places().stream()
              .filter(place -> place.kind() == kind.kind())
              .mapToDouble(Forecast.Occupancy::meanUse)
              .sum();
      assertThat(use).isCloseTo(kind.meanUse(), within(1e-9));
      assertThat(kind.peak().p90()).isLessThanOrEqualTo(kind.spaces());
      double byDay = kind.days().stream().mapToDouble(Forecast.DayUse::mean).average().orElse(0);
      assertThat(byDay).isCloseTo(kind.meanUse(), within(1e-9));
      double full = kind.days().stream().mapToDouble(Forecast.DayUse::chanceFull).sum();
      assertThat(full).isCloseTo(kind.fullDays().mean(), within(1e-9));
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void chancesLieWithinTheirIntervalsAndDatesFollowEachOther(long seed) {
    for (Forecast.SowingForecast s : forecast(seed).sowings()) {
      assertThat(s.chanceMet()).isBetween(s.chanceMetLow() - 1e-12, s.chanceMetHigh() + 1e-12);
      assertThat(s.chanceMetLow()).isBetween(0.0, 1.0);
      assertThat(s.chanceMetHigh()).isBetween(0.0, 1.0);
      if (s.firstOut() != null && s.medianOut() != null && s.lastOut() != null) {
        assertThat(s.firstOut()).isBeforeOrEqualTo(s.medianOut());
        assertThat(s.medianOut()).isBeforeOrEqualTo(s.lastOut());
      }
      for (Forecast.Span span : s.milestones().values()) {
        assertThat(span.first()).isLessThanOrEqualTo(span.last());
        assertThat(span.trays()).isPositive();
      }
    }
  }
}
