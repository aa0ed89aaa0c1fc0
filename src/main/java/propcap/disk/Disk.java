package propcap.disk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The few calls by which files are written. */
final class Disk {
  /** Whoever finds a folder gone more often than this is not racing others. */
  static final int MOST_TRIES = 100;

  private Disk() {}

  /**
   * Writes a file that is not there yet, and waits until it is on the disk.
   *
   * @param old a file whose owner, rights and marks it takes over, if there is one
   */
  static void write(Path fresh, byte[] bytes, Path old) throws IOException {
    if (Files.isRegularFile(old)) {
      Files.copy(old, fresh, StandardCopyOption.COPY_ATTRIBUTES);
    } else {
      Files.createFile(fresh);
    }
    try (FileChannel out = FileChannel.open(fresh, StandardOpenOption.WRITE)) {
      out.truncate(0);
      ByteBuffer left = ByteBuffer.wrap(bytes);
      while (left.hasRemaining()) {
        out.write(left);
      }
      out.force(true);
    }
  }

  /** Copies a file as it is, and waits until the copy is on the disk. */
  static void copy(Path file, Path fresh) throws IOException {
    Files.copy(file, fresh, StandardCopyOption.COPY_ATTRIBUTES);
    try (FileChannel copy = FileChannel.open(fresh, StandardOpenOption.READ)) {
      copy.force(true);
    }
  }

  /** Moves in one step, in the place of what is there. */
  static void move(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  /** Waits until a folder's names are on the disk. */
  static void force(Path folder) {
    try (FileChannel names = FileChannel.open(folder, StandardOpenOption.READ)) {
      names.force(true);
    } catch (IOException e) {
      // Not every system opens a folder; each move is one step all the same.
    }
  }

  /**
   * Makes a folder and those above it, where there are none. Another program that ends just now may
   * take away one that it had made: then it is made again.
   */
  static void make(Path folder) throws IOException {
    for (int tries = 1; !Files.isDirectory(folder); tries++) {
      try {
        Files.createDirectories(folder);
      } catch (FileAlreadyExistsException | NoSuchFileException e) {
        if (tries == MOST_TRIES) {
          throw e;
        }
      }
    }
  }

  /** The file or folder itself, or else the nearest of those above it that is there. */
  static Path nearest(Path file) {
    Path there = file.toAbsolutePath();
    while (!Files.exists(there, LinkOption.NOFOLLOW_LINKS) && there.getParent() != null) {
      there = folderOf(there);
    }
    return there.equals(file.toAbsolutePath()) ? file : there;
  }

  static Path folderOf(Path file) {
    return Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(file);
  }

  /** All that lies below a folder but is none, in order; nothing where there is no such folder. */
  static List<Path> files(Path folder) throws IOException {
    return below(folder).stream()
        .filter(file -> !Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS))
        .sorted()
        .toList();
  }

  /** Deletes a folder with all that lies below it, if there is one. */
  static void delete(Path folder) throws IOException {
    for (Path each : below(folder).stream().sorted(Comparator.reverseOrder()).toList()) {
      Files.deleteIfExists(each);
    }
  }

  /** Deletes a folder unless something lies in it. */
  static void deleteIfEmpty(Path folder) throws IOException {
    try {
      Files.deleteIfExists(folder);
    } catch (DirectoryNotEmptyException e) {
      // It is in use.
    }
  }

  private static List<Path> below(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(folder)) {
      return all.toList();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
