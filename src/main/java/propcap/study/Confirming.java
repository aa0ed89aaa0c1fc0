package propcap.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import propcap.chance.Luck;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;

/** The found plan against the plan as it was, on springs that had no part in finding it. */
final class Confirming {
  /** At which each interval holds. */
  static final double CONFIDENCE = 0.95;

  /** Springs with endless room, enough for the mean demand's line in a chart. */
  private static final int DEMAND_SPRINGS = 100;

  /** What a bound keeps of so many trays at most, some 40 MB. */
  private static final int BOUND_TRAYS = 4_000_000;

  private static final int BEFORE = 0;
  private static final int FOUND = 1;
  private static final int ALONE = 2;

  private final RunSettings fresh;
  private final List<Choice> choices;
  private final Draft found;
  private final List<Scenario> scenarios;

  /** By scenario, the fresh springs. */
  private final List<List<SeasonOutcome>> outcomes;

  private final List<Forecast> forecasts;

  private Confirming(RunSettings fresh, List<Choice> choices, Draft found, List<Scenario> scenarios)
      throws InterruptedException {
    this.fresh = fresh;
    this.choices = choices;
    this.found = found;
    this.scenarios = scenarios;
    try (Seasons seasons = new Seasons(scenarios, fresh.seed(), fresh.threads())) {
      outcomes =
          seasons.run(List.of(BEFORE, FOUND, ALONE), 0, fresh.seasons(), (s, o) -> o, done -> {});
    }
    forecasts = forecasts();
  }

  /** Runs the plans on the fresh springs. */
  static Confirming of(
      RunSettings fresh, List<Choice> choices, Scenario before, Draft found, Draft surest)
      throws InterruptedException {
    return new Confirming(
        fresh,
        choices,
        found,
        List.of(
            before,
            found.sown(before, choices),
            surest.sown(before, choices).withEndlessRoom().withEndlessHands()));
  }

  /**
   * The answer.
   *
   * @param isOutOfReach by sowing, whether it misses its goal alone on each day that was tried
   */
  Planned planned(
      PlanningQuestion question,
      RunSettings settings,
      Planned.Search search,
      List<Boolean> isOutOfReach)
      throws InterruptedException {
    Difference gain = difference(BEFORE, FOUND, worth(BEFORE), worth(FOUND));
    Difference met = met();
    List<Planned.GivenUp> givenUp = givenUp();
    boolean isConfirmed =
        givenUp.stream().allMatch(Planned.GivenUp::isAllowed)
            && met.high() >= 0
            && (met.low() > 0 || (gain.low() > 0 && gain.mean() != 0));
    int kept = isConfirmed ? FOUND : BEFORE;
    return new Planned(
        question,
        settings,
        search,
        fresh.seed(),
        forecasts.get(BEFORE),
        forecasts.get(FOUND),
        isConfirmed,
        choices.stream().map(Choice::goal).toList(),
        gain,
        met,
        givenUp,
        isConfirmed && !search.isStopped() ? effects() : List.of(),
        IntStream.range(0, choices.size())
            .mapToObj(s -> alone(s, kept, isOutOfReach.get(s)))
            .toList(),
        bound(kept));
  }

  private List<Forecast> forecasts() throws InterruptedException {
    List<Scenario> plans = scenarios.subList(BEFORE, ALONE);
    List<Scenario> endless = plans.stream().map(Scenario::withEndlessRoom).toList();
    int n = Math.min(DEMAND_SPRINGS, fresh.seasons());
    try (Seasons seasons = new Seasons(endless, fresh.seed(), fresh.threads())) {
      List<List<SeasonOutcome>> unhindered =
          seasons.run(List.of(BEFORE, FOUND), 0, n, (s, o) -> o, done -> {});
      List<Forecast> made = new ArrayList<>();
      for (int p = 0; p < plans.size(); p++) {
        made.add(new Summary(plans.get(p), fresh, outcomes.get(p), unhindered.get(p)).forecast());
      }
      return made;
    }
  }

  // What differs.

  private Difference difference(
      int first,
      int second,
      ToDoubleFunction<SeasonOutcome> ofFirst,
      ToDoubleFunction<SeasonOutcome> ofSecond) {
    return Paired.difference(
        outcomes.get(first).stream().mapToDouble(ofFirst).toArray(),
        outcomes.get(second).stream().mapToDouble(ofSecond).toArray(),
        strata(fresh.seasons()),
        true,
        CONFIDENCE,
        1);
  }

  /** Of the first so many fresh springs. */
  private Strata strata(int springs) {
    return Strata.of(scenarios.get(BEFORE), fresh.seed(), springs);
  }

  /** Margin of a season of a plan; without money, its trays as a cost. */
  private ToDoubleFunction<SeasonOutcome> worth(int plan) {
    Scenario scenario = scenarios.get(plan);
    Prices prices = scenario.prices();
    return prices == null
        ? o -> -scenario.trays()
        : o -> Accounts.margin(scenario, prices, o).doubleValue();
  }

  /** Sowings met, of those that miss their goal beyond the error under either plan. */
  private Difference met() {
    List<Integer> missing =
        IntStream.range(0, choices.size())
            .filter(
                s ->
                    forecasts.stream()
                        .anyMatch(f -> f.sowings().get(s).chanceMetHigh() < choices.get(s).goal()))
            .boxed()
            .toList();
    ToDoubleFunction<SeasonOutcome> met = o -> missing.stream().filter(s -> isMet(o, s)).count();
    return difference(BEFORE, FOUND, met, met);
  }

  /** Whether it has the plants needed, which are the same under every plan. */
  private boolean isMet(SeasonOutcome season, int sowing) {
    return Measures.isMet(scenarios.get(BEFORE), season, sowing);
  }

  private List<Planned.GivenUp> givenUp() {
    return IntStream.range(0, choices.size())
        .filter(this::isGivenUp)
        .mapToObj(s -> new Planned.GivenUp(s, choices.get(s).mayGiveUp()))
        .toList();
  }

  private boolean isGivenUp(int s) {
    if (forecasts.get(FOUND).sowings().get(s).chanceMetHigh() >= choices.get(s).goal()) {
      return false;
    }
    ToDoubleFunction<SeasonOutcome> met = o -> isMet(o, s) ? 1 : 0;
    Difference chance = difference(BEFORE, FOUND, met, met);
    double needed = Math.max(1, choices.get(s).sowing().plantsNeeded());
    ToDoubleFunction<SeasonOutcome> supplied = o -> Math.min(1, o.onTime(s) / needed);
    return chance.high() < -Aims.MATTERS
        || (chance.low() <= 0
            && difference(BEFORE, FOUND, supplied, supplied).high() < -Aims.MATTERS);
  }

  private List<Planned.Effect> effects() throws InterruptedException {
    int n = Math.min(Planned.EFFECT_SPRINGS, fresh.seasons());
    Scenario before = scenarios.get(BEFORE);
    try (TrialSprings springs =
        new TrialSprings(Choice.widest(before, choices), fresh.seed(), fresh.threads(), n)) {
      Trials trials = new Trials(before, choices, new Worth(before), springs);
      return new Effects(trials, found).of(Draft.asItWas(before, choices));
    }
  }

  // What there could be.

  /** Where others push it onto a table that suits it better, it may do better than alone. */
  private Planned.Alone alone(int s, int kept, boolean isOutOfReach) {
    double alone = Samples.mean(outcomes.get(ALONE), o -> isMet(o, s) ? 1 : 0);
    double inPlan = forecasts.get(kept).sowings().get(s).chanceMet();
    return new Planned.Alone(
        scenarios.get(ALONE).sowings().get(s), Math.max(alone, inPlan), isOutOfReach);
  }

  private Planned.Bound bound(int kept) {
    Scenario before = scenarios.get(BEFORE);
    Scenario widest = Choice.widest(before, choices);
    Bounding bounding = new Bounding(before, choices);
    Luck.Reader reader = new Luck(widest, fresh.seed()).reader();
    int n = Math.min(fresh.seasons(), Math.max(2, BOUND_TRAYS / widest.trays()));
    List<Bounding.Spring> springs =
        IntStream.range(0, n).mapToObj(i -> bounding.spring(reader.season(i))).toList();
    List<Double> chances =
        IntStream.range(0, choices.size())
            .mapToObj(s -> bounding.chance(s, choices.get(s).mostTrays(), springs))
            .toList();
    if (before.prices() == null) {
      return traysToSave(bounding, springs, kept, chances);
    }
    double[] now = outcomes.get(kept).stream().limit(n).mapToDouble(worth(kept)).toArray();
    double[] most = bounding.most(springs);
    return new Planned.Bound(
        Paired.difference(now, most, strata(n), true, CONFIDENCE, 1),
        Arrays.stream(most).average().orElseThrow(),
        chances);
  }

  /** Of the sowings at their goal, the trays that they have more than the fewest that reach it. */
  private Planned.Bound traysToSave(
      Bounding bounding, List<Bounding.Spring> springs, int kept, List<Double> chances) {
    int now = 0;
    int fewest = 0;
    for (int s = 0; s < choices.size(); s++) {
      Integer atLeast = bounding.fewest(s, springs);
      if (atLeast != null
          && forecasts.get(kept).sowings().get(s).chanceMet() >= choices.get(s).goal()) {
        now += scenarios.get(kept).sowings().get(s).trays();
        fewest += atLeast;
      }
    }
    double[] more = new double[springs.size()];
    Arrays.fill(more, now - fewest);
    return new Planned.Bound(
        Paired.difference(new double[more.length], more, strata(more.length), true, CONFIDENCE, 1),
        now,
        chances);
  }
}
