package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;

/** The found plan against the plan as it was, on springs that had no part in finding it. */
final class Confirming {
  /** At which each interval holds. */
  static final double CONFIDENCE = 0.95;

  /** Springs with endless room, enough for the mean demand's line in a chart. */
  private static final int DEMAND_SPRINGS = 100;

  private static final int BEFORE = 0;
  private static final int FOUND = 1;
  private static final int RELAXED = 2;

  private final RunSettings fresh;
  private final List<Choice> choices;
  private final List<Scenario> scenarios;

  /**
   * Plans to be compared.
   *
   * @param relaxed each sowing at its own best, with endless room and hands
   */
  Confirming(
      RunSettings fresh, List<Choice> choices, Scenario before, Scenario found, Scenario relaxed) {
    this.fresh = fresh;
    this.choices = choices;
    this.scenarios = List.of(before, found, relaxed);
  }

  Planned planned(PlanningQuestion question, RunSettings settings, Planned.Search search)
      throws InterruptedException {
    List<List<SeasonOutcome>> outcomes = outcomes();
    List<Forecast> forecasts = forecasts(outcomes);
    List<Double> goals = choices.stream().map(Choice::goal).toList();
    Difference gain = worth(outcomes, BEFORE, FOUND);
    Difference met = met(outcomes, forecasts, goals);
    boolean isConfirmed =
        met.high() >= 0 && (met.low() > 0 || (gain.low() > 0 && gain.mean() != 0));
    return new Planned(
        question,
        settings,
        search,
        fresh.seed(),
        forecasts.get(BEFORE),
        forecasts.get(FOUND),
        isConfirmed,
        goals,
        gain,
        met,
        new Planned.Bound(
            worth(outcomes, isConfirmed ? FOUND : BEFORE, RELAXED),
            IntStream.range(0, goals.size())
                .mapToObj(s -> chance(outcomes.get(RELAXED), RELAXED, s))
                .toList()));
  }

  private List<List<SeasonOutcome>> outcomes() throws InterruptedException {
    try (Seasons seasons = new Seasons(scenarios, fresh.seed(), fresh.threads())) {
      return seasons.run(
          List.of(BEFORE, FOUND, RELAXED), 0, fresh.seasons(), (s, o) -> o, done -> {});
    }
  }

  private List<Forecast> forecasts(List<List<SeasonOutcome>> outcomes) throws InterruptedException {
    List<Scenario> plans = scenarios.subList(BEFORE, RELAXED);
    List<Scenario> endless = plans.stream().map(Scenario::withEndlessRoom).toList();
    int n = Math.min(DEMAND_SPRINGS, fresh.seasons());
    try (Seasons seasons = new Seasons(endless, fresh.seed(), fresh.threads())) {
      List<List<SeasonOutcome>> unhindered =
          seasons.run(List.of(BEFORE, FOUND), 0, n, (s, o) -> o, done -> {});
      List<Forecast> forecasts = new ArrayList<>();
      for (int p = 0; p < plans.size(); p++) {
        forecasts.add(
            new Summary(plans.get(p), fresh, outcomes.get(p), unhindered.get(p)).forecast());
      }
      return forecasts;
    }
  }

  private double chance(List<SeasonOutcome> seasons, int scenario, int sowing) {
    return Samples.of(seasons, o -> Measures.isMet(scenarios.get(scenario), o, sowing) ? 1 : 0)
        .mean();
  }

  /** Margin of the second plan more than of the first; without money, trays that it has fewer. */
  private Difference worth(List<List<SeasonOutcome>> outcomes, int first, int second) {
    return Paired.difference(
        worths(outcomes, first), worths(outcomes, second), true, CONFIDENCE, 1);
  }

  private double[] worths(List<List<SeasonOutcome>> outcomes, int plan) {
    Scenario scenario = scenarios.get(plan);
    Prices prices = scenario.prices();
    return outcomes.get(plan).stream()
        .mapToDouble(
            o ->
                prices == null
                    ? -scenario.trays()
                    : Accounts.margin(scenario, prices, o).doubleValue())
        .toArray();
  }

  /** Sowings met, of those that miss their goal under either plan. */
  private Difference met(
      List<List<SeasonOutcome>> outcomes, List<Forecast> forecasts, List<Double> goals) {
    List<Integer> missing =
        IntStream.range(0, goals.size())
            .filter(
                s ->
                    forecasts.stream().anyMatch(f -> f.sowings().get(s).chanceMet() < goals.get(s)))
            .boxed()
            .toList();
    return Paired.difference(
        met(outcomes, BEFORE, missing), met(outcomes, FOUND, missing), true, CONFIDENCE, 1);
  }

  private double[] met(List<List<SeasonOutcome>> outcomes, int plan, List<Integer> sowings) {
    return outcomes.get(plan).stream()
        .mapToDouble(
            o -> sowings.stream().filter(s -> Measures.isMet(scenarios.get(plan), o, s)).count())
        .toArray();
  }
}
