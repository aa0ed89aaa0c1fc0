package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Scenario;
import propcap.farm.WeatherYear;
import propcap.files.text.FaultsException;

/** What can be meant but seldom is: told at its place, and read all the same. */
class WarningsTest {
  private GrowersFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new GrowersFolder(path);
  }

  private List<String> warnings() throws FaultsException {
    String prefix = folder.path("") + "/";
    return folder.warnings().stream().map(w -> w.toString().replace(prefix, "")).toList();
  }

  static List<String> oneWarningEach() throws IOException {
    try (InputStream in =
            WarningsTest.class.getResourceAsStream("/propcap/files/one-warning-each.txt");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().filter(line -> !line.isBlank() && !line.startsWith("#")).toList();
    }
  }

  @Test
  void aPlainSetOfFilesHasNone() throws FaultsException {
    assertThat(warnings()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("oneWarningEach")
  void whatIsUnlikelyIsToldWhereItStandsAndStopsNothing(String line) throws FaultsException {
    String[] parts = line.split(" \\| ", -1);

    String place = folder.change(parts[0], parts[1], parts[2]);

    assertThat(warnings()).containsAnyOf(place + ": " + parts[3]).hasSizeLessThanOrEqualTo(2);
  }

  private void rewriteWeather(UnaryOperator<String> row) {
    folder.write(
        "weather.csv",
        folder
            .text("weather.csv")
            .lines()
            .skip(1)
            .map(row)
            .collect(Collectors.joining("\n", "date,tmin,tmax\n", "\n")));
  }

  private static String with(String row, double times, double plus) {
    String[] cells = row.split(",", -1);
    return cells[0]
        + ","
        + (times * Double.parseDouble(cells[1]) + plus)
        + ","
        + (times * Double.parseDouble(cells[2]) + plus);
  }

  @Test
  void aRecordInFahrenheitUnderColumnsOfCelsiusIsOneFault() {
    rewriteWeather(row -> with(row, 1.8, 32));

    assertThat(folder.faults())
        .hasSize(1)
        .first()
        .asString()
        .startsWith("weather.csv:")
        .contains(
            "which no air ever had, and so on",
            "degrees F belong under a header date,tmin-f,tmax-f");
  }

  @Test
  void theSameRecordUnderColumnsOfFahrenheitIsTheSameWeather() throws FaultsException {
    Scenario inC = folder.read();
    rewriteWeather(row -> with(row, 1.8, 32));
    folder.change("weather.csv", "date,tmin,tmax", "date,tmin-f,tmax-f");
    Scenario inF = folder.read();

    assertThat(warnings()).isEmpty();
    assertThat(inF.weather()).hasSameSizeAs(inC.weather());
    for (int y = 0; y < inC.weather().size(); y++) {
      WeatherYear one = inC.weather().get(y);
      WeatherYear other = inF.weather().get(y);
      for (int d = 0; d < one.days(); d++) {
        assertThat(other.minC(d)).isCloseTo(one.minC(d), org.assertj.core.data.Offset.offset(1e-9));
        assertThat(other.meanC(d))
            .isCloseTo(one.meanC(d), org.assertj.core.data.Offset.offset(1e-9));
      }
    }
  }

  @Test
  void aCoolPlaceInFahrenheitWhoseDaysCouldAllBeCelsiusIsNotSeen() throws FaultsException {
    // A year on a cold coast, -12 to 6 C in winter and summer, typed in F: 10 to 43.
    rewriteWeather(
        row -> {
          String[] cells = row.split(",", -1);
          double min = -3 + 0.3 * (Double.parseDouble(cells[1]) - 8);
          return cells[0] + "," + (1.8 * min + 32) + "," + (1.8 * (min + 4) + 32);
        });

    // Its days are those of a mild place in C: no check of the record alone can tell.
    assertThat(warnings()).isEmpty();
  }

  @Test
  void celsiusUnderColumnsOfFahrenheitIsAPlaceWithoutASummer() throws FaultsException {
    folder.change("weather.csv", "date,tmin,tmax", "date,tmin-f,tmax-f");

    assertThat(warnings())
        .containsExactly(
            "weather.csv:2: no day of the year is warmer than 29 F; another unit? degrees C belong"
                + " under tmin,tmax");
  }

  @Test
  void aYearInAnotherUnitIsDoubted() throws FaultsException {
    rewriteWeather(row -> row.startsWith("1998-") ? with(row, 0.5, 16) : row);

    assertThat(warnings())
        .containsExactly(
            "weather.csv:733: 1998 is 10 degrees C warmer on average than the middle one of the"
                + " years; a year in another unit, or of another station?");
  }

  @Test
  void aChangeOfThirtyDegreesOvernightIsDoubtedOnceForAll() throws FaultsException {
    rewriteWeather(
        row -> row.matches("199[79]-07-(04|09),.*") ? row.replaceFirst(",\\d", ",-1") : row);

    assertThat(warnings())
        .anySatisfy(
            w ->
                assertThat(w)
                    .contains(
                        "a change of 30 degrees C or more from one day to the next, on 8 days"));
  }

  @Test
  void aRecordOfOneKindIsDoubted() throws FaultsException {
    rewriteWeather(row -> row.split(",", -1)[0] + ",10,18");
    assertThat(warnings()).anySatisfy(w -> assertThat(w).contains("the same temperatures"));

    rewriteWeather(row -> row.split(",", -1)[0] + "," + row.charAt(6) + "," + row.charAt(6));
    assertThat(warnings()).anySatisfy(w -> assertThat(w).contains("the same on every day"));
  }

  @Test
  void aWinterThatIsTooColdForItsSummerIsDoubtedAndThenRefused() throws FaultsException {
    rewriteWeather(row -> with(row, 1.9, -10));
    assertThat(warnings())
        .anySatisfy(w -> assertThat(w).contains("47 degrees C warmer than the coldest"));

    rewriteWeather(row -> wider(row, 1.65));
    assertThat(folder.faults()).anySatisfy(f -> assertThat(f).contains("as on no place on earth"));
  }

  private static String wider(String row, double times) {
    String[] cells = row.split(",", -1);
    double min = times * (Double.parseDouble(cells[1]) - 8) + 2;
    return cells[0] + "," + min + "," + (min + 9);
  }

  @Test
  void aDayLikeNoOtherIsTheFirstOfItsKindAlone() throws FaultsException {
    LocalDate hot = LocalDate.of(1999, 7, 20);
    rewriteWeather(row -> row.startsWith(hot.toString()) ? hot + ",19.5,62" : row);

    assertThat(folder.faults())
        .containsExactly(
            "weather.csv:1298: tmin '19.5' and tmax '62', which no air ever had; degrees C; degrees"
                + " F belong under a header date,tmin-f,tmax-f");
  }
}
