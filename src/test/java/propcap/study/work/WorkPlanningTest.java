package propcap.study.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.RandomScenarios;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Sowings;
import propcap.farm.TrayTask;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.Stats;
import propcap.study.work.WorkCalendar.Planned;
import propcap.study.work.WorkCalendar.Stint;
import propcap.study.work.WorkCalendar.Task;

/**
 * The calendar of farms on which nothing is left to chance, worked by hand. Day 0 is Monday 1 March
 * 2027. A tray sown on day s shows on day s+4 at 20:00 and is found on day s+5; it grows for 10
 * days and hardens for three whole ones.
 */
class WorkPlanningTest {
  private static final double SOW = 4;
  private static final double MOVE = 1;
  private static final double THIN = 6;
  private static final double POT_ON = 0.35;
  private static final double PLANT_OUT = 0.25;

  private final Farms farm = new Farms();
  private final Crops cosmos = new Crops();

  private Scenario scenario() {
    farm.crops.clear();
    farm.crops.add(cosmos.make());
    return farm.make()
        .withLabour(
            new Labour(
                Double.POSITIVE_INFINITY,
                new Labour.Minutes(SOW, MOVE, THIN, POT_ON, PLANT_OUT),
                List.of()));
  }

  private WorkCalendar calendar() throws InterruptedException {
    return calendar(scenario(), 3, 1);
  }

  private static WorkCalendar calendar(Scenario scenario, int seasons, int threads)
      throws InterruptedException {
    return WorkPlanning.calendar(scenario, new RunSettings(1, seasons, null, threads), done -> {});
  }

  private static Task task(WorkCalendar calendar, TrayTask job) {
    return calendar.tasks().stream().filter(t -> t.job() == job).findFirst().orElseThrow();
  }

  /** That a task falls on one day for sure, with all its trays. */
  private static void assertDone(
      WorkCalendar calendar,
      TrayTask job,
      int day,
      @Nullable String from,
      @Nullable String to,
      int trays,
      int plants,
      double minutes) {
    LocalDate date = Farms.day(day);
    Task task = task(calendar, job);
    assertThat(task.earliest()).as(job.word()).isEqualTo(date);
    assertThat(task.latest()).as(job.word()).isEqualTo(date);
    assertThat(task.days()).contains(new Period(date, date));
    assertThat(task.chance()).isEqualTo(1);
    assertThat(task.trays()).isEqualTo(Stats.always(trays, task.trays().seasons()));
    assertThat(task.stints()).hasSize(1);
    Stint stint = task.stints().get(0);
    assertThat(stint.date()).isEqualTo(date);
    assertThat(stint.from()).isEqualTo(from);
    assertThat(stint.to()).isEqualTo(to);
    assertThat(stint.trays()).isEqualTo(trays);
    assertThat(stint.meanTrays()).isEqualTo(trays);
    assertThat(stint.plants()).isEqualTo(plants);
    assertThat(stint.hours()).isCloseTo(minutes / 60, within(1e-12));
  }

  /** Sown 2, off the heat 7, out 17, hardened by 18, 19, 20, planted out 21. */
  @Test
  void fourTraysGoThroughTheHouse() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    WorkCalendar calendar = calendar();
    assertThat(calendar.tasks().stream().map(Task::job))
        .containsExactly(TrayTask.SOW, TrayTask.OFF_HEAT, TrayTask.MOVE_OUT, TrayTask.PLANT_OUT);
    assertDone(calendar, TrayTask.SOW, 2, null, "Mats", 4, 40, 4 * SOW);
    assertDone(calendar, TrayTask.OFF_HEAT, 7, "Mats", "House", 4, 40, 4 * MOVE);
    assertDone(calendar, TrayTask.MOVE_OUT, 17, "House", "Yard", 4, 40, 4 * MOVE);
    assertDone(calendar, TrayTask.PLANT_OUT, 21, "Yard", null, 4, 40, 40 * PLANT_OUT);
    assertThat(task(calendar, TrayTask.SOW).planned())
        .isEqualTo(new Planned(Farms.day(2), 0, 0, 0, 0));
    assertThat(task(calendar, TrayTask.OFF_HEAT).planned()).isNull();
    assertThat(calendar.days()).hasSize(60);
    for (WorkCalendar.Day day : calendar.days()) {
      double minutes =
          switch (farm.season.dayOf(day.date())) {
            case 2 -> 4 * SOW;
            case 7, 17 -> 4 * MOVE;
            case 21 -> 40 * PLANT_OUT;
            default -> 0;
          };
      assertThat(day.hours().mean()).isCloseTo(minutes / 60, within(1e-12));
      assertThat(day.hours().p90()).isCloseTo(minutes / 60, within(1e-12));
    }
  }

  @Test
  void traysWithSeveralSeedsACellAreThinnedOnTheTable() throws InterruptedException {
    cosmos.seedsPerCell = 2;
    farm.sowings.add(Farms.sowing("a", 2, 3));
    assertDone(calendar(), TrayTask.THIN, 7, "House", "House", 3, 30, 3 * THIN);
  }

  /** 10 plugs become 2 trays of pots for 5 on day 17, ready 4 days later, out on 25. */
  @Test
  void potsAreCarriedByTheTrayThatTheyFill() throws InterruptedException {
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 4, 7, 0);
    farm.sowings.add(Farms.sowing("a", 2, 1));
    WorkCalendar calendar = calendar();
    assertDone(calendar, TrayTask.POT_ON, 17, "House", "House", 1, 10, 10 * POT_ON);
    assertDone(calendar, TrayTask.MOVE_OUT, 21, "House", "Yard", 2, 10, 2 * MOVE);
    assertDone(calendar, TrayTask.PLANT_OUT, 25, "Yard", null, 2, 10, 10 * PLANT_OUT);
  }

  /** Germinated on the table, a tray stays where it is: nothing is carried. */
  @Test
  void aTrayThatStaysOnItsTableTakesNoHands() throws InterruptedException {
    cosmos.germinateIn = List.of("House");
    farm.sowings.add(Farms.sowing("a", 2, 2));
    assertDone(calendar(), TrayTask.OFF_HEAT, 7, "House", "House", 2, 20, 0);
  }

  /** Day 6 is a Sunday: due on it is sown on Monday 7; the rest follows, on working days. */
  @Test
  void nothingIsDoneOnRestDays() throws InterruptedException {
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SUNDAY));
    farm.sowings.add(Farms.sowing("a", 6, 1));
    WorkCalendar calendar = calendar();
    assertThat(task(calendar, TrayTask.SOW).planned())
        .isEqualTo(new Planned(Farms.day(7), 0, 0, 0, 0));
    // Found on 12; ready on 22; hardened by 23, 24, 25.
    assertDone(calendar, TrayTask.SOW, 7, null, "Mats", 1, 10, SOW);
    assertDone(calendar, TrayTask.OFF_HEAT, 12, "Mats", "House", 1, 10, MOVE);
    assertDone(calendar, TrayTask.MOVE_OUT, 22, "House", "Yard", 1, 10, MOVE);
    assertDone(calendar, TrayTask.PLANT_OUT, 26, "Yard", null, 1, 10, 10 * PLANT_OUT);
    assertThat(calendar.days().get(6).isWorking()).isFalse();
  }

  /** Room on the mats for 2 of 3: the third is sown when they have left, on day 7. */
  @Test
  void whatFindsNoRoomIsSownLater() throws InterruptedException {
    farm.mats = 2;
    farm.sowings.add(Farms.sowing("a", 2, 3));
    Task sow = task(calendar(), TrayTask.SOW);
    assertThat(sow.planned()).isEqualTo(new Planned(Farms.day(2), 1, 0, 5, 0));
    assertThat(sow.stints().stream().map(s -> s.date() + " " + s.trays()))
        .containsExactly(Farms.day(2) + " 2", Farms.day(7) + " 1");
    assertThat(sow.latest()).isEqualTo(Farms.day(7));
  }

  /**
   * Sowing takes 40 minutes of an hour a day: on day 2 one tray is sown and a second begun, of
   * which 20 minutes are owed to day 3. There 40 are left for the third.
   */
  @Test
  void whatIsOwedCountsOnTheDayOnWhichItIsDone() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 3));
    Scenario scenario =
        scenario().withLabour(new Labour(1, new Labour.Minutes(40, 0, 0, 0, 0), List.of()));
    WorkCalendar calendar = calendar(scenario, 3, 1);
    Task sow = task(calendar, TrayTask.SOW);
    assertThat(sow.planned()).isEqualTo(new Planned(Farms.day(2), 1, 0, 0, 1));
    assertThat(sow.stints().stream().map(s -> s.date() + " " + s.trays()))
        .containsExactly(Farms.day(2) + " 2", Farms.day(3) + " 1");
    assertThat(sow.stints().get(0).hours()).isCloseTo(1, within(1e-12));
    assertThat(sow.stints().get(1).hours()).isCloseTo(1, within(1e-12));
    assertThat(calendar.days().get(2).hours().mean()).isEqualTo(1);
    assertThat(calendar.days().get(3).hours().mean()).isEqualTo(1);
  }

  /** A tray of 90 minutes is begun on day 2 and owed to day 3, on which no other is begun. */
  @Test
  void aDayOnWhichWorkIsOnlyEndedHasItsHoursAndNoTrays() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 1));
    Scenario scenario =
        scenario().withLabour(new Labour(1, new Labour.Minutes(90, 0, 0, 0, 0), List.of()));
    assertThat(
            task(calendar(scenario, 3, 1), TrayTask.SOW).stints().stream()
                .map(s -> s.date() + " " + s.trays() + " " + s.hours()))
        .containsExactly(Farms.day(2) + " 1 1.0", Farms.day(3) + " 0 0.5");
  }

  /** Pulled after two days, on day 4, both trays show nothing and are sown again, then no more. */
  @Test
  void whatIsSownAgainIsToldApart() throws InterruptedException {
    cosmos.pullAfterDays = 2;
    farm.sowings.add(Sowings.sownAgainUntil(Farms.sowing("a", 2, 2), Farms.day(5)));
    WorkCalendar calendar = calendar();
    assertDone(calendar, TrayTask.SOW, 2, null, "Mats", 2, 20, 2 * SOW);
    assertDone(calendar, TrayTask.SOW_AGAIN, 4, null, "Mats", 2, 20, 2 * SOW);
    assertThat(task(calendar, TrayTask.SOW_AGAIN).planned()).isNull();
  }

  /**
   * On the one table nothing grows. The first tray stands there, the second, sown on day 7, stays
   * on the mats, and the third waits for them from day 2 to the last.
   */
  @Test
  void whatIsNeverSownIsToldToo() throws InterruptedException {
    farm.mats = 1;
    farm.house = 0;
    farm.morePlaces.add(new Place("Other", PlaceKind.TABLE, 1, new Climate.Constant(0), 0, null));
    farm.sowings.add(Farms.sowing("a", 2, 3));
    Task sow = task(calendar(), TrayTask.SOW);
    assertThat(sow.traysInAll()).isEqualTo(2);
    assertThat(sow.planned()).isEqualTo(new Planned(Farms.day(2), 1, 1, 5 + 58, 0));
  }

  /** On made-up farms with luck: sums agree, days are in order, rest days are empty. */
  @Test
  void theCalendarOfAnyFarmHoldsTogether() throws InterruptedException {
    for (long seed = 0; seed < 25; seed++) {
      Scenario scenario = RandomScenarios.from(seed);
      WorkCalendar calendar = calendar(scenario, 4, 2);
      for (Task task : calendar.tasks()) {
        assertThat(task.earliest()).isBeforeOrEqualTo(task.latest());
        assertThat(task.stints().stream().mapToDouble(Stint::meanTrays).sum())
            .isCloseTo(task.trays().mean(), within(1e-9));
        assertThat(task.stints())
            .allMatch(s -> scenario.rounds().isWorkingDay(s.date()) && s.hours() >= 0);
      }
      double byTask =
          calendar.tasks().stream()
              .flatMap(t -> t.stints().stream())
              .mapToDouble(Stint::hours)
              .sum();
      double byDay = calendar.days().stream().mapToDouble(d -> d.hours().mean()).sum();
      assertThat(byDay).isCloseTo(byTask, within(1e-6));
      WorkCalendar byFive = calendar(scenario, 4, 5);
      assertThat(byFive.tasks()).isEqualTo(calendar.tasks());
      assertThat(byFive.days()).isEqualTo(calendar.days());
    }
  }
}
