package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The plan, end to end on the starter farm. */
class PlanCommandTest {
  @TempDir Path folder;
  private Path scenario;
  private Path out;

  @BeforeEach
  void aNewFarm() {
    scenario = folder.resolve("farm").resolve("scenario.yaml");
    out = folder.resolve("out");
    assertThat(Run.of("new", folder.resolve("farm").toString()).exitCode()).isZero();
  }

  /** Within few days: most of the time of a search goes into each sowing by itself, day by day. */
  private Run plan(String... more) {
    String[] args = {"plan", scenario.toString(), "--seasons", "100", "--out", out.toString()};
    String[] days = {"--earlier", "2", "--later", "2"};
    return Run.of(Stream.of(args, days, more).flatMap(Stream::of).toArray(String[]::new));
  }

  @Test
  void aPlanIsASowingPlanThatTheScenarioReads() throws Exception {
    Run run = plan("--tries", "20");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isIn(Propcap.DONE, Propcap.NO);
    assertThat(run.out()).contains("Sowings safe").contains("seed 1");
    assertThat(out)
        .isDirectoryContaining("glob:**plan.html")
        .isDirectoryContaining("glob:**plan.json")
        .isDirectoryContaining("glob:**plan-changes.csv");
    Files.copy(out.resolve("sowings.csv"), scenario.resolveSibling("better.csv"));
    Files.writeString(
        scenario.resolveSibling("better.yaml"), "extends: scenario.yaml\nsowings: better.csv\n");
    Run again =
        Run.of(
            "run",
            scenario.resolveSibling("better.yaml").toString(),
            "--seasons",
            "20",
            "--out",
            folder.resolve("again").toString());
    assertThat(again.err()).isEmpty();
    assertThat(again.exitCode()).isZero();
  }

  @Test
  void whatCannotBeMetIsExitCode3AndSaidWithWhatItLacks() throws Exception {
    Path plan = scenario.resolveSibling("sowings.csv");
    Files.writeString(plan, Files.readString(plan).replace("10,500,2027", "10,50000,2027"));
    Run run = plan("--tries", "20");
    assertThat(run.exitCode()).isEqualTo(Propcap.NO);
    assertThat(run.out()).contains("tomato-1: in no spring; it needs more trays");
    assertThat(out.resolve("sowings.csv")).exists();
  }

  @Test
  void aQuestionThatCannotBeAskedIsExitCode2() {
    assertThat(plan("--goal", "120%").exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(plan("--most-trays", "0").exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(plan("--tries", "0").exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(out).doesNotExist();
  }
}
