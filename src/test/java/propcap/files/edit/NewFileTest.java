package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Season;
import propcap.farm.WeatherRecord.Day;
import propcap.farm.WeatherYear;
import propcap.files.text.FaultsException;
import propcap.files.weather.Degrees;
import propcap.files.weather.WeatherFile;

/** Files of the grower's that the program writes. */
class NewFileTest {
  @TempDir Path folder;

  @Test
  void anOlderFileStaysUnlessItMayBeReplaced() throws Exception {
    Path file = Files.writeString(folder.resolve("weather.csv"), "mine");
    assertThatThrownBy(() -> NewFile.write("new", file, false))
        .isInstanceOf(FaultsException.class)
        .hasMessageContaining("there is such a file already");
    assertThat(file).hasContent("mine");
  }

  @Test
  void aCopyOfEachOlderFileIsKept() throws Exception {
    Path file = folder.resolve("weather.csv");
    assertThat(NewFile.write("one", file, true)).containsExactly(file);
    assertThat(NewFile.write("two", file, true))
        .containsExactly(file, folder.resolve("weather.csv.bak"));
    assertThat(NewFile.write("three", file, true))
        .containsExactly(file, folder.resolve("weather.csv.bak2"));
    assertThat(file).hasContent("three");
    assertThat(folder.resolve("weather.csv.bak")).hasContent("one");
    assertThat(folder.resolve("weather.csv.bak2")).hasContent("two");
    assertThat(folder.toFile().list()).hasSize(3);
  }

  @Test
  void aFolderIsNoFile() {
    assertThatThrownBy(() -> NewFile.check(folder, true)).hasMessageContaining("is a folder");
  }

  /** 28 F is -2.222 C; a hundredth keeps it a frost of -2.2 C. */
  @Test
  void aRecordThatIsWrittenIsReadBackToAHundredth() throws Exception {
    Path file = folder.resolve("weather.csv");
    LocalDate first = LocalDate.of(2003, 3, 1);
    NewFile.writeWeather(
        List.of(new Day(first, Degrees.F.toC(28), 10), new Day(first.plusDays(1), -0.001, 9.5)),
        file,
        false);
    assertThat(file).hasContent("date,tmin,tmax\n2003-03-01,-2.22,10.0\n2003-03-02,0.0,9.5\n");
    List<WeatherYear> years =
        WeatherFile.read(file, new Season(first, first.plusDays(1)), doubt -> {});
    assertThat(years).hasSize(1);
    assertThat(years.get(0).minC(0)).isEqualTo(-2.22);
  }
}
