package propcap.study.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import propcap.chance.Luck;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.TooLargeException;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Summary;
import propcap.study.money.Accounts;
import propcap.study.statistics.Column;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/** The found plan against the plan as it was, on springs that had no part in finding it. */
final class Confirming {

  /** Springs with endless room, enough for the mean demand's line in a chart. */
  private static final int DEMAND_SPRINGS = 100;

  /** What a bound keeps of so many trays at most, some 40 MB. */
  private static final int BOUND_TRAYS = 4_000_000;

  /** Springs whose outcomes are kept at a time. */
  private static final int BATCH = 100;

  private static final int BEFORE = 0;
  private static final int FOUND = 1;
  private static final int ALONE = 2;

  private final RunSettings fresh;
  private final List<Choice> choices;
  private final List<Scenario> scenarios;

  /** By plan, the fresh springs. */
  private final List<Summary> summaries;

  /** By sowing, its plants on time with endless room. */
  private final List<Column> alone;

  /** By plan and spring. */
  private final double[][] worths;

  private final List<Forecast> forecasts;

  private Confirming(RunSettings fresh, List<Choice> choices, List<Scenario> scenarios)
      throws InterruptedException {
    this.fresh = fresh;
    this.choices = choices;
    this.scenarios = scenarios;
    summaries = scenarios.subList(BEFORE, ALONE).stream().map(s -> new Summary(s, fresh)).toList();
    alone = choices.stream().map(c -> new Column()).toList();
    worths = new double[ALONE][fresh.seasons()];
    run();
    forecasts = forecasts();
  }

  private void run() throws InterruptedException {
    List<ToDoubleFunction<SeasonOutcome>> worth = List.of(worth(BEFORE), worth(FOUND));
    try (Seasons seasons = new Seasons(scenarios, fresh)) {
      for (int from = 0; from < fresh.seasons(); from += BATCH) {
        int to = Math.min(fresh.seasons(), from + BATCH);
        List<List<SeasonOutcome>> outcomes =
            seasons.run(List.of(BEFORE, FOUND, ALONE), from, to, (s, o) -> o, done -> {});
        for (SeasonOutcome outcome : outcomes.get(ALONE)) {
          IntStream.range(0, alone.size()).forEach(s -> alone.get(s).add(outcome.onTime(s)));
        }
        for (int p = 0; p < worths.length; p++) {
          outcomes.get(p).forEach(summaries.get(p)::add);
          for (int n = from; n < to; n++) {
            worths[p][n] = worth.get(p).applyAsDouble(outcomes.get(p).get(n - from));
          }
        }
        checkFits(fresh, summaries, choices.size());
      }
    }
  }

  /**
   * Refuses before the search what would not fit after it, as far as the plan as it is shows.
   *
   * @throws TooLargeException where so many fresh springs do not fit in memory
   */
  static void checkFits(Scenario before, RunSettings fresh) throws InterruptedException {
    Summary summary = new Summary(before, fresh);
    try (Seasons seasons = new Seasons(List.of(before), fresh)) {
      int few = Math.min(BATCH, fresh.seasons());
      seasons.run(0, few, o -> o, done -> {}).forEach(summary::add);
    }
    checkFits(fresh, Collections.nCopies(ALONE, summary), before.sowings().size());
  }

  private static void checkFits(RunSettings fresh, List<Summary> plans, int sowings) {
    TooLargeException.check(
        fresh.seasons(),
        plans.stream().mapToLong(Summary::bytesASeason).sum()
            + (long) Short.BYTES * sowings
            + (long) Double.BYTES * plans.size());
  }

  /** Runs the plans on the fresh springs. */
  static Confirming of(
      RunSettings fresh, List<Choice> choices, Scenario before, TrialPlan found, TrialPlan surest)
      throws InterruptedException {
    return new Confirming(
        fresh,
        choices,
        List.of(
            before,
            found.sown(before, choices),
            surest.sown(before, choices).withEndlessRoom().withEndlessHands()));
  }

  /**
   * The answer.
   *
   * @param isOutOfReach by sowing, whether it misses its goal alone on each day that was tried
   * @param effects of what the found plan changes; none where they were not weighed
   */
  Planned planned(
      PlanningQuestion question,
      RunSettings settings,
      Planned.Search search,
      List<Boolean> isOutOfReach,
      List<Planned.Effect> effects)
      throws InterruptedException {
    Difference gain = difference(worths[BEFORE], worths[FOUND]);
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
        isConfirmed ? effects : List.of(),
        IntStream.range(0, choices.size())
            .mapToObj(s -> alone(s, kept, isOutOfReach.get(s)))
            .toList(),
        bound(kept));
  }

  private List<Forecast> forecasts() throws InterruptedException {
    List<Scenario> plans = scenarios.subList(BEFORE, ALONE);
    List<Scenario> endless = plans.stream().map(Scenario::withEndlessRoom).toList();
    int n = Math.min(DEMAND_SPRINGS, fresh.seasons());
    try (Seasons seasons = new Seasons(endless, fresh)) {
      List<List<SeasonOutcome>> unhindered = seasons.run(n, (s, o) -> o, share -> {});
      List<Forecast> made = new ArrayList<>();
      for (int p = 0; p < plans.size(); p++) {
        unhindered.get(p).forEach(summaries.get(p)::addUnhindered);
        made.add(summaries.get(p).forecast());
      }
      return made;
    }
  }

  // What differs.

  private Difference difference(double[] before, double[] found) {
    Strata strata = Strata.of(scenarios.get(BEFORE), fresh.seed(), before.length);
    return Paired.difference(before, found, strata);
  }

  /** Margin of a season of a plan; without money, its trays as a cost. */
  private ToDoubleFunction<SeasonOutcome> worth(int plan) {
    Scenario scenario = scenarios.get(plan);
    return scenario.prices() == null ? o -> -scenario.trays() : Accounts.marginOf(scenario);
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
    return difference(met(BEFORE, missing), met(FOUND, missing));
  }

  private double[] onTime(int plan, int sowing) {
    return plan == ALONE ? alone.get(sowing).numbers() : summaries.get(plan).onTime(sowing);
  }

  /** How many of some sowings have the plants needed, spring by spring. */
  private double[] met(int plan, List<Integer> sowings) {
    double[] met = new double[fresh.seasons()];
    for (int s : sowings) {
      int needed = choices.get(s).sowing().plantsNeeded();
      double[] onTime = onTime(plan, s);
      Arrays.setAll(met, n -> met[n] + (onTime[n] >= needed ? 1 : 0));
    }
    return met;
  }

  /** The share of its need that a sowing has, at most 1, spring by spring. */
  private double[] supplied(int plan, int sowing) {
    double needed = Math.max(1, choices.get(sowing).sowing().plantsNeeded());
    return Arrays.stream(onTime(plan, sowing))
        .map(plants -> Math.min(1, plants / needed))
        .toArray();
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
    Difference chance = difference(met(BEFORE, List.of(s)), met(FOUND, List.of(s)));
    return chance.high() < -PlanObjective.MATTERS
        || (chance.low() <= 0
            && difference(supplied(BEFORE, s), supplied(FOUND, s)).high() < -PlanObjective.MATTERS);
  }

  // What there could be.

  /** Where others push it onto a table that suits it better, it may do better than alone. */
  private Planned.AloneInHouse alone(int s, int kept, boolean isOutOfReach) {
    double alone = Samples.mean(met(ALONE, List.of(s)));
    double inPlan = forecasts.get(kept).sowings().get(s).chanceMet();
    return new Planned.AloneInHouse(
        scenarios.get(ALONE).sowings().get(s), Math.max(alone, inPlan), isOutOfReach);
  }

  private Planned.Bound bound(int kept) {
    Scenario before = scenarios.get(BEFORE);
    Scenario widest = Choice.widest(before, choices);
    PlanUpperBound bounding = new PlanUpperBound(before, choices);
    Luck.Reader reader = new SeasonPlan(widest).luck(fresh.seed()).reader();
    int n = Math.min(fresh.seasons(), Math.max(2, BOUND_TRAYS / widest.trays()));
    List<PlanUpperBound.Spring> springs =
        IntStream.range(0, n).mapToObj(i -> bounding.spring(reader.season(i))).toList();
    List<Double> chances =
        IntStream.range(0, choices.size())
            .mapToObj(s -> bounding.chance(s, choices.get(s).mostTrays(), springs))
            .toList();
    if (before.prices() == null) {
      return traysToSave(bounding, springs, kept, chances);
    }
    double[] now = Arrays.copyOf(worths[kept], n);
    double[] most = bounding.most(springs);
    return new Planned.Bound(
        difference(now, most), Arrays.stream(most).average().orElseThrow(), chances);
  }

  /** Of the sowings at their goal, the trays that they have more than the fewest that reach it. */
  private Planned.Bound traysToSave(
      PlanUpperBound bounding,
      List<PlanUpperBound.Spring> springs,
      int kept,
      List<Double> chances) {
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
    return new Planned.Bound(difference(new double[more.length], more), now, chances);
  }
}
