package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.evidence.Dice;
import propcap.evidence.Estimate;
import propcap.evidence.stages.TrayEvidence.Count;
import propcap.evidence.stages.TrayEvidence.Leg;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Loss;

/**
 * What trays lost, held against answers that are known. Days are counted from when a tray was
 * ready; it came off the heat 20 days before. The list: 2 % lost on the table, in potting and in
 * hardening, damping-off in 5 % of trays, plugs keep 12 days and then lose 3 % a day.
 */
class StageLossesTest {
  private static final int CELLS = 72;
  private static final double NEVER = Double.POSITIVE_INFINITY;
  private final Crops crops = new Crops();

  StageLossesTest() {
    crops.cells = CELLS;
    crops.takesDays = 20;
    crops.spread = 0.1;
    crops.loss = 0.02;
    crops.dampingOff = new Crop.DampingOff(0.05, 0.4);
    crops.holdsDays = 12;
    crops.overheldLossPerDay = 0.03;
    crops.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 18, 16, 20, 0.02);
    crops.hardening = new Crop.Hardening(7, 2, -9, 0.1, 0.02, 1, 0);
  }

  private StageLosses fit(List<TrayCourse> trays, double weight) {
    Crop crop = crops.make();
    return StageLosses.fit(
        crop,
        trays,
        weight,
        new WarmthRequirement.Prior(crop.growingOnDegreeDays(), 0.1, weight),
        new ReadyTimes(List.of(), List.of()),
        crop.growingOn().takesDays(),
        Math.log(crop.growingOnDegreeDays()));
  }

  /** A tray that was ready at 0 and never potted. */
  private static TrayCourse ready(double movedOutAt, Leg... legs) {
    return new TrayCourse(List.of(legs), false, 0, 0, null, NEVER, NEVER, movedOutAt);
  }

  private static TrayCourse table(int plants, int lost, boolean outbreakSeen) {
    Leg leg = new Leg(new Count(plants, lost), Set.of(Loss.GROWING_ON), -20, 0);
    return new TrayCourse(List.of(leg), outbreakSeen, 0, 0, null, NEVER, NEVER, NEVER);
  }

  private static Leg leg(int plants, int lost, double from, double to, Loss... losses) {
    return new Leg(new Count(plants, lost), Set.of(losses), from, to);
  }

  private static Estimate alone(@Nullable Learned learned) {
    return Objects.requireNonNull(Objects.requireNonNull(learned).alone());
  }

  // One stage by itself has a closed answer.

  /**
   * 22 of 216 lost in hardening and 12 of 100 in potting, none held; the list weighs 720 plants.
   */
  @Test
  void aStageByItselfIsTheBetaAnswer() {
    TrayCourse hardened = ready(0, leg(216, 22, 0, 0, Loss.HARDENING));
    TrayCourse potted =
        new TrayCourse(List.of(leg(100, 12, 0, 0, Loss.POTTING)), false, 0, 0, null, 1, 17, NEVER);
    StageLosses fit = fit(List.of(hardened, potted), 10);
    BetaBelief hardening = after(BetaBelief.of(0.02, 720), 22, 194);
    Estimate found = fit.hardening().learned();
    assertThat(found.value())
        .isCloseTo(hardening.lost() / (hardening.lost() + hardening.kept()), within(0.0004));
    assertThat(found.low()).isCloseTo(hardening.quantile(0.025), within(0.001));
    assertThat(found.high()).isCloseTo(hardening.quantile(0.975), within(0.001));
    BetaBelief potting = after(BetaBelief.of(0.02, 720), 12, 88);
    assertThat(fit.potting().learned().value())
        .isCloseTo(potting.lost() / (potting.lost() + potting.kept()), within(0.0004));
    // By itself, the exact binomial interval of 12 of 100.
    assertThat(alone(fit.potting()).value()).isEqualTo(0.12);
    assertThat(1 - alone(fit.potting()).high()).isCloseTo(0.79976, within(5e-6));
    assertThat(1 - alone(fit.potting()).low()).isCloseTo(0.93643, within(5e-6));
    assertThat(fit.hardening().trays()).isEqualTo(1);
    assertThat(fit.loss().trays()).isZero();
  }

  /**
   * Held for 40 days, it tells of hardening off only with the list's word on how long plugs keep.
   */
  @Test
  void aTrayThatWasHeldSaysNothingOfHardeningByItself() {
    StageLosses fit = fit(List.of(ready(40, leg(70, 20, 40, 48, Loss.HARDENING))), 10);
    assertThat(fit.hardening().trays()).isEqualTo(1);
    assertThat(fit.hardening().alone()).isNull();
  }

  @Test
  void nothingLeavesTheListAsItIs() {
    StageLosses fit = fit(List.of(), 10);
    assertThat(fit.loss().learned().value()).isEqualTo(0.02);
    assertThat(fit.holdsDays().learned().value()).isEqualTo(12);
    assertThat(fit.hardening().alone()).isNull();
  }

  // The table: background and outbreaks.

  private static List<TrayCourse> tables(
      long seed, int trays, double loss, double chance, double severity) {
    Dice dice = new Dice(seed);
    List<TrayCourse> log = new ArrayList<>();
    for (int i = 0; i < trays; i++) {
      Count count = dice.tray(CELLS - i % 7, loss, chance, severity);
      log.add(table(count.plants(), count.lost(), false));
    }
    return log;
  }

  @Test
  void aLogOfManyTraysFindsWhatMadeIt() {
    StageLosses fit = fit(tables(11, 200, 0.03, 0.12, 0.5), 1);
    assertThat(fit.loss().learned().holds(0.03)).isTrue();
    assertThat(fit.chance().learned().holds(0.12)).isTrue();
    assertThat(fit.severity().learned().holds(0.5)).isTrue();
    // Narrow enough to be of use: binomial errors are 0.0016, 0.023 and, of 24 outbreaks, 0.059.
    assertThat(fit.loss().learned().high() - fit.loss().learned().low()).isLessThan(0.009);
    assertThat(fit.chance().learned().high() - fit.chance().learned().low()).isLessThan(0.13);
    assertThat(fit.severity().learned().high() - fit.severity().learned().low()).isLessThan(0.33);
  }

  @Test
  void outbreaksAreToldFromTheBackground() {
    Dice dice = new Dice(5);
    List<TrayCourse> log = new ArrayList<>();
    List<Count> counts = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      counts.add(dice.tray(CELLS, 0.03, i < 6 ? 1 : 0, 0.6));
      log.add(table(CELLS, counts.get(i).lost(), false));
    }
    List<Double> outbreaks = fit(log, 10).outbreaks();
    for (int i = 0; i < 60; i++) {
      boolean isPlain = counts.get(i).lost() <= 6;
      assertThat(outbreaks.get(i) < 0.5).as("tray " + i + ", " + counts.get(i)).isEqualTo(isPlain);
    }
  }

  @Test
  void aTwinWithoutOutbreaksHasNone() {
    StageLosses twin = fit(tables(5, 60, 0.03, 0, 0.6), 10);
    assertThat(twin.outbreaks()).allMatch(chance -> chance < 0.5);
    assertThat(twin.severity().trays()).isZero();
    assertThat(twin.chance().learned().value()).isLessThan(0.02);
    StageLosses struck = fit(tables(5, 60, 0.03, 0.2, 0.6), 10);
    assertThat(struck.chance().learned().low()).isGreaterThan(0.05);
  }

  /** Background losses are not blown up by the outbreaks beside them. */
  @Test
  void theBackgroundIsTheSameWithAndWithoutOutbreaks() {
    double plain = fit(tables(8, 150, 0.03, 0, 0.6), 10).loss().learned().value();
    double struck = fit(tables(8, 150, 0.03, 0.15, 0.6), 10).loss().learned().value();
    // The standard error of each is 0.0017.
    assertThat(struck).isCloseTo(plain, within(0.005));
    assertThat(struck).isCloseTo(0.03, within(0.005));
  }

  @Test
  void anOutbreakWrittenDownIsOneHoweverMild() {
    List<TrayCourse> log = new ArrayList<>(tables(3, 30, 0.02, 0, 0.4));
    log.add(table(CELLS, 4, true));
    StageLosses fit = fit(log, 10);
    assertThat(fit.outbreaks().get(30)).isEqualTo(1);
    log.set(30, table(CELLS, 4, false));
    assertThat(fit(log, 10).chance().learned().value()).isLessThan(fit.chance().learned().value());
  }

  @ParameterizedTest
  @CsvSource({"1,0", "1,72", "1,36", "40,0", "40,72"})
  void extremeLogsAreAnswered(int trays, int lost) {
    StageLosses fit = fit(Collections.nCopies(trays, table(CELLS, lost, false)), 10);
    for (Learned learned : List.of(fit.loss(), fit.chance(), fit.severity())) {
      assertThat(learned.learned().low()).isBetween(0.0, learned.learned().value());
      assertThat(learned.learned().high()).isBetween(learned.learned().value(), 1.0);
    }
    assertThat(fit.outbreaks()).allMatch(chance -> chance >= 0 && chance <= 1);
  }

  @Test
  void threeTraysShiftTheListALittleAndManyReplaceIt() {
    double three = fit(tables(21, 3, 0.06, 0, 0.4), 10).loss().learned().value();
    double many = fit(tables(21, 150, 0.06, 0, 0.4), 10).loss().learned().value();
    assertThat(three).isBetween(0.021, 0.04);
    assertThat(many).isBetween(0.05, 0.064);
  }

  // Holding.

  /**
   * By hand, of plugs that keep for 12 days and are certain to: 3 days beyond at 4 % a day, 1 -
   * 0.96^3 = 0.1153. Then 4 days more, hardening off: 1 - 0.98 0.96^4 = 0.1677.
   */
  @Test
  void aDayBeyondCostsWhatMadeTheCounts() {
    crops.overheldLossPerDay = 0.04;
    TrayCourse tray =
        ready(15, leg(10_000, 1153, 0, 15), leg(10_000, 1677, 15, 19, Loss.HARDENING));
    StageLosses fit = fit(Collections.nCopies(4, tray), 1e4);
    assertThat(fit.overheld().learned().value()).isCloseTo(0.04, within(0.002));
    assertThat(fit.holdsDays().learned().value()).isCloseTo(12, within(0.2));
    assertThat(fit.hardening().learned().value()).isCloseTo(0.02, within(0.001));
  }

  /** A tray is held for 1 to 24 days, and goes out to harden off for 8 more. */
  private static List<TrayCourse> held(Dice dice, int trays, double holds, double loss) {
    List<TrayCourse> log = new ArrayList<>();
    for (int i = 0; i < trays; i++) {
      double waits = 1 + Math.floor(24 * dice.uniform());
      int inside = dice.lost(70, lost(0, 0, waits, holds, loss));
      int left = 70 - inside;
      int outside = dice.lost(left, lost(0.02, waits, waits + 8, holds, loss));
      Leg outdoors = leg(left, outside, waits, waits + 8, Loss.HARDENING);
      log.add(ready(waits, leg(70, inside, 0, waits), outdoors));
    }
    return log;
  }

  private static double lost(double besides, double from, double to, double holds, double loss) {
    double beyond = Math.max(0, to - holds) - Math.max(0, from - holds);
    return 1 - (1 - besides) * Math.pow(1 - loss, beyond);
  }

  @Test
  void sixtyTraysTellHowLongPlugsKeepFromWhatADayCosts() {
    StageLosses fit = fit(held(new Dice(4), 60, 8, 0.05), 10);
    Estimate days = fit.holdsDays().learned();
    assertThat(days.holds(8)).isTrue();
    assertThat(days.holds(12)).isFalse();
    // The list alone is sure to a factor of 1.9 either way.
    assertThat(days.high() - days.low()).isLessThan(4);
  }

  /** Plants may go on dying on the table as they did: that is not being held too long. */
  @Test
  void whatTheTableGoesOnTakingIsNotHolding() {
    List<TrayCourse> log = new ArrayList<>();
    Dice dice = new Dice(6);
    for (int i = 0; i < 60; i++) {
      int grown = dice.lost(70, 0.04);
      int left = 70 - grown;
      int waited = dice.lost(left, 1 - Math.pow(1 - 0.04, 8 / 20.0));
      Leg growing = leg(70, grown, -20, 0, Loss.GROWING_ON);
      log.add(ready(8, growing, leg(left, waited, 0, 8)));
    }
    assertThat(fit(log, 10).holdsDays().learned().value()).isGreaterThan(8);
  }

  @Test
  void traysThatWereNeverHeldLongSayNothingOfHolding() {
    StageLosses fit = fit(List.of(ready(3, leg(100, 2, 0, 3))), 10);
    assertThat(fit.holdsDays().trays()).isZero();
    assertThat(fit.holdsDays().learned().value()).isEqualTo(12);
    assertThat(fit.overheld().learned().value()).isEqualTo(0.03);
  }

  @Test
  void allLostNoneLostAndNoKeepingAtAllAreAnswered() {
    crops.overheldLossPerDay = 0;
    for (int lost : new int[] {0, 10_000}) {
      for (double listed : new double[] {0, 1, 60}) {
        crops.holdsDays = listed;
        StageLosses fit = fit(List.of(ready(90, leg(10_000, lost, 0, 90))), 1);
        assertThat(fit.holdsDays().learned().value()).isPositive();
        assertThat(fit.overheld().learned().value()).isBetween(0.0, 1.0);
      }
    }
  }

  /** Counts that follow add to what was believed. */
  private static BetaBelief after(BetaBelief before, int lost, int kept) {
    return new BetaBelief(before.lost() + lost, before.kept() + kept);
  }
}
