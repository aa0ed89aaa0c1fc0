package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.Tried;

/** Whatever is asked for, exit 1 is the program's fault alone: what no one can mean is exit 2. */
@Tag("attack")
class AttackedCommandsTest {
  private static final Path SPRING = Path.of("scenarios/spring.yaml").toAbsolutePath();

  @TempDir Path folder;

  private static int tried;

  @AfterAll
  static void told() {
    Tried.row(
        "attack",
        "no command ends in a fault of the program, a trace or a number that is none",
        tried + " commands on numbers, days, files and records that no one can mean",
        "each an answer or a sentence");
  }

  private Run run(String command) {
    tried++;
    List<String> args = new ArrayList<>();
    for (String word : command.split(" ", -1)) {
      args.add(
          word.equals("SPRING")
              ? SPRING.toString()
              : word.replace("FOLDER", folder.toString()).replace("DEMO", "demo-data"));
    }
    if (!List.of("weather", "crops", "new", "open", "help").contains(args.get(0))) {
      args.addAll(List.of("--out", folder.resolve("out").toString()));
    }
    return Run.of(args.toArray(String[]::new));
  }

  private static void assertRefused(Run run) {
    assertThat(run.exitCode()).as(run.err()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err())
        .isNotBlank()
        .doesNotContain("Propcap has failed", "Exception", "java.", "at propcap");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "run SPRING --precision NaN",
        "run SPRING --precision Infinity%",
        "run SPRING --precision 1e308%",
        "run SPRING --seasons NaN",
        "run SPRING --seed 9223372036854775808",
        "run SPRING --threads NaN",
        "run / --seasons 2",
        "run /dev/zero",
        "bottleneck SPRING --seasons 2 --steps 2147483647",
        "bottleneck SPRING --seasons 2 --steps NaN",
        "bottleneck SPRING --seasons 1 --exactly",
        "size SPRING --place Glasshouse --from 1 --to 2147483647 --step 1 --goal met>=80%",
        "size SPRING --place Glasshouse --from 1 --to 1000000000 --step 999999999 --goal met>=80%",
        "size SPRING --place Glasshouse --from 100 --to 200 --goal met>=NaN%",
        "size SPRING --place Glasshouse --from 100 --to 200 --goal on-time>=1e999",
        "size SPRING --place Glasshouse --from 100 --to 200 --goal met>=80% --indifference NaN",
        "size SPRING --place Glasshouse --from 100 --to 200 --goal met>=80% --aisles NaN%",
        "size SPRING --place Hands --from NaN --to Infinity --goal met>=80%",
        "shift SPRING --match onion* --from -2147483648 --to 2147483647 --step 1",
        "shift SPRING --match onion* --from -2147483648 --to 2147483647 --step 2147483647",
        "latest SPRING --match onion-1 --goal NaN",
        "latest SPRING --crop zinnia --plants 2147483647 --bed-by 2027-06-01",
        "latest SPRING --crop zinnia --plants 10 --trays 2147483647 --bed-by 2027-06-01",
        "latest SPRING --crop zinnia --plants 10 --bed-by +999999999-12-31",
        "plan SPRING --tries 1 --seasons 2 --goal NaN",
        "plan SPRING --tries 1 --seasons 2 --most-trays NaN",
        "plan SPRING --tries 1 --seasons 2 --most-trays 1e308",
        "calendar SPRING --seasons 2 --from 9999-12-31 --to 9999-12-31",
        "calendar SPRING --seasons 2 --from -999999999-01-01",
        "calendar SPRING --seasons 2 --to +999999999-12-31",
        "calendar SPRING --seasons 2 --week +999999999-W52",
        "calendar SPRING --seasons 2 --week -999999999-W01",
        "calendar SPRING --seasons 2 --label NaNxNaNmm",
        "calendar SPRING --seasons 2 --rows 1000000 --columns 1000000",
        "order SPRING --seasons 2 --chance NaN",
        "order SPRING --seasons 2 --chance Infinity%",
        "frost DEMO/weather.csv --threshold NaN",
        "frost DEMO/weather.csv --from 2027-02-29",
        "frost DEMO/weather.csv --from +999999999-01-01 --to +999999999-12-31",
        "frost DEMO/weather.csv --from -999999999-01-01 --to -999999999-12-31",
        "weather DEMO/weather.csv --fill NaN",
        "weather --normals DEMO/normals.csv --first-year 1",
        "weather --normals DEMO/normals.csv --first-year 2100 --years 200",
        "weather --normals DEMO/normals.csv --seed NaN",
        "fit germination DEMO/germination-counts.csv --lot nowhere",
        "fit stages DEMO/tray-log.csv --scenario SPRING --list-weighs NaN",
        "fit stages DEMO/tray-log.csv --scenario SPRING --list-weighs 1e308",
        "crops --at NaN",
        "new /proc/x",
        "open SPRING --no-browser --port 99999999999",
      })
  void whatNobodyCanMeanIsRefusedInASentence(String command) {
    assertRefused(run(command));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void aLotThatIsNowhereIsToldWithThoseThatThereAre() {
    assertThat(run("fit germination DEMO/germination-counts.csv --lot Z-72").err())
        .contains("There is no lot 'Z-72'; did you mean Z-27?");
  }

  @Test
  void shiftsDefaultsDoOnTheDemonstration() {
    Run run = run("shift SPRING --seasons 3");

    assertThat(run.exitCode()).as(run.err()).isZero();
  }

  /** A file with nothing in it but its length: to read it would take its time. */
  private void large(String name, long bytes) throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(folder.resolve(name).toFile(), "rw")) {
      file.setLength(bytes);
    }
  }

  @Test
  void aHugeFileIsRefusedByItsLengthWhereverItIsNamed() throws IOException {
    large("huge.yaml", 200L << 20);
    large("huge.csv", 1L << 40);
    write("plan.yaml", "extends: " + SPRING + "\nsowings: huge.csv\n");
    write("weather.yaml", "extends: " + SPRING + "\nweather: huge.csv\n");

    for (String command :
        List.of(
            "run FOLDER/huge.yaml",
            "run FOLDER/plan.yaml",
            "run FOLDER/weather.yaml",
            "frost FOLDER/huge.csv",
            "weather FOLDER/huge.csv",
            "weather --normals FOLDER/huge.csv",
            "germination FOLDER/huge.csv",
            "fit germination FOLDER/huge.csv",
            "fit stages FOLDER/huge.csv --scenario SPRING",
            "crops --crops FOLDER/huge.yaml")) {
      Run run = run(command);

      assertRefused(run);
      assertThat(run.err()).contains("larger than 64 MiB; a file of at most 64 MiB");
    }
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private String demo(String name) throws IOException {
    return Files.readString(Path.of("demo-data", name));
  }

  @Test
  void fiveThousandUnknownCropsAreToldAndThenSomeMore() throws IOException {
    String header = demo("sowings.csv").lines().findFirst().orElseThrow();
    write(
        "sowings.csv",
        IntStream.range(0, 5000)
            .mapToObj(i -> "s" + i + ",crop" + i + ",l,2027-02-01,4,100,2027-04-01,2027-05-01,,")
            .collect(Collectors.joining("\n", header + "\n", "\n")));
    write("many.yaml", "extends: " + SPRING + "\nsowings: sowings.csv\n");

    Run run = run("run FOLDER/many.yaml --seasons 2");

    assertRefused(run);
    assertThat(run.err())
        .contains("sowings.csv: 1000 faults and perhaps more; mend the first of them");
    assertThat(run.err().lines()).hasSize(1001);
  }

  /** Old programs end lines so. */
  @Test
  void tablesWithTheLoneEndsOfOldMachinesReadAsTheyStand() throws IOException {
    for (String name : List.of("sowings.csv", "weather.csv", "germination-counts.csv")) {
      write(name, demo(name).replace('\n', '\r'));
    }
    write("old.yaml", "extends: " + SPRING + "\nsowings: sowings.csv\nweather: weather.csv\n");

    Run old = run("run FOLDER/old.yaml --seasons 3");
    List<String> now = run("run SPRING --seasons 3").out().lines().skip(1).toList();

    assertThat(old.err()).isEmpty();
    assertThat(old.out().lines().skip(1).toList()).isEqualTo(now);
    assertThat(run("weather FOLDER/weather.csv").out())
        .isEqualTo(run("weather DEMO/weather.csv").out());
    assertThat(run("germination FOLDER/germination-counts.csv").exitCode()).isZero();
  }

  @Test
  void aMisspeltPlaceDoesNotHideWhatElseIsWrong() throws IOException {
    String text =
        Files.readString(SPRING)
            .replace("../demo-data/", Path.of("demo-data").toAbsolutePath() + "/")
            .replace(
                "name: Mats, kind: heat-bench, spaces: 36",
                "name: Mtas, kind: heat-bench, spaces: -3")
            .replace("constant: 21 C", "constant: 21")
            .replace("kind: hardening", "kind: hardning");
    write("faulty.yaml", text);

    Run run = run("run FOLDER/faulty.yaml");

    assertRefused(run);
    assertThat(run.err())
        .contains(
            "no place is named 'Mats'; did you mean Mtas?",
            "a unit is missing",
            "did you mean hardening?",
            "is '-3'; a whole number");
  }

  /** What the seed alone would take is then beyond any farm; the list says so and goes on. */
  @ParameterizedTest
  @ValueSource(strings = {"rate: 0.0001 %", "rate: 90 %"})
  void anOrderForMorePlantsThanTheEarthCouldSowIsAnAnswer(String rate) throws IOException {
    write("crops.yaml", demo("crops.yaml").replaceAll("\\brate: [^,}\\n]+", rate));
    write(
        "sowings.csv",
        demo("sowings.csv")
            .lines()
            .limit(4)
            .collect(Collectors.joining("\n"))
            .replaceAll(",(\\d+),(\\d+),2027", ",$1,1000000000,2027"));
    write("huge.yaml", "extends: " + SPRING + "\ncrops: crops.yaml\nsowings: sowings.csv\n");

    Run run = run("order FOLDER/huge.yaml --seasons 3");

    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out()).contains("More trays alone do not help");
  }

  private static final String LOG = "sowing,tray,event,date,plants|";
  private static final String COUNTS = "lot,crop,temperature,tray,seeds,time,emerged|";

  /** Records with next to nothing in them, or with far too much of one thing. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        LOG + "tomato-1,1,sown,2025-03-17,0|",
        LOG + "tomato-1,1,sown,2025-03-17,72|tomato-1,1,off-heat,2025-03-17,0|",
        LOG + "tomato-1,1,off-heat,2025-03-26,72|tomato-1,1,ready,2025-03-26,72|",
        LOG + "tomato-1,1,thrown-out,2025-03-17,0|",
        LOG + "tomato-1,1,off-heat,2025-01-11,10000|tomato-1,1,ready,2025-07-04,1|",
        COUNTS + "a,x,20 C,1,1,1,0|",
        COUNTS + "a,x,20 C,1,1,1,1|",
        COUNTS + "a,x,20 C,1,10000,36500,10000|",
        COUNTS + "a,x,20 C,1,50,1e-300,50|",
        COUNTS + "a,x,20 C,1,50,0,0|",
        COUNTS + "a,x,-60 C,1,50,9,1|a,x,60 C,1,50,9,2|",
        "date,tmin,tmax|1700-01-01,1,2|2199-12-31,1,2|",
        "date,tmin,tmax|2001-01-01,,2|2001-01-02,1,|",
        "date,tmin,tmax|\"2001-01-01,1,2|",
        "||",
        "month,tmin,tmax,sd,persistence|12,1,9,2,0.5|11,1,9,2,0.5|",
      })
  void oddRecordsEndInAnAnswerOrASentence(String rows) throws IOException {
    write("record.csv", rows.replace('|', '\n'));

    for (String command :
        List.of(
            "fit stages FOLDER/record.csv --scenario SPRING",
            "germination FOLDER/record.csv",
            "fit germination FOLDER/record.csv",
            "weather FOLDER/record.csv --all",
            "weather --normals FOLDER/record.csv",
            "frost FOLDER/record.csv")) {
      Run run = run(command);

      assertThat(run.exitCode()).as(run.err()).isIn(Propcap.DONE, Propcap.BAD_INPUT);
      assertThat(run.out()).doesNotContain("NaN").doesNotContain("Infinity");
      if (Files.exists(folder.resolve("out"))) {
        assertNothingIsNoNumber(folder.resolve("out"));
      }
    }
  }

  private static void assertNothingIsNoNumber(Path out) throws IOException {
    try (Stream<Path> files = Files.list(out)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(Files.readString(file))
            .as(file.toString())
            .doesNotContain("NaN")
            .doesNotContain("Infinity");
      }
    }
  }

  /** Refused in a sentence or reckoned with: never a number that is none. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "rate: 1e-300 %",
        "rate: 0 %",
        "rate: 100 %",
        "tray-correlation: 1e-300",
        "tray-correlation: 0.9999999999999999",
        "takes: 1e-300 days",
        "takes: 36500 days",
        "half-by: 1e-300 days",
        "holds: 0 days",
        "pull-after: 1e-9 days",
        "severity: 100 %",
        "spread: 1e-300 %",
      })
  void farOutNumbersOfACropEndInAnAnswerOrASentence(String pair) throws IOException {
    String key = pair.substring(0, pair.indexOf(' '));
    write("crops.yaml", demo("crops.yaml").replaceAll("\\b" + key + " [^,}\\n]+", pair));
    write("far.yaml", "extends: " + SPRING + "\ncrops: crops.yaml\n");

    Run run = run("run FOLDER/far.yaml --seasons 2");

    assertThat(run.exitCode()).as(run.err()).isIn(Propcap.DONE, Propcap.BAD_INPUT);
    if (run.exitCode() == Propcap.DONE) {
      assertNothingIsNoNumber(folder.resolve("out"));
    }
  }
}
