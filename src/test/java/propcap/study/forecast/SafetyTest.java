package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.Sowings;
import propcap.farm.Variants;
import propcap.study.Capacity;
import propcap.study.EvenChances;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.bottleneck.Bottlenecking;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.compare.Comparing;
import propcap.study.compare.Comparison;
import propcap.study.compare.Measures;
import propcap.study.now.AskingNow;
import propcap.study.now.SeasonNow;
import propcap.study.order.Supplies;
import propcap.study.order.Supplying;
import propcap.study.size.Goal;
import propcap.study.size.Sizing;
import propcap.study.size.SizingQuestion;
import propcap.study.size.SizingRun;
import propcap.study.sweep.Sweeping;

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
    return Sowings.each(scenario, s -> Sowings.with(s, new Sowing.Leeway(null, null, goal)));
  }

  private static int safe(Scenario scenario) throws Exception {
    return Safety.SAFE.among(Forecasting.forecast(scenario, RUN, done -> {}).sowings());
  }

  /** Of farms with sowings of all chances: each has more that are safe by the lower goal. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 43, 82, 84, 97})
  void aSowingsOwnGoalIsTheOneItIsSafeBy(long seed) throws Exception {
    Scenario usual = EvenChances.from(seed);
    assertThat(safe(withGoals(usual, 0.3))).isGreaterThan(safe(withGoals(usual, 0.99)));
    assertThat(safe(withGoals(usual, 0.9))).isEqualTo(safe(usual));
  }

  private static int swept(Scenario scenario) throws Exception {
    List<Variants.Variant> twice =
        Stream.of("one", "the same")
            .map(name -> new Variants.Variant(name, scenario, List.of()))
            .toList();
    return new Sweeping(new Variants(List.of(), twice), RUN, "1", key -> Optional.empty())
        .sweep((key, text) -> {}, done -> {})
        .first()
        .safe();
  }

  /** A goal that is a sowing's own counts in every answer, and all of them count alike. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 43, 82, 84, 97})
  void forecastComparisonSweepAndNowCountTheSame(long seed) throws Exception {
    Scenario usual = EvenChances.from(seed);
    for (Scenario scenario : List.of(usual, withGoals(usual, 0.3), withGoals(usual, 0.99))) {
      Forecast forecast = Forecasting.forecast(scenario, RUN, done -> {});
      Comparison comparison = Comparing.compare(List.of(scenario, scenario), RUN, done -> {});
      int safe = Safety.SAFE.among(forecast.sowings());
      assertThat(comparison.safe()).containsExactly(safe, safe);
      assertThat(swept(scenario)).isEqualTo(safe);
      SoFar before = new SoFar(scenario.season().start(), List.of(), List.of());
      SeasonNow now = AskingNow.ask(scenario.withSoFar(before), RUN, 0.9, false, done -> {});
      assertThat(now.safeInWinter()).isEqualTo(safe);
      assertThat(now.safe()).isEqualTo(Safety.SAFE.among(now.now().sowings()));
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

  /** In as many springs as a run has, which come after those. */
  private static int safeInOtherSprings(Scenario scenario) throws Exception {
    int n = RUN.seasons();
    Measures measures = new Measures(List.of(scenario));
    try (Seasons seasons = new Seasons(List.of(scenario), RUN)) {
      List<double[]> numbers = seasons.run(List.of(0), n, 2 * n, measures::of, done -> {}).get(0);
      return measures.safe(scenario, numbers);
    }
  }

  /** Where a question sets another house or other trays against the plan, each counts as a run. */
  @ParameterizedTest
  @ValueSource(longs = {27, 43, 97})
  void bottleneckSizeAndOrderCountAsTheForecastDoes(long seed) throws Exception {
    Scenario usual = EvenChances.from(seed);
    for (Scenario scenario : List.of(usual, withGoals(usual, 0.3))) {
      int safe = safe(scenario);
      Bottlenecks bottlenecks = Bottlenecking.bottlenecks(scenario, RUN, 0, done -> {});
      assertThat(bottlenecks.safe()).isEqualTo(safe);
      for (Bottlenecks.Worth worth : bottlenecks.worths()) {
        Capacity place = worth.place();
        int spaces = worth.more().spaces();
        assertThat(worth.more().safe())
            .isEqualTo(safe(place.sized(scenario, place.size() + spaces)));
        Bottlenecks.Trial fewer = worth.fewer();
        if (fewer != null) {
          assertThat(fewer.safe())
              .isEqualTo(safe(place.sized(scenario, place.size() - fewer.spaces())));
        }
      }
      String place = scenario.places().get(0).name();
      SizingQuestion question =
          new SizingQuestion(
              List.of(new SizingQuestion.Range(place, 1, 200, 40)),
              Goal.parse("met>=1%"),
              "*",
              null);
      Sizing sizing = SizingRun.size(scenario, question, RUN, done -> {});
      if (sizing.changes().isPresent()) {
        int spaces = sizing.found().orElseGet(sizing::nearestToGoal).spaces().get(0);
        Scenario sized = Sizing.sized(scenario, List.of(place), List.of(spaces));
        assertThat(sizing.changes().get().safe()).containsExactly(safe, safe(sized));
        assertThat(sizing.proposed().isEmpty() || sizing.proposed().get().equals(sized)).isTrue();
      }
      Supplies supplies = Supplying.supplies(scenario, 0.9, RUN, done -> {});
      assertThat(supplies.safe()).isEqualTo(safe);
      assertThat(supplies.safeAsOrdered())
          .isEqualTo(safeInOtherSprings(supplies.proposed().orElse(scenario)));
      Scenario roomy = scenario.withEndlessRoom().withEndlessHands();
      assertThat(supplies.safeWithRoom()).isEqualTo(safe(roomy));
    }
  }

  /** Of two sowings one has twice what it needs and the other half of it. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 43, 82, 84, 97})
  void plantsOfOneSowingDoNotMakeUpForThoseOfAnother(long seed) throws Exception {
    List<Sowing> sowings = new ArrayList<>();
    for (Sowing s : EvenChances.from(seed).sowings()) {
      int need = s.plantsNeeded();
      sowings.add(Sowings.needing(s, sowings.size() % 2 == 0 ? (need + 1) / 2 : 2 * need));
    }
    Scenario uneven = RandomScenarios.from(seed).withSowings(sowings);
    Forecast forecast = Forecasting.forecast(uneven, RUN, done -> {});
    double each =
        forecast.sowings().stream()
            .mapToDouble(s -> Math.min(s.onTime().mean(), s.sowing().plantsNeeded()))
            .sum();
    assertThat(forecast.balance().supplied().mean()).isPositive().isLessThanOrEqualTo(each + 1e-9);
  }
}
