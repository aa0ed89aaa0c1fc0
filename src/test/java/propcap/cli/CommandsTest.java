package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CommandsTest {
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

  private Run run(String... more) {
    return Run.of(
        Stream.concat(
                Stream.of("run", scenario.toString(), "--seasons", "20", "--out", out.toString()),
                Stream.of(more))
            .toArray(String[]::new));
  }

  private JsonObject summary() throws IOException {
    return JsonParser.parseString(Files.readString(out.resolve("summary.json"))).getAsJsonObject();
  }

  @Test
  void theStarterSetRunsAsItIs() throws IOException {
    Run run = run();
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(out).isDirectoryContaining("glob:**report.html");
    assertThat(run.out()).contains("wrote " + out.resolve("report.html"));
    assertThat(summary().get("seed").getAsLong()).isEqualTo(1);
  }

  /** The starter's record has 12 years: 20 springs become 24. */
  @Test
  void springsAreRoundedUpUntilEachYearComesEquallyOftenUnlessAskedNotTo() throws IOException {
    run();
    assertThat(summary().get("seasons").getAsInt()).isEqualTo(24);
    run("--exactly");
    assertThat(summary().get("seasons").getAsInt()).isEqualTo(20);
  }

  @Test
  void theTerminalShowsWhatMattersAndNoDump() {
    assertThat(run().out().lines().takeWhile(line -> !line.isBlank()).count())
        .isLessThanOrEqualTo(12);
  }

  @Test
  void theSameSeedGivesTheSameBytesWhateverTheThreads() throws IOException {
    run("--threads", "1");
    String one = Files.readString(out.resolve("summary.json"));
    String report = Files.readString(out.resolve("report.html"));
    run("--threads", "8");
    assertThat(Files.readString(out.resolve("summary.json"))).isEqualTo(one);
    assertThat(Files.readString(out.resolve("report.html"))).isEqualTo(report);
    run("--threads", "2", "--seed", "2");
    assertThat(Files.readString(out.resolve("summary.json"))).isNotEqualTo(one);
  }

  @Test
  void precisionStopsAtHundredsRoundedUpToWholeBlocks() throws IOException {
    Run run = Run.of("run", scenario.toString(), "--precision", "5%", "--out", out.toString());
    assertThat(run.exitCode()).isZero();
    assertThat(summary().get("seasons").getAsInt()).isPositive().matches(n -> n % 108 == 0);
  }

  @Test
  void badInputIsExitCode2WithEveryFaultAndLeavesOldResults() throws IOException {
    run();
    String old = Files.readString(out.resolve("summary.json"));
    Files.writeString(scenario, Files.readString(scenario).replace("kind: table", "kind: tabel"));
    Files.writeString(
        farm.resolve("sowings.csv"), Files.readString(farm.resolve("sowings.csv")) + "x,y\n");
    Run run = run();
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("scenario.yaml:").contains("table").contains("sowings.csv:");
    assertThat(run.err()).doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(Files.readString(out.resolve("summary.json"))).isEqualTo(old);
  }

  @Test
  void aMissingFileIsExitCode2() {
    Run run = Run.of("run", folder.resolve("no.yaml").toString(), "--out", out.toString());
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("no.yaml");
    assertThat(out).doesNotExist();
  }

  @Test
  void usageFaultsAreExitCode2() {
    assertThat(Run.of("run").exitCode()).isEqualTo(2);
    assertThat(Run.of("rum").exitCode()).isEqualTo(2);
    assertThat(Run.of().exitCode()).isEqualTo(2);
    assertThat(run("--threads", "0").exitCode()).isEqualTo(2);
    assertThat(run("--seasons", "none").exitCode()).isEqualTo(2);
    Run precision = run("--precision", "much");
    assertThat(precision.exitCode()).isEqualTo(2);
    assertThat(precision.err()).contains("0.2%");
  }

  @Test
  void newDoesNotOverwrite() {
    Run again = Run.of("new", farm.toString());
    assertThat(again.exitCode()).isEqualTo(2);
    assertThat(again.err()).contains("scenario.yaml");
  }

  /** A command within another has options of its own; {@code help fit} alone names both. */
  @Test
  void helpOfACommandWithinAnotherShowsItsOwnOptions() {
    Run help = Run.of("help", "fit", "germination");
    assertThat(help.exitCode()).isZero();
    assertThat(help.out())
        .contains("propcap fit germination")
        .contains("--crops")
        .contains("--lot")
        .contains("--write")
        .doesNotContain("Fits growing on");
    assertThat(Run.of("help", "fit", "stages").out()).contains("--list-weighs");
    assertThat(Run.of("help", "fit").out()).contains("germination").contains("stages");
    assertThat(Run.of("help").out()).contains("Exit codes").contains("fit");
    Run unknown = Run.of("help", "fit", "germinations");
    assertThat(unknown.exitCode()).isEqualTo(2);
    assertThat(unknown.err()).contains("no command 'germinations'").contains("germination, stages");
  }

  @Test
  void helpAndVersionAreExitCode0() {
    Run help = Run.of("help", "run");
    assertThat(help.exitCode()).isZero();
    assertThat(help.out()).contains("--seasons").contains("--precision").contains("--seed");
    assertThat(Run.of("--help").out()).contains("Exit codes");
    assertThat(Run.of("--version").out()).startsWith("propcap ");
  }

  @Test
  void aFaultOfOursIsExitCode1WithoutAStackTrace() {
    StringWriter err = new StringWriter();
    CommandLine command = new CommandLine(new Propcap());
    command.setErr(new PrintWriter(err));
    int exitCode =
        Propcap.failed(
            new IllegalStateException("a season failed", new ArithmeticException("/ by zero")),
            command);
    assertThat(exitCode).isEqualTo(1);
    assertThat(err.toString()).contains("a season failed").contains("/ by zero");
    assertThat(err.toString().lines().count()).isLessThan(8);
  }
}
