package propcap.study.size;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Capacity;
import propcap.study.InterimLooks;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.compare.Comparing;
import propcap.study.compare.Comparison;
import propcap.study.forecast.Forecasting;
import propcap.study.size.Goal.Measure;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;
import propcap.study.statistics.BestSelection;
import propcap.study.statistics.MeanLimits;

/**
 * How large must a place be? Sizes are run on the same seasons, until each is told. Nothing is
 * taken for granted of how they hang together: more room can do harm.
 *
 * <p>At each of a few looks every size that is not yet told has limits, at which all sizes and all
 * looks together hold with 95 % confidence. A size holds as soon as its limits lie above the goal
 * less the indifference, and fails as soon as they lie below the goal and the indifference.
 */
public final class SizingRun {

  /** Pairs that are told together, so that they share the drawing of luck. */
  private static final int WAVE = 16;

  private final Scenario scenario;
  private final SizingQuestion question;
  private final Goal goal;
  private final RunSettings settings;
  private final DoubleConsumer progress;
  private final GoalMeasure measure;
  private final SizeCosts costs;
  private final List<Rung> rungs;
  private final InterimLooks looks;

  private SizingRun(
      Scenario scenario, SizingQuestion question, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException {
    question.check(scenario);
    settings.forDifferences();
    this.scenario = scenario;
    this.question = question;
    this.settings = settings;
    this.progress = progress;
    goal = question.goal();
    measure = new GoalMeasure(scenario, question, settings);
    costs = SizeCosts.of(scenario, question);
    rungs = rungs();
    looks = InterimLooks.upTo(settings.seasons(), scenario.weather().size());
  }

  /**
   * Answers the question. Sizes that the scenario cannot have, such as none of its only table, are
   * left out.
   *
   * @param settings the number of seasons is the most that one size may take
   * @throws BadQuestionException where it cannot be asked of this scenario
   */
  public static Sizing size(
      Scenario scenario, SizingQuestion question, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    return new SizingRun(scenario, question, settings, progress).answer();
  }

  private Sizing answer() throws InterruptedException {
    List<Scenario> scenarios = rungs.stream().map(r -> r.scenario).toList();
    try (Seasons seasons = new Seasons(scenarios, settings)) {
      if (goal.measure() == Measure.MARGIN) {
        return largest(seasons);
      }
      return question.places().size() == 1 ? smallest(seasons) : cheapestPair(seasons);
    }
  }

  private List<Rung> rungs() throws BadQuestionException {
    List<List<Integer>> asked = question.sizes();
    List<Rung> possible = new ArrayList<>();
    String refusal = "";
    for (List<Integer> spaces : withToday(asked)) {
      try {
        Scenario sized = Sizing.sized(scenario, question.places(), spaces);
        possible.add(new Rung(possible.size(), spaces, sized, costs.of(spaces)));
      } catch (IllegalArgumentException e) {
        refusal = String.valueOf(e.getMessage());
      }
    }
    if (possible.stream().noneMatch(r -> asked.contains(r.spaces))) {
      throw new BadQuestionException(
          "no size of " + String.join(" and ", question.places()) + " will do: " + refusal);
    }
    return possible;
  }

  /** Today's size of one place is among those tried: what is asked may be there already. */
  private List<List<Integer>> withToday(List<List<Integer>> sizes) throws BadQuestionException {
    if (question.places().size() > 1) {
      return sizes;
    }
    double size = Capacity.named(scenario, question.places().get(0)).size();
    if (size != Math.rint(size) || size > Integer.MAX_VALUE) {
      return sizes;
    }
    return Stream.concat(sizes.stream(), Stream.of(List.of((int) size)))
        .distinct()
        .sorted(Comparator.comparingInt(s -> s.get(0)))
        .toList();
  }

  // One place, a goal to reach: every size is told by itself, whatever the others do.

  private Sizing smallest(Seasons seasons) throws InterruptedException {
    tell(seasons, rungs, 0);
    return sizing(rungs.stream().map(Rung::candidate).toList());
  }

  // Two places: from the cheapest pair on, until one holds.

  private Sizing cheapestPair(Seasons seasons) throws InterruptedException {
    List<Rung> byCost =
        rungs.stream().sorted(Comparator.comparingDouble(r -> costs.of(r.spaces))).toList();
    List<Candidate> tried = new ArrayList<>();
    for (int from = 0; from < byCost.size() && tried.stream().noneMatch(this::holds); ) {
      List<Rung> wave = byCost.subList(from, Math.min(byCost.size(), from + WAVE));
      tell(seasons, wave, from);
      wave.forEach(r -> tried.add(r.candidate()));
      from += wave.size();
    }
    return sizing(tried);
  }

  /**
   * Runs seasons of what is not yet told, in step, until all is told or has had its most.
   *
   * @param before how many were told before
   */
  private void tell(Seasons seasons, List<Rung> asked, int before) throws InterruptedException {
    List<Rung> open = new ArrayList<>(asked);
    int from = 0;
    for (int to : looks.after()) {
      run(seasons, open, from, to);
      open.forEach(this::look);
      open.removeIf(r -> r.found != Found.NEAR);
      from = to;
      double share =
          Math.max(to / (double) settings.seasons(), 1 - open.size() / (double) asked.size());
      progress.accept((before + share * asked.size()) / rungs.size());
    }
  }

  private void run(Seasons seasons, List<Rung> open, int from, int to) throws InterruptedException {
    List<List<Double>> numbers =
        seasons.run(
            open.stream().map(r -> r.number).toList(),
            from,
            to,
            (size, season) -> measure.of(season, costs.of(rungs.get(size).spaces)),
            done -> {});
    for (int i = 0; i < open.size(); i++) {
      open.get(i).see(numbers.get(i));
    }
  }

  private void look(Rung rung) {
    rung.limits = limits(rung);
    rung.found = goal.found(rung.mean(), rung.limits, question.indifference(0));
  }

  private MeanLimits limits(Rung rung) {
    return measure.limits(
        rung.numbers(),
        looks.ofEach(MeanLimits.CONFIDENCE, rungs.size()),
        () -> rungs.stream().map(Rung::numbers).toList());
  }

  // The largest margin: what is clearly beaten drops out, until none that is left is much better.

  private Sizing largest(Seasons seasons) throws InterruptedException {
    double confidence = looks.ofEach(MeanLimits.CONFIDENCE, Math.max(1, rungs.size() - 1));
    List<Rung> in = new ArrayList<>(rungs);
    Rung leader = rungs.get(0);
    double indifference = 0;
    double behind = Double.POSITIVE_INFINITY;
    int from = 0;
    for (int to : looks.after()) {
      if (behind > indifference) {
        run(seasons, in, from, to);
        if (from == 0) {
          indifference = question.indifference(rungs.get(rungs.size() - 1).mean());
        }
        List<double[]> numbers = in.stream().map(Rung::numbers).toList();
        BestSelection contest =
            BestSelection.of(numbers, measure.strata(numbers.get(0)), confidence);
        leader = in.get(contest.leader());
        behind = contest.behind();
        for (int beaten : contest.beaten()) {
          in.get(beaten).found = Found.FAILS;
        }
        in.removeIf(r -> r.found == Found.FAILS);
        from = to;
      }
      progress.accept(to / (double) settings.seasons());
    }
    rungs.forEach(r -> r.limits = limits(r));
    leader.found = behind > indifference ? Found.NEAR : Found.HOLDS;
    return sizing(
        rungs.stream().map(Rung::candidate).toList(), leader.candidate(), indifference, behind);
  }

  // What is common to all.

  private boolean holds(Candidate candidate) {
    return candidate.found() == Found.HOLDS
        || (candidate.found() == Found.NEAR && candidate.mean() >= goal.least());
  }

  /** The first of the candidates that holds, and how sure it is that no other comes before it. */
  private Sizing sizing(List<Candidate> candidates) throws InterruptedException {
    int first = 0;
    double reached = 0;
    while (first < candidates.size() && !holds(candidates.get(first))) {
      reached = Math.max(reached, candidates.get(first).high() - goal.least());
      first++;
    }
    Candidate answer = first < candidates.size() ? candidates.get(first) : null;
    if (answer != null) {
      reached = Math.max(reached, goal.least() - answer.low());
    }
    return sizing(candidates, answer, question.indifference(0), reached);
  }

  private Sizing sizing(
      List<Candidate> candidates, @Nullable Candidate answer, double indifference, double reached)
      throws InterruptedException {
    List<Integer> told =
        answer != null
            ? answer.spaces()
            : candidates.stream()
                .max(Comparator.comparingDouble(Candidate::mean))
                .orElseThrow()
                .spaces();
    Scenario sized = Sizing.sized(scenario, question.places(), told);
    return new Sizing(
        scenario,
        settings,
        question.places(),
        goal,
        question.match(),
        indifference,
        reached,
        MeanLimits.CONFIDENCE,
        candidates,
        answer,
        // What holds it back is to be read there.
        answer == null ? Forecasting.forecast(sized, told(), share -> {}) : null,
        sized.equals(scenario) ? null : change(sized),
        candidates.stream().mapToLong(Candidate::seasons).sum(),
        settings.seasons());
  }

  private Comparison change(Scenario sized) throws InterruptedException {
    try {
      return Comparing.compare(List.of(scenario, sized), told(), share -> {});
    } catch (BadQuestionException e) {
      throw new IllegalStateException("two of one scenario can be compared", e);
    }
  }

  /** What is told of one size has as many seasons as a forecast. */
  private RunSettings told() {
    return settings.ofSeed(
        settings.seed(), Math.min(settings.seasons(), RunSettings.DEFAULT_SEASONS));
  }
}
