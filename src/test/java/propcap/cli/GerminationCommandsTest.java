package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From a table of counts to pages, files and the crop list. */
class GerminationCommandsTest {
  private static final String COUNTS = "demo-data/germination-counts.csv";
  private static final String HEADER = "lot,crop,temperature,tray,seeds,time,emerged\n";

  @TempDir Path folder;

  private Run fit(String counts, String... more) {
    return run(Stream.of("fit", "germination", counts), more);
  }

  private Run run(Stream<String> command, String... more) {
    return Run.of(
        Stream.concat(
                Stream.concat(command, Stream.of("--out", folder.resolve("out").toString())),
                Stream.of(more))
            .toArray(String[]::new));
  }

  private String counts(String rows) throws IOException {
    return Files.writeString(folder.resolve("counts.csv"), HEADER + rows).toString();
  }

  private JsonObject json(String name) throws IOException {
    return JsonParser.parseString(Files.readString(folder.resolve("out").resolve(name)))
        .getAsJsonObject();
  }

  private void assertNoNaN(Run run) throws IOException {
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out() + run.err()).doesNotContain("NaN").doesNotContain("Infinity");
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      for (Path file : files.toList()) {
        assertThat(Files.readString(file)).doesNotContain("NaN").doesNotContain("Infinity");
      }
    }
  }

  @Test
  void theDemonstrationGivesAPageFilesAndTheBlockToPaste() throws IOException {
    Run run = fit(COUNTS, "--crops", "demo-data/crops.yaml");
    assertNoNaN(run);
    assertThat(run.out().lines().takeWhile(line -> !line.isBlank()).count())
        .isLessThanOrEqualTo(12);
    assertThat(run.out())
        .contains("zinnia:   # by the test of lot Z-27")
        .contains("  emergence: {base: ")
        .contains("optimum: 26 C, ceiling: 38 C, at: ");
    assertThat(folder.resolve("out"))
        .isDirectoryContaining("glob:**germination-fit.html")
        .isDirectoryContaining("glob:**germination-fit.csv");
    JsonObject zinnia =
        json("germination-fit.json").getAsJsonArray("lots").get(0).getAsJsonObject();
    assertThat(zinnia.getAsJsonArray("temperatures")).hasSize(3);
    // The law that the counts were drawn from: base 8.5 C.
    JsonObject base = zinnia.getAsJsonObject("thermal").getAsJsonObject("base");
    assertThat(base.get("low").getAsDouble()).isLessThan(8.5);
    assertThat(base.get("high").getAsDouble()).isGreaterThan(8.5);
  }

  @Test
  void withoutACropListTheBlockSaysWhatIsToBeAdded() {
    assertThat(fit(COUNTS).out())
        .contains("# add optimum and ceiling from your crop list")
        .contains("# add base, optimum and ceiling from your crop list");
  }

  @Test
  void theAnswerIsWrittenIntoTheCropListAndTheForecastRunsOnIt() throws IOException {
    Path farm = folder.resolve("farm");
    assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
    Path list = farm.resolve("crops.yaml");
    String before = Files.readString(list);
    String crop = before.lines().filter(l -> l.matches("  [a-z-]+:.*")).findFirst().orElseThrow();
    String name = crop.strip().replaceFirst(":.*", "");
    String counts =
        counts(
            Stream.of("3,4", "4,20", "5,36", "6,42", "8,44", "10,44")
                .map(row -> "A," + name + ",20 C,1,50," + row + "\n")
                .reduce("", String::concat));
    Run run = fit(counts, "--write", list.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("wrote " + name + " into").contains("crops.yaml.bak");
    assertThat(farm.resolve("crops.yaml.bak")).hasContent(before);
    assertThat(Files.readString(list)).contains("rate: 88 %").contains("tested-seeds: 50");
    assertThat(Files.readString(list).lines().count()).isEqualTo(before.lines().count());
    Run forecast =
        Run.of(
            "run",
            farm.resolve("scenario.yaml").toString(),
            "--seasons",
            "5",
            "--out",
            folder.resolve("forecast").toString());
    assertThat(forecast.err()).isEmpty();
    assertThat(forecast.exitCode()).isZero();
  }

  @Test
  void ofSeveralLotsTheOneToWriteMustBeNamed() throws IOException {
    String rows = "";
    for (String lot : new String[] {"A", "B"}) {
      for (String row : new String[] {"3,4", "4,20", "5,36", "6,42"}) {
        rows += lot + ",zinnia,20 C,1,50," + row + "\n";
      }
    }
    Path list = Files.copy(Path.of("demo-data/crops.yaml"), folder.resolve("crops.yaml"));
    String before = Files.readString(list);
    Run unnamed = fit(counts(rows), "--write", list.toString());
    assertThat(unnamed.exitCode()).isEqualTo(2);
    assertThat(unnamed.err()).contains("several lots of zinnia");
    assertThat(list).hasContent(before);
    assertThat(folder.resolve("out")).doesNotExist();
    Run nowhere = fit(counts(rows), "--write", list.toString(), "--lot", "C");
    assertThat(nowhere.exitCode()).isEqualTo(2);
    assertThat(nowhere.err()).contains("There is no lot 'C'; did you mean A?\n");
    assertThat(fit(counts(rows), "--write", list.toString(), "--lot", "B").exitCode()).isZero();
    assertThat(list.resolveSibling("crops.yaml.bak")).hasContent(before);
  }

  /** Rows of lot, crop and so on; each answers what it can and prints no NaN. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        // nothing came up
        "A,zinnia,20 C,1,50,5,0;A,zinnia,20 C,1,50,10,0",
        // all at one inspection
        "A,zinnia,20 C,1,50,5,50",
        "A,zinnia,20 C,1,50,5,0;A,zinnia,20 C,1,50,6,50;A,zinnia,20 C,2,50,6,50",
        // one seed
        "A,zinnia,20 C,1,1,5,1",
        "A,zinnia,20 C,1,1,5,0",
        // all of them, over some days
        "A,zinnia,20 C,1,50,3,9;A,zinnia,20 C,1,50,4,30;A,zinnia,20 C,1,50,5,50",
        // still coming
        "A,zinnia,20 C,1,50,3,2;A,zinnia,20 C,1,50,4,9;A,zinnia,20 C,1,50,5,21",
        // trays whole or empty
        "A,zinnia,20 C,1,50,3,20;A,zinnia,20 C,1,50,4,40;A,zinnia,20 C,1,50,6,50;"
            + "A,zinnia,20 C,2,50,6,0",
        // cold and warm alike
        "A,zinnia,20 C,1,50,3,9;A,zinnia,20 C,1,50,4,30;A,zinnia,20 C,1,50,5,45;"
            + "A,zinnia,10 C,1,50,3,9;A,zinnia,10 C,1,50,4,30;A,zinnia,10 C,1,50,5,44",
        // three seedlings far apart
        "A,zinnia,20 C,1,50,1,1;A,zinnia,20 C,1,50,10,2;A,zinnia,20 C,1,50,100,3"
      })
  void oddCountsAreAnsweredAsFarAsTheyCanBe(String rows) throws IOException {
    String counts = counts(rows.replace(";", "\n") + "\n");
    assertNoNaN(fit(counts));
    assertNoNaN(run(Stream.of("germination", counts)));
  }

  @Test
  void whereNothingGerminatedTheUpperLimitIsPrinted() throws IOException {
    Run run = fit(counts("A,zinnia,20 C,1,50,10,0\n"));
    assertThat(run.out())
        .contains("nothing came up of 50 seeds; if the test was long enough, the share that")
        .contains("would is at most 7.1 %")
        .contains("rate: 1.96 %, tested-seeds: 51");
  }

  @Test
  void oneTemperatureIsAnsweredWithoutABase() throws IOException {
    Run run =
        fit(
            counts(
                """
                A,zinnia,20 C,1,50,3,9
                A,zinnia,20 C,1,50,4,30
                A,zinnia,20 C,1,50,5,40
                A,zinnia,20 C,1,50,8,43
                """));
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("it takes curves at two temperatures").contains("half-by: ");
  }

  /** 36 of 60 were up and they still came: neither 100 % nor 60 seeds are written. */
  @Test
  void aTestThatEndedEarlyIsToldAndWrittenAsOpen() throws IOException {
    Run run =
        fit(
            counts(
                """
                A,zinnia,20 C,1,60,3,2
                A,zinnia,20 C,1,60,4,12
                A,zinnia,20 C,1,60,5,36
                """));
    assertNoNaN(run);
    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("ended too early to tell how many of the seeds come up")
        .contains("to 100 % (95 % limits)")
        .contains("count longer")
        .doesNotContain("rate: 100 %")
        .doesNotContain("tested-seeds: 60");
  }

  /** A lognormal curve has no end, but when all are up there is nothing to count longer for. */
  @Test
  void countingLongerIsNotAskedForWhenAllCameUp() throws IOException {
    Run run =
        fit(counts("A,zinnia,20 C,1,50,3,9\nA,zinnia,20 C,1,50,4,30\nA,zinnia,20 C,1,50,5,50\n"));
    assertThat(run.out()).contains("100 % of the seeds come up").doesNotContain("count longer");
  }

  @Test
  void theTemperatureWithoutACropListIsTheBestAndSaidToBe() throws IOException {
    String rows = "";
    for (String row : new String[] {"4,9", "5,30", "6,42", "8,45", "14,45"}) {
      rows += "A,zinnia,20 C,1,50," + row + "\n";
    }
    for (String row : new String[] {"2,9", "3,22", "4,27", "8,28", "14,28"}) {
      rows += "A,zinnia,30 C,1,50," + row + "\n";
    }
    assertThat(fit(counts(rows)).out().replaceAll("\\s+", " "))
        .contains("zinnia, lot A, at 20 C: 90 %")
        .contains("Of 2 temperatures 20 C is the best")
        .contains("rate: 90 %");
  }

  /** Where single trays fail and most come up whole, limits hold in as few as 74 of 100 tests. */
  @Test
  void nearlyAllUpMayHideABadTray() throws IOException {
    String rows = "";
    for (String tray : new String[] {"1,50,10,50", "2,50,10,49", "3,50,10,43", "4,50,10,49"}) {
      rows += "A,zinnia,20 C," + tray + "\n";
    }
    String hides = "a bad tray among many may not have been seen";
    String page = "germination-fit.html";
    fit(counts(rows));
    assertThat(text(page)).contains(hides);
    fit(counts(rows.replace(",49", ",40").replace(",50\n", ",41\n")));
    assertThat(text(page)).doesNotContain(hides);
  }

  private String text(String page) throws IOException {
    return Files.readString(folder.resolve("out").resolve(page)).replaceAll("\\s+", " ");
  }

  /** 20 of 20 and 60 of 80 make 80 of 100; the mean of the trays is another number. */
  @Test
  void theLaboratorysReportSaysWhichShareItShows() throws IOException {
    Run run =
        run(
            Stream.of(
                "germination", counts("A,zinnia,20 C,1,20,10,20\nA,zinnia,20 C,2,80,10,60\n")));
    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("80 % of all seeds germinated (80 of 100; mean of the trays 87.5 %)")
        .contains("25 points apart")
        .contains("(as far or further in ");
    JsonObject group = json("germination.json").getAsJsonArray("groups").get(0).getAsJsonObject();
    assertThat(group.get("pooledPercent").getAsDouble()).isEqualTo(80);
    assertThat(group.get("meanOfTraysPercent").getAsDouble()).isEqualTo(87.5);
  }

  @Test
  void badCountsAreExitCode2WithEveryFault() throws IOException {
    Run run = fit(counts("A,zinnia,20 C,1,50,3,9\nA,zinnia,20 C,1,50,4,8\nA,zinnia,20,1,50,5,9\n"));
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("counts.csv:3:").contains("counts.csv:4:");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void theLaboratorysIndicesAreReportedWithTheRulesVerdict() throws IOException {
    Run run = run(Stream.of("germination", COUNTS));
    assertNoNaN(run);
    assertThat(run.out().lines().takeWhile(line -> !line.isBlank()).count())
        .isLessThanOrEqualTo(12);
    String page = Files.readString(folder.resolve("out").resolve("germination.html"));
    assertThat(page)
        .contains("7 CFR 201.55")
        .contains("Coolbear and others 1984")
        .contains("Farooq and others 2005")
        .contains("Maguire 1962");
    assertThat(json("germination.json").getAsJsonArray("groups")).hasSize(4);
    assertThat(Files.readString(folder.resolve("out").resolve("germination.csv")).lines().count())
        .isEqualTo(1 + 13);
  }

  @Test
  void fitByItselfSaysWhatCanBeFitted() {
    Run run = Run.of("fit");
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("fit germination COUNTS.csv");
  }
}
