package propcap.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.study.Sizing.Candidate;
import propcap.study.Sizing.Found;

/**
 * How large must a place be? Sizes are run on the same seasons, until each is told. Nothing is
 * taken for granted of how they hang together: more room can do harm.
 */
public final class SizingRun {
  /** With which the answer is right, or within the indifference. */
  public static final double CONFIDENCE = 0.95;

  /** Seasons between two looks at what is told. */
  private static final int BATCH = 25;

  /** Pairs that are told together, so that they share the drawing of luck. */
  private static final int WAVE = 16;

  private static final int MOST_SIZES = 2500;

  private final Scenario scenario;
  private final SizingQuestion question;
  private final RunSettings settings;
  private final DoubleConsumer progress;
  private final List<Integer> sowings;
  private final ToDoubleFunction<SeasonOutcome> margin;
  private final SizeCosts costs;
  private final List<Rung> rungs;

  private SizingRun(
      Scenario scenario, SizingQuestion question, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException {
    question.check(scenario);
    settings.forDifferences();
    this.scenario = scenario;
    this.question = question;
    this.settings = settings;
    this.progress = progress;
    sowings = Names.sowings(scenario, question.match());
    margin = question.goal().measure() == Goal.Measure.MARGIN ? Measures.margin(scenario) : o -> 0;
    costs = SizeCosts.of(scenario, question);
    rungs = rungs();
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

  private Sizing answer() throws BadQuestionException, InterruptedException {
    List<Scenario> scenarios = rungs.stream().map(r -> r.scenario).toList();
    try (Seasons seasons = new Seasons(scenarios, settings.seed(), settings.threads())) {
      if (question.goal().measure() == Goal.Measure.MARGIN) {
        return largest(seasons);
      }
      return question.places().size() == 1 ? smallest(seasons) : cheapestPair(seasons);
    }
  }

  /** A size, or a pair of sizes, and what was seen of it. */
  private static final class Rung {
    final int number;
    final List<Integer> spaces;
    final Scenario scenario;
    final List<Double> seen = new ArrayList<>();
    Found found = Found.NEAR;

    Rung(int number, List<Integer> spaces, Scenario scenario) {
      this.number = number;
      this.spaces = spaces;
      this.scenario = scenario;
    }

    double[] numbers() {
      return seen.stream().mapToDouble(Double::doubleValue).toArray();
    }
  }

  private List<Rung> rungs() throws BadQuestionException {
    List<Integer> ladder = question.ladder();
    List<List<Integer>> sizes =
        question.places().size() == 1
            ? ladder.stream().map(List::of).toList()
            : ladder.stream().flatMap(a -> ladder.stream().map(b -> List.of(a, b))).toList();
    if (sizes.size() > MOST_SIZES) {
      throw new BadQuestionException(
          String.format(
              "a ladder of %d sizes makes %d pairs, and at most %d can be tried; take a larger step",
              ladder.size(), sizes.size(), MOST_SIZES));
    }
    List<Rung> possible = new ArrayList<>();
    String refusal = "";
    for (List<Integer> spaces : sizes) {
      try {
        Scenario sized = Sizing.sized(scenario, question.places(), spaces);
        possible.add(new Rung(possible.size(), spaces, sized));
      } catch (IllegalArgumentException e) {
        refusal = String.valueOf(e.getMessage());
      }
    }
    if (possible.isEmpty()) {
      throw new BadQuestionException(
          "no size of " + String.join(" and ", question.places()) + " will do: " + refusal);
    }
    return possible;
  }

  // One place, a goal to reach: every size is told by itself, whatever the others do.

  private Sizing smallest(Seasons seasons) throws BadQuestionException, InterruptedException {
    tell(seasons, rungs, 0);
    List<Candidate> candidates = rungs.stream().map(this::candidate).toList();
    Candidate answer = candidates.stream().filter(this::holds).findFirst().orElse(null);
    return sizing(candidates, answer, question.indifference(0));
  }

  // Two places: from the cheapest pair on, until one holds.

  private Sizing cheapestPair(Seasons seasons) throws BadQuestionException, InterruptedException {
    List<Rung> byCost =
        rungs.stream().sorted(Comparator.comparingDouble(r -> costs.of(r.spaces))).toList();
    List<Candidate> tried = new ArrayList<>();
    @Nullable Candidate answer = null;
    for (int from = 0; from < byCost.size() && answer == null; from += WAVE) {
      List<Rung> wave = byCost.subList(from, Math.min(byCost.size(), from + WAVE));
      tell(seasons, wave, from);
      List<Candidate> told = wave.stream().map(this::candidate).toList();
      tried.addAll(told);
      answer = told.stream().filter(this::holds).findFirst().orElse(null);
    }
    return sizing(tried, answer, question.indifference(0));
  }

  /**
   * Runs seasons of what is not yet told, in step, until all is told or has had its most.
   *
   * @param before how many were told before
   */
  private void tell(Seasons seasons, List<Rung> asked, int before) throws InterruptedException {
    double error = (1 - CONFIDENCE) / rungs.size();
    List<Rung> open = new ArrayList<>(asked);
    for (int from = 0; from < settings.seasons() && !open.isEmpty(); from += BATCH) {
      int to = Math.min(settings.seasons(), from + BATCH);
      run(seasons, open, from, to);
      open.forEach(r -> r.found = found(r, question.indifference(0), error));
      open.removeIf(r -> r.found != Found.NEAR);
      double share =
          Math.max(to / (double) settings.seasons(), 1 - open.size() / (double) asked.size());
      progress.accept((before + share * asked.size()) / rungs.size());
    }
  }

  private void run(Seasons seasons, List<Rung> open, int from, int to) throws InterruptedException {
    List<List<Double>> numbers =
        seasons.run(open.stream().map(r -> r.number).toList(), from, to, this::number, done -> {});
    for (int i = 0; i < open.size(); i++) {
      open.get(i).seen.addAll(numbers.get(i));
    }
  }

  private Found found(Rung rung, double indifference, double error) {
    double[] seen = rung.numbers();
    if (question.goal().measure() == Goal.Measure.MET) {
      WaldTest test = new WaldTest(question.goal().least(), indifference, error);
      for (double met : seen) {
        test.add(met > 0);
      }
      return test.found();
    }
    return seen.length < KimNelson.FIRST_STAGE
        ? Found.NEAR
        : KimNelson.againstStandard(seen, question.goal().least(), indifference, error);
  }

  // The largest margin: the procedure of Kim and Nelson.

  private Sizing largest(Seasons seasons) throws BadQuestionException, InterruptedException {
    List<Rung> in = rungs;
    double indifference = 1;
    for (int from = 0; from < settings.seasons() && (in.size() > 1 || from == 0); ) {
      int to = Math.min(settings.seasons(), from + (from == 0 ? KimNelson.FIRST_STAGE : BATCH));
      run(seasons, in, from, to);
      if (from == 0) {
        indifference = question.indifference(candidate(rungs.get(rungs.size() - 1)).mean());
      }
      if (to >= KimNelson.FIRST_STAGE && rungs.size() > 1) {
        in = stillIn(in, indifference);
      }
      from = to;
      progress.accept(
          Math.max(to / (double) settings.seasons(), 1 - (in.size() - 1.0) / rungs.size()));
    }
    rungs.forEach(r -> r.found = Found.FAILS);
    for (Rung rung : in) {
      rung.found = in.size() == 1 ? Found.HOLDS : Found.NEAR;
    }
    List<Candidate> candidates = rungs.stream().map(this::candidate).toList();
    Candidate answer =
        candidates.stream()
            .filter(c -> c.found() != Found.FAILS)
            .max(Comparator.comparingDouble(Candidate::mean))
            .orElse(null);
    return sizing(candidates, answer, indifference);
  }

  private List<Rung> stillIn(List<Rung> in, double indifference) {
    List<double[]> seen = rungs.stream().map(Rung::numbers).toList();
    List<Integer> numbers = in.stream().map(r -> r.number).toList();
    return KimNelson.stillIn(seen, numbers, rungs.size(), indifference, 1 - CONFIDENCE).stream()
        .map(rungs::get)
        .toList();
  }

  // What is common to all.

  /** The goal's measure of one season. */
  private double number(int candidate, SeasonOutcome season) {
    return switch (question.goal().measure()) {
      case MET -> sowings.stream().allMatch(s -> Measures.isMet(scenario, season, s)) ? 1 : 0;
      case ON_TIME -> Measures.onTime(season, sowings.stream().mapToInt(s -> s));
      case ON_TIME_SHARE -> onTimeShare(season);
      case MARGIN -> margin.applyAsDouble(season) - costs.of(rungs.get(candidate).spaces);
    };
  }

  private double onTimeShare(SeasonOutcome season) {
    long needed = 0;
    long there = 0;
    for (int s : sowings) {
      int wanted = scenario.sowings().get(s).plantsNeeded();
      needed += wanted;
      there += Math.min(wanted, season.onTime(s));
    }
    return needed == 0 ? 1 : there / (double) needed;
  }

  private Candidate candidate(Rung rung) {
    Samples samples = Samples.of(rung.numbers());
    return new Candidate(
        rung.spaces,
        rung.seen.size(),
        samples.mean(),
        samples.standardError(),
        rung.found,
        costs.of(rung.spaces));
  }

  private boolean holds(Candidate candidate) {
    return candidate.found() == Found.HOLDS
        || (candidate.found() == Found.NEAR && candidate.mean() >= question.goal().least());
  }

  private Sizing sizing(List<Candidate> candidates, @Nullable Candidate answer, double indifference)
      throws InterruptedException {
    return new Sizing(
        scenario,
        settings,
        question.places(),
        question.goal(),
        question.match(),
        indifference,
        CONFIDENCE,
        candidates,
        answer,
        answer == null ? nearest(candidates) : null,
        candidates.stream().mapToLong(Candidate::seasons).sum(),
        settings.seasons());
  }

  /** The season with what comes nearest the goal: what holds it back is to be read there. */
  private Forecast nearest(List<Candidate> candidates) throws InterruptedException {
    List<Integer> best =
        candidates.stream().max(Comparator.comparingDouble(Candidate::mean)).orElseThrow().spaces();
    Scenario sized = Sizing.sized(scenario, question.places(), best);
    int seasons = Math.min(settings.seasons(), RunSettings.DEFAULT_SEASONS);
    return Forecasting.forecast(
        sized, new RunSettings(settings.seed(), seasons, null, settings.threads()), share -> {});
  }
}
