package propcap.files.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Normals;
import propcap.files.text.FaultsException;

/** Twelve monthly means as a grower copies them from a climate table. */
class NormalsFileTest {
  @TempDir Path folder;

  private Path file(String header, String row) throws IOException {
    StringBuilder text = new StringBuilder(header).append('\n');
    for (int month = 1; month <= 12; month++) {
      text.append(row.replace("M", String.valueOf(month))).append('\n');
    }
    return Files.writeString(folder.resolve("normals.csv"), text.toString());
  }

  private static List<String> faults(Path file) {
    return catchThrowableOfType(
            FaultsException.class, () -> NormalsFile.read(file, Degrees.C, d -> {}))
        .faults()
        .stream()
        .map(f -> f.line() + ": " + f.found())
        .toList();
  }

  @Test
  void allThatIsGivenIsTakenAsItIs() throws Exception {
    Normals normals = NormalsFile.read(Path.of("demo-data/normals.csv"), Degrees.C, d -> {});
    assertThat(normals.hasDefaults()).isFalse();
    assertThat(normals.months().get(0)).isEqualTo(new Normals.Month(-5.2, 4.4, 4.4, 0.7));
    assertThat(normals.months().get(7)).isEqualTo(new Normals.Month(13.2, 25.8, 2.7, 0.65));
  }

  /** The spread falls from the coldest month to the warmest as the temperature rises. */
  @Test
  void whatIsNotGivenIsAPlanningDefault() throws Exception {
    Normals normals = NormalsFile.read(file("month,tmin,tmax", "M,M,30"), Degrees.C, d -> {});
    assertThat(normals.hasDefaults()).isTrue();
    Normals.Month january = normals.months().get(0);
    assertThat(january.spreadC()).isEqualTo(Normals.DEFAULT_WINTER_SPREAD_C);
    assertThat(january.persistence()).isEqualTo(Normals.DEFAULT_PERSISTENCE);
    assertThat(normals.months().get(11).spreadC())
        .isCloseTo(Normals.DEFAULT_SUMMER_SPREAD_C, within(1e-12));
    assertThat(normals.months())
        .extracting(Normals.Month::spreadC)
        .isSortedAccordingTo((a, b) -> Double.compare(b, a));
  }

  /** 41 and 59 F are 5 and 15 C; a spread of 9 F is one of 5 C. */
  @Test
  void fahrenheitIsTurnedToCelsiusAndASpreadByItsSizeAlone() throws Exception {
    Normals normals = NormalsFile.read(file("month,tmin,tmax,sd", "M,41,59,9"), Degrees.F, d -> {});
    assertThat(normals.months().get(3))
        .isEqualTo(new Normals.Month(5, 15, 5, Normals.DEFAULT_PERSISTENCE));
  }

  @Test
  void everyFaultIsReportedAtItsLine() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("bad.csv"), "month,tmin,tmax,persistance\n1,2,1,\n3,1,x,\n");
    assertThat(faults(file))
        .containsExactly(
            "1: unknown column 'persistance'",
            "2: tmin must be below tmax (1.0 C), was 2.0",
            "3: month 3 where 2 is due",
            "3: tmax is 'x'");
  }

  @Test
  void aMonthThatNoPlaceHasIsRefused() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("hot.csv"), "month,tmin,tmax,sd\n1,20,66,\n2,50,55,3\n3,1,9,25\n");
    assertThat(faults(file))
        .containsExactly(
            "2: tmin '20' and tmax '66', which no air ever had",
            "3: tmin '50' and tmax '55', which no air ever had",
            "4: sd is '25', wider than any climate has");
  }

  @Test
  void elevenMonthsAreNotEnough() throws IOException {
    Path file = Files.writeString(folder.resolve("few.csv"), "month,tmin,tmax\n1,1,2\n");
    assertThat(faults(file)).containsExactly("0: 1 months");
  }
}
