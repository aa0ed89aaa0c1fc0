package propcap.report.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Sowing;
import propcap.farm.TrayTask;
import propcap.report.kit.Lines;
import propcap.report.kit.Templates;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkPlanning;

/**
 * The sheets of a farm without luck: sown on day 2, off the heat on 7, out on 17, planted on 21.
 */
class WorkSheetsTest {
  private final Farms farm = new Farms();

  private WorkCalendar calendar() throws InterruptedException {
    farm.crops.clear();
    farm.crops.add(new Crops().make());
    return WorkPlanning.calendar(farm.make(), new RunSettings(1, 2, null, 1), done -> {});
  }

  private static WeekSheets.Week week(WorkCalendar calendar, int number) {
    return WeekSheets.of(calendar, Period.of(calendar.scenario().season()), "test")
        .weeks()
        .get(number);
  }

  @Test
  void aWeeksSheetHasEachDaysTrays() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    WeekSheets.Week first = week(calendar(), 0);
    assertThat(first.name()).isEqualTo("Week 9");
    assertThat(first.dates()).isEqualTo("1–7 Mar 2027");
    assertThat(first.blocks()).extracting(WeekSheets.Block::job).containsExactly("Sow");
    WeekSheets.Row row = first.blocks().get(0).rows().get(0);
    assertThat(row.sowing()).isEqualTo("a");
    assertThat(row.route()).isEqualTo("into Mats");
    assertThat(row.crop()).isEqualTo("cosmos, lot lot");
    assertThat(row.days()).containsExactly("", "", "4", "", "", "", "");
    assertThat(row.likely()).isEqualTo("as planned");
    WeekSheets.Week second = week(calendar(), 1);
    assertThat(second.blocks().get(0).rows().get(0).days())
        .containsExactly("4", "", "", "", "", "", "");
    assertThat(second.blocks().get(0).rows().get(0).route()).isEqualTo("Mats → House");
  }

  /** Room for 2 of 4: 2 stand on the day of the plan, and 2 where they are sown. */
  @Test
  void whatWaitsForRoomStandsWhereItIsSown() throws InterruptedException {
    farm.mats = 2;
    farm.sowings.add(Farms.sowing("a", 2, 4));
    WeekSheets.Row row = week(calendar(), 0).blocks().get(0).rows().get(0);
    assertThat(row.days()).containsExactly("", "", "2", "", "", "", "");
    assertThat(row.likely()).isEqualTo("2 wait for room, to 8 Mar");
    List<WeekSheets.Block> second = week(calendar(), 1).blocks();
    assertThat(second).extracting(WeekSheets.Block::job).containsExactly("Take off heat", "Sow");
    WeekSheets.Row later = second.get(1).rows().get(0);
    assertThat(later.days()).containsExactly("2", "", "", "", "", "", "");
    assertThat(later.likely()).isEqualTo("planned for 3 Mar");
    assertThat(ToldWork.headlines(calendar(), Period.of(farm.season)).get(0))
        .isEqualTo("Sow: 4 trays (planned: a 4; 2 not on their day, for lack of room)");
    assertThat(march(calendar()).weeks().get(0).days().get(2).lines())
        .containsExactly(new MonthSheets.Line("Sow", "a 2 of 4"));
    assertThat(march(calendar()).weeks().get(1).days().get(0).lines())
        .containsExactly(new MonthSheets.Line("Off heat", "2"), new MonthSheets.Line("Sow", "a 2"));
  }

  /** On a phone the days stand one below the other, each with its own trays. */
  @Test
  void aWeekByDayHasTheSameTrays() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    farm.sowings.add(Farms.sowing("b", 3, 1));
    WeekSheets.Week first = week(calendar(), 0);
    assertThat(first.byDay()).hasSize(7);
    WeekSheets.DayList wednesday = first.byDay().get(2);
    assertThat(wednesday.day().day()).isEqualTo("Wed");
    assertThat(wednesday.jobs())
        .singleElement()
        .satisfies(
            block -> {
              assertThat(block.job()).isEqualTo("Sow");
              assertThat(block.rows())
                  .singleElement()
                  .satisfies(row -> assertThat(wednesday.trays(row)).isEqualTo("4"))
                  .satisfies(row -> assertThat(wednesday.unit(row)).isEqualTo("trays"));
            });
    assertThat(first.byDay().get(3).jobs().get(0).rows())
        .extracting(WeekSheets.Row::sowing)
        .containsExactly("b");
    assertThat(first.byDay().get(0).jobs()).isEmpty();
    assertThat(Templates.fill("weeks.jte", new WeekSheets("x", "1", List.of(first))))
        .contains("<li><b>4 <small>trays</small></b>", "<li><b>1 <small>tray</small></b>");
  }

  @Test
  void eachJobHasTheWordThatTheLogReadsBesideIt() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    farm.sowings.add(Farms.sowing("b", 9, 4));
    assertThat(week(calendar(), 1).blocks())
        .extracting(WeekSheets.Block::event)
        .containsExactly("off-heat", "sown");
    for (TrayTask job : TrayTask.values()) {
      assertThat(job.logged().isEmpty()).as("%s", job).isEqualTo(job == TrayTask.THIN);
    }
  }

  /** Half an hour a day, a quarter a tray: 2 of 4 on the day of the plan, 2 on the next. */
  @Test
  void whatWaitsForHandsIsNotSaidToWaitForRoom() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    assertThat(likelyWith(0.5)).isEqualTo("2 wait for hands, to 4 Mar");
    // Room for 3: one waits for a day for hands, one for room until 8 March.
    farm.mats = 3;
    assertThat(likelyWith(0.5)).isEqualTo("2 wait for room and hands, to 8 Mar");
    assertThat(likelyWith(0)).isEqualTo("4 never sown, for lack of hands");
  }

  private String likelyWith(double hoursPerDay) throws InterruptedException {
    farm.crops.clear();
    farm.crops.add(new Crops().make());
    Labour labour = new Labour(hoursPerDay, new Labour.Minutes(15, 0, 0, 0, 0), List.of());
    WorkCalendar calendar =
        WorkPlanning.calendar(
            farm.make().withLabour(labour), new RunSettings(1, 2, null, 1), done -> {});
    return week(calendar, 0).blocks().get(0).rows().get(0).likely();
  }

  private static MonthSheets.Month march(WorkCalendar calendar) {
    return MonthSheets.of(calendar, Period.of(calendar.scenario().season()), "test")
        .months()
        .get(0);
  }

  /** All seven jobs, and names so long that they would push the hours off the terminal. */
  @ParameterizedTest
  @CsvSource({"2, planned: a rather long name", "3, planned: a rather long name", "4, planned: 8;"})
  void allWorkFitsOnTheTerminal(int sowings, String planned) throws InterruptedException {
    Crops cosmos = new Crops();
    cosmos.seedsPerCell = 2;
    cosmos.germinateIn = List.of("Mats", "Cold");
    cosmos.pullAfterDays = 10;
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 4, 7, 0);
    farm.mats = 3;
    farm.morePlaces.add(new Place("Cold", PlaceKind.TABLE, 1, new Climate.Constant(5), 0, null));
    for (int i = 0; i < sowings; i++) {
      Sowing a = Farms.sowing("a rather long name " + i + " of it", 2, 2);
      farm.sowings.add(
          new Sowing(
              a.id(),
              a.crop(),
              a.lot(),
              a.sow(),
              2,
              10,
              a.bedFrom(),
              a.bedBy(),
              null,
              Farms.day(30),
              null,
              Sowing.Leeway.NOT_SAID));
    }
    farm.crops.clear();
    farm.crops.add(cosmos.make());
    WorkCalendar calendar =
        WorkPlanning.calendar(farm.make(), new RunSettings(1, 2, null, 1), done -> {});
    List<String> lines = ToldWork.headlines(calendar, Period.of(farm.season));
    assertThat(lines).hasSizeLessThanOrEqualTo(Lines.MOST);
    assertThat(lines.get(0)).contains(planned);
    for (TrayTask job : TrayTask.values()) {
      assertThat(lines).anyMatch(line -> line.startsWith(WorkWords.job(job) + ": "));
    }
    assertThat(lines).anyMatch(line -> line.startsWith("Work: "));
  }

  @Test
  void aMonthNamesWhatIsSown() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    WorkCalendar calendar = calendar();
    MonthSheets.Month march = march(calendar);
    assertThat(march.name()).isEqualTo("March 2027");
    List<MonthSheets.Day> first = march.weeks().get(0).days();
    assertThat(first.get(2).lines()).containsExactly(new MonthSheets.Line("Sow", "a 4"));
    assertThat(march.weeks().get(1).days().get(0).lines())
        .containsExactly(new MonthSheets.Line("Off heat", "4"));
  }

  @Test
  void everyTraySownGetsItsLabel() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    WorkCalendar calendar = calendar();
    Period all = Period.of(calendar.scenario().season());
    TrayLabels labels = TrayLabels.of(calendar, all, new LabelSheet(70, 37, 3, 1), "test");
    assertThat(labels.sheets()).extracting(List::size).containsExactly(3, 1);
    assertThat(labels.sheets().get(1))
        .containsExactly(
            new TrayLabels.Label(
                "a", "cosmos, lot lot", "4 / 4", "Wed 3 Mar", "Mats", "Mon 8 Mar"));
  }

  /** Room for 3 of 4: the fourth's label is of the week in which it is sown. */
  @Test
  void aLabelHasTheDayOnWhichItsTrayIsSown() throws InterruptedException {
    farm.mats = 3;
    farm.sowings.add(Farms.sowing("a", 2, 4));
    Period second = new Period(Farms.day(7), Farms.day(13));
    assertThat(TrayLabels.of(calendar(), second, LabelSheet.COMMON, "test").sheets())
        .containsExactly(
            List.of(
                new TrayLabels.Label(
                    "a", "cosmos, lot lot", "4 / 4", "Mon 8 Mar", "Mats", "Sat 13 Mar")));
  }

  @ParameterizedTest
  @CsvSource({
    "70x37mm, 3, 8, 24",
    "70 x 37 mm, 3, 8, 24",
    "63.5x38.1mm, 3, 7, 21",
    "105x148mm, 2, 2, 4"
  })
  void labelsAreReadAsTheyAreSold(String size, int columns, int rows, int labels) {
    assertThat(LabelSheet.of(size, columns, rows).labels()).isEqualTo(labels);
  }

  @ParameterizedTest
  @CsvSource({
    "70x37, 3, 8, such as 70x37mm",
    "70mm, 3, 8, such as 70x37mm",
    "-70x37mm, 3, 8, such as 70x37mm",
    "70x37mm, 4, 8, do not fit on A4",
    "70x37mm, 3, 9, do not fit on A4",
    "70x37mm, 0, 8, at least one",
    "20x10mm, 3, 8, too small to read"
  })
  void labelsThatNoPageHoldsAreRefused(String size, int columns, int rows, String why) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LabelSheet.of(size, columns, rows))
        .withMessageContaining(why);
  }
}
