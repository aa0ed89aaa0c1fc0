package propcap.disk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One file, written in one step: whoever looks finds the old one or the new one, and all of it. */
public final class WholeFile {
  /** A file in the making, by the process that makes it. */
  private static final Pattern FRESH = Pattern.compile("\\.propcap-(\\d{1,18})-\\d+\\.new");

  private static final AtomicLong MADE = new AtomicLong();

  private WholeFile() {}

  /**
   * Writes a file, in the place of an older one if there is one: its owner and rights stay, and
   * where it is a link, the file that it leads to is the one that changes. Its folder is made if
   * need be.
   *
   * @throws CannotWriteException where it cannot be written; the older one is then as it was
   */
  public static void write(Path file, String text) throws IOException {
    check(file);
    try {
      Path place = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
      put(place, fresh -> Disk.write(fresh, text.getBytes(StandardCharsets.UTF_8), place));
    } catch (IOException e) {
      throw CannotWriteException.of(file, e);
    }
  }

  /**
   * Deletes a file, if there is one, and its folder where nothing else lies in it.
   *
   * @throws CannotWriteException where it cannot be deleted
   */
  public static void delete(Path file) throws IOException {
    try {
      Files.deleteIfExists(file);
      Disk.deleteIfEmpty(Disk.folderOf(file));
    } catch (IOException e) {
      throw CannotWriteException.of(file, e);
    }
  }

  /** Writes what is to be in a file that is not there yet. */
  @FunctionalInterface
  private interface Making {
    void at(Path fresh) throws IOException;
  }

  private static void put(Path place, Making making) throws IOException {
    Path folder = Disk.folderOf(place);
    Disk.make(folder);
    clear(folder);
    long process = ProcessHandle.current().pid();
    Path fresh = folder.resolve(".propcap-" + process + "-" + MADE.incrementAndGet() + ".new");
    try {
      making.at(fresh);
      Disk.move(fresh, place);
    } finally {
      Files.deleteIfExists(fresh);
    }
    Disk.force(folder);
  }

  /** Takes away what programs left that were killed. */
  private static void clear(Path folder) throws IOException {
    try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, ".propcap-*.new")) {
      for (Path file : left) {
        Matcher name = FRESH.matcher(String.valueOf(file.getFileName()));
        if (name.matches() && ProcessHandle.of(Long.parseLong(name.group(1))).isEmpty()) {
          Files.deleteIfExists(file);
        }
      }
    }
  }

  /**
   * Refuses a place where no file can be written, as far as that can be known before.
   *
   * @throws CannotWriteException saying why
   */
  public static void check(Path file) throws IOException {
    if (Files.isDirectory(file)) {
      throw new CannotWriteException(file, "this is a folder", "the name of a file");
    }
    if (Files.isSymbolicLink(file) && !Files.exists(file)) {
      throw new CannotWriteException(file, "a link that leads nowhere", "take another name");
    }
    Path there = Disk.nearest(file);
    if (!there.equals(file) && !Files.isDirectory(there)) {
      throw new CannotWriteException(
          there, "this is in the way of a folder", "move it elsewhere or take another name");
    }
    Path folder = there.equals(file) ? Disk.folderOf(file.toRealPath()) : there;
    if (!Files.isWritable(there) || !Files.isWritable(folder)) {
      throw new CannotWriteException(there, "you may not write here", "take another place");
    }
  }

  /**
   * Keeps a copy of a file that is about to change, beside it as {@code .bak}. An earlier copy is
   * somebody's work too: where there is one that holds something else, the new one is {@code
   * .bak2}, and so on.
   *
   * @return the copy
   * @throws CannotWriteException where it cannot be written
   */
  public static Path keep(Path file) throws IOException {
    Path copy = file.resolveSibling(file.getFileName() + ".bak");
    try {
      for (int number = 2; Files.exists(copy, LinkOption.NOFOLLOW_LINKS); number++) {
        if (Files.isRegularFile(copy) && Files.mismatch(file, copy) < 0) {
          return copy;
        }
        copy = file.resolveSibling(file.getFileName() + ".bak" + number);
      }
      Path place = copy;
      put(place, fresh -> Disk.copy(file, fresh));
      return copy;
    } catch (IOException e) {
      throw CannotWriteException.of(copy, e);
    }
  }
}
