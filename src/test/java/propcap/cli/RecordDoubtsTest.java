package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.files.scenario.TrayLogReader;
import propcap.files.text.FaultsException;

/**
 * A log of trays and a table of counts, with one thing in it that cannot or will hardly be meant.
 */
class RecordDoubtsTest {
  private static final Path HOUSE_LOG = Path.of("demo-data/house-log.csv");
  private static final Path SCENARIO = Path.of("scenarios/spring.yaml");

  @TempDir Path folder;

  private Run log(String text, Path scenario) throws IOException {
    Path log = Files.writeString(folder.resolve("log.csv"), text);
    return Run.of(
        "fit",
        "stages",
        log.toString(),
        "--scenario",
        scenario.toString(),
        "--out",
        folder.resolve("out").toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "tomato-1,T1,sown,2025-03-17 | tomato-1,T1,sown,1925-03-17 | log.csv:2: date is"
            + " '1925-03-17', another century than the season's",
        "tomato-1,T1,potted-on,2025 | tomato-1,T1,potted-on,2026 | log.csv:5: date 2026-04-28 of"
            + " tray T1 of tomato-1 is 407 days after its first row",
        "tomato-1,T1,ready,2025-04-24,62 | tomato-1,T1,ready,2025-04-24,65 | log.csv:4: 65 plants"
            + " of tray T1 of tomato-1, but 64 before that",
      })
  void aRowThatCannotBeMeantIsRefused(String from, String to, String fault) throws IOException {
    String text = Files.readString(HOUSE_LOG);
    assertThat(text).contains(from);

    Run run = log(text.replace(from, to), SCENARIO);

    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains(fault);
  }

  /** A whole fit takes its time: what can be doubted at once is doubted in one. */
  @Test
  void whatIsUnlikelyInALogOrItsScenarioIsToldAndTheLogIsFitted() throws IOException {
    Path hot =
        Files.writeString(
            folder.resolve("hot.yaml"),
            "extends: "
                + SCENARIO.toAbsolutePath()
                + "\nplaces:\n  - {name: Chamber, climate: {constant: 45 C}}\n");
    String log = Files.readString(HOUSE_LOG);

    Run run =
        log(
            log.replace("tomato-1,T1,sown,2025-03-17,72", "tomato-1,T1,sown,2025-03-17,200")
                + tray(log, "T98", "2011")
                + tray(log, "T99", "2035"),
            hot);

    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.err().lines()).hasSize(4).allMatch(l -> l.startsWith("Worth another look: "));
    assertThat(run.err())
        .contains(
            "log.csv:2: plants is '200', more than the 72 cells of a tray of tomato",
            "a date 14 years from most of the log, 2011-03-17, in 4 rows, this the first",
            "a date after the season, 2035-03-17, in 4 rows, this the first; a log tells what has"
                + " been",
            "hotter than seedlings bear");
  }

  /** The log's first tray once more, in another year. */
  private static String tray(String log, String name, String year) {
    return log.lines()
        .filter(l -> l.startsWith("tomato-1,T1,"))
        .limit(4)
        .map(l -> l.replace(",T1,", "," + name + ",").replace("2025", year) + "\n")
        .collect(Collectors.joining());
  }

  @Test
  void aPlainLogIsNotDoubted() throws FaultsException {
    assertThat(TrayLogReader.read(HOUSE_LOG, SCENARIO).warnings()).isEmpty();
  }

  @Test
  void aCropListIsDoubtedWhereItIsReadByItself() throws IOException {
    Path list =
        Files.writeString(
            folder.resolve("crops.yaml"),
            Files.readString(Path.of("demo-data/crops.yaml"))
                .replaceFirst("ceiling: 35 C", "ceiling: 50 C"));
    String out = " --out " + folder.resolve("out");
    for (String command :
        List.of(
            "crops",
            "frost demo-data/weather.csv" + out,
            "fit germination demo-data/germination-counts.csv" + out)) {
      Run run = Run.of((command + " --crops " + list).split(" ", -1));

      assertThat(run.exitCode()).as(run.err()).isZero();
      assertThat(run.err())
          .startsWith("Worth another look: ")
          .contains("emergence is '50 C', where no plant is raised; 50 F is 10.0 C");
    }
  }

  @Test
  void countsThatAreHardlyMeantAreDoubtedByBothCommands() throws IOException {
    Path counts =
        Files.writeString(
            folder.resolve("counts.csv"),
            Files.readString(Path.of("demo-data/germination-counts.csv"))
                + "Z-27,zinnia,15 C,98,50,192,0\nZ-27,zinnia,50 C,99,50,8,0\n");

    for (String command : List.of("germination", "fit germination")) {
      Run run = Run.of((command + " " + counts + " --out " + folder.resolve("out")).split(" ", -1));

      assertThat(run.exitCode()).as(run.err()).isZero();
      assertThat(run.err().lines()).hasSize(2).allMatch(l -> l.startsWith("Worth another look: "));
      assertThat(run.err())
          .contains(
              "time is '192', longer than a germination test; hours belong under time-hours",
              "temperature is '50 C', where no plant is raised; 50 F is 10.0 C");
    }
  }
}
