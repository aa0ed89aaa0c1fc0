package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;
import propcap.disk.Child;
import propcap.files.Nursery;

/** Where one spring of a large grower does not fit, the word is what to do, and nothing is left. */
@Tag("attack")
class TooFewMegabytesTest {
  @TempDir Path folder;

  @Test
  void aNurseryInTooSmallAHeapIsToldHowToGiveItMore() throws Exception {
    Path scenario = Nursery.write(folder, 100, 150_000, 10);
    for (String command : List.of("run --seasons 24", "plan --tries 20 --seasons 100")) {
      List<String> words = new ArrayList<>(List.of(command.split(" ", -1)));
      words.add(1, scenario.toString());
      words.addAll(List.of("--out", folder.resolve("out").toString(), "--threads", "2"));
      List<String> child =
          Child.java(Propcap.class, words.toArray(String[]::new)).stream()
              .map(word -> word.equals("-Xmx256m") ? "-Xmx64m" : word)
              .toList();
      try (Child started = Child.start(child)) {
        String said = started.rest();
        assertThat(started.exitCode()).as(said).isEqualTo(Propcap.BAD_INPUT);
        assertThat(said)
            .containsPattern("memory that Propcap has, 6\\d MB, is not enough")
            .contains("PROPCAP_OPTS=-Xmx2g", "--threads 1")
            .doesNotContain("failed", "Exception");
      }
      assertThat(Files.exists(folder.resolve("out"))).isFalse();
    }
    Tried.row(
        "attack",
        "A farm too large for the memory is told how to get more, and nothing is written",
        "run and plan of 150,000 trays in a heap of 64 MiB",
        "both refused with what to do");
  }
}
