package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.report.Forecasts;
import propcap.report.Put;
import propcap.study.forecast.Forecast;

class ResultsTest {
  private final Forecast spring = Forecasts.spring();

  private Path folder;

  @BeforeEach
  void nameTheFolder(@TempDir Path desk) {
    folder = desk.resolve("results").resolve("spring");
  }

  private List<Path> write(Forecast forecast) throws IOException {
    return Put.in(folder, new ForecastAnswer(forecast));
  }

  private void nothingElseLiesBeside() throws IOException {
    try (Stream<Path> siblings = Files.list(folder.getParent())) {
      assertThat(siblings).containsExactly(folder);
    }
  }

  @Test
  void everyFileIsWrittenAndNamed() throws IOException {
    List<Path> written = write(spring);
    assertThat(written.get(0)).isEqualTo(folder.resolve("report.html"));
    assertThat(written).allSatisfy(file -> assertThat(file).isNotEmptyFile());
    assertThat(Put.contents(folder))
        .containsOnlyKeys(
            "report.html",
            "summary.json",
            "sowings.csv",
            "places.csv",
            "losses.csv",
            "hands.csv",
            "seasons.csv");
    nothingElseLiesBeside();
  }

  @Test
  void theSameForecastGivesTheSameBytes() throws IOException {
    write(spring);
    Map<String, String> first = Put.contents(folder);
    write(Forecasts.spring());
    assertThat(Put.contents(folder)).isEqualTo(first);
    nothingElseLiesBeside();
  }

  @Test
  void newResultsTakeThePlaceOfOldOnes() throws IOException {
    write(Forecasts.bare());
    Files.writeString(folder.resolve("notes.txt"), "ask for more seed");
    write(spring);
    assertThat(Put.contents(folder).get("summary.json")).contains("Base spring");
    assertThat(Put.contents(folder)).containsEntry("notes.txt", "ask for more seed");
    nothingElseLiesBeside();
  }

  @Test
  void anEmptyFolderMayBeFilled() throws IOException {
    Files.createDirectories(folder);
    write(spring);
    assertThat(Put.contents(folder)).hasSize(7);
    nothingElseLiesBeside();
  }

  @Test
  void oldResultsSurviveAForecastThatCannotBeWritten() throws IOException {
    write(spring);
    Map<String, String> old = Put.contents(folder);
    Forecast broken = Forecasts.withOnTime(spring, Double.NaN);
    assertThatIllegalArgumentException().isThrownBy(() -> write(broken));
    assertThat(Put.contents(folder)).isEqualTo(old);
    nothingElseLiesBeside();
  }
}
