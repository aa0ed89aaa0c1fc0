package propcap.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.disk.CannotWriteException;
import propcap.disk.FailingDisk;

class FinishedRunsTest {
  private static final String ONE = "1".repeat(64);
  private static final String TWO = "2".repeat(64);
  private static final String TEXT = "1 2 3\n4.5\n\n";

  @TempDir Path desk;

  private FinishedRuns runs(Path folder) {
    return new FinishedRuns(folder.resolve(".propcap-sweep-runs"));
  }

  @Test
  void whatIsKeptIsReadBackAndTheRestIsCleared() throws IOException {
    FinishedRuns runs = runs(desk);
    assertThat(runs.of(ONE)).isEmpty();
    runs.keepOnly(Set.of());
    runs.keep(ONE, TEXT);
    runs.keep(TWO, "2\n");
    Path note = desk.resolve(".propcap-sweep-runs").resolve("note.txt");
    Files.writeString(note, "a grower's");
    runs.keepOnly(Set.of(ONE));
    assertThat(runs.of(ONE)).contains(TEXT);
    assertThat(runs.of(TWO)).isEmpty();
    assertThat(note).exists();
    Files.delete(note);
    runs.keepOnly(Set.of());
    assertThat(desk).isEmptyDirectory();
  }

  @Test
  void whatCameToHarmIsAsIfItWereNotThere() throws IOException {
    FinishedRuns runs = runs(desk);
    runs.keep(ONE, TEXT);
    Path file = desk.resolve(".propcap-sweep-runs").resolve(ONE);
    String whole = Files.readString(file);
    for (int end = 0; end < whole.length(); end++) {
      Files.writeString(file, whole.substring(0, end));
      assertThat(runs.of(ONE)).as("%d of its letters", end).isEmpty();
    }
    Files.writeString(file, whole.replace("4.5", "4.6"));
    assertThat(runs.of(ONE)).isEmpty();
    Files.write(file, new byte[] {(byte) 0xff, 10, 0});
    assertThat(runs.of(ONE)).isEmpty();
  }

  @Test
  void aKillAtAnyCallLeavesAllOrNothing() throws IOException {
    FailingDisk sound = FailingDisk.sound();
    runs(sound.at(desk.resolve("sound"))).keep(ONE, TEXT);
    int kept = 0;
    for (int last = 1; last <= sound.calls(); last++) {
      Path folder = desk.resolve("killed" + last);
      FailingDisk disk = FailingDisk.killedAt(last);
      assertThatThrownBy(() -> runs(disk.at(folder)).keep(ONE, TEXT))
          .isInstanceOf(FailingDisk.Killed.class);
      Optional<String> left = runs(folder).of(ONE);
      kept += left.isPresent() ? 1 : 0;
      assertThat(left.orElse(TEXT)).isEqualTo(TEXT);
      runs(folder).keep(ONE, TEXT);
      assertThat(runs(folder).of(ONE)).contains(TEXT);
    }
    assertThat(kept).isBetween(1, sound.calls() - 1);
  }

  @Test
  void aFullDiskIsTold() {
    FailingDisk disk = FailingDisk.fullFrom(1);
    assertThatThrownBy(() -> runs(disk.at(desk)).keep(ONE, TEXT))
        .isInstanceOf(CannotWriteException.class)
        .hasMessageContaining("the disk is full");
  }
}
