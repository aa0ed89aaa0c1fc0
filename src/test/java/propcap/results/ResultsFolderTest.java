package propcap.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.disk.CannotWriteException;
import propcap.disk.FailingDisk;
import propcap.disk.FileSet;
import propcap.report.Put;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.order.SuppliesAnswer;
import propcap.report.plan.PlannedAnswer;

/** Whose results lie in a folder, and whose other files. */
class ResultsFolderTest {
  private static final AnswerKind ORDER = SuppliesAnswer.KIND;

  @TempDir Path desk;
  private Path folder;
  private Path scenario;

  @BeforeEach
  void names() throws IOException {
    folder = desk.resolve("results").resolve("spring-order");
    scenario = Files.writeString(desk.resolve("spring.yaml"), "name: Spring");
  }

  private static Map<String, String> texts(AnswerKind answer, String text) {
    Map<String, String> texts = new TreeMap<>();
    answer.files().forEach(name -> texts.put(name, text + " of " + name));
    return texts;
  }

  private static List<Path> put(
      Path folder, AnswerKind answer, Path source, boolean isNamed, String text)
      throws IOException {
    try (ResultsFolder results = ResultsFolder.open(folder, answer, Put.asker(source, isNamed))) {
      return results.write(texts(answer, text));
    }
  }

  private List<Path> put(String text) throws IOException {
    return put(folder, ORDER, scenario, false, text);
  }

  @Test
  void twoScenariosOfOneNameDoNotReplaceEachOther() throws IOException {
    Path north = Files.createDirectory(desk.resolve("north")).resolve("spring.yaml");
    Path south = Files.createDirectory(desk.resolve("south")).resolve("spring.yaml");
    put(folder, ORDER, north, false, "north");
    put(folder, ORDER, north, false, "north again");
    assertThatThrownBy(() -> ResultsFolder.open(folder, ORDER, Put.asker(south, false)).close())
        .isInstanceOf(CannotWriteException.class)
        .hasMessage(
            folder
                + ": this holds the results of "
                + north
                + ", not of "
                + south
                + "; move it elsewhere, or name this folder with --out to replace them, or take"
                + " another folder with --out");
    assertThat(Put.contents(folder)).isEqualTo(texts(ORDER, "north again"));
    put(folder, ORDER, south, true, "south");
    assertThat(Put.contents(folder)).isEqualTo(texts(ORDER, "south"));
  }

  @Test
  void resultsThatWereThrownAwayAreNoMoreInTheWay() throws IOException {
    put("old");
    for (String name : ORDER.files()) {
      Files.delete(folder.resolve(name));
    }
    put(folder, ORDER, desk.resolve("other.yaml"), false, "new");
    assertThat(Put.contents(folder)).isEqualTo(texts(ORDER, "new"));
  }

  @Test
  void whereAllIsMovedTogetherTheResultsAreStillThatScenariosOwn() throws IOException {
    put("old");
    Path moved = desk.resolveSibling(desk.getFileName() + "-moved");
    Files.move(desk, moved);
    Path there = moved.resolve("results").resolve("spring-order");
    put(there, ORDER, moved.resolve("spring.yaml"), false, "new");
    assertThat(Put.contents(there)).isEqualTo(texts(ORDER, "new"));
    Files.move(moved, desk);
  }

  @Test
  void whatTheGrowerChangedIsKeptBesideTheNewAnswer() throws IOException {
    put("old");
    Files.writeString(folder.resolve("order.csv"), "mine");
    List<Path> written = put("new");
    assertThat(written).endsWith(folder.resolve("order.csv.bak")).hasSize(4);
    assertThat(folder.resolve("order.csv.bak")).hasContent("mine");
    assertThat(folder.resolve("order.csv")).hasContent("new of order.csv");
    assertThat(put("newer")).hasSize(3);
    assertThat(Put.contents(folder)).hasSize(4);
  }

  @Test
  void aFileOfTheGrowersIsInTheWayOfOneWithItsName() throws IOException {
    Files.createDirectories(folder);
    Path mine = Files.writeString(folder.resolve("order.csv"), "mine");
    assertThatThrownBy(() -> put("new"))
        .hasMessage(
            mine
                + ": this is none of Propcap's making; move it elsewhere, or take another folder"
                + " with --out");
    assertThat(Put.contents(folder)).containsOnlyKeys("order.csv").containsValue("mine");
  }

  /** A better plan and a forecast both have a sowings.csv. */
  @Test
  void anotherAnswersFilesAreNotReplaced() throws IOException {
    put(folder, PlannedAnswer.KIND, scenario, true, "plan");
    assertThatThrownBy(() -> put(folder, ForecastAnswer.KIND, scenario, true, "forecast"))
        .hasMessageContaining("sowings.csv: this is part of another answer, with plan.json");
    put(folder, ORDER, scenario, true, "order");
    assertThat(Put.contents(folder)).containsAllEntriesOf(texts(PlannedAnswer.KIND, "plan"));
  }

  /** Such as those that come with the program, or were written before there were records. */
  @Test
  void resultsWithoutARecordAreKnownByWhatTheyHold() throws IOException {
    Files.createDirectories(folder);
    Files.writeString(
        folder.resolve("order.json"),
        "{\"scenario\": 1, \"chance\": 1, \"sowings\": 1, \"lots\": 1}");
    Files.writeString(folder.resolve("order.html"), "old");
    put("new");
    assertThat(Put.contents(folder)).isEqualTo(texts(ORDER, "new"));
  }

  /** A version that wrote one file more leaves it in its record. */
  @Test
  void aFileThatTheNewAnswerDoesNotHaveGoesUnlessItWasChanged() throws IOException {
    put("old");
    Map<String, String> more = texts(ORDER, "old");
    more.put("order-more.csv", "more");
    more.put("order-most.csv", "most");
    WrittenRecord record = WrittenRecord.of("../../spring.yaml", more);
    Files.writeString(WrittenRecord.file(folder, ORDER), record.text());
    Files.writeString(folder.resolve("order-more.csv"), "more");
    Files.writeString(folder.resolve("order-most.csv"), "most, and mine");
    put("new");
    Map<String, String> left = texts(ORDER, "new");
    left.put("order-most.csv.bak", "most, and mine");
    assertThat(Put.contents(folder)).isEqualTo(left);
  }

  /** A folder may come from anywhere. */
  @Test
  void aRecordThatNamesFilesOutsideItsFolderIsNone() throws IOException {
    put("old");
    Path record = WrittenRecord.file(folder, ORDER);
    Files.writeString(record, Files.readString(record) + "0".repeat(64) + " ../../spring.yaml\n");
    assertThatThrownBy(() -> put("new")).hasMessageContaining("none of Propcap's making");
    assertThat(scenario).hasContent("name: Spring");
    assertThat(desk.resolve("spring.yaml.bak")).doesNotExist();
  }

  @Test
  void aRunThatIsUnderWayKeepsOthersOut() throws IOException {
    try (ResultsFolder first = ResultsFolder.open(folder, ORDER, Put.asker(scenario, false))) {
      assertThatThrownBy(() -> put("second"))
          .hasMessageMatching(
              "\\Q"
                  + folder
                  + "\\E: in use by propcap run spring.yaml; wait until it has ended, or take"
                  + " another folder with --out");
      first.write(texts(ORDER, "first"));
    }
    assertThat(Put.contents(folder)).isEqualTo(texts(ORDER, "first"));
    put("second");
    assertThat(Put.contents(folder)).isEqualTo(texts(ORDER, "second"));
  }

  @Test
  void whatIsNotWrittenLeavesNoFolder() throws IOException {
    ResultsFolder.open(folder, ORDER, Put.asker(scenario, false)).close();
    assertThat(folder).doesNotExist();
  }

  /** A run of another command, or the page, finishes what lies half in the folders beside. */
  @Test
  void whatAKillCutShortIsFinishedByWhoeverComesNext() throws IOException {
    put("old");
    FailingDisk sound = FailingDisk.sound();
    put(sound.at(folder), ORDER, scenario, false, "old");
    for (int call = sound.calls(); !FileSet.isUnfinished(folder); call--) {
      FailingDisk disk = FailingDisk.killedAt(call);
      assertThatThrownBy(() -> put(disk.at(folder), ORDER, scenario, false, "new"))
          .isInstanceOf(FailingDisk.Killed.class);
    }
    ResultsFolder.finishIn(desk.resolve("results"));
    assertThat(Put.contents(folder)).isEqualTo(texts(ORDER, "new"));
    assertThat(FileSet.isUnfinished(folder)).isFalse();
  }
}
