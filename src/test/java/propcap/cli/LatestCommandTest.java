package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The last day to sow, end to end on the starter farm; and a plan of which cells are empty. */
class LatestCommandTest {
  private static final String HEADER =
      "id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until\n";

  @TempDir Path folder;
  private Path scenario;
  private Path plan;
  private Path out;

  /** With its last months alone, so that there are fewer days to look at. */
  @BeforeEach
  void aNewFarm() throws IOException {
    scenario = folder.resolve("farm").resolve("scenario.yaml");
    plan = scenario.resolveSibling("sowings.csv");
    out = folder.resolve("out");
    assertThat(Run.of("new", folder.resolve("farm").toString()).exitCode()).isZero();
    Files.writeString(
        scenario, Files.readString(scenario).replace("start: 2027-02-01", "start: 2027-04-05"));
    Files.writeString(
        plan,
        HEADER
            + """
            lettuce-1,lettuce,,2027-04-05,6,575,2027-05-03,2027-05-22,,
            zinnia-1,zinnia,,2027-04-12,8,700,2027-05-10,2027-06-05,,
            zinnia-2,zinnia,,2027-05-03,7,625,2027-05-31,2027-06-19,,
            """);
  }

  private Run ask(String command, String... more) {
    String[] args = {command, scenario.toString(), "--seasons", "40", "--out", out.toString()};
    return Run.of(Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new));
  }

  private void change(String old, String now) throws IOException {
    String text = Files.readString(plan);
    assertThat(text).contains(old);
    Files.writeString(plan, text.replace(old, now));
  }

  @Test
  void theLastDayIsToldWithPageDataAndTables() throws Exception {
    Run run = ask("latest", "--match", "zinnia-2");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out())
        .startsWith("zinnia-2: sow by ")
        .contains("alone in the house")
        .contains("too late for 5 springs of 10")
        .contains("up to 48 springs of each day, seed 1");
    assertThat(out)
        .isDirectoryContaining("glob:**latest.html")
        .isDirectoryContaining("glob:**latest.json");
    assertThat(Files.readString(out.resolve("latest.csv")))
        .startsWith("sowing,crop,trays,plants-needed,bed-by,goal,sow,filled-in,latest,")
        .contains("\nzinnia-2,zinnia,7,625,2027-06-19,0.9,2027-05-03,,2027-05-");
    assertThat(Files.readString(out.resolve("latest-days.csv")))
        .contains("\nzinnia-2,alone,2027-05-03,")
        .contains("\nzinnia-2,full,2027-06-19,");
  }

  @Test
  void aCropThatIsNotInThePlanIsAskedAboutWithTheTraysThatItTakes() throws Exception {
    String before = Files.readString(plan);
    Run run = ask("latest", "--crop", "zinnia", "--bed-by", "2027-07-01", "--plants", "150");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out())
        .startsWith("new zinnia: sow by ")
        .contains("Filled in")
        .contains("trays on");
    assertThat(plan).hasContent(before);
    Run few =
        ask(
            "latest",
            "--crop",
            "zinnia",
            "--bed-by",
            "2027-07-01",
            "--plants",
            "150",
            "--trays",
            "1");
    assertThat(few.exitCode()).isEqualTo(Propcap.NO);
    assertThat(few.out()).contains("does it have its 150 plants on time").contains("the best is");
  }

  @Test
  void whatIsTooLateIsToldAndIsNoFault() {
    Run run = ask("latest", "--crop", "zinnia", "--bed-by", "2027-04-10", "--plants", "30");
    assertThat(run.exitCode()).isEqualTo(Propcap.NO);
    assertThat(run.out()).startsWith("new zinnia: on no working day that is left");
  }

  @Test
  void whatCannotBeAskedIsExitCode2AndSaysWhatWouldBeRight() {
    assertBad("no sowing's id matches 'orchid*'", ask("latest", "--match", "orchid*"));
    assertBad("such as 90%", ask("latest", "--goal", "120%"));
    assertBad("such as --crop zinnia", ask("latest", "--plants", "30"));
    assertBad("--bed-by 2027-07-01 --plants 500", ask("latest", "--crop", "zinnia"));
    assertBad(
        "the crop list lacks 'zinia'; it has cabbage, ",
        ask("latest", "--crop", "zinia", "--bed-by", "2027-07-01", "--plants", "3"));
    assertBad(
        "outside the season, 2027-04-05 to 2027-07-04",
        ask("latest", "--crop", "zinnia", "--bed-by", "2028-07-01", "--plants", "3"));
    assertBad(
        "plants are from 1",
        ask("latest", "--crop", "zinnia", "--bed-by", "2027-07-01", "--plants", "0"));
    assertBad(
        "after its last day",
        ask(
            "latest",
            "--crop",
            "zinnia",
            "--bed-from",
            "2027-07-02",
            "--bed-by",
            "2027-07-01",
            "--plants",
            "3"));
    assertThat(out).doesNotExist();
  }

  private static void assertBad(String message, Run run) {
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains(message).doesNotContain("Exception");
  }

  @Test
  void emptyCellsAreAFaultToAllButThoseWhoFindThem() throws Exception {
    change("2027-04-12,8,700", ",,700");
    change("2027-05-03,7,625", "2027-05-03,,625");
    for (String command : new String[] {"run", "shift"}) {
      Run run = ask(command);
      assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
      assertThat(run.err().lines())
          .hasSize(3)
          .allMatch(line -> line.contains("propcap plan and propcap latest find it"));
      assertThat(run.err())
          .contains("sowings.csv:3: sow of zinnia-1 is empty; a date such as 2027-03-28")
          .contains("sowings.csv:3: trays of zinnia-1 is empty; a whole number from 1 to 100000")
          .contains("sowings.csv:4: trays of zinnia-2 is empty");
    }
    assertThat(out).doesNotExist();
  }

  @Test
  void otherFaultsAreToldWithoutThem() throws Exception {
    change("2027-04-12,8,700", ",,700");
    change("lettuce-1,lettuce,", "lettuce-1,letuce,");
    Run run = ask("plan", "--tries", "3");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains("letuce").doesNotContain("zinnia-1");
    assertThat(ask("run").err()).contains("letuce").contains("zinnia-1");
  }

  @Test
  void latestShowsWhatItFilledIn() throws Exception {
    change("2027-05-03,7,625", ",,625");
    String before = Files.readString(plan);
    Run run = ask("latest", "--match", "zinnia-2");
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .startsWith("zinnia-2: sow by ")
        .containsPattern("Filled in where the sowing plan is empty: zinnia-2 \\([0-9]+ trays on");
    assertThat(Files.readString(out.resolve("latest.csv"))).contains(",yes,");
    assertThat(plan).hasContent(before);
  }

  /** She knows what she wants in the ground, and when; all else is found. */
  @Test
  void aPlanComesFromNeedsAloneAndReadsAsAPlan() throws Exception {
    String needs =
        HEADER
            + """
            lettuce-1,lettuce,,,,200,2027-05-03,2027-05-22,,
            zinnia-1,zinnia,,,,150,2027-05-10,2027-06-05,,
            zinnia-2,zinnia,,,,150,2027-05-31,2027-06-19,,
            """;
    Files.writeString(plan, needs);
    Run run = ask("plan", "--tries", "40", "--earlier", "3", "--later", "3");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).as(run.out()).isZero();
    assertThat(run.out()).startsWith("Filled in where the sowing plan is empty: lettuce-1 (");
    assertThat(run.out().replaceAll("\\s+", " ")).contains("Sowings safe: 3 of 3");
    assertThat(plan).hasContent(needs);
    Files.copy(out.resolve("sowings.csv"), plan, StandardCopyOption.REPLACE_EXISTING);
    out = folder.resolve("again");
    assertThat(ask("run").exitCode()).isZero();
  }
}
