package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A station's values and monthly means are doubted as a weather record is. */
class StationDoubtsTest {
  @TempDir Path folder;

  /** The demonstration's record, each day's two temperatures changed. */
  private Path station(String header, BiFunction<LocalDate, Double, Double> changed)
      throws IOException {
    try (Stream<String> rows = Files.lines(Path.of("demo-data/weather.csv"))) {
      return Files.writeString(
          folder.resolve("station.csv"),
          rows.skip(1)
              .map(row -> row.split(",", -1))
              .map(
                  c -> {
                    LocalDate date = LocalDate.parse(c[0]);
                    return c[0]
                        + ","
                        + changed.apply(date, Double.parseDouble(c[1]))
                        + ","
                        + changed.apply(date, Double.parseDouble(c[2]));
                  })
              .collect(Collectors.joining("\n", header + "\n", "\n")));
    }
  }

  private static double toF(double tempC) {
    return tempC * 1.8 + 32;
  }

  @Test
  void aPlainRecordIsNotDoubted() throws IOException {
    Run run = Run.of("weather", station("date,tmin-f,tmax-f", (d, t) -> toF(t)).toString());

    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
  }

  @Test
  void fahrenheitReadAsCelsiusIsRefusedOnceAndNotLeftOutDayByDay() throws IOException {
    Run run = Run.of("weather", station("date,tmin,tmax", (d, t) -> toF(t)).toString());

    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err().lines())
        .singleElement()
        .asString()
        .contains("which no air ever had", "read as degrees C", "--unit F");
  }

  @Test
  void celsiusReadAsFahrenheitIsAPlaceWithoutASummer() throws IOException {
    Run run = Run.of("weather", station("date,tmin,tmax", (d, t) -> t).toString(), "--unit", "F");

    assertThat(run.exitCode()).isZero();
    assertThat(run.err())
        .startsWith("Worth another look: ")
        .contains("no day of the year is warmer than", "read as degrees F", "--unit C");
  }

  @Test
  void aYearInAnotherUnitAndAChangeOvernightAreDoubtedWhereTheyStand() throws IOException {
    Path file =
        station(
            "date,tmin,tmax",
            (d, t) -> d.getYear() == 2004 ? 0.5 * t + 16 : d.getDayOfYear() == 200 ? t - 32 : t);

    assertThat(Run.of("weather", file.toString()).err().lines())
        .anySatisfy(l -> assertThat(l).contains("2004 is", "degrees C warmer on average"))
        .anySatisfy(l -> assertThat(l).contains("a change of 30 degrees C or more from one day"))
        .allMatch(l -> l.matches("Worth another look: .*station\\.csv:\\d+: .*"));
  }

  @Test
  void rowsOfOneKindAreDoubted() throws IOException {
    assertThat(Run.of("weather", station("date,tmin,tmax", (d, t) -> 12.0).toString()).err())
        .contains("all days have the same temperatures");
  }

  @Test
  void aGhcnFileIsDoubtedWithoutTalkOfAUnitThatItCannotHave() throws IOException {
    String rows =
        IntStream.rangeClosed(1, 31)
            .mapToObj(
                d ->
                    "XX1,200307%02d,TMIN,%d,,,7,\nXX1,200307%02d,TMAX,250,,,7,"
                        .formatted(d, d == 9 ? -250 : 120, d))
            .collect(Collectors.joining("\n"));

    assertThat(
            Run.of("weather", Files.writeString(folder.resolve("XX1.csv"), rows).toString()).err())
        .contains("a change of 30 degrees C or more", "tmax more than 40 degrees C above tmin")
        .doesNotContain("--unit");
  }

  private Path normals(String header, String january, String july) throws IOException {
    return Files.writeString(
        folder.resolve("normals.csv"),
        IntStream.rangeClosed(1, 12)
            .mapToObj(m -> m + "," + (m > 4 && m < 10 ? july : january))
            .collect(Collectors.joining("\n", header + "\n", "\n")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-40,-30 | 12,25 | C | the warmest month is 54 degrees C warmer than the coldest",
        "8,18 | 8,18 | C | all months have the same temperatures",
        "-5,4 | 14,27 | F | no month is warmer than 27 F",
        "20,30 | 37,46 | C | a night above 35 C",
        "5,12 | 10,51 | C | tmax more than 40 degrees C above tmin",
        "-22,-18 | 11,20 | C | a change of 30 degrees C or more from one month to the next",
      })
  void monthlyMeansAreDoubtedInTheSameWay(String january, String july, String unit, String doubt)
      throws IOException {
    Path file = normals("month,tmin,tmax", january, july);

    Run run = Run.of("weather", "--normals", file.toString(), "--unit", unit, "--years", "1");

    assertThat(run.exitCode()).isZero();
    assertThat(run.err().lines())
        .allMatch(l -> l.matches("Worth another look: .*normals\\.csv:\\d+: .*"))
        .anySatisfy(l -> assertThat(l).contains(doubt));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "month,tmin,tmax | 25,41 | 62,86 | which no air ever had; read as degrees C; --unit F if they are",
        "month,tmin,tmax | -70,-60 | 12,25 | as on no place on earth",
        "month,tmin,tmax,sd | 1,9,500 | 12,25,400 | sd is '500'",
      })
  void monthlyMeansThatCannotBeAreRefused(String header, String january, String july, String fault)
      throws IOException {
    Run run = Run.of("weather", "--normals", normals(header, january, july).toString());

    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains(fault);
  }

  /** Where the means are near what air can have, a made day would go beyond it now and then. */
  @Test
  void madeDaysStayWithinWhatAirCanHave() throws IOException {
    Path file = normals("month,tmin,tmax,sd", "20,33,8", "33,49,8");
    Path made = folder.resolve("made.csv");

    Run run =
        Run.of(
            "weather",
            "--normals",
            file.toString(),
            "--years",
            "250",
            "--first-year",
            "1900",
            "--to",
            made.toString());

    assertThat(run.err()).doesNotContain("Propcap has failed");
    assertThat(run.exitCode()).isZero();
    assertThat(Run.of("weather", made.toString()).out()).doesNotContain("left out");
  }
}
