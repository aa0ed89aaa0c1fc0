package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.PlanNeeds;
import propcap.farm.Sowing;
import propcap.farm.SowingNeed;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.TrayLogReader;
import propcap.files.text.FaultsException;
import propcap.files.text.UnsavedTexts;

/** A sowing plan of which dates and trays are left to be found. */
class SowingNeedsTest {
  @TempDir Path temp;
  private GrowersFolder folder;

  @BeforeEach
  void aGrowersFolder() {
    folder = new GrowersFolder(temp);
  }

  private ScenarioReader.Reading read() {
    return ScenarioReader.read(folder.path("scenario.yaml"), UnsavedTexts.none());
  }

  /** Empties cells of a row of the plan, counted from 1 below its header. */
  private String empty(int row, String... columns) {
    String[] lines = folder.text("sowings.csv").strip().split("\n", -1);
    String[] names = lines[0].split(",", -1);
    String[] cells = lines[row].split(",", -1);
    for (String column : columns) {
      cells[List.of(names).indexOf(column)] = "";
    }
    lines[row] = String.join(",", cells);
    folder.write("sowings.csv", String.join("\n", lines) + "\n");
    return cells[0];
  }

  @Test
  void aPlanThatIsWrittenToTheLastCellLeavesNothingToFind() throws Exception {
    assertThat(read().soundNeeds().needs()).isEmpty();
    assertThat(read().soundNeeds().scenario().sowings()).isEqualTo(read().sound().sowings());
  }

  @Test
  void emptyCellsAreHandedOnByTheirRows() throws Exception {
    String both = empty(1, "sow", "trays");
    String trays = empty(2, "trays");
    PlanNeeds needs = read().soundNeeds();
    assertThat(needs.needs())
        .containsExactly(new SowingNeed(both, true, true), new SowingNeed(trays, false, true));
    Sowing first = needs.scenario().sowings().get(0);
    assertThat(first.sow()).isEqualTo(needs.scenario().season().start());
    assertThat(first.trays()).isOne();
    assertThat(read().warnings()).isEmpty();
  }

  @Test
  void toAllOthersTheyAreFaultsToldAtOnce() {
    empty(1, "sow", "trays");
    empty(2, "sow");
    assertThat(read().scenario()).isEmpty();
    assertThat(read().others()).isEmpty();
    assertThat(read().faults()).hasSize(3);
    assertThatExceptionOfType(FaultsException.class).isThrownBy(() -> read().sound());
  }

  @Test
  void anotherFaultStopsThoseWhoFindThemToo() {
    empty(1, "sow", "plants-needed");
    assertThat(read().others()).singleElement().asString().contains("plants-needed of");
    assertThat(read().faults()).hasSize(2);
    assertThatExceptionOfType(FaultsException.class)
        .isThrownBy(() -> read().soundNeeds())
        .satisfies(e -> assertThat(e.faults()).hasSize(1));
  }

  /** What is not there is no cell that is empty: the table lacks a column. */
  @Test
  void aPlanWithoutTheColumnsIsStillAFault() {
    folder.write("sowings.csv", folder.text("sowings.csv").replace(",sow,", ",sown,"));
    assertThat(read().needs()).isEmpty();
    assertThat(read().others()).isNotEmpty();
  }

  /** A log of trays needs to know what was sown. */
  @Test
  void aLogOfTraysStopsForThem() {
    String id = empty(1, "trays");
    folder.write("log.csv", "sowing,tray,event,date,plants\n" + id + ",1,sown,2027-02-08,\n");
    assertThatExceptionOfType(FaultsException.class)
        .isThrownBy(() -> TrayLogReader.read(folder.path("log.csv"), folder.path("scenario.yaml")))
        .satisfies(e -> assertThat(e.faults().toString()).contains("trays of " + id + " is empty"));
  }

  /** So may a scenario that changes another fill them in. */
  @Test
  void aScenarioThatExtendsItMayFillThemIn() throws Exception {
    String id = empty(1, "sow", "trays");
    folder.write(
        "filled.yaml",
        "extends: scenario.yaml\nsowings:\n  - {match: " + id + ", sow: 2027-02-08, trays: 12}\n");
    Sowing filled = ScenarioReader.read(folder.path("filled.yaml")).sowings().get(0);
    assertThat(filled.trays()).isEqualTo(12);
  }
}
