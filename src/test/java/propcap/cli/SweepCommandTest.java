package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.disk.Child;
import propcap.report.Put;

/** Many scenarios, end to end: what is tried, what is refused, and what is done stays done. */
class SweepCommandTest {
  /** So many changes that the sweep is not over before it is stopped. */
  private static final int LONG = 12;

  @TempDir Path desk;
  private Path farm;
  private Path scenario;
  private Path changes;

  @BeforeEach
  void aFarm() throws IOException {
    farm = desk.resolve("farm");
    assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
    scenario = farm.resolve("scenario.yaml");
    changes = desk.resolve("changes.csv");
    Files.writeString(changes, "name,shift of *\nlater,1 day\nlatest,2 days\nearlier,-1 day\n");
  }

  private static String[] with(String... args) {
    List<String> all = new ArrayList<>(List.of("sweep"));
    all.addAll(List.of(args));
    all.addAll(List.of("--threads", "1"));
    return all.toArray(String[]::new);
  }

  private String[] sweep(Path out, String seasons) {
    return with(
        scenario.toString(),
        "--changes",
        changes.toString(),
        "--seasons",
        seasons,
        "--out",
        out.toString());
  }

  private static void assertBad(String told, Run run) {
    assertThat(run.err()).contains(told).doesNotContain("Exception");
    assertThat(run.exitCode()).isEqualTo(2);
  }

  private static int kept(Path out) {
    int kept = 0;
    try (DirectoryStream<Path> files =
        Files.newDirectoryStream(out.resolve(".propcap-sweep-runs"), "[0-9a-f]*")) {
      for (Path unused : files) {
        kept++;
      }
    } catch (IOException e) {
      return 0;
    }
    return kept;
  }

  @Test
  void aTableOfChangesIsAnsweredVerdictFirst() throws IOException {
    Path out = desk.resolve("out");
    Run run = Run.of(sweep(out, "6"));
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out().lines().takeWhile(l -> !l.isEmpty()))
        .hasSizeLessThanOrEqualTo(10)
        .allSatisfy(l -> assertThat(l).hasSizeLessThanOrEqualTo(100))
        .last()
        .asString()
        .startsWith("4 scenarios: ");
    assertThat(Put.contents(out)).containsOnlyKeys("sweep.html", "sweep.csv", "sweep.json");
    assertThat(Files.readAllLines(out.resolve("sweep.csv")))
        .hasSize(5)
        .first()
        .asString()
        .startsWith("scenario,shift of *,standing,trays,on-time,");
  }

  @Test
  void whatIsDoneIsNotDoneAgainAndWhatIsNoMoreWantedIsCleared() throws IOException {
    Path out = desk.resolve("out");
    assertThat(Run.of(sweep(out, "6")).err()).isEmpty();
    Map<String, String> whole = Put.contents(out);
    assertThat(Run.of(sweep(out, "6")).err().strip())
        .isEqualTo("4 of 4 scenarios were done before.");
    assertThat(Put.contents(out)).isEqualTo(whole);
    Files.writeString(changes, "name,shift of *\nlater,1 day\nlatest,3 days\n");
    assertThat(Run.of(sweep(out, "6")).err().strip())
        .isEqualTo("2 of 3 scenarios were done before.");
    assertThat(kept(out)).isEqualTo(3);
  }

  /** Kept files are waited for, not time: once the first is there, the rest takes far longer. */
  @Test
  void aSweepThatIsKilledAndThenInterruptedComesToTheSameBytes() throws Exception {
    StringBuilder rows = new StringBuilder("trays of *\n");
    for (int trays = 1; trays <= LONG; trays++) {
      rows.append(trays).append('\n');
    }
    Files.writeString(changes, rows);
    Path out = desk.resolve("out");
    try (Child child = Child.start(Propcap.class, sweep(out, "30"))) {
      while (kept(out) == 0) {
        Thread.onSpinWait();
      }
      child.kill();
    }
    int done = kept(out);
    Run[] stopped = {new Run(0, "", "")};
    Thread command = new Thread(() -> stopped[0] = Run.of(sweep(out, "30")));
    command.start();
    while (kept(out) == done && command.isAlive()) {
      Thread.onSpinWait();
    }
    command.interrupt();
    command.join();
    int more = kept(out);
    int all = LONG + 1;
    assertThat(more).isBetween(done + 1, LONG);
    assertThat(stopped[0].exitCode()).isEqualTo(130);
    assertThat(stopped[0].err().lines())
        .containsExactly(
            done + " of " + all + " scenarios were done before.",
            "Stopped. "
                + more
                + " of "
                + all
                + " scenarios are done and kept: the same command goes on from there.");
    assertThat(Put.contents(out)).isEmpty();
    Run again = Run.of(sweep(out, "30"));
    assertThat(again.exitCode()).isZero();
    assertThat(again.err().strip()).isEqualTo(more + " of " + all + " scenarios were done before.");
    Path whole = desk.resolve("whole");
    assertThat(Run.of(sweep(whole, "30")).err()).isEmpty();
    assertThat(Put.contents(out)).isEqualTo(Put.contents(whole));
    assertThat(kept(out)).isEqualTo(all);
    assertThat(out.resolve(".propcap")).doesNotExist();
  }

  @Test
  void aFolderIsItsScenariosThoseThatExtendNoneFirst() throws IOException {
    Files.writeString(
        farm.resolve("a-week.yaml"),
        "extends: scenario.yaml\nname: A week later\nsowings: [{match: \"*\", shift: 2 days}]\n");
    Files.writeString(farm.resolve("b.yml"), "extends: scenario.yaml\nname: A week later\n");
    Path out = desk.resolve("out");
    Run run = Run.of(with(farm.toString(), "--seasons", "6", "--out", out.toString()));
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(
            Files.readAllLines(out.resolve("sweep.csv")).stream()
                .map(l -> l.substring(0, l.indexOf(','))))
        .hasSize(4)
        .endsWith("A week later (a-week.yaml)", "A week later (b.yml)");
  }

  @Test
  void allFaultsOfTheScenarioAndTheTableAreToldAtOnce() throws IOException {
    Files.writeString(
        scenario, Files.readString(scenario).replaceFirst("frost-at:.*", "") + "x: 1\n");
    Files.writeString(changes, "shift of *,hours\n7,12\n");
    Run run = Run.of(sweep(desk.resolve("out"), "6"));
    assertBad("scenario.yaml:", run);
    assertThat(run.err())
        .contains("changes.csv:2: shift of * is '7'; a unit is missing")
        .contains("changes.csv:2: hours is '12'; a unit is missing");
    assertThat(desk.resolve("out")).doesNotExist();
  }

  @Test
  void whatCannotBeMeantIsRefused() throws IOException {
    String of = scenario.toString();
    assertBad(
        "sweep needs a folder of scenarios, or a scenario with --changes", Run.of("sweep", of));
    assertBad(
        "--changes and --grid go with a scenario's file",
        Run.of("sweep", farm.toString(), "--changes", changes.toString()));
    assertBad("two scenarios or more", Run.of(with(farm.toString(), "--out", desk + "/out")));
    Path empty = Files.createDirectory(desk.resolve("empty"));
    assertBad("no scenario in the folder", Run.of("sweep", empty.toString()));
    assertBad("no file", Run.of("sweep", of, "--changes", desk.resolve("none.csv").toString()));
    assertBad("no file", Run.of("sweep", desk + "/none.yaml", "--changes", changes.toString()));
    assertBad("--seasons 2 or more", Run.of(withExactlyOne()));
    assertThat(desk.resolve("out")).doesNotExist();
  }

  private String[] withExactlyOne() {
    List<String> all = new ArrayList<>(List.of(sweep(desk.resolve("out"), "1")));
    all.add("--exactly");
    return all.toArray(String[]::new);
  }
}
