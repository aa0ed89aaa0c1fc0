package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What commands are told of a season so far. */
class SoFarOptionsTest {
  @TempDir private Path folder;
  private Path scenario;
  private Path out;

  @BeforeEach
  void aNewFarm() {
    Path farm = folder.resolve("farm");
    scenario = farm.resolve("scenario.yaml");
    out = folder.resolve("out");
    assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
  }

  private Run asked(Instant clock, String... more) {
    return Run.at(
        clock,
        Stream.concat(
                Stream.of("run", scenario.toString(), "--seasons", "12", "--out", out.toString()),
                Stream.of(more))
            .toArray(String[]::new));
  }

  private String log(String rows) throws IOException {
    String header = "sowing,tray,event,date,plants,place,trays\n";
    return Files.writeString(folder.resolve("log.csv"), header + rows).toString();
  }

  @Test
  void anEmptyLogOnTheFirstDayChangesNoDigit() throws IOException {
    assertThat(asked(Run.EVENING).exitCode()).isZero();
    String before = Files.readString(out.resolve("summary.json"));
    String report = Files.readString(out.resolve("report.html"));
    Run run = asked(Run.EVENING, "--log", log(""));
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(Files.readString(out.resolve("summary.json"))).isEqualTo(before);
    assertThat(Files.readString(out.resolve("report.html"))).isEqualTo(report);
  }

  @Test
  void todayIsTheDaySaidOrElseTheClocks() throws IOException {
    String log = log("cabbage-1,,sown,2027-02-22,,,\n");
    Run early = asked(Instant.parse("2027-02-20T09:00:00Z"), "--log", log);
    assertThat(early.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(early.out()).isEmpty();
    assertThat(early.err().strip())
        .isEqualTo(
            log
                + ":2: date 2027-02-22 is not before today, 2027-02-20; a day that has been, or"
                + " --on 2027-02-23");
    assertThat(out).doesNotExist();
    String unsown =
        "due before 2027-03-01 and not sown by the log: trays of snapdragon-1 (0 of 14)";
    for (Run run :
        new Run[] {
          asked(Run.EVENING, "--log", log, "--on", "2027-03-01"),
          asked(Instant.parse("2027-03-01T09:00:00Z"), "--log", log)
        }) {
      assertThat(run.exitCode()).isZero();
      assertThat(run.err()).startsWith("Worth another look: ").contains(unsown);
    }
  }

  /** Cabbages are through the heat in a week: a row was forgotten, and is asked for. */
  @Test
  void aRowThatSeemsToBeMissingIsAskedFor() throws IOException {
    Run run =
        asked(Run.EVENING, "--on", "2027-03-20", "--log", log("cabbage-1,,sown,2027-02-22,,,"));
    assertThat(run.exitCode()).isZero();
    assertThat(run.err())
        .contains(
            "Worth another look: cabbage-1: by the log 12 trays have been in the heat for 26",
            "Is a row off-heat missing?");
  }

  /** Also where dates may be left to be found; and of scenarios with one log, once. */
  @Test
  void everyCommandAsksForARowOnce() throws IOException {
    String log = log("cabbage-1,,sown,2027-02-22,,,");
    Path other = folder.resolve("farm/other.yaml");
    Files.writeString(other, "extends: scenario.yaml\nname: Other\n");
    for (String command :
        List.of(
            "compare " + scenario + " " + other + " --seasons 12",
            "latest " + scenario + " --match lettuce* --seasons 12")) {
      List<String> args = new ArrayList<>(List.of(command.split(" ")));
      args.addAll(
          List.of("--on", "2027-03-20", "--log", log, "--out", out.resolve("x").toString()));
      Run run = Run.at(Run.EVENING, args.toArray(String[]::new));
      assertThat(run.exitCode()).as(run.err()).isNotEqualTo(Propcap.BAD_INPUT);
      assertThat(run.err().split("cabbage-1: by the log", -1)).as(command).hasSize(2);
    }
  }

  @Test
  void onTakesADayAndAnAddressEachOnce() {
    Run both = asked(Run.EVENING, "--on", "spark://127.0.0.1:7077", "--on", "2027-02-01");
    assertThat(both.err()).startsWith("--on spark://127.0.0.1:7077: this program was built");
    Run day = asked(Run.EVENING, "--on", "2027-2-30");
    assertThat(day.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(day.err()).startsWith("--on '2027-2-30' is not a day such as 2027-03-22");
    Run two = asked(Run.EVENING, "--on", "2027-02-10", "--on", "2027-02-11");
    assertThat(two.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(two.err()).startsWith("--on takes one day, was 2027-02-10 and 2027-02-11");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "run S",
        "compare S T",
        "bottleneck S",
        "size S --place House --from 10 --to 20 --goal met>=80%",
        "shift S",
        "plan S",
        "calendar S",
        "order S",
        "sweep F"
      })
  void everyCommandThatSimulatesReadsTheLog(String command) throws IOException {
    Path other = folder.resolve("farm/then.yaml");
    Files.writeString(other, "extends: scenario.yaml\n");
    String[] args =
        (command + " --out O --log L")
            .replace(" S", " " + scenario)
            .replace(" T", " " + other)
            .replace(" F", " " + folder.resolve("farm"))
            .replace(" O", " " + out)
            .replace(" L", " " + log("cabbage-1,,sown,2027-02-22,,Nowhere,\n"))
            .split(" ");
    Run run = Run.at(Instant.parse("2027-03-01T09:00:00Z"), args);
    assertThat(run.err()).contains("log.csv:2: no place 'Nowhere'; one of Chamber");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(out).doesNotExist();
  }
}
