package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.files.scenario.CropBook;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.SoFarAsked;
import propcap.files.text.Fault;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;
import propcap.files.text.UnsavedTexts;

class StarterTest {
  private static InputStream content(String name) {
    return new ByteArrayInputStream(("text of " + name).getBytes(StandardCharsets.UTF_8));
  }

  private static FaultsException refused(Path folder) {
    return catchThrowableOfType(
        FaultsException.class, () -> Starter.write(folder, StarterTest::content));
  }

  @Test
  void aSetOfFilesIsWrittenIntoANewFolder(@TempDir Path folder)
      throws FaultsException, IOException {
    Path made = folder.resolve("spring").resolve("first");

    List<Path> written = Starter.write(made, StarterTest::content);

    assertThat(written)
        .containsExactly(
            made.resolve("scenario.yaml"),
            made.resolve("crops.yaml"),
            made.resolve("sowings.csv"),
            made.resolve("weather.csv"),
            made.resolve("log.csv"));
    assertThat(Files.readString(written.get(1))).isEqualTo("text of crops.yaml");
  }

  @Test
  void theNotesOnMoneyCanBeTakenAtTheirWord(@TempDir Path folder)
      throws FaultsException, IOException {
    Path scenario = Starter.write(folder).get(0);
    assertThat(ScenarioReader.read(scenario).prices()).isNull();
    List<String> lines = new ArrayList<>(Files.readAllLines(scenario));
    int first = lines.indexOf("# money:");
    for (String line : lines.subList(first, first + 9)) {
      lines.set(lines.indexOf(line), line.substring(2));
    }
    Files.write(scenario, lines);

    Prices prices = Objects.requireNonNull(ScenarioReader.read(scenario).prices());

    assertThat(prices.byCrop()).containsOnlyKeys("tomato");
    assertThat(prices.sellSurplus()).isFalse();
  }

  /** The season has not begun: an empty log changes nothing that is forecast. */
  @Test
  void itsLogHasARowOfEachKindThatCanBeTakenAtItsWord(@TempDir Path folder)
      throws FaultsException, IOException {
    Path scenario = Starter.write(folder).get(0);
    Path log = folder.resolve("log.csv");
    Files.writeString(
        scenario, Files.readString(scenario).replace("# so-far: log.csv", "so-far: log.csv"));
    SoFarAsked april = SoFarAsked.on(LocalDate.of(2027, 4, 20));
    SoFar empty = soFar(scenario, april);
    assertThat(empty.trays()).isEmpty();

    Files.writeString(log, Files.readString(log).replaceAll("(?m)^# (?=[a-z]+-[0-9],)", ""));
    SoFar soFar = soFar(scenario, april);

    for (LoggedEvent event : LoggedEvent.values()) {
      assertThat(soFar.trays()).as("%s", event).anyMatch(t -> t.at(event).isPresent());
    }
  }

  private static SoFar soFar(Path scenario, SoFarAsked asked) throws FaultsException {
    Scenario read = ScenarioReader.read(scenario, UnsavedTexts.none(), asked).sound();
    return Objects.requireNonNull(read.soFar());
  }

  @Test
  void itsCropsAreThoseOfTheListThatPropcapBrings(@TempDir Path folder)
      throws FaultsException, IOException {
    Path list = Starter.write(folder).get(1);
    Map<String, Crop> brought = CropBook.ofPropcap().crops();

    assertThat(CropBook.read(list, d -> {}).crops())
        .containsOnlyKeys("snapdragon", "lettuce", "tomato", "zinnia", "cabbage")
        .allSatisfy((name, crop) -> assertThat(crop).isEqualTo(brought.get(name)));
    assertThat(CropBook.read(list, d -> {}).entries())
        .allSatisfy(entry -> assertThat(entry.sources()).isNotEmpty());
    assertThat(Files.readString(list)).doesNotContain("# entry of", "# sources");
  }

  @Test
  void whereOneOfTheFilesIsThereAlreadyNothingIsWritten(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("weather.csv"), "mine");

    FaultsException e = refused(folder);

    assertThat(e.faults())
        .containsExactly(
            new Fault(
                FilePosition.whole(folder.resolve("weather.csv")),
                "there is such a file already",
                "a folder without it",
                Fault.About.NO_VALUE));
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).hasSize(1);
    }
    assertThat(Files.readString(folder.resolve("weather.csv"))).isEqualTo("mine");
  }

  @Test
  void aFileIsNoFolderToWriteInto(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("spring"), "mine");

    assertThat(refused(file).faults()).extracting(Fault::file).containsExactly(file);
    assertThat(refused(file.resolve("deeper")).faults()).hasSize(1);
  }
}
