package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders as growers have them, and places where nothing can be written. */
class WhereResultsGoTest {
  @TempDir Path folder;
  private Path farm;
  private Path scenario;
  private Path out;

  @BeforeEach
  void aNewFarm() {
    farm = folder.resolve("farm");
    scenario = farm.resolve("scenario.yaml");
    out = folder.resolve("out");
    assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
  }

  private Run run(Path to) {
    return Run.of("run", scenario.toString(), "--seasons", "20", "--out", to.toString());
  }

  private static Object identity(Path path) throws IOException {
    return Files.readAttributes(path, BasicFileAttributes.class).fileKey();
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  private static void assertRefused(Run run, String... words) {
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(words).doesNotContain("Exception").doesNotContain("\tat ");
  }

  /** A shell that stands in the folder still does after it, for the folder is the same one. */
  @Test
  void whatElseLiesInTheFolderStaysThereAndSoDoesTheFolder() throws IOException {
    Files.createDirectories(out.resolve("pictures"));
    Files.writeString(out.resolve("notes.txt"), "ask for more seed");
    Object before = identity(out);
    Object notes = identity(out.resolve("notes.txt"));
    for (int times = 0; times < 2; times++) {
      Run run = run(out);
      assertThat(run.err()).isEmpty();
      assertThat(run.exitCode()).isZero();
      assertThat(identity(out)).isEqualTo(before);
      assertThat(identity(out.resolve("notes.txt"))).isEqualTo(notes);
      assertThat(out.resolve("report.html")).isNotEmptyFile();
      assertThat(names(out)).contains("pictures").hasSize(10);
    }
  }

  /** The results would have a sowings.csv; the farm's own is its plan. */
  @Test
  void aFileOfTheGrowersWithANameOfOursIsLeftAlone() throws IOException {
    String plan = Files.readString(farm.resolve("sowings.csv"));
    assertRefused(run(farm), farm.resolve("sowings.csv").toString(), "--out");
    assertThat(farm.resolve("sowings.csv")).hasContent(plan);
    assertThat(names(farm)).hasSize(5);
  }

  @Test
  void whereAFolderStandsInTheWayOfAFileNothingIsWritten() throws IOException {
    Files.createDirectories(out.resolve("report.html"));
    assertRefused(run(out), out.resolve("report.html").toString(), "folder");
    assertThat(names(out)).containsExactly("report.html");
  }

  @Test
  void aFileInTheWayIsToldByItsName() throws IOException {
    Path letter = Files.writeString(folder.resolve("letter.txt"), "dear");
    assertRefused(run(letter), letter + ": this is a file; ", "--out");
    assertRefused(run(letter.resolve("a").resolve("b")), letter + ": ", "in the way", "--out");
    assertThat(letter).hasContent("dear");
  }

  /** The system's own folder takes no files, of the administrator neither. */
  @Test
  void aPlaceWhereNothingCanBeWrittenIsToldWithWhatToDo() {
    Path system = Path.of("/proc");
    assumeThat(system).isDirectory();
    assertRefused(run(system.resolve("out")), "/proc/out: ", "--out");
    assertRefused(run(system), "/proc: ", "--out");
  }

  @Test
  void aNameThatIsTooLongIsTold() {
    assertRefused(run(folder.resolve("o".repeat(300))), "the name is too long", "--out");
  }

  @Test
  void aLinkThatLeadsNowhereIsTold() throws IOException {
    Files.createSymbolicLink(out, folder.resolve("gone"));
    assertRefused(run(out), out + ": a link that leads nowhere", "--out");
  }

  @Test
  void faultsInTheFilesLeaveNoFolderBehind() throws IOException {
    Files.writeString(scenario, Files.readString(scenario).replace("kind: table", "kind: tabel"));
    assertRefused(run(out), "scenario.yaml:");
    assertThat(out).doesNotExist();
  }

  @Test
  void aQuestionThatIsRefusedLeavesNoFolderBehind() {
    Run run = Run.of("shift", scenario.toString(), "--match", "tulip*", "--out", out.toString());
    assertRefused(run, "tulip*");
    assertThat(out).doesNotExist();
  }

  /** In a spreadsheet, a cell that begins so is a formula, and it may call a program. */
  @Test
  void aNameIsNoFormulaInASpreadsheet() throws IOException {
    Path plan = farm.resolve("sowings.csv");
    String text = Files.readString(plan);
    for (String name : List.of("=1+1", "+1+1", "-1+1", "@sum")) {
      text = text.replaceFirst("\n[a-z]+-[0-9],", "\n" + name + ",");
    }
    Files.writeString(plan, text);
    Run run = run(out);
    assertThat(run.err()).isEmpty();
    assertThat(Files.readString(out.resolve("sowings.csv")))
        .contains("\n'=1+1,", "\n'+1+1,", "\n'-1+1,", "\n'@sum,")
        .doesNotContainPattern("(?m)(^|,)[=+@]");
    assertThat(Files.readString(out.resolve("summary.json"))).contains("\"=1+1\"");
  }

  @Test
  void aRecordThatCannotBeWrittenIsToldBeforeItIsMade() throws IOException {
    Path letter = Files.writeString(folder.resolve("letter.txt"), "dear");
    Path normals =
        Files.writeString(
            folder.resolve("normals.csv"), "month,tmin,tmax\n" + "1,-2,4\n".repeat(2));
    assertRefused(
        Run.of(
            "weather",
            "--normals",
            normals.toString(),
            "--to",
            letter.resolve("weather.csv").toString()),
        letter + ": ",
        "in the way");
    assertRefused(Run.of("new", letter.resolve("farm").toString()), letter + ": ");
  }

  @Test
  void whereTheAnswerCannotBeWrittenTheCropListStaysAsItIs() throws IOException {
    Path list = farm.resolve("crops.yaml");
    String before = Files.readString(list);
    Path letter = Files.writeString(folder.resolve("letter.txt"), "dear");
    Run fit =
        Run.of(
            "fit",
            "germination",
            "demo-data/germination-counts.csv",
            "--write",
            list.toString(),
            "--out",
            letter.toString());
    assertRefused(fit, letter + ": ");
    assertThat(list).hasContent(before);
    assertThat(names(farm)).hasSize(5);
  }
}
