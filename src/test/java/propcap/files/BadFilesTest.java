package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.SowingPlan;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;

/** Files that are none of a grower's, or hardly. */
class BadFilesTest {
  private static final String BROKEN =
      "; 'key: value' lines, indented with spaces, every bracket and quote closed";

  private GrowersFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new GrowersFolder(path);
  }

  @Test
  void aScenarioThatIsMissingOrAFolderIsAFaultOfTheWholeFile(@TempDir Path elsewhere) {
    for (Path path : new Path[] {elsewhere.resolve("none.yaml"), elsewhere, Path.of("/")}) {
      FaultsException e =
          catchThrowableOfType(FaultsException.class, () -> ScenarioReader.read(path));

      assertThat(e.faults()).hasSize(1);
      assertThat(e.faults().get(0).file()).isEqualTo(path);
      assertThat(e.faults().get(0).line()).isZero();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"scenario.yaml", "crops.yaml", "sowings.csv", "weather.csv"})
  void anEmptyFileIsAFaultAndTheOthersAreRead(String name) {
    for (String empty : new String[] {"", "\uFEFF", "\n  \n"}) {
      folder.write(name, empty);
      assertThat(folder.faults())
          .containsExactly(name + ": the file is empty; a file with something in it");
    }
  }

  @Test
  void aFileOfCommentsAloneIsEmptyToo() {
    folder.write("crops.yaml", "# crops to come\n");

    assertThat(folder.faults())
        .containsExactly("crops.yaml: the file is empty; a map of 'key: value' lines");
  }

  @Test
  void tablesWithAHeaderAloneAreFaults() {
    folder.write("sowings.csv", String.join(",", SowingPlan.COLUMNS) + "\n");
    folder.write("weather.csv", "date,tmin,tmax");

    assertThat(folder.faults())
        .containsExactly(
            "sowings.csv: no sowing in the plan; at least one row",
            "weather.csv: no year of the record covers the season 2027-01-11 to 2027-07-04; a year"
                + " with a row for each of its days");
  }

  @ParameterizedTest
  @ValueSource(strings = {"scenario.yaml", "crops.yaml", "sowings.csv", "weather.csv"})
  void aFileOfMoreThan64MebibytesIsNotRead(String name) throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(folder.path(name).toFile(), "rw")) {
      file.setLength((64 << 20) + 1);
    }

    assertThat(folder.faults())
        .containsExactly(name + ": larger than 64 MiB; a file of at most 64 MiB");
  }

  @ParameterizedTest
  @ValueSource(strings = {"scenario.yaml", "crops.yaml", "sowings.csv", "weather.csv"})
  void bytesThatAreNoTextAreReportedOnTheirLine(String name) {
    for (byte[] bad :
        new byte[][] {{'a', '\n', 'b', 0}, {'a', '\n', (byte) 0xC3, '('}, {'\n', (byte) 0xFF}}) {
      folder.write(name, bad);

      assertThat(folder.faults())
          .containsExactly(name + ":2: bytes that are no text; a text file in UTF-8");
    }
  }

  @Test
  void aSignThatStandsForAnyUnknownOneIsTextLikeAnyOther() {
    String place = folder.change("scenario.yaml", "kind: table", "kind: ^\uFFFD");

    assertThat(folder.faults())
        .containsExactly(
            place + ": kind of House 1 is '\uFFFD'; one of heat-bench, chamber, table, hardening");
  }

  @Test
  void filesOfTheWrongKindAreToldApartByWhatTheyHold() {
    folder.change("scenario.yaml", "crops: crops.yaml", "crops: sowings.csv");
    folder.change("scenario.yaml", "sowings: sowings.csv", "sowings: crops.yaml");
    String header = String.join(",", SowingPlan.COLUMNS);

    assertThat(folder.faults())
        .containsExactly(
            "crops.yaml:1: no header but 'crops:'; the header "
                + header
                + " and, if need be, germinate-in,sow-from,sow-to,goal",
            "sowings.csv:1:1: the file holds 'id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-unti...'"
                + "; a map of 'key: value' lines");
  }

  @Test
  void columnsPartedBySemicolonsAreNamedAsSuch() {
    folder.write("weather.csv", "date;tmin;tmax\n2001-01-01;1;2\n");

    assertThat(folder.faults())
        .containsExactly(
            "weather.csv:1: no header but 'date;tmin;tmax'; the header date,tmin,tmax, parted by"
                + " commas: a spreadsheet asks for the separator when it saves CSV");
  }

  @Test
  void aQuoteThatIsNotClosedIsReportedFromItsLineOn() {
    folder.change("sowings.csv", "snap-1,", "\"snap-1,");

    assertThat(folder.faults())
        .containsExactly(
            "sowings.csv:4: from here on this cannot be read as CSV; fields parted by commas, every"
                + " quote closed and at most a page of text in each");
  }

  @Test
  void onlyPlainYamlIsRead() {
    folder.change("scenario.yaml", "{constant: 22 C}", "&warm {constant: 22 C}");
    folder.change("scenario.yaml", "{constant: 21 C}", "*warm");
    folder.change("scenario.yaml", "spaces: 330", "spaces: !!int 330");
    folder.write("scenario.yaml", folder.text("scenario.yaml") + "? [a]\n: b\n---\nname: two\n");

    assertThat(folder.faults())
        .containsExactly(
            "scenario.yaml:9:57: an anchor &warm; no anchors",
            "scenario.yaml:10:57: an alias *warm; the values written out",
            "scenario.yaml:11:42: a tag 'tag:yaml.org,2002:int'; no tags",
            "scenario.yaml:13:3: a list as a key; a word as a key",
            "scenario.yaml:15:1: a second document; one document in a file");
  }

  @Test
  void brokenYamlIsReportedWhereItBreaks() {
    folder.change(
        "crops.yaml",
        "    cells: 128\n    germination: {rate: 90 %",
        "\tcells: 128\n    germination: {rate: 90 %");

    assertThat(folder.faults())
        .containsExactly(
            "crops.yaml:11:1: this cannot be read as YAML: found character '\\t(TAB)' that cannot"
                + " start any token. (Do not use \\t(TAB) for indentation)"
                + BROKEN);
  }

  @ParameterizedTest
  @ValueSource(strings = {"[", "{a: ", "- ", "? ", "[{", "a: {b: [", "- - "})
  void whatIsNestedWithoutEndIsRefused(String opening) {
    folder.write("crops.yaml", opening.repeat(50_000));

    assertThat(folder.faults()).hasSize(1).first().asString().startsWith("crops.yaml:1:");
  }

  @Test
  void aFileOfManyFaultsIsGivenUpAfterAThousand() {
    folder.write("sowings.csv", String.join(",", SowingPlan.COLUMNS) + "\n" + "x\n".repeat(5_000));
    folder.write("crops.yaml", "crops:\n  tomato: {" + "x: 1, y: 2, ".repeat(2_000) + "z: 3}\n");

    assertThat(folder.faults())
        .hasSize(2 * (Faults.MOST_IN_A_FILE + 1))
        .contains(
            "crops.yaml: 1000 faults and perhaps more; mend the first of them and read it again",
            "sowings.csv: 1000 faults and perhaps more; mend the first of them and read it again");
  }

  @Test
  void longListsThatNoFarmHasAreRefused() {
    folder.write("crops.yaml", "crops: [" + "a, ".repeat(6_000) + "a]\n");

    assertThat(folder.faults())
        .containsExactly("crops.yaml:1:8: more than 5000 values; a shorter list or file");
  }

  @Test
  void aLineWithoutEndIsRefused() {
    folder.write("crops.yaml", "crops:\n  x: \"" + "x".repeat(64 << 20 >> 1) + "\"\n");

    assertThat(folder.faults())
        .containsExactly("crops.yaml:2:1: a line of 33554439 characters; shorter lines");
  }

  @Test
  void aFileThatMayNotBeReadIsAFault() throws IOException {
    Path secret = folder.path("crops.yaml");
    assumeTrue(secret.toFile().setReadable(false));
    assumeFalse(Files.isReadable(secret));

    assertThat(folder.faults())
        .containsExactly("crops.yaml: cannot be read; a file that you may read");
  }

  @Test
  void whatIsShownOfAFaultStaysOnOneShortLine() {
    folder.write(
        "scenario.yaml",
        ("name: \"a\\nb\"\nfrost-at: " + "9".repeat(100_000)).getBytes(StandardCharsets.UTF_8));

    assertThat(folder.faults())
        .contains(
            "scenario.yaml:1:7: name is 'a?b'; a name of one line, at most 60 letters",
            "scenario.yaml:2:11: frost-at is '"
                + "9".repeat(60)
                + "...'; a temperature in C or F, such as 21 C or 70 F");
  }
}
