package propcap.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One file that changes, and all that can come between. */
class WholeFileTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void anOldFile() throws IOException {
    file = Files.writeString(folder.resolve("crops.yaml"), "old");
  }

  private List<String> names() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  private static void change(Path file) throws IOException {
    WholeFile.keep(file);
    WholeFile.write(file, "new");
  }

  private int calls() throws IOException {
    FailingDisk disk = FailingDisk.sound();
    change(disk.at(Files.writeString(folder.resolve("try.yaml"), "old")));
    Files.delete(folder.resolve("try.yaml"));
    Files.delete(folder.resolve("try.yaml.bak"));
    return disk.calls();
  }

  private void begin() throws IOException {
    Files.writeString(file, "old");
    Files.deleteIfExists(folder.resolve("crops.yaml.bak"));
  }

  private void assertWhole() throws IOException {
    assertThat(Files.readString(file)).isIn("old", "new");
    Path copy = folder.resolve("crops.yaml.bak");
    assertThat(Files.exists(copy) ? Files.readString(copy) : "old").isEqualTo("old");
    assertThat(Files.readString(file).equals("old") || Files.exists(copy)).isTrue();
  }

  @Test
  void aKillAtAnyCallLeavesTheOldFileOrTheNewOneAndACopy() throws IOException {
    int calls = calls();
    for (int last = 1; last <= calls; last++) {
      begin();
      FailingDisk disk = FailingDisk.killedAt(last);
      assertThatThrownBy(() -> change(disk.at(file))).isInstanceOf(FailingDisk.Killed.class);
      assertWhole();
    }
  }

  @Test
  void aDiskThatFailsOrIsFullLeavesTheOldFileAndNothingElse() throws IOException {
    int calls = calls();
    for (int from = 1; from <= calls; from++) {
      begin();
      FailingDisk disk = FailingDisk.fullFrom(from);
      Throwable e = catchThrowable(() -> change(disk.at(file)));
      assertWhole();
      assertThat(names()).isSubsetOf("crops.yaml", "crops.yaml.bak");
      if (e != null) {
        assertThat(e).hasMessageContaining(": the disk is full; free some room");
        assertThat(file).hasContent("old");
      }
    }
  }

  @Test
  void whatAProgramLeftThatWasKilledIsClearedAway() throws Exception {
    Process ended = new ProcessBuilder("true").start();
    assertThat(ended.waitFor()).isZero();
    Path left = Files.writeString(folder.resolve(".propcap-" + ended.pid() + "-7.new"), "half");
    Path living =
        Files.writeString(
            folder.resolve(".propcap-" + ProcessHandle.current().pid() + "-0.new"), "half");
    Path mine = Files.writeString(folder.resolve(".propcap-notes.new"), "mine");
    WholeFile.write(file, "new");
    assertThat(left).doesNotExist();
    assertThat(living).exists();
    assertThat(mine).exists();
  }

  @Test
  void rightsStayAndALinkStaysOne() throws IOException {
    var shared = PosixFilePermissions.fromString("rw-rw----");
    Files.setPosixFilePermissions(file, shared);
    Path link = Files.createSymbolicLink(folder.resolve("link.yaml"), file.getFileName());
    WholeFile.write(link, "new");
    assertThat(link).isSymbolicLink();
    assertThat(file).hasContent("new").isRegularFile();
    assertThat(Files.getPosixFilePermissions(file)).isEqualTo(shared);
  }

  @Test
  void aCopyIsMadeOnceOfTheSameAndNeverInThePlaceOfAnother() throws IOException {
    Path first = WholeFile.keep(file);
    assertThat(first).hasFileName("crops.yaml.bak").hasContent("old");
    assertThat(WholeFile.keep(file)).isEqualTo(first);
    Files.writeString(file, "newer");
    assertThat(WholeFile.keep(file)).hasFileName("crops.yaml.bak2").hasContent("newer");
    assertThat(first).hasContent("old");
  }

  @Test
  void aFolderIsMadeForAFile() throws IOException {
    Path deep = folder.resolve("a").resolve("b").resolve("c.csv");
    WholeFile.write(deep, "new");
    assertThat(deep).hasContent("new");
  }

  /** As long as a file's name can be: what is in the making has a short name of its own. */
  @Test
  void aLongNameMayBeWrittenAndOneThatIsTooLongIsTold() throws IOException {
    Path longest = folder.resolve("n".repeat(255));
    WholeFile.write(longest, "new");
    assertThat(longest).hasContent("new");
    assertThatThrownBy(() -> WholeFile.write(folder.resolve("n".repeat(256)), "new"))
        .isInstanceOf(CannotWriteException.class)
        .hasMessageEndingWith(": the name is too long; take a shorter one");
  }

  @Test
  void whereNoFileCanBeItIsSaid() throws IOException {
    assertRefused(folder, folder, "this is a folder; the name of a file");
    assertRefused(file.resolve("a").resolve("b"), file, "this is in the way of a folder;");
    Path link = Files.createSymbolicLink(folder.resolve("link"), folder.resolve("gone"));
    assertRefused(link, link, "a link that leads nowhere;");
  }

  private static void assertRefused(Path wanted, Path named, String words) {
    assertThatThrownBy(() -> WholeFile.check(wanted)).hasMessageStartingWith(named + ": " + words);
    assertThatThrownBy(() -> WholeFile.write(wanted, "x"))
        .isInstanceOf(CannotWriteException.class)
        .hasMessageStartingWith(named + ": " + words);
  }
}
