package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.files.GrowersFolder;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.FaultsException;
import propcap.files.text.UnsavedTexts;

/** What is changed on the page ends up in the scenario's own files, and in no other. */
class ScenarioEditorTest {
  @TempDir Path folder;
  private GrowersFolder files;

  @BeforeEach
  void aFolder() {
    files = new GrowersFolder(folder);
    files.write("what-if.yaml", "extends: scenario.yaml\nname: What if\n");
  }

  private ScenarioEditor editor(String name) {
    return new ScenarioEditor(files.path(name), UnsavedTexts.none());
  }

  private String text(ScenarioEditor editor, String name) {
    return editor.unsaved().of(files.path(name)).orElse("no draft");
  }

  private Scenario read(ScenarioEditor editor, String name) throws FaultsException {
    return ScenarioReader.read(files.path(name), editor.unsaved()).sound();
  }

  private static int spaces(Scenario scenario, String place) {
    return scenario.places().stream()
        .filter(p -> p.name().equals(place))
        .findFirst()
        .orElseThrow()
        .spaces();
  }

  private static Crop onion(Scenario scenario) {
    return Objects.requireNonNull(scenario.crops().get("onion"));
  }

  @Test
  void aDraftIsReadInThePlaceOfItsFile() throws Exception {
    ScenarioEditor editor = editor("scenario.yaml");
    editor.setPlace("Chamber", "spaces", "80");
    assertThat(spaces(read(editor, "scenario.yaml"), "Chamber")).isEqualTo(80);
    assertThat(text(editor, "scenario.yaml"))
        .isEqualTo(files.text("scenario.yaml").replace("spaces: 60", "spaces: 80"));
    assertThat(spaces(files.read(), "Chamber")).as("the file itself").isEqualTo(60);
  }

  @Test
  void aWhatIfHoldsTheChangeAlone() throws Exception {
    ScenarioEditor editor = editor("what-if.yaml");
    editor.setPlace("Chamber", "spaces", "80");
    editor.setPlace("House 1", "climate.heat-to", "12 C");
    editor.setSowings(Map.of(0, Map.of("trays", "40")));
    editor.setCrop("onion", "leave-at", "40 %");
    assertThat(text(editor, "what-if.yaml"))
        .isEqualTo(
            """
            extends: scenario.yaml
            name: What if
            places:
              - {name: Chamber, spaces: 80}
              - {name: House 1, climate: {heat-to: 12 C, lift: 5, vent-at: 26 C}}
            sowings:
              - {match: onion-1, trays: 40}
            crops: {onion: {leave-at: 40 %}}
            """);
    assertThat(editor.unsaved().texts()).hasSize(1);
    Scenario changed = read(editor, "what-if.yaml");
    assertThat(changed.sowings().get(0).trays()).isEqualTo(40);
    assertThat(onion(changed).leaveAt()).isEqualTo(0.4);
    assertThat(changed.places().get(2).climate()).isEqualTo(new Climate.Heated(12, 5, 26));
  }

  @Test
  void aSecondChamberIsALine() throws Exception {
    ScenarioEditor editor = editor("what-if.yaml");
    editor.addPlace(Map.of("name", "Chamber 2", "like", "Chamber"));
    assertThat(text(editor, "what-if.yaml"))
        .endsWith("places:\n  - {name: Chamber 2, like: Chamber}\n");
    assertThat(spaces(read(editor, "what-if.yaml"), "Chamber 2")).isEqualTo(60);
    editor.removePlace("Chamber 2");
    assertThat(text(editor, "what-if.yaml")).isEqualTo(files.text("what-if.yaml"));
  }

  private static final Map<String, String> ONION_9 =
      Map.of(
          "id", "onion-9",
          "crop", "onion",
          "lot", "",
          "sow", "2027-02-01",
          "trays", "3",
          "plants-needed", "100",
          "bed-from", "2027-03-20",
          "bed-by", "2027-04-25");

  @Test
  void aSowingMoreIsALineOfAWhatIf() throws Exception {
    ScenarioEditor editor = editor("what-if.yaml");
    editor.setSowings(Map.of(0, Map.of("trays", "40")));
    editor.addSowing(ONION_9);
    assertThat(editor.unsaved().texts()).hasSize(1);
    assertThat(text(editor, "what-if.yaml"))
        .endsWith(
            "  - {add: onion-9, crop: onion, sow: 2027-02-01, trays: 3, plants-needed: 100,"
                + " bed-from: 2027-03-20, bed-by: 2027-04-25}\n");
    Scenario changed = read(editor, "what-if.yaml");
    int last = files.read().sowings().size();
    assertThat(changed.sowings()).hasSize(last + 1);
    assertThat(changed.sowings().get(0).trays()).isEqualTo(40);
    editor.setSowings(Map.of(last, Map.of("trays", "5", "id", "onion-10")));
    assertThat(text(editor, "what-if.yaml")).contains("{add: onion-10, crop: onion, sow");
    assertThat(read(editor, "what-if.yaml").sowings().get(last).trays()).isEqualTo(5);
    editor.removeSowing(last);
    assertThat(read(editor, "what-if.yaml").sowings()).hasSize(last);
    assertThat(text(editor, "what-if.yaml")).doesNotContain("onion-10");
  }

  @Test
  void aSowingLessIsALineOfAWhatIf() throws Exception {
    ScenarioEditor editor = editor("what-if.yaml");
    String gone = files.read().sowings().get(0).id();
    editor.setSowings(Map.of(0, Map.of("trays", "40")));
    editor.removeSowing(0);
    assertThat(editor.unsaved().texts()).hasSize(1);
    assertThat(text(editor, "what-if.yaml")).endsWith("sowings:\n  - {remove: " + gone + "}\n");
    assertThat(read(editor, "what-if.yaml").sowings())
        .hasSize(files.read().sowings().size() - 1)
        .noneMatch(s -> s.id().equals(gone));
  }

  @Test
  void listsOfAnotherFolderAreCopiedAndNeverWritten() throws Exception {
    Path inner = Files.createDirectory(folder.resolve("scenarios"));
    Files.writeString(
        inner.resolve("spring.yaml"),
        files
            .text("scenario.yaml")
            .replace("crops: crops", "crops: ../crops")
            .replace("sowings: sowings", "sowings: ../sowings")
            .replace("weather: weather", "weather: ../weather"));
    ScenarioEditor editor = new ScenarioEditor(inner.resolve("spring.yaml"), UnsavedTexts.none());
    editor.setSowings(Map.of(1, Map.of("trays", "7")));
    editor.setCrop("onion", "germinate-in", "Mats, House 1");
    assertThat(editor.unsaved().texts().keySet())
        .containsExactlyInAnyOrder(
            inner.resolve("spring.yaml"),
            inner.resolve("spring-sowings.csv"),
            inner.resolve("spring-crops.yaml"));
    Scenario changed = ScenarioReader.read(inner.resolve("spring.yaml"), editor.unsaved()).sound();
    assertThat(changed.sowings().get(1).trays()).isEqualTo(7);
    assertThat(onion(changed).germinateIn()).containsExactly("Mats", "House 1");
  }

  @Test
  void aFaultBelongsToTheFieldThatHasIt() throws Exception {
    ScenarioEditor editor = editor("scenario.yaml");
    editor.setPlace("Chamber", "spaces", "many");
    editor.setPlace("Mats", "climate.constant", "warm");
    editor.setSowings(Map.of(2, Map.of("bed-by", "soon")));
    editor.setCrop("cabbage", "emergence.at", "20");
    editor.setHead("frost-at", "cold");
    editor.setPlace("Yard", "spaces", "");
    WrittenScenario written = WrittenScenario.of(files.path("scenario.yaml"), editor.unsaved());
    FaultsException faults =
        catchThrowableOfType(FaultsException.class, () -> read(editor, "scenario.yaml"));
    assertThat(faults.faults().stream().map(written::fieldOf))
        .containsExactlyInAnyOrder(
            new WrittenScenario.Field("places", 0, "spaces"),
            new WrittenScenario.Field("places", 1, "climate.constant"),
            new WrittenScenario.Field("places", 3, "spaces"),
            new WrittenScenario.Field("sowings", 2, "bed-by"),
            new WrittenScenario.Field("crops", 1, "emergence.at"),
            new WrittenScenario.Field("", -1, "frost-at"));
  }

  /** Its name reads as the words for what is missing of a crop's prices. */
  @Test
  void aFaultOfAPlaceNamedAfterPricesBelongsToThePlace() throws Exception {
    String yard = files.text("scenario.yaml").replace("Yard", "onion's prices");
    files.write("scenario.yaml", yard);
    ScenarioEditor editor = editor("scenario.yaml");
    editor.setPlace("onion's prices", "spaces", "");
    WrittenScenario written = WrittenScenario.of(files.path("scenario.yaml"), editor.unsaved());
    FaultsException faults =
        catchThrowableOfType(FaultsException.class, () -> read(editor, "scenario.yaml"));
    assertThat(faults.faults().stream().map(written::fieldOf))
        .containsExactly(new WrittenScenario.Field("places", 3, "spaces"));
  }

  @Test
  void aFaultOfAnotherPlansSowingBelongsToTheSowing() throws Exception {
    ScenarioEditor editor = editor("what-if.yaml");
    editor.addPlace(Map.of("name", "Chamber 2", "like", "Chamber"));
    editor.setSowings(
        Map.of(1, Map.of("bed-by", "2027-01-01"), 2, Map.of("crop", "onoin", "trays", "many")));
    WrittenScenario written = WrittenScenario.of(files.path("what-if.yaml"), editor.unsaved());
    FaultsException faults =
        catchThrowableOfType(FaultsException.class, () -> read(editor, "what-if.yaml"));
    assertThat(faults.faults().stream().map(written::fieldOf))
        .contains(
            new WrittenScenario.Field("sowings", 1, "bed-by"),
            new WrittenScenario.Field("sowings", 2, "crop"),
            new WrittenScenario.Field("sowings", 2, "trays"))
        .allMatch(field -> field.list().equals("sowings"));
  }

  @Test
  void aFaultOfOneSowingAmongManyThatAreChangedAtOnceBelongsToIt() {
    files.write(
        "what-if.yaml",
        "extends: scenario.yaml\nsowings:\n  - {match: \"*\", bed-by: 2027-04-28}\n");
    WrittenScenario written = WrittenScenario.of(files.path("what-if.yaml"), UnsavedTexts.none());
    FaultsException faults =
        catchThrowableOfType(
            FaultsException.class, () -> ScenarioReader.read(files.path("what-if.yaml")));
    assertThat(faults.faults())
        .isNotEmpty()
        .allSatisfy(
            fault -> {
              WrittenScenario.Field field = written.fieldOf(fault);
              assertThat(fault.found())
                  .startsWith(field.key() + " of " + written.sowings().get(field.row()).name());
            });
  }
}
