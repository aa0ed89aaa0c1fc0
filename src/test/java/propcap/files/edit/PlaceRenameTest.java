package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.files.GrowersFolder;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.UnsavedTexts;

/** A place that is renamed is renamed in all that names it, and nothing else is touched. */
class PlaceRenameTest {
  @TempDir Path folder;
  private GrowersFolder files;

  @BeforeEach
  void aFolder() {
    files = new GrowersFolder(folder);
    files.write(
        "weather.csv", GrowersFolder.weather(LocalDate.of(2018, 1, 1), LocalDate.of(2018, 8, 31)));
    files.change(
        "scenario.yaml",
        "places:\n",
        "so-far: log.csv   # kept in the shed\nplaces:\n  # 'Chamber' smells of moss.\n");
    files.write(
        "log.csv",
        """
        sowing,tray,event,date,plants,place,trays
        # Chamber is the name of a place; this is a note.
        onion-1,,sown,2027-01-18,,Chamber,12
        onion-1,,off-heat,2027-02-01,, House 1,12
        """);
    files.write(
        "what-if.yaml",
        """
        extends: scenario.yaml
        places:
          - {name: "Chamber", spaces: 70}   # Chamber, larger
          - {name: Chamber 2, like: Chamber, after: Chamber}
        crops:
          onion: {germinate-in: [Chamber, Mats]}
        sowings:
          - {match: onion-1, germinate-in: Chamber}
        """);
    files.write("second.yaml", files.text("scenario.yaml").replace("so-far: log.csv", "#"));
  }

  private ScenarioEditor renamed(String scenario, String from, String to) throws Exception {
    ScenarioEditor editor = new ScenarioEditor(files.path(scenario), UnsavedTexts.none());
    editor.renamePlace(
        from, to, List.of(files.path("scenario.yaml"), files.path("what-if.yaml"), second()));
    return editor;
  }

  private Path second() {
    return files.path("second.yaml");
  }

  private String text(ScenarioEditor editor, String name) {
    return editor.unsaved().of(files.path(name)).orElse("not changed");
  }

  @Test
  void allThatNamesItFollowsAndAllElseStays() throws Exception {
    ScenarioEditor editor = renamed("scenario.yaml", "Chamber", "Warm: room");
    String quoted = "\"Warm: room\"";
    assertThat(text(editor, "scenario.yaml"))
        .isEqualTo(
            files.text("scenario.yaml").replace("{name: Chamber,", "{name: " + quoted + ","));
    assertThat(text(editor, "crops.yaml"))
        .isEqualTo(
            files
                .text("crops.yaml")
                .replace("[Chamber,", "[" + quoted + ",")
                .replace(" Chamber,", " " + quoted + ","));
    assertThat(text(editor, "log.csv"))
        .isEqualTo(files.text("log.csv").replace(",Chamber,12", ",Warm: room,12"));
    assertThat(text(editor, "what-if.yaml"))
        .isEqualTo(
            """
            extends: scenario.yaml
            places:
              - {name: "Warm: room", spaces: 70}   # Chamber, larger
              - {name: Chamber 2, like: "Warm: room", after: "Warm: room"}
            crops:
              onion: {germinate-in: ["Warm: room", Mats]}
            sowings:
              - {match: onion-1, germinate-in: "Warm: room"}
            """);
    assertThat(text(editor, "sowings.csv")).isEqualTo("not changed");
    assertThat(text(editor, "second.yaml"))
        .as("it reads the same crop list")
        .contains("{name: \"Warm: room\", kind: chamber");
  }

  @Test
  void eachScenarioReadsAsBeforeButForTheName() throws Exception {
    for (String name : List.of("Chamber", "Mats", "House 1", "Yard")) {
      for (String scenario : List.of("scenario.yaml", "what-if.yaml")) {
        ScenarioEditor editor = renamed(scenario, name, "Zzz");
        for (String each : List.of("scenario.yaml", "what-if.yaml", "second.yaml")) {
          Scenario before = ScenarioReader.read(files.path(each));
          Scenario after = ScenarioReader.read(files.path(each), editor.unsaved()).sound();
          assertThat(told(after).replace("Zzz", name))
              .as("%s, from %s", each, scenario)
              .isEqualTo(told(before));
        }
      }
    }
  }

  /** All that it says; weather is told by its address alone. */
  private static String told(Scenario scenario) {
    return scenario.toString().replaceAll("@[0-9a-f]+", "");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "#1",
        "a: b",
        "- x",
        "'q'",
        "\"dq\" \\",
        "null",
        "12",
        "1e5",
        "é ß 暖",
        "{x}",
        "[x]",
        "*a",
        "&b",
        "!c",
        "%d",
        "@e",
        "`f",
        "=1+1",
        "+1",
        "Chamber x",
        "x #y",
        "chamber",
        "🌱"
      })
  void anyNameIsReadBackAsItWasGiven(String to) throws Exception {
    ScenarioEditor editor = renamed("scenario.yaml", "Chamber", to);
    for (String each : List.of("scenario.yaml", "what-if.yaml", "second.yaml")) {
      Scenario after = ScenarioReader.read(files.path(each), editor.unsaved()).sound();
      assertThat(after.places().get(0).name()).isEqualTo(to);
      assertThat(Objects.requireNonNull(after.crops().get("onion")).germinateIn()).startsWith(to);
    }
    assertThat(WrittenScenario.of(files.path("scenario.yaml"), editor.unsaved()).log().get(0))
        .extracting(row -> row.text("place"))
        .isEqualTo(to);
  }

  @Test
  void theColumnOfTheSowingPlanFollows() throws Exception {
    files.write(
        "sowings.csv",
        files
            .text("sowings.csv")
            .replace("resow-until\n", "resow-until,germinate-in\n")
            .replaceAll("(onion-1.*)\n", "$1,Mats\n")
            .replaceAll("((?:onion-2|snap|cabb|lett|pepp|toma|mari).*)\n", "$1,\n"));
    ScenarioEditor editor = renamed("scenario.yaml", "Mats", "=Mats");
    assertThat(text(editor, "sowings.csv"))
        .isEqualTo(files.text("sowings.csv").replace(",Mats\n", ",'=Mats\n"));
    assertThat(
            ScenarioReader.read(files.path("scenario.yaml"), editor.unsaved())
                .sound()
                .sowings()
                .get(0)
                .germinateIn())
        .isEqualTo("=Mats");
  }

  @Test
  void aNameThatIsTakenIsRefusedWithTheFileThatHasIt() {
    assertThatThrownBy(() -> renamed("scenario.yaml", "Chamber", "House 1"))
        .hasMessage("there is a place House 1 already, in scenario.yaml");
    assertThatThrownBy(() -> renamed("scenario.yaml", "Chamber", "Chamber 2"))
        .hasMessage("there is a place Chamber 2 already, in what-if.yaml");
    assertThatThrownBy(() -> renamed("scenario.yaml", "Chamber", "Warm, dark"))
        .hasMessageStartingWith("a name without a comma");
  }

  @Test
  void aListThatLiesElsewhereIsCopiedAndALogThereIsNot() throws Exception {
    Path elsewhere = Files.createDirectory(folder.resolve("lists"));
    Files.move(files.path("crops.yaml"), elsewhere.resolve("crops.yaml"));
    Path own = Files.createDirectory(folder.resolve("own"));
    String text = files.text("scenario.yaml").replace("so-far: log.csv", "#");
    Files.writeString(
        own.resolve("spring.yaml"),
        text.replace("crops: crops.yaml", "crops: ../lists/crops.yaml   # of all of us")
            .replace("sowings.csv", "../sowings.csv")
            .replace("weather.csv", "../weather.csv"));
    Files.writeString(own.resolve("other.yaml"), "extends: spring.yaml\n");
    ScenarioEditor editor = new ScenarioEditor(own.resolve("spring.yaml"), UnsavedTexts.none());
    editor.renamePlace("Mats", "Benches", List.of(own.resolve("other.yaml")));
    assertThat(editor.unsaved().texts())
        .containsOnlyKeys(own.resolve("spring.yaml"), own.resolve("spring-crops.yaml"));
    assertThat(editor.unsaved().text(own.resolve("spring.yaml")))
        .contains("crops: spring-crops.yaml   # of all of us", "{name: Benches, kind");
    List<Place> places =
        ScenarioReader.read(own.resolve("other.yaml"), editor.unsaved()).sound().places();
    assertThat(places).extracting(Place::name).contains("Benches").doesNotContain("Mats");

    Files.writeString(
        own.resolve("begun.yaml"), "extends: spring.yaml\nso-far: ../log.csv\nname: Begun\n");
    ScenarioEditor begun = new ScenarioEditor(own.resolve("begun.yaml"), UnsavedTexts.none());
    assertThatThrownBy(() -> begun.renamePlace("Chamber", "Room", List.of()))
        .hasMessage(
            "log.csv names Chamber and lies in another folder, where nothing is written from"
                + " here");
  }
}
