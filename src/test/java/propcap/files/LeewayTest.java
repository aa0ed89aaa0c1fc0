package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Sowing;

/** The columns of a sowing plan that may be left out: what a better plan may change. */
class LeewayTest {
  @TempDir Path temp;
  private GrowersFolder folder;

  @BeforeEach
  void aGrowersFolder() {
    folder = new GrowersFolder(temp);
  }

  /** Adds columns to the plan: their names, and what the first row holds; the others are empty. */
  private void add(String names, String cells) {
    String[] lines = folder.text("sowings.csv").strip().split("\n", -1);
    StringBuilder text = new StringBuilder(lines[0] + "," + names + "\n");
    String empty = ",".repeat(names.split(",", -1).length);
    for (int i = 1; i < lines.length; i++) {
      text.append(lines[i]).append(i == 1 ? "," + cells : empty).append("\n");
    }
    folder.write("sowings.csv", text.toString());
  }

  @Test
  void aPlanWithoutThemSaysNothingOfThem() throws Exception {
    assertThat(folder.read().sowings())
        .allMatch(s -> s.leeway().equals(Sowing.Leeway.NOT_SAID) && s.germinateIn() == null);
  }

  @Test
  void theyAreReadWhereTheyAreGiven() throws Exception {
    add("sow-from,sow-to,goal", "2027-01-15,2027-02-10,95 %");
    Sowing first = folder.read().sowings().get(0);
    assertThat(first.leeway())
        .isEqualTo(new Sowing.Leeway(LocalDate.of(2027, 1, 15), LocalDate.of(2027, 2, 10), 0.95));
    assertThat(folder.read().sowings().get(1).leeway()).isEqualTo(Sowing.Leeway.NOT_SAID);
  }

  @Test
  void daysTheWrongWayRoundAreAFault() {
    add("sow-from,sow-to", "2027-02-15,2027-02-10");
    assertThat(folder.faults())
        .singleElement()
        .asString()
        .contains("sowings.csv:2")
        .contains("sow-to on or after sow-from");
  }

  @Test
  void daysOutsideTheSeasonAreAFault() {
    add("sow-from", "2028-02-15");
    assertThat(folder.faults()).singleElement().asString().contains("after the season");
  }

  /** The first row is sown on a day between these two. */
  @Test
  void daysThatLeaveOutTheDayOfThePlanAreAFault() {
    add("sow-from", "2027-06-30");
    assertThat(folder.faults()).singleElement().asString().contains("sow-from on or before sow");
    aGrowersFolder();
    add("sow-to", "2027-01-11");
    assertThat(folder.faults()).singleElement().asString().contains("sow-to on or after sow");
  }

  @Test
  void aPlaceInWhichTheCropDoesNotGerminateIsAFault() {
    add("germinate-in", "Nowhere");
    assertThat(folder.faults())
        .singleElement()
        .asString()
        .contains("sowings.csv:2")
        .contains("does not germinate");
  }

  @Test
  void aGoalWithoutAUnitIsAFault() {
    add("goal", "95");
    assertThat(folder.faults()).singleElement().asString().contains("a unit is missing");
  }
}
