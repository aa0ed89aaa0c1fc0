package propcap.disk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/**
 * Files of one folder that change together: all of them or none, whenever the program ends. What
 * else lies in the folder is left alone, and the folder itself stays the same one.
 *
 * <p>The new files are written out of sight and then, in one step, put into the folder {@value
 * #UNFINISHED}: from then on the change holds. They are moved into place one by one; where that was
 * cut short, whoever opens the set next goes on with it.
 */
public final class FileSet implements AutoCloseable {
  /** Where files wait that are to be moved into place; in sight, so that a cut is seen. */
  static final String UNFINISHED = "propcap-unfinished";

  private static final String HIDDEN = ".propcap";

  /** Names of the files that go; it is the last to leave, so it tells our folder from others'. */
  private static final String OUTDATED = ".outdated";

  private final Path folder;
  private final Path hidden;
  private final Path unfinished;
  private final boolean isNew;
  private final FolderLock lock;

  private FileSet(Path folder, boolean isNew, FolderLock lock) {
    this.folder = folder;
    this.hidden = folder.resolve(HIDDEN);
    this.unfinished = folder.resolve(UNFINISHED);
    this.isNew = isNew;
    this.lock = lock;
  }

  /**
   * Makes the folder if need be, keeps others from writing in it, and finishes or clears away what
   * a program left that was killed.
   *
   * @param doing what for, such as {@code propcap run spring.yaml}: others are told
   * @throws CannotWriteException where nothing can be written there, or another writes there
   */
  public static FileSet open(Path folder, String doing) throws IOException {
    try {
      boolean isNew = isMade(folder);
      try {
        Path hidden = folder.resolve(HIDDEN);
        FileSet set = new FileSet(folder, isNew, FolderLock.take(hidden, folder, doing));
        set.begin();
        return set;
      } catch (IOException | RuntimeException | Error e) {
        clearAway(folder, isNew);
        throw e;
      }
    } catch (IOException e) {
      throw CannotWriteException.of(folder, e);
    }
  }

  private void begin() throws IOException {
    try {
      Disk.delete(fresh());
      finish();
    } catch (IOException | RuntimeException | Error e) {
      lock.close();
      throw e;
    }
  }

  /** What was made for nothing goes. */
  private static void clearAway(Path folder, boolean isNew) throws IOException {
    Disk.deleteIfEmpty(folder.resolve(HIDDEN));
    if (isNew) {
      Disk.deleteIfEmpty(folder);
    }
  }

  /** Makes the folder, and says whether there was none. */
  private static boolean isMade(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      return false;
    }
    if (Files.isSymbolicLink(folder)) {
      throw new CannotWriteException(folder, "a link that leads nowhere", "remove it");
    }
    if (Files.exists(folder)) {
      throw new CannotWriteException(folder, "this is a file", "move it elsewhere");
    }
    Disk.make(folder);
    return true;
  }

  /**
   * Refuses a folder on a disk that is nearly full, before work is done for it.
   *
   * @param least bytes that must be free
   * @throws CannotWriteException where they are not
   */
  public void requireRoom(long least) throws IOException {
    FileStore disk = Files.getFileStore(folder);
    long bytes = disk.getUsableSpace();
    // A disk that is 0 large does not tell.
    if (bytes < least && disk.getTotalSpace() > 0) {
      throw new CannotWriteException(
          folder, "the disk is full but for " + bytes / 1024 + " KiB", "free some room");
    }
  }

  /** Where a file lies that belongs to the set but is out of the grower's sight. */
  public static Path outOfSight(Path folder, String name) {
    return folder.resolve(HIDDEN + "-" + name);
  }

  /** All such files of a folder, in order. */
  public static List<Path> outOfSight(Path folder) throws IOException {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, HIDDEN + "-*")) {
      List<Path> found = new ArrayList<>();
      files.forEach(found::add);
      Collections.sort(found);
      return found;
    }
  }

  /** Whether a program was cut short while it moved files into place there. */
  public static boolean isUnfinished(Path folder) {
    return Files.isDirectory(folder.resolve(UNFINISHED), LinkOption.NOFOLLOW_LINKS);
  }

  private Path fresh() {
    return hidden.resolve("new");
  }

  /**
   * Changes the set.
   *
   * @param texts by file, all of them in the folder
   * @param outdated files that go
   * @throws CannotWriteException where nothing is changed; or, if it says so, where the change
   *     holds and is finished when the set is next opened
   */
  public void write(Map<Path, String> texts, Collection<Path> outdated) throws IOException {
    stage(texts, outdated);
    Disk.force(folder);
    try {
      finish();
    } catch (CannotWriteException e) {
      throw new CannotWriteException(
          e.file(), e.found(), e.right() + " and run it again: the rest waits in " + unfinished);
    }
  }

  private void stage(Map<Path, String> texts, Collection<Path> outdated) throws IOException {
    Path now = folder;
    try {
      for (Map.Entry<Path, String> text : texts.entrySet()) {
        now = text.getKey();
        write(fresh().resolve(name(now)), text.getValue(), now);
        // Before it holds: then only moves are left, which take no room.
        Disk.make(Disk.folderOf(now));
      }
      now = folder;
      String names = String.join("\n", outdated.stream().map(this::name).toList());
      write(fresh().resolve(OUTDATED), names, fresh().resolve(OUTDATED));
      Disk.force(fresh());
      Disk.move(fresh(), unfinished);
    } catch (IOException e) {
      try {
        Disk.delete(fresh());
      } catch (IOException left) {
        e.addSuppressed(left);
      }
      throw CannotWriteException.of(now, e);
    }
  }

  private static void write(Path fresh, String text, Path old) throws IOException {
    Disk.make(Disk.folderOf(fresh));
    Disk.write(fresh, text.getBytes(StandardCharsets.UTF_8), old);
  }

  /** A file's name in the folder. */
  private String name(Path file) {
    if (!isInside(file)) {
      throw new IllegalArgumentException(file + " does not lie in " + folder);
    }
    return plain(folder).relativize(plain(file)).toString();
  }

  private boolean isInside(Path file) {
    return plain(file).startsWith(plain(folder)) && !plain(file).equals(plain(folder));
  }

  private static Path plain(Path file) {
    return file.toAbsolutePath().normalize();
  }

  /** Moves into place what waits for it. */
  private void finish() throws IOException {
    if (!Files.exists(unfinished, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Path outdated = unfinished.resolve(OUTDATED);
    List<Path> waiting = Disk.files(unfinished);
    if (!waiting.isEmpty() && !waiting.contains(outdated)) {
      throw new CannotWriteException(
          unfinished, "this is none of Propcap's making", "move it elsewhere");
    }
    Path now = folder;
    try {
      for (Path file : waiting) {
        if (!file.equals(outdated)) {
          now = folder.resolve(unfinished.relativize(file).toString());
          Disk.make(Disk.folderOf(now));
          Disk.move(file, now);
        }
      }
      for (String name : waiting.isEmpty() ? List.<String>of() : Files.readAllLines(outdated)) {
        now = folder.resolve(name);
        if (!name.isEmpty() && isInside(now)) {
          Files.deleteIfExists(now);
        }
      }
      now = unfinished;
      Disk.force(hidden);
      Disk.force(folder);
      Files.deleteIfExists(outdated);
      Disk.delete(unfinished);
    } catch (IOException e) {
      throw CannotWriteException.of(now, e);
    }
  }

  /** Lets others write there. A folder that was made for nothing goes. */
  @Override
  public void close() throws IOException {
    lock.close();
    clearAway(folder, isNew);
  }
}
