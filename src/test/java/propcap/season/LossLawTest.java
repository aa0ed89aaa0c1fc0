package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Loss;
import propcap.farm.Rounds;
import propcap.farm.Scenario;

/**
 * Mean losses of one potted sowing whose every move is on a sure day, so that each cause takes a
 * known share of what the causes before it left. Day 0 is a Monday; nobody works at weekends.
 *
 * <p>Sown on 0 at 08:00, all show on 4 at 20:00, a Friday, and are found on Monday 7, 2.5 days
 * overdue. The plugs are ready 11.5 days later, on Friday 18 at 20:00, keep half a day, and are
 * potted on on Monday 21: held 2 days too long. The pots are ready 6 days later, on Sunday 27 at
 * 08:00, keep 3 days, and move out on Monday 28. Two nights kill. The bed is free from Monday 35
 * on: held 5 days too long.
 *
 * <p>A mean may lie 4.5 standard errors from what is expected: a false alarm of 7e-6 each, 5e-5
 * over the seven causes. Each test then makes one chance wrong, by what its name says, and the same
 * check must refuse it.
 */
class LossLawTest {
  private static final double K = 4.5;
  private static final int SEASONS = 2000;
  private static final int TRAYS = 10;
  private static final int CELLS = 100;

  /** What the losses hang on, with the values that the scenario has. */
  private enum Chance {
    RATE(0.7),
    TESTED_SEEDS(60),
    TRAY_CORRELATION(0.05),
    STRETCH(0.05),
    GROWING_ON(0.06),
    DAMPING_OFF(0.3),
    SEVERITY(0.4),
    OVERHELD(0.03),
    POTTING(0.04),
    FROST(0.05),
    HARDENING(0.07);

    private final double value;

    Chance(double value) {
      this.value = value;
    }
  }

  /** Mean losses a season where one chance is so many times what the scenario has. */
  private static Map<Loss, Double> means(Chance wrong, double times) {
    ToDoubleFunction<Chance> of = c -> c == wrong ? c.value * times : c.value;
    Map<Loss, Double> means = new EnumMap<>(Loss.class);
    double left = TRAYS * CELLS;
    left = take(means, Loss.NO_SEEDLING, left, noSeedling(of));
    left = take(means, Loss.STRETCHED, left, over(of.applyAsDouble(Chance.STRETCH), 1.5));
    double dampedOff = of.applyAsDouble(Chance.DAMPING_OFF) * of.applyAsDouble(Chance.SEVERITY);
    double grown = (1 - of.applyAsDouble(Chance.GROWING_ON)) * (1 - dampedOff);
    left = take(means, Loss.GROWING_ON, left, 1 - grown);
    left = take(means, Loss.OVERHELD, left, over(of.applyAsDouble(Chance.OVERHELD), 2));
    left = take(means, Loss.POTTING, left, of.applyAsDouble(Chance.POTTING));
    left = take(means, Loss.FROST, left, over(of.applyAsDouble(Chance.FROST), 2));
    left = take(means, Loss.OVERHELD, left, over(of.applyAsDouble(Chance.OVERHELD), 5));
    take(means, Loss.HARDENING, left, of.applyAsDouble(Chance.HARDENING));
    return means;
  }

  /** Takes a share of what is left, and returns the rest. */
  private static double take(Map<Loss, Double> means, Loss cause, double left, double share) {
    means.merge(cause, left * share, Double::sum);
    return left * (1 - share);
  }

  private static double over(double aDay, double days) {
    return 1 - Math.pow(1 - aDay, days);
  }

  /**
   * The mean of (1-g)^2, two seeds a cell, where g is beta around the lot's rate with correlation
   * rho and the lot's rate is beta around the tested one: moments of the beta distribution.
   */
  private static double noSeedling(ToDoubleFunction<Chance> of) {
    double rate = of.applyAsDouble(Chance.RATE);
    double spread = rate * (1 - rate) / (of.applyAsDouble(Chance.TESTED_SEEDS) + 1);
    double bothFail = (1 - rate) * (1 - rate) + spread;
    double oneOfEach = rate * (1 - rate) - spread;
    return bothFail + of.applyAsDouble(Chance.TRAY_CORRELATION) * oneOfEach;
  }

  private static List<SeasonOutcome> seasons = List.of();

  @BeforeAll
  static void run() {
    seasons = Runs.of(scenario(), 11, SEASONS);
  }

  private static Scenario scenario() {
    Crops crop = new Crops();
    crop.cells = CELLS;
    crop.seedsPerCell = 2;
    crop.germination = new Crop.Germination(0.7, 60, 0.05);
    crop.leaveAt = 0.1;
    crop.failBelow = 0;
    crop.takesDays = 11.5;
    crop.loss = 0.06;
    crop.dampingOff = new Crop.DampingOff(0.3, 0.4);
    crop.holdsDays = 0.5;
    crop.overheldLossPerDay = 0.03;
    crop.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 12, 6, 3, 0.04);
    crop.hardening = new Crop.Hardening(3, 2, -2, 0.05, 0.07, 1, 0);
    Farms farm = new Farms();
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY));
    farm.stretchLossPerDay = 0.05;
    farm.minC[28] = -5; // the day of the move: not wholly outside
    farm.minC[29] = -5;
    farm.minC[34] = -5;
    farm.minC[35] = -5; // the day of planting out: nor this
    farm.crops = List.of(crop.make());
    farm.sowings.add(Farms.sowing("sowing", 0, TRAYS, 35, 59));
    return farm.make().withEndlessRoom();
  }

  /** The mean lost to a cause is as expected, and would be refused if one chance were wrong. */
  private static void check(Loss cause, Chance chance, double times) {
    Mean lost = Mean.of(seasons, season -> season.lost(0, cause));
    assertThat(lost.errorsFrom(means(chance, 1).getOrDefault(cause, 0.0))).isLessThan(K);
    assertThat(lost.errorsFrom(means(chance, times).getOrDefault(cause, 0.0))).isGreaterThan(K);
  }

  @Test
  void noSeedlingFollowsTheRateRefusedIfThreePercentHigher() {
    check(Loss.NO_SEEDLING, Chance.RATE, 1.03);
  }

  @Test
  void noSeedlingFollowsTheSeedsTestedRefusedIfAThirdAsMany() {
    check(Loss.NO_SEEDLING, Chance.TESTED_SEEDS, 1 / 3.0);
  }

  @Test
  void noSeedlingFollowsTheTrayCorrelationRefusedIfTwiceThat() {
    check(Loss.NO_SEEDLING, Chance.TRAY_CORRELATION, 2);
  }

  @Test
  void stretchingForgivesTheFirstDayRefusedIfFivePercentMore() {
    check(Loss.STRETCHED, Chance.STRETCH, 1.05);
  }

  @Test
  void growingOnTakesItsLossRefusedIfAFifthMore() {
    check(Loss.GROWING_ON, Chance.GROWING_ON, 1.2);
  }

  @Test
  void dampingOffTakesChanceTimesSeverityRefusedIfAnyIsATenthMore() {
    check(Loss.GROWING_ON, Chance.DAMPING_OFF, 1.1);
    check(Loss.GROWING_ON, Chance.SEVERITY, 1.1);
  }

  @Test
  void plugsAndPotsHeldTooLongAreOverheldRefusedIfFivePercentMore() {
    check(Loss.OVERHELD, Chance.OVERHELD, 1.05);
  }

  @Test
  void pottingTakesItsLossRefusedIfFivePercentMore() {
    check(Loss.POTTING, Chance.POTTING, 1.05);
  }

  @Test
  void eachNightThatKillsTakesItsLossRefusedIfFivePercentMore() {
    check(Loss.FROST, Chance.FROST, 1.05);
  }

  @Test
  void hardeningTakesItsLossRefusedIfFivePercentMore() {
    check(Loss.HARDENING, Chance.HARDENING, 1.05);
  }

  @Test
  void nothingIsLostToOtherCausesAndAllElseIsPlantedOutOnTime() {
    for (SeasonOutcome season : seasons) {
      int lost = means(Chance.RATE, 1).keySet().stream().mapToInt(c -> season.lost(0, c)).sum();
      assertThat(season.onTime(0) + lost).isEqualTo(TRAYS * CELLS);
    }
  }
}
