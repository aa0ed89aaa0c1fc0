package propcap.study.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.plan.PlanSearch.Beginning;
import propcap.study.plan.Planned.Start;

/**
 * What to sow when, and how much of it? A better plan than the one written, by a timetable of mean
 * days and a search from it on simulated springs, less what it changes for nothing; held in the end
 * against the plan as it was on fresh springs.
 */
public final class Planning {
  /** Springs on which plans are tried; fewer for plans of very many trays. */
  static final int SPRINGS = 160;

  /** Springs on which what a plan changes for nothing is taken back. */
  private static final int OTHER_SPRINGS = 200;

  /** Between the seeds of the search, of the fresh springs and of those of the taking back. */
  private static final long APART = 1_000_003;

  /** The part of the budget that is searched for; the rest is for taking back. */
  private static final double SEARCHING = 0.75;

  /** Of the fresh springs when the search was stopped by hand: an answer within a second or two. */
  private static final int SPRINGS_WHEN_STOPPED = 300;

  private final Scenario scenario;
  private final List<Choice> choices;
  private final RunSettings settings;
  private final Budget budget;
  private final PlanWorth worth;

  private Planning(Scenario scenario, List<Choice> choices, RunSettings settings, Budget budget) {
    this.scenario = scenario;
    this.choices = choices;
    this.settings = settings;
    this.budget = budget;
    this.worth = new PlanWorth(scenario);
  }

  /**
   * Looks for a better plan.
   *
   * @param settings the seasons are the fresh ones, on which the plans are compared
   * @param budget of the search; an interrupted thread ends it too, and the best so far is taken
   * @param progress told the share of the search that is done, 0 to 1
   * @throws BadQuestionException where a sowing has no day on which it may be sown, where what may
   *     be given up names none, or there is but one fresh season
   * @throws TooLargeException before the search, where so many fresh springs do not fit in memory
   * @throws InterruptedException where nothing had been found yet, or again while it is confirmed
   */
  public static Planned plan(
      Scenario scenario,
      PlanningQuestion question,
      RunSettings settings,
      Budget budget,
      DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    question.check();
    settings.forDifferences();
    List<Choice> choices = Choice.of(scenario, question);
    return new Planning(scenario, choices, settings, budget).planned(question, progress);
  }

  private Planned planned(PlanningQuestion question, DoubleConsumer progress)
      throws InterruptedException {
    Confirming.checkFits(scenario, fresh(settings.seasons()));
    EndlessRoomSearch alone;

    PlanSearch.Found found;
    int springsTried;
    try (TrialSprings springs = springs(settings.seed(), SPRINGS)) {
      springsTried = springs.count();
      Trials trials = new Trials(scenario, choices, worth, springs);
      PlanObjective objective = objective(trials);
      alone = EndlessRoomSearch.of(scenario, choices, objective, worth, springs);
      List<Beginning> starts = new ArrayList<>();
      starts.add(new Beginning(Start.EACH_ALONE, alone.best()));
      new TimetableStart(scenario, choices)
          .of(alone.byDay())
          .ifPresent(trialPlan -> starts.add(new Beginning(Start.TIMETABLE, trialPlan)));
      starts.add(new Beginning(Start.AS_IT_WAS, TrialPlan.asItIs(scenario, choices)));
      found =
          new PlanSearch(
                  choices,
                  trials,
                  objective,
                  worth.whole(),
                  settings.seed(),
                  alone.chances(),
                  starts)
              .found(
                  tries -> budget.spent(tries) / SEARCHING,
                  share -> progress.accept(SEARCHING * share));
    }
    TakingBack.Fewest fewest = fewest(found);
    RunSettings fresh =
        fresh(
            fewest.isStopped()
                ? Math.min(SPRINGS_WHEN_STOPPED, settings.seasons())
                : settings.seasons());
    WeighedPlan weighed =
        fewest.isStopped()
            ? new WeighedPlan(fewest.trialPlan(), List.of())
            : weighed(fewest.trialPlan(), fresh);
    return Confirming.of(fresh, choices, scenario, weighed.trialPlan(), alone.surest())
        .planned(
            question,
            settings,
            new Planned.Search(
                springsTried,
                fewest.tries(),
                found.startedFrom(),
                fewest.isStopped(),
                found.trialPlan().changed(TrialPlan.asItWas(scenario, choices)).size()),
            IntStream.range(0, choices.size()).mapToObj(alone::isOutOfReach).toList(),
            weighed.effects());
  }

  /** On the first of the fresh springs, which is where its changes are told. */
  private WeighedPlan weighed(TrialPlan found, RunSettings fresh) throws InterruptedException {
    int wanted = Math.min(Planned.EFFECT_SPRINGS, fresh.seasons());
    try (TrialSprings springs = springs(fresh.seed(), wanted)) {
      Trials trials = new Trials(scenario, choices, worth, springs);
      return WeighedPlan.of(
          trials,
          objective(trials),
          TrialPlan.asItWas(scenario, choices),
          TrialPlan.asItIs(scenario, choices),
          found);
    }
  }

  /** So many springs that have no part in the search. */
  private RunSettings fresh(int springs) {
    return settings.ofSeed(settings.seed() + APART, springs);
  }

  private TakingBack.Fewest fewest(PlanSearch.Found found) throws InterruptedException {
    if (found.isStopped()) {
      return new TakingBack.Fewest(found.trialPlan(), found.tries(), true);
    }
    try (TrialSprings springs = springs(settings.seed() + 2 * APART, OTHER_SPRINGS)) {
      Trials trials = new Trials(scenario, choices, worth, springs);
      return new TakingBack(
              choices,
              trials,
              objective(trials),
              TrialPlan.asItIs(scenario, choices),
              trials.of(found.trialPlan()),
              budget,
              found.tries())
          .fewest();
    }
  }

  private TrialSprings springs(long seed, int wanted) {
    return new TrialSprings(Choice.widest(scenario, choices), seed, settings.threads(), wanted);
  }

  private PlanObjective objective(Trials trials) throws InterruptedException {
    return new PlanObjective(choices, worth, trials.of(TrialPlan.asItWas(scenario, choices)));
  }
}
