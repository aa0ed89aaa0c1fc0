package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A spring to practise on, and the look back upon it, end to end on the starter farm. */
class PretendCommandTest {
  @TempDir Path folder;
  private Path scenario;
  private Path log;
  private Path weather;

  @BeforeEach
  void aNewFarm() {
    scenario = folder.resolve("farm").resolve("scenario.yaml");
    log = folder.resolve("practice.csv");
    weather = folder.resolve("practice-weather.csv");
    assertThat(Run.of("new", folder.resolve("farm").toString()).exitCode()).isZero();
  }

  private Run pretend(String... more) {
    List<String> args =
        new ArrayList<>(
            List.of(
                "pretend",
                scenario.toString(),
                "--out",
                log.toString(),
                "--weather-out",
                weather.toString()));
    args.addAll(List.of(more));
    return Run.of(args.toArray(String[]::new));
  }

  @Test
  void aSpringIsWrittenAndSaysThatItNeverWas() throws IOException {
    Run run = pretend("--on", "2027-04-10");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out())
        .contains(
            "up to 10 April: spring", "none of it ever was", "wrote " + log, "wrote " + weather);
    assertThat(Files.readString(log))
        .startsWith("sowing,tray,event,date,plants,place,trays\n# Inv");
    assertThat(Files.readAllLines(weather))
        .hasSize(1 + 68)
        .last()
        .asString()
        .startsWith("2027-04-09");
  }

  @Test
  void aFileOfTheGrowersIsNotReplaced() throws IOException {
    Files.writeString(log, "mine");
    Run run = pretend("--on", "2027-04-10");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(log).hasContent("mine");
    assertThat(weather).doesNotExist();
    assertThat(pretend("--on", "2027-04-10", "--replace").exitCode()).isZero();
    assertThat(folder.resolve("practice.csv.bak")).hasContent("mine");
  }

  @Test
  void theYearAskedForIsTheSpringsWeather() {
    assertThat(pretend("--on", "2027-04-10", "--year", "1066").err()).contains("no spring of 1066");
    assertThat(pretend("--on", "2026-04-10").err()).contains("--on takes a day from 2027-02-02");
    assertThat(log).doesNotExist();
  }

  @Test
  void itIsLookedBackUponWithTheVerdictFirst() {
    assertThat(pretend("--on", "2027-07-01").exitCode()).isZero();
    Run run =
        Run.of(
            "review",
            scenario.toString(),
            "--log",
            log.toString(),
            "--weather-so-far",
            weather.toString(),
            "--on",
            "2027-07-01",
            "--seasons",
            "25",
            "--out",
            folder.resolve("out").toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).startsWith("Winter's forecast held");
    assertThat(run.out().lines().takeWhile(l -> !l.isEmpty()).count()).isLessThanOrEqualTo(10);
    assertThat(folder.resolve("out")).isDirectoryContaining("glob:**review.html");
  }

  /** As a grower does who practised up to 10 April and then looks back upon the whole spring. */
  @Test
  void aLookBackBeyondTheWeatherSaysHowToHaveTheRest() {
    assertThat(pretend("--on", "2027-04-10").exitCode()).isZero();
    String[] review = {
      "review",
      scenario.toString(),
      "--log",
      log.toString(),
      "--weather-so-far",
      weather.toString(),
      "--on",
      "2027-07-05",
      "--seasons",
      "25",
      "--out",
      folder.resolve("out").toString()
    };
    Run run = Run.of(review);
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err())
        .contains("or --on 2027-04-10, the day after its last")
        .contains("by propcap pretend with --on 2027-07-05 --replace");
    assertThat(pretend("--on", "2027-07-05", "--replace").exitCode()).isZero();
    assertThat(Run.of(review).exitCode()).isZero();
  }

  @Test
  void withoutALogItSaysWhereToNameOne() {
    Run run = Run.of("review", scenario.toString(), "--out", folder.resolve("out").toString());
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains("--log");
  }

  @Test
  void theDemonstrationsLogReadsWithoutAFault() {
    Run run =
        Run.of(
            "run",
            "scenarios/in-season.yaml",
            "--on",
            "2027-04-10",
            "--seasons",
            "1",
            "--exactly",
            "--out",
            folder.resolve("out").toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
  }

  /** As demo-data/README.md tells: the command there, and two rows by hand. */
  @Test
  void theDemonstrationsLogIsThatOfTheCommandBesideIt() throws IOException {
    scenario = Path.of("scenarios/spring.yaml");
    String[] options = {"--on", "2027-04-10", "--year", "2009", "--season", "6"};
    assertThat(Files.readString(Path.of("demo-data/README.md")))
        .contains(
            "pretend scenarios/spring.yaml "
                + String.join(" ", options)
                + " --out in-season-log.csv");
    assertThat(pretend(options).exitCode()).isZero();
    assertThat(weather).hasSameTextualContentAs(Path.of("scenarios/in-season-weather.csv"));
    List<String> rows = new ArrayList<>(rows(Path.of("scenarios/in-season-log.csv")));
    rows.removeAll(
        List.of(
            "snapdragon-3,5 to 8,outbreak,2027-04-05,30,,",
            "snapdragon-3,5 to 8,thrown-out,2027-04-06,,,"));
    assertThat(rows).isEqualTo(rows(log));
  }

  private static List<String> rows(Path log) throws IOException {
    return Files.readAllLines(log).stream().filter(l -> !l.startsWith("#")).toList();
  }
}
