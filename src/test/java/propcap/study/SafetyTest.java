package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

class SafetyTest {
  private static final RunSettings RUN = new RunSettings(3, 40, null, 1);

  @ParameterizedTest
  @CsvSource({
    "1, 0.9, SAFE",
    "0.9, 0.9, SAFE",
    "0.8999, 0.9, AT_RISK",
    "0.01, 0.9, AT_RISK",
    "0, 0.9, LOST",
    "0.6, 0.5, SAFE",
    "0.95, 0.99, AT_RISK"
  })
  void aSowingIsSafeWhereItReachesItsGoalAndLostWhereItNeverHasItsPlants(
      double chance, double goal, Safety safety) {
    assertThat(Safety.of(chance, goal)).isEqualTo(safety);
  }

  private static Scenario withGoals(Scenario scenario, double goal) {
    return scenario.withSowings(
        scenario.sowings().stream()
            .map(
                s ->
                    new Sowing(
                        s.id(),
                        s.crop(),
                        s.lot(),
                        s.sow(),
                        s.trays(),
                        s.plantsNeeded(),
                        s.bedFrom(),
                        s.bedBy(),
                        s.bedUntil(),
                        s.resowUntil(),
                        s.germinateIn(),
                        new Sowing.Leeway(s.leeway().from(), s.leeway().to(), goal)))
            .toList());
  }

  /** A goal that is a sowing's own counts in every answer, and all of them count alike. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void forecastComparisonAndNowCountTheSame(long seed) throws Exception {
    Scenario usual = RandomScenarios.from(seed);
    for (Scenario scenario : List.of(usual, withGoals(usual, 0.5), withGoals(usual, 0.99))) {
      Forecast forecast = Forecasting.forecast(scenario, RUN, done -> {});
      Comparison comparison = Comparing.compare(List.of(scenario, scenario), RUN, done -> {});
      int safe = Safety.SAFE.among(forecast.sowings());
      assertThat(comparison.safe()).containsExactly(safe, safe);
      long byHand =
          forecast.sowings().stream()
              .filter(
                  s -> {
                    Double goal = s.sowing().leeway().goal();
                    return s.chanceMet() >= (goal == null ? 0.9 : goal);
                  })
              .count();
      assertThat(safe).isEqualTo((int) byHand);
      assertThat(
              safe
                  + Safety.AT_RISK.among(forecast.sowings())
                  + Safety.LOST.among(forecast.sowings()))
          .isEqualTo(forecast.sowings().size());
    }
  }

  @Test
  void plantsOfOneSowingDoNotMakeUpForThoseOfAnother() throws Exception {
    for (long seed = 1; seed <= 8; seed++) {
      Forecast forecast = Forecasting.forecast(RandomScenarios.from(seed), RUN, done -> {});
      double supplied = forecast.balance().supplied().mean();
      assertThat(supplied)
          .isLessThanOrEqualTo(forecast.onTime().mean() + 1e-9)
          .isLessThanOrEqualTo(forecast.scenario().plantsNeeded() + 1e-9);
    }
  }
}
