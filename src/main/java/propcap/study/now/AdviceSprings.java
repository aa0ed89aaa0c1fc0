package propcap.study.now;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.now.SeasonNow.Chance;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Strata;

/**
 * The springs on which advice is looked for, and those from which it is told: others, so that what
 * looked best by luck is not told better than it is. A spring is its on-time plants by sowing.
 */
final class AdviceSprings {
  private static final int TRIED_ON = 100;
  private static final int TOLD_FROM = 200;

  private final Scenario scenario;
  private final RunSettings settings;
  private final List<SowingNow> sowings;
  private final int tries;
  private final int springs;
  private final int[][] before;

  AdviceSprings(Scenario scenario, RunSettings settings, List<SowingNow> sowings)
      throws InterruptedException {
    this.scenario = scenario;
    this.settings = settings;
    this.sowings = sowings;
    int block = scenario.weather().size();
    tries = Math.min(settings.seasons(), RunSettings.whole(TRIED_ON, block));
    springs = Math.min(settings.seasons(), RunSettings.whole(TOLD_FROM, block));
    before = run(scenario, 0, tries + springs);
  }

  /** How many springs advice is told from. */
  int told() {
    return springs;
  }

  /** The springs that are tried on, as things are. */
  int[][] beforeTrying() {
    return Arrays.copyOfRange(before, 0, tries);
  }

  /** The springs that are told from, as things are. */
  int[][] beforeTelling() {
    return Arrays.copyOfRange(before, tries, tries + springs);
  }

  /** The springs that are tried on, with a change. */
  int[][] trying(Scenario changed) throws InterruptedException {
    return run(changed, 0, tries);
  }

  /** The springs that are told from, with a change. */
  int[][] telling(Scenario changed) throws InterruptedException {
    return run(changed, tries, tries + springs);
  }

  private int[][] run(Scenario changed, int from, int to) throws InterruptedException {
    try (Seasons seasons = Seasons.ofOneOfMany(changed, settings)) {
      return seasons.run(from, to, SeasonOutcome::onTime, done -> {}).toArray(int[][]::new);
    }
  }

  /** Plants that a sowing lacks at most in as many of the springs tried on as its goal. */
  double lacking(SowingNow of) {
    int s = sowings.indexOf(of);
    double[] lacking = of(beforeTrying(), o -> Math.max(0, of.sowing().plantsNeeded() - o[s]));
    Arrays.sort(lacking);
    return lacking[(int) Math.min(lacking.length - 1, Math.ceil(of.goal() * lacking.length))];
  }

  /** Of each spring, 1 where a sowing has the plants that it needs with so many more; else 0. */
  double[] met(int[][] springs, SowingNow of, int more) {
    int s = sowings.indexOf(of);
    return of(springs, o -> o[s] + more >= of.sowing().plantsNeeded() ? 1 : 0);
  }

  /** A number of each spring. */
  static double[] of(int[][] springs, ToDoubleFunction<int[]> number) {
    return Arrays.stream(springs).mapToDouble(number).toArray();
  }

  static double mean(double[] numbers) {
    return Arrays.stream(numbers).average().orElse(0);
  }

  /** Sowings of the plan met on time in a spring, but for one; -1: all. */
  double met(int[] onTime, int except) {
    return IntStream.range(0, sowings.size())
        .filter(s -> s != except && onTime[s] >= sowings.get(s).sowing().plantsNeeded())
        .count();
  }

  /**
   * The difference that a change makes in the springs that are told from.
   *
   * @param changes how many are told together
   */
  Difference difference(double[] first, double[] second, int changes) {
    return Paired.difference(first, second, strata(), true, changes);
  }

  /** The difference in sowings met, but for one; -1: all. */
  Difference met(int[][] changed, int except, int changes) {
    return difference(
        of(beforeTelling(), o -> met(o, except)), of(changed, o -> met(o, except)), changes);
  }

  /** A chance in the springs that are told from. */
  Chance chance(double[] met) {
    MeanLimits limits = MeanLimits.ofChance(met, strata());
    return new Chance(mean(met), limits.low(), limits.high());
  }

  private Strata strata() {
    return Strata.of(scenario, settings.seed(), tries, tries + springs);
  }
}
