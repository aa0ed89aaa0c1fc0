package propcap.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Step;

/** Which place holds the spring up, and what to buy first? */
public final class Bottlenecking {
  /** At which the intervals of one table hold together. */
  public static final double CONFIDENCE = 0.95;

  private final RunSettings settings;
  private final DoubleConsumer progress;
  private final int rounds;
  private int round;

  private Bottlenecking(RunSettings settings, int steps, DoubleConsumer progress) {
    this.settings = settings;
    this.progress = progress;
    rounds = steps + 1;
  }

  /**
   * Tries a tenth more and a tenth less of each place, then takes the best tenth, step by step.
   *
   * @param steps the most steps of the stair
   * @throws BadQuestionException where steps are negative, or there is but one season
   */
  public static Bottlenecks bottlenecks(
      Scenario scenario, RunSettings settings, int steps, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    if (steps < 0) {
      throw new BadQuestionException("steps must be 0 or more, was " + steps);
    }
    settings.forDifferences();
    return new Bottlenecking(settings, steps, progress).answer(scenario, steps);
  }

  private Bottlenecks answer(Scenario scenario, int steps) throws InterruptedException {
    Trials first = run(scenario, scenario);
    List<Bottlenecks.Step> stair = new ArrayList<>();
    Trials trials = first;
    int bought = 0;
    for (int i = 0; i < steps; i++) {
      Optional<Capacity> best = trials.best();
      if (best.isEmpty()) {
        break;
      }
      Capacity place = best.get();
      bought += tenth(place);
      stair.add(trials.step(place, bought));
      Scenario next = trials.with(place, tenth(place));
      if (i + 1 < steps) {
        trials = run(next, scenario);
      }
    }
    progress.accept(1);
    return new Bottlenecks(
        scenario,
        settings,
        settings.seasons(),
        CONFIDENCE,
        first.onTime(),
        first.worths(),
        List.copyOf(stair),
        stair.size() < steps);
  }

  private Trials run(Scenario current, Scenario asThingsAre) throws InterruptedException {
    Trials trials = new Trials(current, asThingsAre);
    trials.run();
    round++;
    return trials;
  }

  /** To the space, or the hour a day, and at least one. */
  private static int tenth(Capacity place) {
    return Math.max(1, (int) Math.round(place.size() / 10));
  }

  /** The last table and the last hardening area cannot be closed: one space is left. */
  private static int tenthLess(Capacity place) {
    return Math.max(0, Math.min(tenth(place), (int) place.size() - 1));
  }

  /** The scenario of one step, and every place of it a tenth larger and a tenth smaller. */
  private final class Trials {
    private final Scenario current;
    private final List<Scenario> scenarios = new ArrayList<>();
    private final List<Capacity> open;
    private final Measures measures;
    private List<List<double[]>> numbers = List.of();

    /** In order: as it is, as things were at the start, then more and less of each open place. */
    Trials(Scenario current, Scenario asThingsAre) {
      this.current = current;
      open = Capacity.allOf(current);
      scenarios.add(current);
      scenarios.add(asThingsAre);
      for (Capacity place : open) {
        scenarios.add(with(place, tenth(place)));
        scenarios.add(with(place, -tenthLess(place)));
      }
      measures = new Measures(scenarios);
    }

    void run() throws InterruptedException {
      List<Integer> all = IntStream.range(0, scenarios.size()).boxed().toList();
      int n = settings.seasons();
      try (Seasons seasons = new Seasons(scenarios, settings.seed(), settings.threads())) {
        numbers =
            seasons.run(
                all,
                0,
                n,
                measures::of,
                done -> progress.accept((round + done / (double) n) / rounds));
      }
    }

    Scenario with(Capacity place, int more) {
      return place.sized(current, place.size() + more);
    }

    Stat onTime() {
      return Samples.of(column(0, Comparison.Kind.ON_TIME, "")).stat();
    }

    List<Bottlenecks.Worth> worths() {
      return IntStream.range(0, open.size())
          .mapToObj(this::worth)
          .sorted(Comparator.comparingDouble(Bottlenecks.Worth::plantsPerSpaceMore).reversed())
          .toList();
    }

    private Bottlenecks.Worth worth(int i) {
      int more = 2 + 2 * i;
      return new Bottlenecks.Worth(
          open.get(i),
          tenth(open.get(i)),
          difference(0, more, Comparison.Kind.ON_TIME, ""),
          difference(0, more + 1, Comparison.Kind.ON_TIME, ""),
          margin(0, more),
          margin(0, more + 1),
          List.of(Step.values()).stream()
              .map(step -> difference(0, more, Comparison.Kind.WAITING, step.word()))
              .toList());
    }

    /** The place of which a tenth more clearly brings plants, and the most of them by the space. */
    Optional<Capacity> best() {
      return IntStream.range(0, open.size())
          .boxed()
          .filter(i -> difference(0, 2 + 2 * i, Comparison.Kind.ON_TIME, "").low() > 0)
          .max(
              Comparator.comparingDouble(
                  i ->
                      difference(0, 2 + 2 * i, Comparison.Kind.ON_TIME, "").mean()
                          / tenth(open.get(i))))
          .map(open::get);
    }

    Bottlenecks.Step step(Capacity place, int boughtSoFar) {
      int more = 2 + 2 * open.indexOf(place);
      return new Bottlenecks.Step(
          place,
          tenth(place),
          boughtSoFar,
          difference(0, more, Comparison.Kind.ON_TIME, ""),
          difference(1, more, Comparison.Kind.ON_TIME, ""),
          margin(0, more));
    }

    private @Nullable Difference margin(int from, int to) {
      return measures.indexOf(Comparison.Kind.MARGIN, "") < 0
          ? null
          : difference(from, to, Comparison.Kind.MARGIN, "");
    }

    private Difference difference(int from, int to, Comparison.Kind kind, String subject) {
      Measures.Measure measure = measures.all().get(measures.indexOf(kind, subject));
      return Paired.difference(
          column(from, kind, subject),
          column(to, kind, subject),
          measure.moreIsBetter(),
          CONFIDENCE,
          2 * open.size());
    }

    private double[] column(int scenario, Comparison.Kind kind, String subject) {
      return Measures.column(numbers.get(scenario), measures.indexOf(kind, subject));
    }
  }
}
