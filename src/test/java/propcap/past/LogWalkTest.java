package propcap.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.LoggedEvent;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Rounds;
import propcap.farm.TrayPast;

/**
 * Logs walked through by hand: day 0 is Monday 1 March 2027, a round each day, and the crop may go
 * out from the first day on.
 */
class LogWalkTest {
  private final Farms farm = new Farms();
  private final Crops cosmos = new Crops();

  LogWalkTest() {
    farm.sowings.add(Farms.sowing("a", 0, 3));
  }

  private LogWalk.Walked walk(int today, Logged... log) {
    farm.crops = List.of(cosmos.make());
    return LogWalk.walk(farm.make(), Farms.day(today), Logged.log(log));
  }

  private static Place place(String name, PlaceKind kind, int spaces) {
    return new Place(name, kind, spaces, new Climate.Constant(20), 0, null);
  }

  @Test
  void aTrayThatStayedInTheHeatThoughThereWasRoomWasNotDueUpToTheLastRound() {
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SUNDAY));
    // Today is Monday 8: the last round was on Saturday 5.
    TrayPast tray = walk(7, Logged.sown("a", 1, 0)).trays().get(0);
    assertThat(tray.notDueInHeat()).isEqualTo(5);
    assertThat(tray.standsIn()).contains("Mats");
    assertThat(tray.spaces()).isEqualTo(1);
  }

  @Test
  void whileTheTableIsFullNothingIsKnownOfATrayInTheHeat() {
    farm.house = 1;
    List<TrayPast> trays =
        walk(
                12,
                Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5),
                Logged.sown("a", 2, 0),
                Logged.sown("a", 3, 1))
            .trays();
    // On day 5 it was tray 1's turn first: it took the one space.
    assertThat(trays.get(0).notDueInHeat()).isEqualTo(4);
    assertThat(trays.get(1).notDueInHeat()).isEqualTo(4);
    assertThat(trays.get(2).notDueInHeat()).isEqualTo(4);
  }

  /** A move takes 30 minutes, and there are 36 of a day, then 6: one on day 5, the rest owed. */
  @Test
  void whereHandsMayHaveBeenLackingNothingIsKnownOfATrayThatStayed() {
    farm.labour = new Labour(0.6, new Labour.Minutes(1, 30, 0, 0, 0), List.of());
    Logged first = Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5);
    Logged second = Logged.sown("a", 2, 0).on(LoggedEvent.OFF_HEAT, 5);
    Logged stays = Logged.sown("a", 3, 0);
    assertThat(walk(6, first, stays).trays().get(1).notDueInHeat()).isEqualTo(5);
    // Two moves are more than the day has, and 24 minutes of the next day's are owed to them.
    assertThat(walk(6, first, second, stays).trays().get(2).notDueInHeat()).isEqualTo(4);
    assertThat(walk(7, first, second, stays).trays().get(2).notDueInHeat()).isEqualTo(6);
  }

  @Test
  void whatIsOwedToALongPieceOfWorkLeavesNoHandsForDays() {
    farm.labour = new Labour(0.1, new Labour.Minutes(0, 30, 0, 0, 0), List.of());
    Logged first = Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5);
    Logged stays = Logged.sown("a", 2, 0);
    // 30 minutes at 6 a day: days 5 to 9 are used up.
    assertThat(walk(10, first, stays).trays().get(1).notDueInHeat()).isEqualTo(4);
    assertThat(walk(11, first, stays).trays().get(1).notDueInHeat()).isEqualTo(10);
  }

  /** A log does not tell when a tray of several seeds a cell was thinned. */
  @Test
  void thinningThatMayHaveBeenDoneCountsUntilThereSurelyWereHandsForIt() {
    cosmos.seedsPerCell = 2;
    farm.labour = new Labour(0.4, new Labour.Minutes(0, 10, 15, 0, 0), List.of());
    Logged first = Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5);
    Logged stays = Logged.sown("a", 2, 0);
    // Day 5: 10 minutes and perhaps 15 of 24. Day 6: 1 owed and perhaps 15, so it is surely
    // thinned.
    assertThat(walk(6, first, stays).trays().get(1).notDueInHeat()).isEqualTo(4);
    assertThat(walk(7, first, stays).trays().get(1).notDueInHeat()).isEqualTo(6);
  }

  /** It may have gone only after the others had their turn: by the log nobody knows. */
  @Test
  void onTheDayOnWhichATrayIsThrownOutItsSpaceIsNoSureRoom() {
    farm.house = 1;
    Logged waits = Logged.sown("a", 2, 0);
    Logged dies = Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.THROWN_OUT, 8);
    assertThat(walk(9, dies, waits).trays().get(1).notDueInHeat()).isEqualTo(4);
    assertThat(walk(10, dies, waits).trays().get(1).notDueInHeat()).isEqualTo(9);
  }

  @Test
  void aTrayWhoseTurnCameBeforeTheLastSpaceWasTakenWasNotDue() {
    farm.house = 1;
    List<TrayPast> trays =
        walk(12, Logged.sown("a", 1, 0), Logged.sown("a", 2, 0).on(LoggedEvent.OFF_HEAT, 5))
            .trays();
    assertThat(trays.get(0).notDueInHeat()).isEqualTo(5);
    assertThat(trays.get(1).notDueInHeat()).isEqualTo(4);
  }

  @Test
  void theSowingWhoseBedIsWantedFirstHasItsTurnFirst() {
    farm.house = 1;
    farm.sowings.clear();
    farm.sowings.add(Farms.sowing("a", 0, 1, 0, 50));
    farm.sowings.add(Farms.sowing("b", 0, 1, 0, 40));
    List<TrayPast> trays =
        walk(12, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5), Logged.sown("b", 1, 0))
            .trays();
    assertThat(trays.get(1).notDueInHeat()).isEqualTo(5);
  }

  @Test
  void aTrayThatMovedOutBecameReadyAfterTheLastRoundWithRoomBeforeAndByItsOwn() {
    TrayPast tray =
        walk(20, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.MOVED_OUT, 15))
            .trays()
            .get(0);
    assertThat(tray.readyAfter()).isEqualTo(14);
    assertThat(tray.readyBy()).isEqualTo(15);
  }

  @Test
  void aFullYardLeavesOpenSinceWhenATrayWasReady() {
    farm.yard = 1;
    List<TrayPast> trays =
        walk(
                20,
                Logged.sown("a", 1, 0)
                    .on(LoggedEvent.OFF_HEAT, 5)
                    .on(LoggedEvent.MOVED_OUT, 12)
                    .on(LoggedEvent.PLANTED_OUT, 16),
                Logged.sown("a", 2, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.MOVED_OUT, 16),
                Logged.sown("a", 3, 0).on(LoggedEvent.OFF_HEAT, 5))
            .trays();
    // Planting out comes before moving out, so the space was free again on day 16, for tray 2.
    assertThat(trays.get(1).readyAfter()).isEqualTo(11);
    assertThat(trays.get(1).readyBy()).isEqualTo(16);
    assertThat(trays.get(2).readyAfter()).isEqualTo(11);
    assertThat(trays.get(2).readyBy()).isInfinite();
  }

  /** Of 10 plants 8 took: they stood in 5 pairs of pots, or in 4, and a second tray needs 5. */
  @Test
  void potsMayHaveFilledMoreSpacesThanThePlantsThatTookTell() {
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 2, 10, 7, 0.1);
    Logged first =
        Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.POTTED_ON, 15, 8);
    Logged second = Logged.sown("a", 2, 0).on(LoggedEvent.OFF_HEAT, 5);
    farm.house = 9;
    assertThat(walk(20, first, second).trays().get(1).readyAfter()).isEqualTo(14);
    farm.house = 10;
    assertThat(walk(20, first, second).trays().get(1).readyAfter()).isEqualTo(19);
  }

  @Test
  void aRowReadySaysItOutright() {
    TrayPast tray =
        walk(
                20,
                Logged.sown("a", 1, 0)
                    .on(LoggedEvent.OFF_HEAT, 5)
                    .on(LoggedEvent.READY, 13)
                    .on(LoggedEvent.MOVED_OUT, 17))
            .trays()
            .get(0);
    assertThat(tray.readyAfter()).isEqualTo(12);
    assertThat(tray.readyBy()).isEqualTo(13);
  }

  @Test
  void anEmptyPlaceIsTheFirstThatTheRoundWouldTakeWithRoom() {
    farm.mats = 1;
    farm.house = 1;
    farm.morePlaces.add(place("Chamber", PlaceKind.CHAMBER, 5));
    farm.morePlaces.add(place("House 2", PlaceKind.TABLE, 5));
    cosmos.germinateIn = List.of("Mats", "Chamber");
    List<TrayPast> trays =
        walk(
                10,
                Logged.sown("a", 1, 0),
                Logged.sown("a", 2, 0).on(LoggedEvent.OFF_HEAT, 5),
                Logged.sown("a", 3, 0).on(LoggedEvent.OFF_HEAT, 5))
            .trays();
    assertThat(trays.get(0).standsIn()).contains("Mats");
    assertThat(trays.get(1).moves().get(0).place()).isEqualTo("Chamber");
    assertThat(trays.get(1).standsIn()).contains("House");
    assertThat(trays.get(2).standsIn()).contains("House 2");
  }

  @Test
  void aPlaceThatIsOverfullIsToldOnceWithItsTraysAndTheRowThatMadeItSo() {
    farm.house = 1;
    List<LogWalk.Overfull> overfull =
        walk(
                20,
                Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5),
                Logged.sown("a", 2, 0).on(LoggedEvent.OFF_HEAT, 6),
                Logged.sown("a", 3, 0).on(LoggedEvent.OFF_HEAT, 7))
            .overfull();
    assertThat(overfull)
        .containsExactly(new LogWalk.Overfull("House", Farms.day(6), 1, List.of("a 1", "a 2"), 3));
    farm.house = 3;
    assertThat(walk(20, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5)).overfull()).isEmpty();
  }
}
