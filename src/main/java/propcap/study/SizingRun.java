package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.study.Sizing.Candidate;
import propcap.study.Sizing.Found;

/** How large must a place be? Sizes are run on the same seasons, until each is told. */
public final class SizingRun {
  /** With which the answer is right, or within the indifference. */
  public static final double CONFIDENCE = 0.95;

  /** Seasons between two looks at what is told. */
  private static final int BATCH = 25;

  private final Scenario scenario;
  private final SizingQuestion question;
  private final RunSettings settings;
  private final DoubleConsumer progress;
  private final List<Integer> sowings;
  private final ToDoubleFunction<SeasonOutcome> margin;
  private List<List<Integer>> sizes = List.of();

  private SizingRun(
      Scenario scenario, SizingQuestion question, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException {
    question.check(scenario);
    this.scenario = scenario;
    this.question = question;
    this.settings = settings;
    this.progress = progress;
    sowings = Names.sowings(scenario, question.match());
    margin = question.goal().measure() == Goal.Measure.MARGIN ? Measures.margin(scenario) : o -> 0;
  }

  /**
   * Answers the question.
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
    if (question.goal().measure() == Goal.Measure.MARGIN) {
      return largest();
    }
    return question.places().size() == 1 ? smallest() : cheapestPair();
  }

  // One place, a goal to reach: every size is told by itself, whatever the others do.

  private Sizing smallest() throws BadQuestionException, InterruptedException {
    sizes = question.ladder().stream().map(List::of).toList();
    double indifference = question.indifference(0);
    double error = (1 - CONFIDENCE) / sizes.size();
    List<Rung> rungs = new ArrayList<>();
    try (Seasons seasons = seasons()) {
      for (int i = 0; i < sizes.size(); i++) {
        rungs.add(new Rung(i, sizes.get(i)));
      }
      tell(seasons, rungs, indifference, error);
    }
    List<Candidate> candidates = rungs.stream().map(this::candidate).toList();
    Candidate answer = candidates.stream().filter(this::holds).findFirst().orElse(null);
    return sizing(candidates, answer, indifference);
  }

  /** Runs seasons of what is not yet told, in step, until all is told or has had its most. */
  private void tell(Seasons seasons, List<Rung> rungs, double indifference, double error)
      throws InterruptedException {
    List<Rung> open = new ArrayList<>(rungs);
    for (int from = 0; from < settings.seasons() && !open.isEmpty(); from += BATCH) {
      int to = Math.min(settings.seasons(), from + BATCH);
      List<List<Double>> numbers =
          seasons.run(open.stream().map(r -> r.number).toList(), from, to, this::number, d -> {});
      for (int i = 0; i < open.size(); i++) {
        open.get(i).seen.addAll(numbers.get(i));
      }
      open.forEach(r -> r.found = found(r, indifference, error));
      open.removeIf(r -> r.found != Found.NEAR);
      progress.accept(
          Math.max(to / (double) settings.seasons(), 1 - open.size() / (double) rungs.size()));
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

  // Two places: along the edge between the pairs that hold and those that do not.

  private Sizing cheapestPair() throws BadQuestionException, InterruptedException {
    List<Integer> ladder = question.ladder();
    double indifference = question.indifference(0);
    double error = (1 - CONFIDENCE) / (2 * ladder.size() - 1);
    sizes = pairs(ladder);
    List<Candidate> tried = new ArrayList<>();
    try (Seasons seasons = seasons()) {
      int i = 0;
      int j = ladder.size() - 1;
      while (i < ladder.size() && j >= 0) {
        int number = i * ladder.size() + j;
        Rung rung = new Rung(number, sizes.get(number));
        tell(seasons, List.of(rung), indifference, error);
        Candidate candidate = candidate(rung);
        tried.add(candidate);
        if (holds(candidate)) {
          j--;
        } else {
          i++;
        }
      }
    }
    Candidate answer =
        tried.stream()
            .filter(this::holds)
            .min((a, b) -> Double.compare(a.yearlyCost(), b.yearlyCost()))
            .orElse(null);
    return sizing(tried, answer, indifference);
  }

  private static List<List<Integer>> pairs(List<Integer> ladder) {
    return ladder.stream()
        .flatMap(first -> ladder.stream().map(second -> List.of(first, second)))
        .toList();
  }

  // The largest margin: the procedure of Kim and Nelson.

  private Sizing largest() throws BadQuestionException, InterruptedException {
    sizes =
        question.places().size() == 1
            ? question.ladder().stream().map(List::of).toList()
            : pairs(question.ladder());
    List<Rung> rungs = new ArrayList<>();
    double indifference = 1;
    try (Seasons seasons = seasons()) {
      for (int i = 0; i < sizes.size(); i++) {
        rungs.add(new Rung(i, sizes.get(i)));
      }
      List<Integer> in = IntStream.range(0, rungs.size()).boxed().toList();
      for (int from = 0; from < settings.seasons() && (in.size() > 1 || from == 0); ) {
        int to = Math.min(settings.seasons(), from + (from == 0 ? KimNelson.FIRST_STAGE : BATCH));
        List<List<Double>> numbers = seasons.run(in, from, to, this::number, done -> {});
        for (int i = 0; i < in.size(); i++) {
          rungs.get(in.get(i)).seen.addAll(numbers.get(i));
        }
        if (from == 0) {
          indifference = question.indifference(candidate(rungs.get(rungs.size() - 1)).mean());
        }
        if (to >= KimNelson.FIRST_STAGE && rungs.size() > 1) {
          List<double[]> seen = rungs.stream().map(Rung::numbers).toList();
          in = KimNelson.stillIn(seen, in, rungs.size(), indifference, 1 - CONFIDENCE);
        }
        from = to;
        progress.accept(
            Math.max(to / (double) settings.seasons(), 1 - (in.size() - 1.0) / rungs.size()));
      }
      for (Rung rung : rungs) {
        rung.found = Found.FAILS;
      }
      for (int i : in) {
        rungs.get(i).found = in.size() == 1 ? Found.HOLDS : Found.NEAR;
      }
    }
    List<Candidate> candidates = rungs.stream().map(this::candidate).toList();
    Candidate answer =
        candidates.stream()
            .filter(c -> c.found() != Found.FAILS)
            .max((a, b) -> Double.compare(a.mean(), b.mean()))
            .orElse(null);
    return sizing(candidates, answer, indifference);
  }

  // What is common to all.

  /** A size, and what was seen of it. */
  private static final class Rung {
    final int number;
    final List<Integer> spaces;
    final List<Double> seen = new ArrayList<>();
    Found found = Found.NEAR;

    Rung(int number, List<Integer> spaces) {
      this.number = number;
      this.spaces = spaces;
    }

    double[] numbers() {
      return seen.stream().mapToDouble(Double::doubleValue).toArray();
    }
  }

  private Seasons seasons() throws BadQuestionException {
    List<Scenario> scenarios = new ArrayList<>();
    for (List<Integer> spaces : sizes) {
      scenarios.add(sized(spaces));
    }
    return new Seasons(scenarios, settings.seed(), settings.threads());
  }

  private Scenario sized(List<Integer> spaces) throws BadQuestionException {
    try {
      return Sizing.sized(scenario, question.places(), spaces);
    } catch (IllegalArgumentException e) {
      throw new BadQuestionException(
          "with "
              + spaces.get(0)
              + " spaces in "
              + question.places().get(0)
              + ": "
              + e.getMessage());
    }
  }

  /** The goal's measure of one season. */
  private double number(int candidate, SeasonOutcome season) {
    return switch (question.goal().measure()) {
      case MET -> sowings.stream().allMatch(s -> Measures.isMet(scenario, season, s)) ? 1 : 0;
      case ON_TIME -> onTime(season);
      case ON_TIME_SHARE -> onTime(season) / Math.max(1, needed());
      case MARGIN -> margin.applyAsDouble(season) - yearlyCost(sizes.get(candidate));
    };
  }

  /**
   * What the places cost a year at these sizes, in proportion to the spaces that their cost was
   * given for; where no place has a cost, their spaces.
   */
  private double yearlyCost(List<Integer> spaces) {
    double cost = 0;
    boolean priced = false;
    for (int i = 0; i < spaces.size(); i++) {
      String name = question.places().get(i);
      for (Place place : scenario.places()) {
        Place.Cost asWritten = place.cost();
        Prices prices = scenario.prices();
        if (place.name().equals(name) && asWritten != null && prices != null && place.isOpen()) {
          priced = true;
          cost += Comparing.yearly(asWritten, prices.discount()) * spaces.get(i) / place.spaces();
        }
      }
    }
    boolean forMoney = question.goal().measure() == Goal.Measure.MARGIN;
    return priced || forMoney ? cost : spaces.stream().mapToInt(n -> n).sum();
  }

  private double onTime(SeasonOutcome season) {
    return Measures.onTime(season, sowings.stream().mapToInt(s -> s));
  }

  private double needed() {
    return sowings.stream().mapToLong(s -> scenario.sowings().get(s).plantsNeeded()).sum();
  }

  private Candidate candidate(Rung rung) {
    Samples samples = Samples.of(rung.numbers());
    return new Candidate(
        rung.spaces,
        rung.seen.size(),
        samples.mean(),
        samples.standardError(),
        rung.found,
        yearlyCost(rung.spaces));
  }

  private boolean holds(Candidate candidate) {
    return candidate.found() == Found.HOLDS
        || (candidate.found() == Found.NEAR && candidate.mean() >= question.goal().least());
  }

  private Sizing sizing(
      List<Candidate> candidates, @Nullable Candidate answer, double indifference) {
    return new Sizing(
        scenario,
        settings,
        question.places(),
        question.goal(),
        indifference,
        CONFIDENCE,
        candidates,
        answer,
        candidates.stream().mapToLong(Candidate::seasons).sum(),
        settings.seasons());
  }
}
