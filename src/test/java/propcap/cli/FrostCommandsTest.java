package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code propcap frost} and {@code propcap weather} as a grower runs them. */
class FrostCommandsTest {
  private static final String DEMO = "demo-data/weather.csv";

  @TempDir Path folder;

  private Path out() {
    return folder.resolve("out");
  }

  private Run frost(String record, String... more) {
    String[] args = new String[more.length + 4];
    args[0] = "frost";
    args[1] = record;
    args[2] = "--out";
    args[3] = out().toString();
    System.arraycopy(more, 0, args, 4, more.length);
    return Run.of(args);
  }

  private JsonObject json() throws IOException {
    return JsonParser.parseString(Files.readString(out().resolve("frost.json"))).getAsJsonObject();
  }

  /** Years from January to July with one minimum for each day. */
  private Path record(int years, ToDoubleFunction<LocalDate> minC) throws IOException {
    StringBuilder text = new StringBuilder("date,tmin,tmax\n");
    for (int year = 2001; year < 2001 + years; year++) {
      for (LocalDate d = LocalDate.of(year, 1, 1); d.getMonthValue() < 8; d = d.plusDays(1)) {
        double min = minC.applyAsDouble(d);
        text.append(d).append(',').append(min).append(',').append(min + 9).append('\n');
      }
    }
    return Files.writeString(folder.resolve("record.csv"), text.toString());
  }

  private void assertNothingOdd() throws IOException {
    for (String file : new String[] {"frost.html", "frost.json", "frost.csv", "frost-days.csv"}) {
      assertThat(Files.readString(out().resolve(file)))
          .as(file)
          .doesNotContain("NaN")
          .doesNotContain("Infinity");
    }
  }

  /** The median and the deviation of demo-data/README.md: 27 April, 12.1 days. */
  @Test
  void theDemonstrationsFrostsAreThoseOfItsReadme() throws IOException {
    Run run = frost(DEMO, "--crops", "demo-data/crops.yaml");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out().lines().takeWhile(line -> !line.isBlank()))
        .hasSizeLessThanOrEqualTo(10)
        .allMatch(line -> line.length() <= 100);
    JsonObject zero = json().getAsJsonArray("thresholds").get(0).getAsJsonObject();
    assertThat(zero.getAsJsonObject("fit").get("sdDays").getAsDouble()).isBetween(12.05, 12.15);
    assertThat(
            zero.getAsJsonArray("dates")
                .get(3)
                .getAsJsonObject()
                .getAsJsonObject("counted")
                .get("day")
                .getAsString())
        // One day after the median year's last frost.
        .isEqualTo("04-28");
    assertThat(json().getAsJsonArray("releases")).hasSize(18);
    assertThat(Files.readString(out().resolve("frost.html"))).contains("<svg");
    assertNothingOdd();
  }

  @Test
  void theDocumentShowsWhatTheCommandPrints() throws IOException {
    String printed = frost(DEMO, "--crops", "demo-data/crops.yaml").out();
    String headlines = printed.substring(0, printed.indexOf(System.lineSeparator().repeat(2)));
    assertThat(Files.readString(Path.of("docs/evidence-frost.md"))).contains(headlines);
  }

  @Test
  void moreThresholdsMayBeAskedForInFahrenheitToo() throws IOException {
    assertThat(frost(DEMO, "--threshold", "30F", "--threshold", "2C").exitCode()).isZero();
    JsonArray thresholds = json().getAsJsonArray("thresholds");
    assertThat(thresholds.asList().stream().map(t -> t.getAsJsonObject().get("atC").getAsDouble()))
        .containsExactly(2.0, 0.0, -1.1, -2.2, -4.4);
  }

  @Test
  void theSameRecordGivesTheSameBytes() throws IOException {
    frost(DEMO);
    String first = Files.readString(out().resolve("frost.html"));
    frost(DEMO);
    assertThat(Files.readString(out().resolve("frost.html"))).isEqualTo(first);
  }

  @Test
  void noFrostInAnyYearIsAnAnswer() throws IOException {
    assertThat(frost(record(3, d -> 5).toString()).out())
        .contains("no year of the record had such a frost between 1 January and 31 July")
        .contains("Only 3 years cover the season");
    assertNothingOdd();
  }

  @Test
  void frostToTheEndOfEveryYearIsAnAnswer() throws IOException {
    Run run = frost(record(3, d -> -8).toString());
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("frosts go on to the season’s end in more than 1 year of 10");
    assertThat(Files.readString(out().resolve("frost-releases.csv")))
        .contains("tomato,0.2,0,,08-01,");
    assertNothingOdd();
  }

  @Test
  void aSingleYearIsAnAnswerWithAWarning() throws IOException {
    Run run = frost(record(1, d -> d.getMonthValue() < 4 ? -8 : 5).toString());
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("Only 1 year covers the season");
    assertNothingOdd();
  }

  @Test
  void aRecordWithoutAWholeYearIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("short.csv"), "date,tmin,tmax\n2003-03-01,1,9\n");
    Run run = frost(file.toString());
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("short.csv: no year of the record covers the season");
    assertThat(out()).doesNotExist();
  }

  @Test
  void anEmptyFileAndNoFileAreRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("empty.csv"), "");
    assertThat(frost(file.toString()).err()).contains("the file is empty");
    assertThat(frost("none.csv").exitCode()).isEqualTo(2);
    assertThat(frost(DEMO, "--threshold", "cold").err()).contains("a temperature in C or F");
    assertThat(frost(DEMO, "--to", "2026-01-01").exitCode()).isEqualTo(2);
  }

  @Test
  void aStationsFileBecomesARecordThatTheFrostTableIsMadeOf() throws IOException {
    StringBuilder rows = new StringBuilder();
    for (int year = 2001; year < 2004; year++) {
      for (LocalDate d = LocalDate.of(year, 1, 1); d.getYear() == year; d = d.plusDays(1)) {
        String key = "XX000000001," + d.toString().replace("-", "") + ",";
        boolean isGap = d.equals(LocalDate.of(2002, 4, 5));
        rows.append(key).append("TMAX,150,,").append(isGap ? "X" : "").append(",7,0700\n");
        rows.append(key).append(d.getDayOfYear() < 100 ? "TMIN,-22" : "TMIN,50").append(",,,7,\n");
      }
    }
    Path station = Files.writeString(folder.resolve("XX000000001.csv"), rows.toString());
    Path record = folder.resolve("weather.csv");
    Run run = Run.of("weather", station.toString(), "--to", record.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains(
            "Station XX000000001: 1,095 days, 1 January 2001 to 31 December 2003; whole years: 3")
        .contains("1 value left out that the service itself flags (X 1)")
        .contains("1 gap filled by straight lines:")
        .contains("2002-04-05: tmax")
        .contains("wrote " + record);
    assertThat(frost(record.toString()).out())
        .contains("−2.2 °C (28 °F): from 10 April on")
        .contains("−4.4 °C (24 °F): no year of the record");
  }

  @Test
  void aRecordIsNotOverwrittenUnlessAskedToAndThenKept() throws IOException {
    Path record = Files.writeString(folder.resolve("weather.csv"), "mine");
    Run refused = Run.of("weather", DEMO, "--to", record.toString());
    assertThat(refused.exitCode()).isEqualTo(2);
    assertThat(record).hasContent("mine");
    Run run = Run.of("weather", DEMO, "--to", record.toString(), "--replace");
    assertThat(run.exitCode()).isZero();
    assertThat(folder.resolve("weather.csv.bak")).hasContent("mine");
    assertThat(record).hasSameTextualContentAs(Path.of(DEMO));
  }

  @Test
  void gapsThatAreTooLongAreLeftAndSaid() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("gaps.csv"), "date,tmin,tmax\n2003-03-01,1,9\n2003-03-06,2,9\n");
    assertThat(Run.of("weather", file.toString()).out())
        .contains("1 gap left:")
        .contains("2003-03-02 to 2003-03-05, 4 days: tmin and tmax");
    assertThat(Run.of("weather", file.toString(), "--fill", "4").out())
        .contains("1 gap filled by straight lines:");
  }

  @Test
  void monthlyMeansBecomeARecord() throws IOException {
    Path record = folder.resolve("made.csv");
    Run run =
        Run.of(
            "weather",
            "--normals",
            "demo-data/normals.csv",
            "--years",
            "30",
            "--to",
            record.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("Made, not measured: 10,957 days").doesNotContain("defaults");
    assertThat(frost(record.toString()).exitCode()).isZero();
    assertNothingOdd();
  }

  @Test
  void usageFaultsAreExitCode2() {
    assertThat(Run.of("weather").err()).contains("Give a station's files or --normals");
    assertThat(Run.of("weather", DEMO, "--normals", "x.csv").exitCode()).isEqualTo(2);
    assertThat(Run.of("weather", DEMO, "--fill", "-1").exitCode()).isEqualTo(2);
    assertThat(Run.of("weather", "--normals", "demo-data/normals.csv", "--years", "0").exitCode())
        .isEqualTo(2);
  }

  /** The name of a Java exception stood in the answer. */
  @Test
  void aDayOrAFileThatIsNoneIsToldInPlainWords() {
    Run day = Run.of("frost", "demo-data/weather.csv", "--from", "2027-02-30");
    assertThat(day.exitCode()).isEqualTo(2);
    assertThat(day.err())
        .contains("'2027-02-30' is not a day such as 2027-03-22")
        .doesNotContain("java");
    assertThat(Run.of("frost", "demo-data/weather.csv", "--to", "+12027-07-01").err())
        .contains("'+12027-07-01' is not a day such as 2027-03-22");
    Run name = Run.of("frost", "we\0ather.csv");
    assertThat(name.exitCode()).isEqualTo(2);
    assertThat(name.err()).contains("is not the name of a file").doesNotContain("java");
  }
}
