package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.chance.DrawPurpose;
import propcap.chance.HandLuck;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;

/**
 * Seasons worked by hand from docs/model.md. Day 0 is Monday 1 March 2027, rounds are at 08:00,
 * mats and house stand at 20 C. A tray sown on day s shows at s + 8 h + 4.5 d, which is day s+4 at
 * 20:00, and is found on day s+5; from leaving on day l it grows for 10 days.
 */
class SeasonByHandTest {
  private static final int MATS = 0;
  private static final int HOUSE = 1;

  private final Farms farm = new Farms();
  private final Crops cosmos = new Crops();

  private Scenario scenario() {
    farm.crops.clear();
    farm.crops.add(cosmos.make());
    return farm.make();
  }

  private SeasonOutcome run() {
    Scenario scenario = scenario();
    return run(scenario, new HandLuck(scenario));
  }

  private static SeasonOutcome run(Scenario scenario, HandLuck luck) {
    return House.season(new SeasonPlan(scenario), luck.make());
  }

  private static List<Integer> days(SeasonOutcome season, int sowing) {
    return IntStream.range(0, TrayMove.values().length)
        .mapToObj(m -> season.firstDay(sowing, TrayMove.values()[m]))
        .toList();
  }

  @Test
  void oneTrayGoesFromSowingToTheBed() {
    farm.sowings.add(Farms.sowing("a", 2, 1));
    SeasonOutcome season = run();
    // Sown 2; shows 6.83, found 7; grows 10 days to 17.33, found on that very round; three whole
    // fit days outside, 18 to 20; planted out on 21.
    assertThat(days(season, 0)).containsExactly(2, 7, -1, 17, 21);
    assertThat(season.cellsSown(0)).isEqualTo(10);
    assertThat(season.onTime(0)).isEqualTo(10);
    assertThat(season.metDay(0)).isEqualTo(21);
    assertThat(season.medianOutDay(0)).isEqualTo(21);
    assertThat(season.use(MATS, 1)).isZero();
    assertThat(season.use(MATS, 2)).isEqualTo(1);
    assertThat(season.use(MATS, 6)).isEqualTo(1);
    assertThat(season.use(MATS, 7)).isZero();
    assertThat(season.use(HOUSE, 7)).isEqualTo(1);
    assertThat(season.use(HOUSE, 16)).isEqualTo(1);
    assertThat(season.use(HOUSE, 17)).isZero();
    assertThat(season.use(2, 20)).isEqualTo(1);
    assertThat(season.use(2, 21)).isZero();
  }

  @Test
  void nobodyActsOnARestDay() {
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SUNDAY));
    // Day 6 is a Sunday: due to be sown on it, the tray is sown on Monday 7. It shows on 11 at
    // 20:00, is found on 12, ready on 22; Sunday 20 and 27 do not matter: three fit days 23 to 25,
    // out on 26.
    farm.sowings.add(Farms.sowing("a", 6, 1));
    // Sown on day 1, it shows on 5 at 20:00, and Sunday 6 has no round: found on 7, ready 17.33
    // (17), out: 18, 19, 20; planted on Monday 21.
    farm.sowings.add(Farms.sowing("b", 1, 1));
    SeasonOutcome season = run();
    assertThat(days(season, 0)).containsExactly(7, 12, -1, 22, 26);
    assertThat(days(season, 1)).containsExactly(1, 7, -1, 17, 21);
  }

  @Test
  void oneTableSpaceKeepsTheSecondTrayInTheHeat() {
    farm.house = 1;
    farm.stretchLossPerDay = 0.1;
    farm.sowings.add(Farms.sowing("a", 0, 1));
    farm.sowings.add(Farms.sowing("b", 0, 1));
    SeasonOutcome season = run();
    // Both show at 4.83. "a" takes the space on 5 and leaves it on 15; "b" waits on the rounds of 5
    // to 14 and takes the space on 15, the same morning, for the round works from the exit back.
    assertThat(days(season, 0)).containsExactly(0, 5, -1, 15, 19);
    assertThat(days(season, 1)).containsExactly(0, 15, -1, 25, 29);
    assertThat(season.waited(RoomWait.LEAVE, 0, 0)).isZero();
    assertThat(season.waited(RoomWait.LEAVE, 1, 0)).isEqualTo(10);
    // Overdue 15.33 - 4.83 = 10.5 days, one of them forgiven: each of ten seedlings is lost with
    // chance 1 - 0.9^9.5 = 0.632, and P(X <= 5) = 0.307, P(X <= 6) = 0.563: the median loses six.
    assertThat(season.lost(0, Loss.STRETCHED)).isZero();
    assertThat(season.lost(1, Loss.STRETCHED)).isEqualTo(6);
    assertThat(season.onTime(1)).isEqualTo(4);
  }

  @Test
  void anEmptyTrayIsThrownOutAtItsNextMove() {
    farm.house = 1;
    farm.yard = 1;
    cosmos.loss = 1;
    farm.sowings.add(Farms.sowing("a", 0, 2));
    SeasonOutcome season = run();
    // Growing on loses all: on 15 the tray is to go out, and is thrown out; the next takes its
    // space.
    assertThat(season.lost(0, Loss.GROWING_ON)).isEqualTo(20);
    assertThat(season.trays(0, TrayMove.MOVED_OUT)).isZero();
    assertThat(season.lastDay(0, TrayMove.OFF_HEAT)).isEqualTo(15);
    assertThat(season.use(HOUSE, 24)).isEqualTo(1);
    assertThat(season.use(HOUSE, 25)).isZero();
  }

  @Test
  void aFullChamberKeepsTraysFromBeingSown() {
    farm.mats = 1;
    farm.sowings.add(Farms.sowing("a", 0, 2));
    SeasonOutcome season = run();
    // The second tray waits on the rounds of 0 to 4, and takes the space that the first leaves on
    // 5.
    assertThat(season.firstDay(0, TrayMove.SOWN)).isZero();
    assertThat(season.lastDay(0, TrayMove.SOWN)).isEqualTo(5);
    assertThat(season.waited(RoomWait.SOW, 0, 0)).isEqualTo(5);
    assertThat(season.sowBehindOverdue()).isZero();
  }

  @Test
  void theSowingWhoseBedComesFirstGoesFirstAndTiesGoByThePlan() {
    farm.house = 1;
    farm.sowings.add(Farms.sowing("late bed", 0, 1, 0, 50));
    farm.sowings.add(Farms.sowing("early bed", 0, 1, 0, 40));
    farm.sowings.add(Farms.sowing("late bed too", 0, 1, 0, 50));
    SeasonOutcome season = run();
    assertThat(season.firstDay(1, TrayMove.OFF_HEAT)).isEqualTo(5);
    assertThat(season.firstDay(0, TrayMove.OFF_HEAT)).isEqualTo(15);
    assertThat(season.firstDay(2, TrayMove.OFF_HEAT)).isEqualTo(25);
  }

  @Test
  void pottingOnThatFindsNoRoomWaitsAndIsOverheld() {
    farm.house = 3;
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 6, 20, 0);
    cosmos.holdsDays = 2;
    cosmos.overheldLossPerDay = 0.5;
    cosmos.germinateIn = List.of("Mats");
    farm.sowings.add(Farms.sowing("a", 0, 1));
    farm.sowings.add(Farms.sowing("b", 0, 1));
    farm.sowings.add(Farms.sowing("c", 2, 1));
    SeasonOutcome season = run();
    // a and b leave the heat on 5, c on 7: the house is full. a and b are due for potting on 15, 10
    // plants in 5s, so 2 spaces each; a's own table has no space but the one that a frees, nor has
    // b's.
    // On 15 nothing moves, nor ever after on that day: three plugs, each waiting for one space
    // more.
    assertThat(season.trays(0, TrayMove.POTTED_ON)).isEqualTo(1);
    // They wait until plants have died of overholding down to what fits one space, 5 of 10: a plug
    // ready at 15.33 keeps to 17.33, and on the round of day d has been held d - 17 days too long:
    // half of its plants, the median of Binomial(10, 1/2), are gone on 18.
    assertThat(season.firstDay(0, TrayMove.POTTED_ON)).isEqualTo(18);
    assertThat(season.lost(0, Loss.OVERHELD)).isEqualTo(5);
    assertThat(season.waited(RoomWait.POT, 0, 0)).isEqualTo(3);
    // Five plants in pots, ready 6 days later, hardened after 25, 26 and 27.
    assertThat(days(season, 0)).containsExactly(0, 5, 18, 24, 28);
    assertThat(season.onTime(0)).isEqualTo(5);
    // c is ready on 17.33, keeps to 19.33, and is down to 5 on 20.
    assertThat(days(season, 2)).containsExactly(2, 7, 20, 26, 30);
  }

  @Test
  void aPlugThatMayBePottedOnIsSoOnlyIfHeldAndThenFillsMoreSpaces() {
    // Released on day 30 only: the plug ready on 15.33 keeps 7 days and is potted on on 22.
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.IF_HELD, 3, 5, 20, 0);
    cosmos.hardening = new Crop.Hardening(3, 2, -2, 0, 0, 1, 30);
    farm.sowings.add(Farms.sowing("a", 0, 1));
    // Sown on 10, ready on 25.33, it could be potted from 32.33 on, but goes out on 30 as a plug.
    farm.sowings.add(Farms.sowing("b", 10, 1));
    SeasonOutcome season = run();
    assertThat(days(season, 0)).containsExactly(0, 5, 22, 30, 34);
    assertThat(days(season, 1)).containsExactly(10, 15, -1, 30, 34);
    // Ten plants, three pots a space: four spaces.
    assertThat(season.use(HOUSE, 21)).isEqualTo(2);
    assertThat(season.use(HOUSE, 22)).isEqualTo(5);
    assertThat(season.use(2, 30)).isEqualTo(5);
  }

  @Test
  void aFrostNightKillsAndIsNoFitDay() {
    cosmos.hardening = new Crop.Hardening(3, 2, -2, 0.5, 0, 1, 0);
    farm.sowings.add(Farms.sowing("a", 2, 1));
    farm.minC[17] = -5; // the night before the move: not outside yet
    farm.minC[19] = -5; // kills half
    farm.minC[20] = 1; // too cold to harden, not cold enough to kill
    SeasonOutcome season = run();
    // Moved out on 17; fit days 18, 21, 22; planted out on 23.
    assertThat(days(season, 0)).containsExactly(2, 7, -1, 17, 23);
    assertThat(season.lost(0, Loss.FROST)).isEqualTo(5);
    assertThat(season.onTime(0)).isEqualTo(5);
  }

  @Test
  void aFailedTrayIsSownAgainWithLuckOfItsOwn() {
    cosmos.germination = new Crop.Germination(0.5, 0, 0);
    cosmos.pullAfterDays = 7;
    cosmos.failBelow = 0.3;
    cosmos.leaveAt = 0.5;
    Sowing plain = Farms.sowing("a", 0, 2);
    farm.sowings.add(
        new Sowing(
            "a",
            "cosmos",
            "lot",
            plain.sow(),
            2,
            10,
            plain.bedFrom(),
            plain.bedBy(),
            null,
            Farms.day(7),
            null,
            Sowing.Leeway.NOT_SAID));
    Scenario scenario = scenario();
    // Of ten cells at one half, P(F <= 2) = 56/1024 = 0.0547 and P(F <= 6) = 848/1024 = 0.828: at
    // 0.05 two fill, at 0.8 six.
    HandLuck luck =
        new HandLuck(scenario)
            .with(0, 0, 0, DrawPurpose.FILLS, 0.05)
            .with(0, 1, 0, DrawPurpose.FILLS, 0.8)
            .with(0, 0, 1, DrawPurpose.FILLS, 0.8);
    SeasonOutcome season = run(scenario, luck);
    // Tray 1 shows five cells and leaves on 5. Tray 0 is pulled on 7 with two of the three cells it
    // needs, thrown out, and sown again on 7, leaving on 12.
    assertThat(season.lost(0, Loss.FAILED_TRAY)).isEqualTo(10);
    assertThat(season.cellsSown(0)).isEqualTo(30);
    assertThat(season.trays(0, TrayMove.SOWN)).isEqualTo(3);
    assertThat(season.lastDay(0, TrayMove.SOWN)).isEqualTo(7);
    assertThat(season.firstDay(0, TrayMove.OFF_HEAT)).isEqualTo(5);
    assertThat(season.lastDay(0, TrayMove.OFF_HEAT)).isEqualTo(12);
    assertThat(season.lost(0, Loss.NO_SEEDLING)).isEqualTo(8);
    assertThat(season.onTime(0)).isEqualTo(12);
  }

  @Test
  void aFailedTrayIsNotSownAgainTooLate() {
    cosmos.germination = new Crop.Germination(0.5, 0, 0);
    cosmos.pullAfterDays = 7;
    Sowing plain = Farms.sowing("a", 0, 1);
    farm.sowings.add(
        new Sowing(
            "a",
            "cosmos",
            "lot",
            plain.sow(),
            1,
            10,
            plain.bedFrom(),
            plain.bedBy(),
            null,
            Farms.day(6),
            null,
            Sowing.Leeway.NOT_SAID));
    Scenario scenario = scenario();
    SeasonOutcome season =
        run(scenario, new HandLuck(scenario).with(0, 0, 0, DrawPurpose.FILLS, 0.01));
    assertThat(season.lost(0, Loss.FAILED_TRAY)).isEqualTo(10);
    assertThat(season.trays(0, TrayMove.SOWN)).isEqualTo(1);
  }

  @Test
  void aTrayOnATableOnlyChangesStage() {
    farm.house = 1;
    cosmos.germinateIn = List.of("House");
    farm.sowings.add(Farms.sowing("a", 0, 1));
    SeasonOutcome season = run();
    assertThat(days(season, 0)).containsExactly(0, 5, -1, 15, 19);
    assertThat(season.use(HOUSE, 5)).isEqualTo(1);
    assertThat(season.use(HOUSE, 15)).isZero();
  }

  @Test
  void plantsReadyBeforeTheirBedWaitOutside() {
    farm.sowings.add(Farms.sowing("a", 2, 1, 30, 40));
    assertThat(days(run(), 0)).containsExactly(2, 7, -1, 17, 30);
  }

  @Test
  void plantsOutAfterTheirDateAreLate() {
    farm.sowings.add(Farms.sowing("a", 2, 1, 0, 20));
    SeasonOutcome season = run();
    assertThat(season.onTime(0)).isZero();
    assertThat(season.late(0)).isEqualTo(10);
  }

  @Test
  void whatIsPastItsBedIsThrownOutAndWhatIsUnsownThenNeverIs() {
    farm.mats = 1;
    Sowing plain = Farms.sowing("a", 0, 2, 0, 3);
    farm.sowings.add(
        new Sowing(
            "a",
            "cosmos",
            "lot",
            plain.sow(),
            2,
            10,
            plain.bedFrom(),
            plain.bedBy(),
            Farms.day(4),
            null,
            null,
            Sowing.Leeway.NOT_SAID));
    SeasonOutcome season = run();
    // On 5 the first tray is thrown out of the mats; the second, which waited, is never sown.
    assertThat(season.cellsSown(0)).isEqualTo(10);
    assertThat(season.lost(0, Loss.DUMPED)).isEqualTo(10);
    assertThat(season.use(MATS, 5)).isZero();
    assertThat(season.waited(RoomWait.SOW, 0, 0)).isEqualTo(5);
  }

  @Test
  void whatIsStillInsideAtTheEndIsUnplanted() {
    farm.sowings.add(Farms.sowing("a", 50, 1));
    SeasonOutcome season = run();
    assertThat(season.lost(0, Loss.UNPLANTED)).isEqualTo(10);
  }

  @Test
  void pulledBeforeHalfIsUpATrayLeavesOnTheVeryRoundThatItIsPulled() {
    // 21 days after 08:00 is 08:00: seven of ten up, eight wanted.
    cosmos.leaveAt = 0.8;
    cosmos.germination = new Crop.Germination(0.7, 0, 0);
    cosmos.pullAfterDays = 21;
    farm.sowings.add(Farms.sowing("a", 1, 1));
    SeasonOutcome season = run();
    // The median of Binomial(10, 0.7) is 7.
    assertThat(season.firstDay(0, TrayMove.OFF_HEAT)).isEqualTo(22);
    assertThat(season.lost(0, Loss.NO_SEEDLING)).isEqualTo(3);
    assertThat(season.onTime(0)).isEqualTo(7);
  }

  @Test
  void whatHoldingCostOnTheTableIsTakenOffBeforeTheMoveAndBeforeFrost() {
    cosmos.holdsDays = 7;
    cosmos.overheldLossPerDay = 0.1;
    cosmos.hardening = new Crop.Hardening(3, 2, -2, 0.5, 0, 1, 30);
    farm.sowings.add(Farms.sowing("a", 0, 1));
    farm.minC[32] = -5;
    SeasonOutcome season = run();
    // Ready on 15.33, the plug keeps to 22.33 and moves out on 30, held 8 days too long: each of
    // ten plants is lost with chance 1 - 0.9^8 = 0.570, median 6. The frost of 32 kills half of the
    // four left. Three fit days, 31, 33 and 34: planted out on 35 after 5 more days, chance 0.410
    // for each of the two that live, median 1.
    assertThat(days(season, 0)).containsExactly(0, 5, -1, 30, 35);
    assertThat(season.lost(0, Loss.FROST)).isEqualTo(2);
    assertThat(season.lost(0, Loss.OVERHELD)).isEqualTo(7);
    assertThat(season.onTime(0)).isEqualTo(1);
  }

  @Test
  void whatIsThrownOutOnTheTableWasAlive() {
    cosmos.holdsDays = 7;
    cosmos.overheldLossPerDay = 0.1;
    cosmos.hardening = new Crop.Hardening(3, 2, -2, 0, 0, 1, 50);
    farm.sowings.add(Farms.sowingUntil("a", 0, 1, 29));
    SeasonOutcome season = run();
    // Not released before 50, thrown out on 30, held 8 days too long: six of ten dead by then.
    assertThat(season.lost(0, Loss.OVERHELD)).isEqualTo(6);
    assertThat(season.lost(0, Loss.DUMPED)).isEqualTo(4);
  }

  @Test
  void whatIsThrownOutOutsideWasAlive() {
    cosmos.holdsDays = 7;
    cosmos.overheldLossPerDay = 0.1;
    cosmos.hardening = new Crop.Hardening(30, 2, -2, 0.5, 0, 1, 30);
    farm.sowings.add(Farms.sowingUntil("a", 0, 1, 34));
    farm.minC[32] = -5;
    SeasonOutcome season = run();
    // As the first of these: six lost on the table by 30, two to the frost, one more by 35.
    assertThat(season.lost(0, Loss.OVERHELD)).isEqualTo(7);
    assertThat(season.lost(0, Loss.FROST)).isEqualTo(2);
    assertThat(season.lost(0, Loss.DUMPED)).isEqualTo(1);
  }

  @Test
  void whatIsLeftAtTheEndWasAlive() {
    cosmos.holdsDays = 38;
    cosmos.overheldLossPerDay = 0.1;
    cosmos.hardening = new Crop.Hardening(3, 2, -2, 0, 0, 1, 90);
    farm.sowings.add(Farms.sowing("a", 0, 1));
    SeasonOutcome season = run();
    // Ready on 15.33, it keeps to 53.33, and the season ends with day 59: 6.67 days too long,
    // chance 1 - 0.9^6.67 = 0.505, and P(X <= 5) is above a half by then, P(X <= 4) is not.
    assertThat(season.lost(0, Loss.OVERHELD)).isEqualTo(5);
    assertThat(season.lost(0, Loss.UNPLANTED)).isEqualTo(5);
  }

  @Test
  void aTrayThatHoldingKilledIsThrownOutWhenItWouldMove() {
    cosmos.holdsDays = 7;
    cosmos.overheldLossPerDay = 0.9;
    cosmos.hardening = new Crop.Hardening(3, 2, -2, 0, 0, 1, 30);
    farm.sowings.add(Farms.sowing("a", 0, 1));
    SeasonOutcome season = run();
    assertThat(season.lost(0, Loss.OVERHELD)).isEqualTo(10);
    assertThat(season.trays(0, TrayMove.MOVED_OUT)).isZero();
    assertThat(season.use(HOUSE, 30)).isZero();
  }

  @Test
  void aFullYardHoldsUpTheTables() {
    farm.house = 1;
    farm.yard = 1;
    farm.sowings.add(Farms.sowing("a", 0, 1, 40, 59));
    farm.sowings.add(Farms.sowing("b", 0, 1, 40, 59));
    farm.sowings.add(Farms.sowing("c", 0, 1, 40, 59));
    SeasonOutcome season = run();
    // a stands in the yard from 15 to 40; b, off the heat on 15 and ready on 25, waits 25 to 39; c
    // waits for a table from 5 on: on 25 to 39 it is b, waiting for the yard, that stands in its
    // way.
    assertThat(days(season, 0)).containsExactly(0, 5, -1, 15, 40);
    assertThat(days(season, 1)).containsExactly(0, 15, -1, 40, 44);
    assertThat(season.waited(RoomWait.HARDEN, 1, 0) + season.waited(RoomWait.HARDEN, 1, 1))
        .isEqualTo(15);
    assertThat(season.tablesBehindReady()).isEqualTo(15);
    assertThat(days(season, 2)).containsExactly(0, 40, -1, 50, 54);
  }
}
