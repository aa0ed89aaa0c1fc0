package propcap.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A set of files that changes, and all that can come between. */
class FileSetTest {
  /** The set before and after: one file changes, one goes, one comes. */
  private static final Map<String, String> OLD = Map.of("a.html", "a-", "gone.csv", "g-");

  private static final Map<String, String> NEW = Map.of("a.html", "a+", "in/come.csv", "c+");

  private static final Map<String, String> GROWERS =
      Map.of("notes.txt", "mine", "in/letter.txt", "mine too");

  @TempDir Path desk;
  private int folders;

  private Path oldFolder() throws IOException {
    Path folder = desk.resolve("set" + ++folders);
    for (Map<String, String> texts : List.of(OLD, GROWERS)) {
      for (Map.Entry<String, String> text : texts.entrySet()) {
        Path file = folder.resolve(text.getKey());
        Files.createDirectories(file.getParent());
        Files.writeString(file, text.getValue());
      }
    }
    return folder;
  }

  private static void change(Path folder) throws IOException {
    Map<Path, String> texts = new TreeMap<>();
    NEW.forEach((name, text) -> texts.put(folder.resolve(name), text));
    try (FileSet set = FileSet.open(folder, "a test")) {
      set.write(texts, List.of(folder.resolve("gone.csv")));
    }
  }

  private static void finish(Path folder) throws IOException {
    FileSet.open(folder, "a test").close();
  }

  /** Every file below a folder, hidden or not. */
  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        contents.put(folder.relativize(file).toString(), Files.readString(file));
      }
    }
    return contents;
  }

  private static Map<String, String> with(Map<String, String> set) {
    Map<String, String> all = new TreeMap<>(set);
    all.putAll(GROWERS);
    return all;
  }

  /** What a grower finds who looks before the next run. */
  private static void assertNoFileIsHalfOrMissing(Path folder) throws IOException {
    Map<String, String> found = contents(folder);
    assertThat(found).containsAllEntriesOf(GROWERS);
    assertThat(found.get("a.html")).isIn("a-", "a+");
    boolean isOld = found.containsValue("a-");
    boolean isMixed = isOld ? found.containsKey("in/come.csv") : found.containsKey("gone.csv");
    assertThat(!isMixed || FileSet.isUnfinished(folder)).isTrue();
    assertThat(isMixed || found.containsKey(isOld ? "gone.csv" : "in/come.csv")).isTrue();
  }

  private static void assertOldOrNew(Path folder) throws IOException {
    assertThat(contents(folder)).isIn(with(OLD), with(NEW));
    try (Stream<Path> all = Files.list(folder)) {
      assertThat(all.map(f -> f.getFileName().toString()))
          .doesNotContain(".propcap", FileSet.UNFINISHED);
    }
  }

  private int calls() throws IOException {
    FailingDisk disk = FailingDisk.sound();
    change(disk.at(oldFolder()));
    return disk.calls();
  }

  @Test
  void allFilesOfTheSetChangeAndNoOther() throws IOException {
    Path folder = oldFolder();
    change(folder);
    assertThat(contents(folder)).isEqualTo(with(NEW));
    assertOldOrNew(folder);
  }

  @Test
  void aKillAtAnyCallLeavesTheOldSetOrTheNewOne() throws IOException {
    int calls = calls();
    int isNew = 0;
    for (int last = 1; last <= calls; last++) {
      Path folder = oldFolder();
      FailingDisk disk = FailingDisk.killedAt(last);
      assertThatThrownBy(() -> change(disk.at(folder))).isInstanceOf(FailingDisk.Killed.class);
      assertNoFileIsHalfOrMissing(folder);
      finish(folder);
      assertOldOrNew(folder);
      isNew += contents(folder).equals(with(NEW)) ? 1 : 0;
    }
    assertThat(isNew).isBetween(1, calls - 1);
  }

  /** Whatever call fails, the old set stands, or the new one does once the trouble is over. */
  @Test
  void aCallThatFailsLeavesTheOldSetOrTheNewOneAndSaysWhy() throws IOException {
    int calls = calls();
    for (int failing = 1; failing <= calls; failing++) {
      Path folder = oldFolder();
      FailingDisk disk = FailingDisk.failingAt(failing, new IOException("Input/output error"));
      Throwable e = catchThrowable(() -> change(disk.at(folder)));
      assertNoFileIsHalfOrMissing(folder);
      if (e instanceof CannotWriteException told) {
        assertThat(told.file().toString()).startsWith(folder.toString());
        assertThat(told.found()).isEqualTo("this cannot be written: Input/output error");
        boolean isUnfinished = FileSet.isUnfinished(folder);
        assertThat(told.right().contains("the rest waits in")).isEqualTo(isUnfinished);
      } else {
        // The lock's file may be left, and a folder's names need not be on the disk at once.
        assertThat(String.valueOf(e)).isIn("null", "java.io.IOException: Input/output error");
      }
      finish(folder);
      assertOldOrNew(folder);
    }
  }

  @Test
  void aDiskThatIsFullLeavesTheOldSet() throws IOException {
    int calls = calls();
    int refused = 0;
    for (int first = 1; first <= calls; first++) {
      Path folder = oldFolder();
      FailingDisk disk = FailingDisk.fullFrom(first);
      if (catchThrowable(() -> change(disk.at(folder))) instanceof CannotWriteException told) {
        refused++;
        assertThat(told).hasMessageContaining(": the disk is full; free some room");
        assertOldOrNew(folder);
        assertThat(contents(folder)).isEqualTo(with(OLD));
      } else {
        assertThat(contents(folder)).isEqualTo(with(NEW));
      }
    }
    assertThat(refused).isPositive();
  }

  @Test
  void aRunThatIsStoppedLeavesTheOldSet() throws IOException {
    Path folder = oldFolder();
    Thread.currentThread().interrupt();
    Throwable e = catchThrowable(() -> change(folder));
    assertThat(Thread.interrupted()).isTrue();
    assertThat(e).isInstanceOf(ClosedByInterruptException.class);
    assertOldOrNew(folder);
    assertThat(contents(folder)).isEqualTo(with(OLD));
  }

  @Test
  void aFolderWithOurNameThatIsNotOursIsLeftAlone() throws IOException {
    Path folder = oldFolder();
    Path mine = Files.createDirectory(folder.resolve(FileSet.UNFINISHED));
    Files.writeString(mine.resolve("a.html"), "mine");
    assertThatThrownBy(() -> change(folder))
        .hasMessage(mine + ": this is none of Propcap's making; move it elsewhere");
    assertThat(mine.resolve("a.html")).hasContent("mine");
    assertThat(folder.resolve("a.html")).hasContent("a-");
  }

  /** A folder may come from anywhere, and so may what waits in it. */
  @Test
  void nothingOutsideTheFolderIsDeleted() throws IOException {
    Path folder = oldFolder();
    Path other = Files.writeString(desk.resolve("other.txt"), "mine");
    Path waiting = Files.createDirectory(folder.resolve(FileSet.UNFINISHED));
    Files.writeString(waiting.resolve(".outdated"), "../other.txt\n" + other + "\n.\n\n");
    finish(folder);
    assertThat(other).hasContent("mine");
    assertOldOrNew(folder);
    assertThatThrownBy(
            () -> {
              try (FileSet set = FileSet.open(folder, "a test")) {
                set.write(Map.of(folder.resolve("../other.txt"), "ours"), List.of());
              }
            })
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(other).hasContent("mine");
  }

  @Test
  void aLockLeftByAProgramThatWasKilledIsFree() throws IOException {
    Path folder = oldFolder();
    Path hidden = Files.createDirectory(folder.resolve(".propcap"));
    Files.writeString(hidden.resolve("lock"), "propcap run old.yaml (process 1)");
    change(folder);
    assertThat(contents(folder)).isEqualTo(with(NEW));
  }

  @Test
  void theRightsOfAFileStay() throws IOException {
    Path folder = oldFolder();
    Path file = folder.resolve("a.html");
    var shared = PosixFilePermissions.fromString("rw-rw-r--");
    Files.setPosixFilePermissions(file, shared);
    change(folder);
    assertThat(file).hasContent("a+");
    assertThat(Files.getPosixFilePermissions(file)).isEqualTo(shared);
  }

  @Test
  void theFolderMayBeTheCurrentOne() throws IOException {
    for (String here : List.of("", ".", "target/../target")) {
      Path folder = Path.of(here);
      try (FileSet set = FileSet.open(folder, "a test")) {
        assertThatThrownBy(() -> set.write(Map.of(folder, "x"), List.of()))
            .isInstanceOf(IllegalArgumentException.class);
      }
      assertThat(folder.resolve(".propcap")).doesNotExist();
    }
  }
}
