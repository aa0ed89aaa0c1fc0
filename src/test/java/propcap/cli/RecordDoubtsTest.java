package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A log of trays and a table of counts, with one thing in it that cannot or will hardly be meant.
 */
class RecordDoubtsTest {
  @TempDir Path folder;

  private Run log(String text) throws IOException {
    Path log = Files.writeString(folder.resolve("log.csv"), text);
    return Run.of(
        "fit",
        "stages",
        log.toString(),
        "--scenario",
        "scenarios/spring.yaml",
        "--out",
        folder.resolve("out").toString());
  }

  private Run changedLog(String from, String to) throws IOException {
    String text = Files.readString(Path.of("demo-data/house-log.csv"));
    assertThat(text).contains(from);
    return log(text.replace(from, to));
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
    Run run = changedLog(from, to);

    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains(fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "tomato-1,T1,sown,2025-03-17,72 | tomato-1,T1,sown,2025-03-17,200 | log.csv:2: plants is"
            + " '200', more than the 72 cells of a tray of tomato",
        "tomato-1,T1, | tomato-1,T1, | ",
      })
  void morePlantsThanATrayHasCellsAreDoubted(String from, String to, String doubt)
      throws IOException {
    Run run = changedLog(from, to);

    assertThat(run.exitCode()).isZero();
    if (doubt == null) {
      assertThat(run.err()).isEmpty();
    } else {
      assertThat(run.err()).startsWith("Worth another look: ").contains(doubt);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2035 | a date after the season, 2035-03-17, in 4 rows, this the first; a log tells what"
            + " has been",
        "2011 | a date 14 years from most of the log, 2011-03-17, in 4 rows, this the first",
      })
  void aTrayOfOtherYearsIsDoubted(String year, String doubt) throws IOException {
    String text = Files.readString(Path.of("demo-data/house-log.csv"));

    Run run =
        log(
            text
                + text.lines()
                    .filter(l -> l.startsWith("tomato-1,T1,"))
                    .limit(4)
                    .map(l -> l.replace(",T1,", ",T99,").replace("2025", year) + "\n")
                    .reduce("", String::concat));

    assertThat(run.exitCode()).isZero();
    assertThat(run.err()).contains("Worth another look: ").contains(doubt);
  }

  @Test
  void aCropListIsDoubtedWhereItIsReadByItself() throws IOException {
    Path list =
        Files.writeString(
            folder.resolve("crops.yaml"),
            Files.readString(Path.of("demo-data/crops.yaml"))
                .replaceFirst("ceiling: 35 C", "ceiling: 50 C"));
    String[][] commands = {
      {"crops", "--crops", list.toString()},
      {"frost", "demo-data/weather.csv", "--crops", list.toString()},
      {"fit", "germination", "demo-data/germination-counts.csv", "--crops", list.toString()},
    };

    for (String[] command : commands) {
      String[] args = command;
      if (!command[0].equals("crops")) {
        args = java.util.Arrays.copyOf(command, command.length + 2);
        args[command.length] = "--out";
        args[command.length + 1] = folder.resolve("out").toString();
      }

      Run run = Run.of(args);

      assertThat(run.exitCode()).as(run.err()).isZero();
      assertThat(run.err())
          .startsWith("Worth another look: ")
          .contains("emergence is '50 C', where no plant is raised; 50 F is 10.0 C");
    }
  }

  @Test
  void whatIsUnlikelyInTheScenarioIsToldBesideTheLog() throws IOException {
    Path hot =
        Files.writeString(
            folder.resolve("hot.yaml"),
            "extends: "
                + Path.of("scenarios/spring.yaml").toAbsolutePath()
                + "\nplaces:\n  - {name: Chamber, climate: {constant: 45 C}}\n");

    Run run =
        Run.of(
            "fit",
            "stages",
            "demo-data/house-log.csv",
            "--scenario",
            hot.toString(),
            "--out",
            folder.resolve("out").toString());

    assertThat(run.exitCode()).isZero();
    assertThat(run.err()).contains("Worth another look: ", "hotter than seedlings bear");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "15 C,1,50,192,0 | time is '192', longer than a germination test; hours belong under"
            + " time-hours",
        "50 C,1,50,8,0 | temperature is '50 C', where no plant is raised; 50 F is 10.0 C",
      })
  void countsThatAreHardlyMeantAreDoubtedByBothCommands(String row, String doubt)
      throws IOException {
    Path counts =
        Files.writeString(
            folder.resolve("counts.csv"),
            Files.readString(Path.of("demo-data/germination-counts.csv"))
                + "Z-27,zinnia,"
                + row.replace(",1,", ",99,")
                + "\n");

    for (String[] command : new String[][] {{"germination"}, {"fit", "germination"}}) {
      String[] args = java.util.Arrays.copyOf(command, command.length + 3);
      args[command.length] = counts.toString();
      args[command.length + 1] = "--out";
      args[command.length + 2] = folder.resolve("out").toString();

      Run run = Run.of(args);

      assertThat(run.exitCode()).as(run.err()).isZero();
      assertThat(run.err().lines())
          .singleElement()
          .asString()
          .startsWith("Worth another look: ")
          .contains(doubt);
    }
  }
}
