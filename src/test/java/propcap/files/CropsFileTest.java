package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Scenario;

/** A crop list by itself. */
class CropsFileTest {
  @Test
  void aListReadsTheSameAsInItsScenario() throws Exception {
    Scenario scenario = ScenarioReader.read(Path.of("scenarios/spring.yaml"));
    assertThat(CropsFile.read(Path.of("demo-data/crops.yaml"))).isEqualTo(scenario.crops());
  }

  @Test
  void theStartersListIsReadWithoutAFile() throws Exception {
    assertThat(CropsFile.starter()).containsKey("tomato").containsKey("snapdragon");
  }

  @Test
  void itsFaultsAreReportedAllAtOnce(@TempDir Path folder) throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("crops.yaml"), "crops:\n  tomato: 5\n  pepper: {cell: 2}\n");
    assertThatThrownBy(() -> CropsFile.read(file))
        .isInstanceOf(FaultsException.class)
        .hasMessageContaining("crop 'tomato' is '5'")
        .hasMessageContaining("did you mean cells?");
  }
}
