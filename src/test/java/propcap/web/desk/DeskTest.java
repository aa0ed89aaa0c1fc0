package propcap.web.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.files.scenario.ScenarioReader;
import propcap.web.Farm;
import propcap.web.request.RefusedException;

/** Changes, steps back, saving, and what survives. */
class DeskTest {
  @TempDir Path folder;
  private Path scenario;
  private Desk desk;

  @BeforeEach
  void aDesk() throws IOException {
    scenario = Farm.in(folder);
    desk = new Desk(scenario);
  }

  private void spaces(int spaces) throws IOException, RefusedException {
    desk.change(
        "", desk.version(), (editor, w) -> editor.setPlace("Chamber", "spaces", "" + spaces));
  }

  private static String shownSpaces(Desk desk) throws IOException, RefusedException {
    return desk.view("").reading().written().places().get(0).text("spaces");
  }

  private String disk() throws IOException {
    return Files.readString(scenario);
  }

  private static void assertNothingIsChanged(DeskView view) {
    assertThat(view.texts().texts()).isEmpty();
    assertThat(view.scenarios()).hasSize(1);
    assertThat(view.conflicts()).isEmpty();
  }

  @Test
  void nothingIsWrittenToTheScenarioBeforeItIsSaved() throws Exception {
    spaces(9);
    assertThat(disk()).isEqualTo(Farm.SCENARIO);
    assertThat(shownSpaces(desk)).isEqualTo("9");
    assertThat(desk.save(false).written()).containsExactly("small.yaml");
    assertThat(disk()).isEqualTo(Farm.SCENARIO.replace("spaces: 6,", "spaces: 9,"));
    assertThat(Files.readString(folder.resolve("small.yaml.bak"))).isEqualTo(Farm.SCENARIO);
    assertThat(ScenarioReader.read(scenario).places().get(0).spaces()).isEqualTo(9);
  }

  @Test
  void stepsGoBackAndForth() throws Exception {
    spaces(9);
    spaces(12);
    desk.undo();
    assertThat(shownSpaces(desk)).isEqualTo("9");
    desk.undo();
    assertThat(shownSpaces(desk)).isEqualTo("6");
    assertNothingIsChanged(desk.view(""));
    desk.redo();
    desk.redo();
    assertThat(shownSpaces(desk)).isEqualTo("12");
  }

  @Test
  void aStepBackGoesBehindASaving() throws Exception {
    spaces(9);
    desk.save(false);
    desk.undo();
    assertThat(shownSpaces(desk)).isEqualTo("6");
    assertThat(desk.view("").conflicts()).isEmpty();
    desk.save(false);
    assertThat(disk()).isEqualTo(Farm.SCENARIO);
  }

  @Test
  void aKillBetweenTheFilesOfASavingIsNoConflict() throws Exception {
    spaces(9);
    desk.change(
        "", desk.version(), (editor, w) -> editor.setSowings(Map.of(0, Map.of("trays", "31"))));
    // The first of the two files is written, and the program killed before it could note that.
    Files.writeString(scenario, Farm.SCENARIO.replace("spaces: 6,", "spaces: 9,"));
    Desk next = new Desk(scenario);
    assertThat(next.view("").conflicts()).isEmpty();
    assertThat(next.view("").texts().texts().keySet())
        .containsExactly(folder.toRealPath().resolve("sowings.csv"));
    next.save(false);
    assertThat(ScenarioReader.read(scenario).sowings().get(0).trays()).isEqualTo(31);
    assertThat(ScenarioReader.read(scenario).places().get(0).spaces()).isEqualTo(9);
  }

  @Test
  void anUnsavedDraftComesBackAfterAKill() throws Exception {
    spaces(9);
    desk.addWhatIf("More room");
    // The server is killed: nothing is closed, and another one starts.
    Desk next = new Desk(scenario);
    assertThat(shownSpaces(next)).isEqualTo("9");
    assertThat(next.view("").isRestored()).isTrue();
    assertThat(next.scenarios())
        .containsExactly(scenario.toRealPath(), folder.toRealPath().resolve("more-room.yaml"));
    next.discard();
    assertThat(shownSpaces(new Desk(scenario))).isEqualTo("6");
    assertThat(Files.exists(folder.resolve("more-room.yaml"))).isFalse();
  }

  @Test
  void aDraftThatCannotBeReadIsKeptAside() throws Exception {
    Files.writeString(folder.resolve(".small.draft.json"), "{\"texts\": 3");
    assertThat(shownSpaces(new Desk(scenario))).isEqualTo("6");
    assertThat(folder.resolve(".small.draft.json.unread")).exists();
  }

  @Test
  void aDraftOfAnotherFolderIsRefused() throws Exception {
    Files.writeString(
        folder.resolve(".small.draft.json"),
        "{\"texts\": {\"../elsewhere.yaml\": \"x\"}, \"seen\": {}, \"what-ifs\": []}");
    assertNothingIsChanged(new Desk(scenario).view(""));
  }

  @Test
  void aChangeOnDiskIsNoticedAndNeverOverwrittenSilently() throws Exception {
    spaces(9);
    String theirs = Farm.SCENARIO.replace("Small spring", "Their spring");
    Files.writeString(scenario, theirs);
    assertThat(desk.view("").conflicts()).hasSize(1);
    assertThatThrownBy(() -> desk.save(false))
        .isInstanceOfSatisfying(RefusedException.class, e -> assertThat(e.status()).isEqualTo(409))
        .hasMessageContaining("small.yaml");
    assertThat(disk()).isEqualTo(theirs);
    desk.save(true);
    assertThat(disk()).contains("spaces: 9,").contains("Small spring");
    assertThat(Files.readString(folder.resolve("small.yaml.bak"))).isEqualTo(theirs);
  }

  @Test
  void theChangeOnDiskCanBeTakenInstead() throws Exception {
    spaces(9);
    Files.writeString(scenario, Farm.SCENARIO.replace("Small spring", "Their spring"));
    desk.takeDisk();
    assertNothingIsChanged(desk.view(""));
    assertThat(desk.view("").reading().written().head().text("name")).isEqualTo("Their spring");
  }

  @Test
  void aFileThatWasNotChangedHereIsReadAnew() throws Exception {
    assertThat(desk.look()).isFalse();
    Files.writeString(scenario, Farm.SCENARIO.replace("spaces: 6,", "spaces: 33,"));
    Files.setLastModifiedTime(scenario, java.nio.file.attribute.FileTime.fromMillis(1));
    assertThat(desk.look()).isTrue();
    assertThat(shownSpaces(desk)).isEqualTo("33");
    assertThat(desk.view("").conflicts()).isEmpty();
  }

  @Test
  void aChangeMadeOnAnOldViewIsRefused() throws Exception {
    long old = desk.version();
    spaces(9);
    assertThatThrownBy(() -> desk.change("", old, (editor, w) -> editor.setHead("name", "x")))
        .isInstanceOfSatisfying(RefusedException.class, e -> assertThat(e.status()).isEqualTo(409));
    assertThat(shownSpaces(desk)).isEqualTo("9");
  }

  @Test
  void aWhatIfFollowsThePlanAndIsSavedAsAFewLines() throws Exception {
    String file = desk.addWhatIf("A second chamber");
    desk.change(
        file,
        desk.version(),
        (editor, w) -> editor.addPlace(Map.of("name", "Chamber 2", "like", "Chamber")));
    spaces(9);
    assertThat(desk.view(file).reading().scenario().orElseThrow().places().get(3).spaces())
        .isEqualTo(9);
    assertThat(desk.save(false).written()).containsExactly("a-second-chamber.yaml", "small.yaml");
    assertThat(Files.readString(folder.resolve("a-second-chamber.yaml")))
        .isEqualTo(
            "extends: small.yaml\nname: A second chamber\nplaces:\n  - {name: Chamber 2, like: Chamber}\n");
    desk.closeBeside(file);
    assertThat(desk.scenarios()).hasSize(1);
    assertThat(folder.resolve("a-second-chamber.yaml")).exists();
  }

  @Test
  void savedAsAnotherTheFirstStaysAsItWas() throws Exception {
    spaces(9);
    desk.change(
        "", desk.version(), (editor, w) -> editor.setSowings(Map.of(0, Map.of("trays", "31"))));
    assertThat(desk.saveAs("small-2.yaml").written())
        .containsExactly("small-2-sowings.csv", "small-2.yaml");
    assertThat(disk()).isEqualTo(Farm.SCENARIO);
    assertThat(Files.readString(folder.resolve("sowings.csv"))).isEqualTo(Farm.PLAN);
    var copy = ScenarioReader.read(folder.resolve("small-2.yaml"));
    assertThat(copy.places().get(0).spaces()).isEqualTo(9);
    assertThat(copy.sowings().get(0).trays()).isEqualTo(31);
    assertThat(desk.scenarios()).containsExactly(folder.toRealPath().resolve("small-2.yaml"));
    assertThat(Files.readString(folder.resolve("small-2.yaml")))
        .contains("# Too small by far.", "# the old one");
  }

  @Test
  void nothingOfTheWritingIsLeftBehind() throws Exception {
    spaces(9);
    desk.save(false);
    try (var files = Files.list(folder)) {
      assertThat(files.map(f -> f.getFileName().toString()).sorted().toList())
          .isEqualTo(
              List.of("crops.yaml", "small.yaml", "small.yaml.bak", "sowings.csv", "weather.csv"));
    }
  }
}
