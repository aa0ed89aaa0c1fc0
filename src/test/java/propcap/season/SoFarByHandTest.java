package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.chance.Luck;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.LoggedEvent;
import propcap.farm.Loss;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.past.LogWalk;
import propcap.past.Logged;

/**
 * Seasons that go on from a log, by hand. Day 0 is Monday 1 March 2027, rounds are at 08:00, mats
 * and house stand at 20 C. A tray sown on day s shows at s + 8 h + 4.5 d and is found on day s+5;
 * from leaving on day l it grows for 10 days, and then hardens for three whole days. Every run
 * checks that each cell sown is counted once.
 */
class SoFarByHandTest {
  private final Farms farm = new Farms();
  private final Crops cosmos = new Crops();

  private Scenario on(int today, Logged... log) {
    farm.crops = List.of(cosmos.make());
    Scenario scenario = farm.make();
    LogWalk.Walked walked = LogWalk.walk(scenario, Farms.day(today), Logged.log(log));
    return scenario.withSoFar(
        new SoFar(
            Farms.day(today),
            walked.trays(),
            scenario.weather().get(0).first(today, scenario.season().start())));
  }

  private SeasonOutcome run(int today, Logged... log) {
    SeasonPlan plan = new SeasonPlan(on(today, log));
    return House.season(plan, plan.luck(1).reader().season(0));
  }

  private static int sum(SeasonOutcome season, int sowing) {
    int sum = season.onTime(sowing) + season.late(sowing);
    for (Loss loss : Loss.values()) {
      sum += season.lost(sowing, loss);
    }
    return sum;
  }

  @Test
  void ofATrayInTheHeatItsDaysGoOnFromTheDayOnWhichItWasSown() {
    farm.sowings.add(Farms.sowing("a", 2, 1));
    // Planned for day 2, sown on day 4, today is day 6: off heat on 9, out on 19, planted on 23.
    SeasonOutcome season = run(6, Logged.sown("a", 1, 4));
    assertThat(season.firstDay(0, TrayMove.SOWN)).isEqualTo(4);
    assertThat(season.firstDay(0, TrayMove.OFF_HEAT)).isEqualTo(9);
    assertThat(season.firstDay(0, TrayMove.MOVED_OUT)).isEqualTo(19);
    assertThat(season.firstDay(0, TrayMove.PLANTED_OUT)).isEqualTo(23);
    assertThat(season.onTime(0)).isEqualTo(10);
  }

  @Test
  void whatWasNotSownThoughItWasDueIsSownToday() {
    farm.sowings.add(Farms.sowing("a", 2, 2));
    SeasonOutcome season = run(6, Logged.sown("a", 1, 2));
    assertThat(season.trays(0, TrayMove.SOWN)).isEqualTo(2);
    assertThat(season.firstDay(0, TrayMove.SOWN)).isEqualTo(2);
    assertThat(season.lastDay(0, TrayMove.SOWN)).isEqualTo(6);
    assertThat(season.lastDay(0, TrayMove.PLANTED_OUT)).isEqualTo(25);
  }

  @Test
  void aStandThatWasCountedIsAllThatIsLeftAndTheRestNeverCame() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    // Off heat on 5, ready at 15.33, so out on 15 and planted on 19.
    SeasonOutcome season = run(12, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5, 8));
    assertThat(season.onTime(0)).isEqualTo(8);
    assertThat(season.lost(0, Loss.NO_SEEDLING)).isEqualTo(2);
    assertThat(season.firstDay(0, TrayMove.MOVED_OUT)).isEqualTo(15);
    assertThat(season.firstDay(0, TrayMove.PLANTED_OUT)).isEqualTo(19);
    assertThat(season.use(1, 5)).isEqualTo(1);
    assertThat(season.use(1, 14)).isEqualTo(1);
    assertThat(season.use(1, 15)).isZero();
  }

  @Test
  void nothingCountedIsAsThePlanHadIt() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    SeasonOutcome season =
        run(17, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.MOVED_OUT, 15));
    assertThat(season.onTime(0)).isEqualTo(10);
    assertThat(season.firstDay(0, TrayMove.PLANTED_OUT)).isEqualTo(19);
    assertThat(Runs.all(on(17), season))
        .isEqualTo(Runs.all(on(17), Runs.of(on(17).asPlanned(), 1, 1).get(0)));
  }

  /**
   * Plants held for more than five days after they were ready die at once. By the degree days they
   * were ready at 15.33 and would be held to 20.33, the very round on which they are planted.
   * Judged ready on day 14, they are held to 19.33.
   */
  @Test
  void holdingGoesOnFromTheDayOnWhichItWasReady() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    cosmos.holdsDays = 5;
    cosmos.overheldLossPerDay = 1;
    Logged moved = Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5);
    assertThat(run(18, moved.on(LoggedEvent.MOVED_OUT, 16)).onTime(0)).isEqualTo(10);
    SeasonOutcome judged =
        run(
            18,
            Logged.sown("a", 1, 0)
                .on(LoggedEvent.OFF_HEAT, 5)
                .on(LoggedEvent.READY, 14)
                .on(LoggedEvent.MOVED_OUT, 16));
    assertThat(judged.lost(0, Loss.OVERHELD)).isEqualTo(10);
    assertThat(judged.onTime(0)).isZero();
  }

  @Test
  void plantsThatWereCountedReadyLoseNothingMoreToGrowingOn() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    cosmos.loss = 1;
    SeasonOutcome season =
        run(15, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5, 9).on(LoggedEvent.READY, 14, 7));
    assertThat(season.lost(0, Loss.NO_SEEDLING)).isEqualTo(1);
    assertThat(season.lost(0, Loss.GROWING_ON)).isEqualTo(2);
    assertThat(season.onTime(0)).isEqualTo(7);
    // Not counted since, all are lost.
    assertThat(
            run(15, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5, 9)).lost(0, Loss.GROWING_ON))
        .isEqualTo(9);
  }

  @Test
  void potsGoOnFromThoseThatTook() {
    farm.sowings.add(Farms.sowing("a", 0, 1));
    // Ten days in pots, four to a tray.
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 4, 10, 7, 0);
    SeasonOutcome season =
        run(
            20,
            Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.POTTED_ON, 15, 9));
    assertThat(season.lost(0, Loss.POTTING)).isEqualTo(1);
    assertThat(season.use(1, 15)).isEqualTo(3);
    assertThat(season.firstDay(0, TrayMove.MOVED_OUT)).isEqualTo(25);
    assertThat(season.onTime(0)).isEqualTo(9);
  }

  @Test
  void whatWasPlantedIsOnTimeOrLateByItsDate() {
    farm.sowings.add(Farms.sowing("a", 0, 2, 0, 20));
    SeasonOutcome season =
        run(
            30,
            Logged.sown("a", 1, 0)
                .on(LoggedEvent.OFF_HEAT, 5)
                .on(LoggedEvent.MOVED_OUT, 15)
                .on(LoggedEvent.PLANTED_OUT, 20, 9),
            Logged.sown("a", 2, 0)
                .on(LoggedEvent.OFF_HEAT, 5)
                .on(LoggedEvent.MOVED_OUT, 15)
                .on(LoggedEvent.PLANTED_OUT, 21, 7));
    assertThat(season.onTime(0)).isEqualTo(9);
    assertThat(season.late(0)).isEqualTo(7);
    assertThat(season.lost(0, Loss.HARDENING)).isEqualTo(4);
  }

  @Test
  void aTrayThatFailedIsLostAndTheOneSownInItsPlaceGoesOn() {
    cosmos.germination = new Crop.Germination(0.5, 0, 0);
    cosmos.pullAfterDays = 8;
    cosmos.failBelow = 0.5;
    Sowing plain = Farms.sowing("a", 0, 1);
    farm.sowings.add(
        new Sowing(
            "a",
            plain.crop(),
            plain.lot(),
            plain.sow(),
            1,
            10,
            plain.bedFrom(),
            plain.bedBy(),
            null,
            Farms.day(30),
            null,
            Sowing.Leeway.NOT_SAID));
    Logged failed = Logged.sown("a", 1, 0).on(LoggedEvent.THROWN_OUT, 8);
    SeasonOutcome notYet = run(10, failed);
    assertThat(notYet.trays(0, TrayMove.SOWN)).isGreaterThanOrEqualTo(2);
    assertThat(notYet.lost(0, Loss.FAILED_TRAY)).isGreaterThanOrEqualTo(10);
    SeasonOutcome again =
        run(
            20,
            Logged.sown("a", 1, 0).on(LoggedEvent.THROWN_OUT, 8),
            Logged.sownAgain("a", 1, 9).on(LoggedEvent.OFF_HEAT, 14, 6));
    assertThat(again.trays(0, TrayMove.SOWN)).isEqualTo(2);
    assertThat(again.lost(0, Loss.FAILED_TRAY)).isEqualTo(10);
    assertThat(again.firstDay(0, TrayMove.MOVED_OUT)).isEqualTo(24);
    assertThat(again.onTime(0)).isEqualTo(6);
    assertThat(sum(again, 0)).isEqualTo(again.cellsSown(0)).isEqualTo(20);
  }

  /** With fewer than half of its cells it would have been thrown out on day 8, room or not. */
  @Test
  void aTrayStillInTheHeatAfterItWasDueToBePulledWasNotTooThin() {
    cosmos.germination = new Crop.Germination(0.5, 0, 0);
    cosmos.leaveAt = 0.8;
    cosmos.pullAfterDays = 8;
    cosmos.failBelow = 0.5;
    farm.house = 1;
    farm.sowings.add(Farms.sowing("a", 0, 2));
    SeasonPlan plan =
        new SeasonPlan(
            on(12, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 8), Logged.sown("a", 2, 0)));
    Luck.Reader reader = plan.luck(1).reader();
    for (int n = 0; n < 40; n++) {
      SeasonOutcome season = House.season(plan, reader.season(n));
      assertThat(season.lost(0, Loss.FAILED_TRAY)).isZero();
      assertThat(season.lost(0, Loss.NO_SEEDLING)).isLessThanOrEqualTo(10);
    }
  }

  @Test
  void onATableThatIsOverfullTheTraysStayAndTheNextWaitsUntilThereIsRoom() {
    farm.house = 1;
    farm.sowings.add(Farms.sowing("a", 0, 3));
    SeasonOutcome season =
        run(
            10,
            Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5),
            Logged.sown("a", 2, 0).on(LoggedEvent.OFF_HEAT, 6),
            Logged.sown("a", 3, 0));
    assertThat(season.use(1, 9)).isEqualTo(2);
    // Tray 1 leaves on 15, tray 2 on 16: only then there is a space for tray 3.
    assertThat(season.lastDay(0, TrayMove.OFF_HEAT)).isEqualTo(16);
    assertThat(season.use(1, 15)).isEqualTo(1);
    assertThat(season.use(1, 16)).isEqualTo(1);
    assertThat(season.onTime(0)).isEqualTo(30);
  }

  @Test
  void logsThatCannotBeHadByTheRulesEndAllTheSameAndEveryCellIsCounted() {
    farm.sowings.add(Farms.sowing("a", 0, 3));
    Logged atOnce =
        Logged.sown("a", 1, 0)
            .on(LoggedEvent.OFF_HEAT, 1)
            .on(LoggedEvent.MOVED_OUT, 2)
            .on(LoggedEvent.PLANTED_OUT, 3);
    Logged neverMoved = Logged.sown("a", 2, 0);
    Logged outAtOnce = Logged.sown("a", 3, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.READY, 6);
    for (double spread : new double[] {0, 0.1}) {
      cosmos.spread = spread;
      SeasonOutcome season = run(40, atOnce, neverMoved, outAtOnce);
      assertThat(season.cellsSown(0)).isEqualTo(30);
      assertThat(sum(season, 0)).isEqualTo(30);
      // The second never showed in 40 days, so the log has it; it is pulled today.
      assertThat(season.trays(0, TrayMove.SOWN)).isEqualTo(3);
    }
  }
}
