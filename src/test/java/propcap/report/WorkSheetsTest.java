package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.WorkCalendar;
import propcap.study.WorkPlanning;

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

  /** Room for 2 of 4: the plan's 4 stand on their day, and that 2 wait stands beside them. */
  @Test
  void whatWaitsForRoomIsSaidBesideThePlan() throws InterruptedException {
    farm.mats = 2;
    farm.sowings.add(Farms.sowing("a", 2, 4));
    WeekSheets.Row row = week(calendar(), 0).blocks().get(0).rows().get(0);
    assertThat(row.days()).containsExactly("", "", "4", "", "", "", "");
    assertThat(row.likely()).isEqualTo("2 wait for room, to 8 Mar");
    assertThat(week(calendar(), 1).blocks())
        .extracting(WeekSheets.Block::job)
        .containsExactly("Take off heat", "Sow");
  }

  @Test
  void aMonthNamesWhatIsSown() throws InterruptedException {
    farm.sowings.add(Farms.sowing("a", 2, 4));
    WorkCalendar calendar = calendar();
    MonthSheets.Month march =
        MonthSheets.of(calendar, Period.of(calendar.scenario().season()), "test").months().get(0);
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

  @Test
  void wholeTraysAddUp() {
    assertThat(WholeTrays.of(new double[] {1.6, 1.6, 1.4, 0.4})).containsExactly(2, 2, 1, 0);
    assertThat(WholeTrays.of(new double[] {0.3, 0.3, 0.3})).containsExactly(1, 0, 0);
    assertThat(WholeTrays.of(new double[] {0.1, 0.2})).containsExactly(0, 0);
    assertThat(WholeTrays.of(new double[] {16, 0})).containsExactly(16, 0);
    assertThat(WholeTrays.of(new double[0])).isEmpty();
  }
}
