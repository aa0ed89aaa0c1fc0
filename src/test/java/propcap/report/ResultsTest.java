package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.study.Forecast;

class ResultsTest {
  private final Forecast spring = Forecasts.spring();

  private Path folder;

  @BeforeEach
  void nameTheFolder(@TempDir Path desk) {
    folder = desk.resolve("results").resolve("spring");
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        contents.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return contents;
  }

  private void nothingElseLiesBeside() throws IOException {
    try (Stream<Path> siblings = Files.list(folder.getParent())) {
      assertThat(siblings).containsExactly(folder);
    }
  }

  @Test
  void everyFileIsWrittenAndNamed() throws IOException {
    List<Path> written = Results.write(spring, "0.1.0", folder);
    assertThat(written.get(0)).isEqualTo(folder.resolve("report.html"));
    assertThat(written).allSatisfy(file -> assertThat(file).isNotEmptyFile());
    assertThat(contents(folder))
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
    Results.write(spring, "0.1.0", folder);
    Map<String, String> first = contents(folder);
    Results.write(Forecasts.spring(), "0.1.0", folder);
    assertThat(contents(folder)).isEqualTo(first);
    nothingElseLiesBeside();
  }

  @Test
  void newResultsTakeThePlaceOfOldOnes() throws IOException {
    Results.write(Forecasts.bare(), "0.1.0", folder);
    Files.writeString(folder.resolve("notes.txt"), "ask for more seed");
    Results.write(spring, "0.1.0", folder);
    assertThat(contents(folder).get("summary.json")).contains("Base spring");
    assertThat(contents(folder)).containsEntry("notes.txt", "ask for more seed");
    nothingElseLiesBeside();
  }

  @Test
  void anEmptyFolderMayBeFilled() throws IOException {
    Files.createDirectories(folder);
    Results.write(spring, "0.1.0", folder);
    assertThat(contents(folder)).hasSize(7);
    nothingElseLiesBeside();
  }

  @Test
  void aFolderOfSomethingElseIsLeftAlone() throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("scenario.yaml"), "name: base");
    assertThatIOException()
        .isThrownBy(() -> Results.write(spring, "0.1.0", folder))
        .withMessageContaining("holds no results that could be replaced");
    assertThat(contents(folder)).containsOnlyKeys("scenario.yaml");
    nothingElseLiesBeside();
  }

  @Test
  void aSummaryOfSomethingElseIsNotOurs() throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("summary.json"), "{\"sales\": 3}");
    assertThatIOException().isThrownBy(() -> Results.write(spring, "0.1.0", folder));
    Files.writeString(folder.resolve("summary.json"), "not JSON {");
    assertThatIOException().isThrownBy(() -> Results.write(spring, "0.1.0", folder));
  }

  @Test
  void aFileInThePlaceOfTheFolderIsLeftAlone() throws IOException {
    Files.createDirectories(folder.getParent());
    Files.writeString(folder, "a file");
    assertThatIOException()
        .isThrownBy(() -> Results.write(spring, "0.1.0", folder))
        .withMessageContaining("this is a file");
    assertThat(folder).hasContent("a file");
  }

  @Test
  void oldResultsSurviveAForecastThatCannotBeWritten() throws IOException {
    Results.write(spring, "0.1.0", folder);
    Map<String, String> old = contents(folder);
    Forecast broken = Forecasts.withOnTime(spring, Double.NaN);
    assertThatIllegalArgumentException().isThrownBy(() -> Results.write(broken, "0.1.0", folder));
    assertThat(contents(folder)).isEqualTo(old);
    nothingElseLiesBeside();
  }

  @Test
  void oldResultsSurviveAFileThatCannotBeWritten() throws IOException {
    Results.write(spring, "0.1.0", folder);
    Map<String, String> old = contents(folder);
    // The second file asks for a folder that is not there, so the disk itself refuses it.
    Map<String, String> files = new TreeMap<>(Map.of("a.csv", "1", "b/none.csv", "2"));
    ResultsFolder target = ResultsFolder.at(folder);
    assertThatIOException().isThrownBy(() -> target.replaceWith(files));
    assertThat(contents(folder)).isEqualTo(old);
    nothingElseLiesBeside();
  }

  @Test
  void aFileWhereAFolderShouldBeIsAClearFault() throws IOException {
    Files.createDirectories(folder.getParent());
    Files.writeString(folder, "a file");
    assertThatIOException()
        .isThrownBy(() -> Results.write(spring, "0.1.0", folder.resolve("deeper")));
    assertThat(folder).hasContent("a file");
  }
}
