package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.Planned.Start;

/**
 * What to sow when, and how much of it? A better plan than the one written, by a timetable of mean
 * days and a search from it on simulated springs, held in the end against the plan as it was on
 * fresh springs.
 */
public final class Planning {
  /** Springs on which plans are tried; fewer for plans of very many trays. */
  static final int SPRINGS = 160;

  /** Between the seed of the search and that of the springs on which its plan is confirmed. */
  private static final long APART = 1_000_003;

  /** Of the fresh springs when the search was stopped by hand: an answer within a second or two. */
  private static final int SPRINGS_WHEN_STOPPED = 300;

  private Planning() {}

  /**
   * Looks for a better plan.
   *
   * @param settings the seasons are the fresh ones, on which the plans are compared
   * @param budget of the search; an interrupted thread ends it too, and the best so far is taken
   * @param progress told the share of the search that is done, 0 to 1
   * @throws BadQuestionException where a sowing has no day on which it may be sown, or there is but
   *     one fresh season
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
    Draft asItIs = Draft.asItIs(scenario, choices);
    List<Start> names = new ArrayList<>(List.of(Start.EACH_ALONE));
    List<Draft> starts = new ArrayList<>();
    PlanSearch.Found found;
    int springsTried;
    try (TrialSprings springs =
        new TrialSprings(widest(scenario, choices), settings.seed(), settings.threads(), SPRINGS)) {
      springsTried = springs.count();
      Worth worth = new Worth(scenario);
      Aims aims = new Aims(choices, worth, springs.count());
      Alone alone = new Alone(scenario, choices, aims, worth, springs);
      List<List<Alone.Response>> table = alone.byDay();
      starts.add(new Draft(alone.best(table).stream().map(Alone.Response::setting).toList()));
      new FirstDraft(scenario, choices)
          .of(table)
          .ifPresent(
              draft -> {
                starts.add(draft);
                names.add(Start.TIMETABLE);
              });
      starts.add(asItIs);
      names.add(Start.AS_IT_WAS);
      found =
          new PlanSearch(scenario, choices, aims, worth, springs, settings.seed(), starts)
              .from(starts, budget, progress);
    }
    int fresh =
        found.isStopped() ? Math.min(SPRINGS_WHEN_STOPPED, settings.seasons()) : settings.seasons();
    return new Confirming(
            new RunSettings(settings.seed() + APART, fresh, null, settings.threads()),
            choices,
            scenario,
            found.draft().sown(scenario, choices),
            starts.get(0).sown(scenario, choices).withEndlessRoom().withEndlessHands())
        .planned(
            question,
            settings,
            new Planned.Search(
                springsTried, found.tries(), names.get(found.startedFrom()), found.isStopped()));
  }

  /** With as many trays of each sowing as it may have. */
  private static Scenario widest(Scenario scenario, List<Choice> choices) {
    List<Sowing> sowings = scenario.sowings();
    return scenario.withSowings(
        IntStream.range(0, sowings.size())
            .mapToObj(s -> sowings.get(s).withTrays(choices.get(s).mostTrays()))
            .toList());
  }
}
