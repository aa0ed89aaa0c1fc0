package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.disk.Child;

/** Sizes that no grower means are refused before the work, each with what would fit. */
class AbsurdSizesTest {
  private static final String SCENARIO = "scenarios/spring.yaml";

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return Run.exitCode(Run.EVENING, new PrintWriter(out), new PrintWriter(err), args);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "run SCENARIO --threads 1000000",
        "run SCENARIO --threads 0",
        "run SCENARIO --seasons 1000000000",
        "run SCENARIO --seasons 99999999999999999999",
        "compare SCENARIO scenarios/second-chamber.yaml --seasons 1000000000",
        "bottleneck SCENARIO --seasons 2 --steps 2147483647",
        "calendar SCENARIO --seasons 2 --week +999999999-W52",
        "calendar SCENARIO --seasons 2 --from -999999999-01-01",
        "frost demo-data/weather.csv --from +999999999-01-01 --to +999999999-12-31",
        "frost demo-data/weather.csv --from 2027-02-29",
        "fit germination demo-data/germination-counts.csv --lot nowhere",
        "order SCENARIO --chance NaN",
        "open SCENARIO --port 65536",
        "open SCENARIO --port -1",
        "plan SCENARIO --minutes NaN",
        "plan SCENARIO --minutes Infinity",
        "size SCENARIO --place Glasshouse --from 180 --to 340 --step 10 --goal met>=80% --indifference 1e308",
      })
  void anAbsurdSizeIsABadQuestionAndNoFaultOfTheProgram(String command) throws Exception {
    String[] args = command.replace("SCENARIO", SCENARIO).split(" ", -1);
    List<String> all = new java.util.ArrayList<>(List.of(args));
    if (!args[0].equals("open")) {
      all.addAll(List.of("--out", folder.resolve("out").toString()));
    }

    assertThat(run(all.toArray(new String[0]))).as("%s", err).isEqualTo(Propcap.BAD_INPUT);
    assertThat(err.toString()).isNotBlank().doesNotContain("Exception", "at propcap");
    assertThat(Files.exists(folder.resolve("out"))).isFalse();
  }

  /** In a process with 256 MiB, for this one may have more than a million springs take. */
  @Test
  void moreSpringsThanFitInMemoryAreRefusedWithWhatFits() throws Exception {
    try (Child child =
        Child.start(
            Propcap.class, "run", SCENARIO, "--seasons", "1000000", "--out", folder + "/out")) {
      assertThat(child.rest())
          .matches(
              "(?s)1,000,000 springs take some [\\d,]+ MB of memory, and Propcap has [\\d,]+ MB:"
                  + " [\\d,]+ fit\\. Ask for fewer, or give it more, such as"
                  + " PROPCAP_OPTS=-Xmx\\d+g\\s+");
      assertThat(child.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    }
    assertThat(Files.exists(folder.resolve("out"))).isFalse();
  }

  @Test
  void madeDaysOfYearsThatNoFileMayBeOfAreRefused() {
    assertThat(run("weather", "--normals", "demo-data/normals.csv", "--years", "250"))
        .isEqualTo(Propcap.BAD_INPUT);
    assertThat(err.toString()).contains("do not lie from 1700 to 2199");
  }

  /** Large in length alone, so that to read it would be the fault. */
  @Test
  void aHugeFileIsRefusedByItsLength() throws Exception {
    Path huge = folder.resolve("huge.csv");
    try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
      file.setLength(1L << 40);
    }
    for (String[] command :
        new String[][] {
          {"weather", huge.toString()}, {"germination", huge.toString()}, {"run", huge.toString()}
        }) {
      assertThat(run(command)).isEqualTo(Propcap.BAD_INPUT);
    }
    assertThat(err.toString().lines().filter(l -> l.contains("larger than 64 MiB"))).hasSize(3);
  }

  @Test
  void aPrecisionThatIsMissedIsToldAndTheForecastIsWritten() {
    int code =
        run("run", SCENARIO, "--seasons", "20", "--precision", "0.0001%", "--out", folder + "/out");

    assertThat(code).isEqualTo(Propcap.NO);
    assertThat(err.toString()).contains("The precision asked for was not reached with 25 springs");
    assertThat(Files.exists(folder.resolve("out/report.html"))).isTrue();
  }
}
