package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StarterTest {
  private static InputStream content(String name) {
    return new ByteArrayInputStream(("text of " + name).getBytes(StandardCharsets.UTF_8));
  }

  private static FaultsException refused(Path folder) {
    return catchThrowableOfType(
        FaultsException.class, () -> Starter.write(folder, StarterTest::content));
  }

  @Test
  void aSetOfFourFilesIsWrittenIntoANewFolder(@TempDir Path folder)
      throws FaultsException, IOException {
    Path made = folder.resolve("spring").resolve("first");

    List<Path> written = Starter.write(made, StarterTest::content);

    assertThat(written)
        .containsExactly(
            made.resolve("scenario.yaml"),
            made.resolve("crops.yaml"),
            made.resolve("sowings.csv"),
            made.resolve("weather.csv"));
    assertThat(Files.readString(written.get(1))).isEqualTo("text of crops.yaml");
  }

  @Test
  void whereOneOfTheFilesIsThereAlreadyNothingIsWritten(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("weather.csv"), "mine");

    FaultsException e = refused(folder);

    assertThat(e.faults())
        .containsExactly(
            new Fault(
                folder.resolve("weather.csv"),
                0,
                0,
                "there is such a file already",
                "a folder without it"));
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
