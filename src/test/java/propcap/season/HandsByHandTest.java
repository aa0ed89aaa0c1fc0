package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.chance.HandLuck;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Labour.Extra;
import propcap.farm.Labour.Minutes;
import propcap.farm.RoomWait;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;
import propcap.farm.WorkKind;

/**
 * Hours worked by hand from docs/model.md, on the farm of {@link SeasonByHandTest}: a tray sown on
 * day s leaves the heat on s+5, moves out on s+15 and is planted out, ten plants, on s+19. Most
 * days have six minutes.
 */
class HandsByHandTest {
  private static final double SIX_MINUTES = 0.1;

  private final Farms farm = new Farms();
  private final Crops cosmos = new Crops();

  private SeasonOutcome run(Labour labour) {
    farm.crops.clear();
    farm.crops.add(cosmos.make());
    Scenario scenario = farm.make().withLabour(labour);
    return House.season(new SeasonPlan(scenario), new HandLuck(scenario).make());
  }

  private static Labour sixMinutes(Minutes minutes, Extra... extra) {
    return new Labour(SIX_MINUTES, minutes, List.of(extra));
  }

  private static Minutes sowing(double minutes) {
    return new Minutes(minutes, 0, 0, 0, 0);
  }

  private static List<Integer> days(SeasonOutcome season, int sowing) {
    return IntStream.range(0, TrayMove.values().length)
        .mapToObj(m -> season.firstDay(sowing, TrayMove.values()[m]))
        .toList();
  }

  private static void assertMinutes(SeasonOutcome season, WorkKind work, int day, double minutes) {
    assertThat(60 * season.hours(work, day)).isCloseTo(minutes, within(1e-9));
  }

  private static int waited(SeasonOutcome season, WorkKind work, int sowing) {
    return IntStream.range(0, season.months())
        .map(m -> season.waitedForHands(work, sowing, m))
        .sum();
  }

  @Test
  void withoutABudgetNothingWaitsAndTheHoursAreCounted() {
    cosmos.seedsPerCell = 2;
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 10, 12, 0);
    farm.sowings.add(Farms.sowing("a", 2, 1));
    SeasonOutcome season = run(Labour.NOT_LIMITED);
    // Potted on 17 into two trays of five, ready ten days later, three fit days outside.
    assertThat(days(season, 0)).containsExactly(2, 7, 17, 27, 31);
    assertMinutes(season, WorkKind.SOW, 2, 3);
    assertMinutes(season, WorkKind.MOVE, 7, 0.67);
    assertMinutes(season, WorkKind.THIN, 7, 6);
    assertMinutes(season, WorkKind.POT_ON, 17, 10 * 0.21);
    assertMinutes(season, WorkKind.MOVE, 27, 2 * 0.67);
    assertMinutes(season, WorkKind.PLANT_OUT, 31, 10 * 0.25);
    assertThat(60 * season.hours()).isCloseTo(3 + 0.67 + 6 + 2.1 + 1.34 + 2.5, within(1e-9));
    assertThat(60 * season.hours(7)).isCloseTo(6.67, within(1e-9));
    assertThat(season.daysShortOfHands()).isZero();
  }

  @Test
  void whatTheHoursDoNotReachWaitsForTheNextWorkingDay() {
    // Day 3 is a Thursday.
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.THURSDAY));
    farm.sowings.add(Farms.sowing("a", 2, 5));
    SeasonOutcome season = run(sixMinutes(sowing(3)));
    // Two trays on 2, two on 4, one on 5.
    assertThat(season.firstDay(0, TrayMove.SOWN)).isEqualTo(2);
    assertThat(season.lastDay(0, TrayMove.SOWN)).isEqualTo(5);
    assertThat(season.daySum(0, TrayMove.SOWN)).isEqualTo(2 + 2 + 4 + 4 + 5);
    assertMinutes(season, WorkKind.SOW, 2, 6);
    assertMinutes(season, WorkKind.SOW, 3, 0);
    assertMinutes(season, WorkKind.SOW, 4, 6);
    assertMinutes(season, WorkKind.SOW, 5, 3);
    // Three wait after the round of 2, one after that of 4; none of them for room.
    assertThat(waited(season, WorkKind.SOW, 0)).isEqualTo(4);
    assertThat(Runs.waited(season, RoomWait.SOW, 0)).isZero();
    assertThat(season.isShortOfHands(2)).isTrue();
    assertThat(season.isShortOfHands(3)).isFalse();
    assertThat(season.isShortOfHands(5)).isFalse();
    assertThat(season.daysShortOfHands()).isEqualTo(2);
  }

  @Test
  void whatIsBegunIsFinishedFirstThingOnTheNextDay() {
    farm.sowings.add(Farms.sowing("a", 2, 3));
    SeasonOutcome season = run(sixMinutes(sowing(4)));
    // 2: tray 0 takes 4 minutes, tray 1 is begun in the 2 that are left and owes 2.
    // 3: those 2, then tray 2.
    assertThat(season.daySum(0, TrayMove.SOWN)).isEqualTo(2 + 2 + 3);
    assertMinutes(season, WorkKind.SOW, 2, 6);
    assertMinutes(season, WorkKind.SOW, 3, 6);
    assertMinutes(season, WorkKind.SOW, 4, 0);
    assertThat(waited(season, WorkKind.SOW, 0)).isEqualTo(1);
  }

  @Test
  void aTrayThatTakesMoreThanADayIsDoneAllTheSame() {
    farm.sowings.add(Farms.sowing("a", 2, 2));
    SeasonOutcome season = run(sixMinutes(sowing(15)));
    // 2: tray 0, of which 9 are owed; 3: 6 of them; 4: the last 3, and tray 1 is begun, which owes
    // 12: 5 and 6.
    assertThat(season.daySum(0, TrayMove.SOWN)).isEqualTo(2 + 4);
    for (int day = 2; day <= 6; day++) {
      assertMinutes(season, WorkKind.SOW, day, 6);
    }
    assertMinutes(season, WorkKind.SOW, 7, 0);
    assertThat(season.onTime(0)).isEqualTo(20);
  }

  @Test
  void theExitComesBeforeTheEntrance() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    farm.sowings.add(Farms.sowing("b", 19, 1));
    SeasonOutcome season = run(sixMinutes(new Minutes(1, 0, 0, 0, 1)));
    // 19: planting out takes 10 minutes, of which 4 are owed, and nothing is left to sow with.
    assertThat(days(season, 0)).containsExactly(0, 5, -1, 15, 19);
    assertThat(season.firstDay(1, TrayMove.SOWN)).isEqualTo(20);
    assertMinutes(season, WorkKind.PLANT_OUT, 19, 6);
    assertMinutes(season, WorkKind.PLANT_OUT, 20, 4);
    assertMinutes(season, WorkKind.SOW, 20, 1);
    assertThat(waited(season, WorkKind.SOW, 1)).isEqualTo(1);
  }

  @Test
  void theEarliestBedByHasTheHandsFirst() {
    farm.sowings.add(Farms.sowing("a", 2, 1, 0, 50));
    farm.sowings.add(Farms.sowing("b", 2, 1, 0, 40));
    SeasonOutcome season = run(sixMinutes(sowing(6)));
    assertThat(season.firstDay(0, TrayMove.SOWN)).isEqualTo(3);
    assertThat(season.firstDay(1, TrayMove.SOWN)).isEqualTo(2);
  }

  @Test
  void aTrayThatWaitsForHandsKeepsItsSpaceAndIsNoJam() {
    farm.mats = 2;
    farm.sowings.add(Farms.sowing("a", 0, 1));
    farm.sowings.add(Farms.sowing("b", 0, 1));
    farm.sowings.add(Farms.sowing("c", 5, 1));
    farm.sowings.add(Farms.sowing("d", 5, 1));
    SeasonOutcome season = run(sixMinutes(new Minutes(0, 6, 0, 0, 0)));
    // 5: "a" moves to the house and "c" has its space; "b" waits for hands, so "d" for room.
    // 6: "b" moves, "d" is sown.
    assertThat(season.firstDay(0, TrayMove.OFF_HEAT)).isEqualTo(5);
    assertThat(season.firstDay(1, TrayMove.OFF_HEAT)).isEqualTo(6);
    assertThat(season.firstDay(2, TrayMove.SOWN)).isEqualTo(5);
    assertThat(season.firstDay(3, TrayMove.SOWN)).isEqualTo(6);
    assertThat(waited(season, WorkKind.MOVE, 1)).isEqualTo(1);
    assertThat(Runs.waited(season, RoomWait.LEAVE, 1)).isZero();
    assertThat(Runs.waited(season, RoomWait.SOW, 3)).isEqualTo(1);
    assertThat(season.sowBehindOverdue()).isZero();
  }

  @Test
  void aTrayWithoutRoomWaitsForRoomThoughTheHoursAreGone() {
    farm.house = 1;
    farm.sowings.add(Farms.sowing("a", 0, 1));
    farm.sowings.add(Farms.sowing("b", 0, 1));
    SeasonOutcome season = run(sixMinutes(new Minutes(0, 6, 0, 0, 0)));
    // "a" has the house from 5 to 15, when moving it out takes all six minutes: "b" waits ten days
    // for room and on 15 for hands.
    assertThat(Runs.waited(season, RoomWait.LEAVE, 1)).isEqualTo(10);
    assertThat(waited(season, WorkKind.MOVE, 1)).isEqualTo(1);
    assertThat(season.firstDay(1, TrayMove.OFF_HEAT)).isEqualTo(16);
  }

  @Test
  void aTrayOfSeveralSeedsACellGoesNowhereBeforeItIsThinned() {
    cosmos.seedsPerCell = 2;
    cosmos.takesDays = 1;
    farm.sowings.add(Farms.sowing("a", 0, 3));
    SeasonOutcome season = run(sixMinutes(new Minutes(0, 0, 6, 0, 0)));
    // All leave the heat on 5 and are ready on 6; one is thinned on each of 5, 6 and 7. Moving out
    // comes before thinning in the round: they go on 6, 7 and 8.
    assertThat(season.daySum(0, TrayMove.OFF_HEAT)).isEqualTo(15);
    assertThat(season.daySum(0, TrayMove.MOVED_OUT)).isEqualTo(6 + 7 + 8);
    // Tray 1 waits on 5 and 6, tray 2 on 5, 6 and 7.
    assertThat(waited(season, WorkKind.THIN, 0)).isEqualTo(5);
    assertThat(waited(season, WorkKind.MOVE, 0)).isZero();
    assertThat(Runs.waited(season, RoomWait.HARDEN, 0)).isZero();
    assertMinutes(season, WorkKind.THIN, 6, 6);
    assertThat(season.tablesBehindReady()).isZero();
  }

  @Test
  void aTrayIsThinnedBeforeItIsPottedOn() {
    cosmos.seedsPerCell = 2;
    cosmos.takesDays = 1;
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 10, 10, 12, 0);
    farm.sowings.add(Farms.sowing("a", 0, 3));
    SeasonOutcome season = run(sixMinutes(new Minutes(0, 0, 6, 0, 0)));
    // Thinned on 5, 6 and 7, which comes before potting on in the round; ready on 6.
    assertThat(season.daySum(0, TrayMove.POTTED_ON)).isEqualTo(6 + 6 + 7);
    assertThat(waited(season, WorkKind.THIN, 0)).isEqualTo(2 + 1);
  }

  @Test
  void aTrayThatGerminatesOnItsTableIsNotCarried() {
    cosmos.germinateIn = List.of("House");
    farm.sowings.add(Farms.sowing("a", 0, 1));
    SeasonOutcome season = run(sixMinutes(new Minutes(0, 1, 0, 0, 0)));
    assertMinutes(season, WorkKind.MOVE, 5, 0);
    assertMinutes(season, WorkKind.MOVE, 15, 1);
  }

  @Test
  void extraPeopleWorkOnTheirDays() {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    Extra onDayThree = new Extra(Farms.day(3), Farms.day(3), 2 * SIX_MINUTES);
    SeasonOutcome season = run(sixMinutes(sowing(6), onDayThree));
    assertThat(season.daySum(0, TrayMove.SOWN)).isEqualTo(2 + 3 + 3 + 3);
    assertMinutes(season, WorkKind.SOW, 3, 18);
  }

  @Test
  void withoutHoursOnlyWhatTakesNoTimeIsDone() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    Minutes planting = new Minutes(0, 0, 0, 0, 1);
    SeasonOutcome season = run(new Labour(0, planting, List.of()));
    assertThat(days(season, 0)).containsExactly(0, 5, -1, 15, -1);
    assertThat(season.lost(0, propcap.farm.Loss.UNPLANTED)).isEqualTo(10);
    // From 19 to the last day, 59.
    assertThat(waited(season, WorkKind.PLANT_OUT, 0)).isEqualTo(41);
    assertThat(season.hours()).isZero();
  }

  @Test
  void plantsThatWaitForHandsAreHeldOn() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    cosmos.holdsDays = 4;
    cosmos.overheldLossPerDay = 1;
    Minutes planting = new Minutes(0, 0, 0, 0, 1);
    // Ready on 15, kept until 19: planted out on 19, or all is lost.
    assertThat(run(new Labour(1, planting, List.of())).onTime(0)).isEqualTo(10);
    Extra onDayTwenty = new Extra(Farms.day(20), Farms.day(20), 1);
    assertThat(run(new Labour(0, planting, List.of(onDayTwenty))).onTime(0)).isZero();
  }
}
