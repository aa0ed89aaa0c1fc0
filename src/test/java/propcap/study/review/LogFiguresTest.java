package propcap.study.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import propcap.chance.Luck;
import propcap.farm.Scenario;
import propcap.past.WrittenTray;
import propcap.season.PretendedLog;
import propcap.season.PretendedLog.Counting;
import propcap.season.SeasonPlan;

/** How often numbers that are right are called wrong, and what of few springs is not told. */
class LogFiguresTest {
  private static final Scenario UNEVEN = ReviewingTest.farm(10, 0.9);

  /** The logs of springs of a farm. */
  private static List<List<WrittenTray>> logs(Scenario farm, long seed, int springs) {
    SeasonPlan plan = new SeasonPlan(farm);
    Luck.Reader luck = new Luck(farm, seed).reader();
    return IntStream.range(0, springs)
        .mapToObj(luck::season)
        .map(l -> PretendedLog.of(plan, l, farm.season().days(), Counting.STANDS))
        .toList();
  }

  /** One spring of a farm, held against some others of it. */
  private static LogFigures.Against against(Scenario farm, long seed, int springs) {
    List<List<WrittenTray>> logs = logs(farm, seed, 1 + springs);
    LogFigures figures = new LogFigures(farm, logs.get(0));
    return figures.against(logs.stream().skip(1).map(figures::of).toList());
  }

  /** Of how many springs, each held against some others of its farm, a figure is called wrong. */
  static int wrong(IntFunction<Scenario> farms, int tries, int springs) {
    int wrong = 0;
    for (int seed = 1; seed <= tries; seed++) {
      LogFigures.Against against = against(farms.apply(seed), seed, springs);
      wrong +=
          against.figures().stream().anyMatch(f -> Math.abs(f.off()) > against.byChance()) ? 1 : 0;
    }
    return wrong;
  }

  /**
   * Of 250 springs 12.5 at most on the mean, and three standard errors of 3.4. Where each of the
   * others is also held against itself it is 27.
   */
  @Test
  void rightNumbersAreCalledWrongInOneSpringOfTwentyHoweverFewTheyAreHeldAgainst() {
    assertThat(wrong(seed -> UNEVEN, 250, 19)).isLessThanOrEqualTo(22);
  }

  /** By the deviation of the springs and that of whole days and plants, 1 / sqrt(12) of a tray. */
  @Test
  void howFarAFigureIsOffIsToldInDeviationsOfTheSprings() {
    List<List<WrittenTray>> logs = logs(UNEVEN, 1, 31);
    LogFigures figures = new LogFigures(UNEVEN, logs.get(0));
    List<double[]> others = logs.stream().skip(1).map(figures::of).toList();
    double cells = UNEVEN.cropOf(UNEVEN.sowings().get(0)).cells();
    assertThat(figures.against(others).figures())
        .hasSize(others.get(0).length)
        .allSatisfy(
            f -> {
              double rounding = 1 / Math.sqrt(12.0 * f.trays()) / (f.figure().isDays() ? 1 : cells);
              double apart = Math.hypot(deviation(others, f.assumed()), rounding);
              assertThat(f.off()).isCloseTo((f.seen() - f.assumed()) / apart, within(1e-9));
            });
  }

  /** Of the figure that has this mean. */
  private static double deviation(List<double[]> springs, double mean) {
    return IntStream.range(0, springs.get(0).length)
        .mapToObj(f -> springs.stream().mapToDouble(s -> s[f]).toArray())
        .filter(of -> Math.abs(StatUtils.mean(of) - mean) < 1e-12)
        .mapToDouble(of -> Math.sqrt(StatUtils.variance(of)))
        .findFirst()
        .orElseThrow();
  }

  /** The farthest of 18 and one more is each of them once in 19, which is oftener than in 20. */
  @Test
  void ofFewerThanNineteenSpringsNoneIsFarEnoughOffToTell() {
    assertThat(against(UNEVEN, 1, 18).byChance()).isInfinite();
    assertThat(against(UNEVEN, 1, 18).figures()).isNotEmpty();
    assertThat(against(UNEVEN, 1, 19).byChance()).isFinite();
  }
}
