package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Labour.Extra;
import propcap.files.GrowersFolder;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.UnsavedTexts;

/** Weeks with extra people are changed in their own lines. */
class ExtraHandsTest {
  @TempDir Path folder;
  private GrowersFolder files;

  @BeforeEach
  void aFolder() {
    files = new GrowersFolder(folder);
    files.write(
        "weather.csv", GrowersFolder.weather(LocalDate.of(2018, 1, 1), LocalDate.of(2018, 8, 31)));
    files.write(
        "scenario.yaml",
        files.text("scenario.yaml")
            + """
            labour:
              hours: 12/day
              extra:   # from the school
                - {from: 2027-04-05, until: 2027-04-17, hours: 8/day}   # Easter
                - from: 2027-05-01
                  until: 2027-05-08   # a week
                  hours: 4/day
            """);
    files.write("what-if.yaml", "extends: scenario.yaml\n");
  }

  private ScenarioEditor editor(String name) {
    return new ScenarioEditor(files.path(name), UnsavedTexts.none());
  }

  private String text(ScenarioEditor editor, String name) throws Exception {
    return editor.unsaved().text(files.path(name));
  }

  @Test
  void aWeekIsChangedAddedAndTakenOut() throws Exception {
    ScenarioEditor editor = editor("scenario.yaml");
    editor.setExtraHands(0, Map.of("hours", "10/day"));
    editor.setExtraHands(1, Map.of("until", "2027-05-15"));
    assertThat(text(editor, "scenario.yaml"))
        .isEqualTo(
            files
                .text("scenario.yaml")
                .replace("hours: 8/day}", "hours: 10/day}")
                .replace("2027-05-08", "2027-05-15"));
    editor.addExtraHands(Map.of("from", "2027-06-01", "until", "2027-06-02", "hours", "5/day"));
    editor.removeExtraHands(0);
    assertThat(
            ScenarioReader.read(files.path("scenario.yaml"), editor.unsaved())
                .sound()
                .labour()
                .extra())
        .containsExactly(
            new Extra(LocalDate.of(2027, 5, 1), LocalDate.of(2027, 5, 15), 4),
            new Extra(LocalDate.of(2027, 6, 1), LocalDate.of(2027, 6, 2), 5));
    editor.removeExtraHands(1);
    editor.removeExtraHands(0);
    assertThat(text(editor, "scenario.yaml")).endsWith("labour:\n  hours: 12/day\n");
    assertThatThrownBy(() -> editor.removeExtraHands(0)).hasMessageContaining("row 1");
  }

  @Test
  void aWhatIfHasAllOfThem() throws Exception {
    ScenarioEditor editor = editor("what-if.yaml");
    editor.setExtraHands(1, Map.of("hours", "9/day"));
    assertThat(text(editor, "what-if.yaml"))
        .contains("{from: 2027-04-05, until: 2027-04-17, hours: 8/day}", "hours: 9/day");
    assertThat(editor.unsaved().texts()).hasSize(1);
  }

  @Test
  void theFirstBeginsTheList() throws Exception {
    GrowersFolder other = new GrowersFolder(folder);
    ScenarioEditor editor = new ScenarioEditor(other.path("scenario.yaml"), UnsavedTexts.none());
    editor.addExtraHands(Map.of("hours", "5/day"));
    assertThat(text(editor, "scenario.yaml")).endsWith("labour: {extra: [{hours: 5/day}]}\n");
  }

  @Test
  void aFaultStandsAtItsField() throws Exception {
    ScenarioEditor editor = editor("scenario.yaml");
    editor.setExtraHands(1, Map.of("until", "2027-04-01"));
    ScenarioReader.Reading reading =
        ScenarioReader.read(files.path("scenario.yaml"), editor.unsaved());
    assertThat(reading.faults()).hasSize(1);
    assertThat(reading.written().fieldOf(reading.faults().get(0)))
        .isEqualTo(new WrittenScenario.Field("", -1, "labour.extra.1.until"));
  }
}
