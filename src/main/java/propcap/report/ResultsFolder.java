package propcap.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The folder in which results lie. New results are written beside it and moved in at once, so that
 * nobody ever finds half of them there.
 */
final class ResultsFolder {
  private final Path folder;
  private final Path parent;

  private ResultsFolder(Path folder, Path parent) {
    this.folder = folder;
    this.parent = parent;
  }

  /** Refuses a place where results must not be written, before any work is done. */
  static ResultsFolder at(Path given) throws IOException {
    Path folder = Files.exists(given) ? given.toRealPath() : given.toAbsolutePath().normalize();
    Path parent = folder.getParent();
    if (parent == null) {
      throw new IOException("results need a folder of their own, not " + folder);
    }
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      if (!Files.isDirectory(folder)) {
        throw new IOException("results need a folder, but this is a file: " + given);
      }
      if (!contents(folder).isEmpty() && !KnownResults.areIn(folder)) {
        throw new IOException(
            "this folder is not empty and holds no results that could be replaced: " + given);
      }
    }
    return new ResultsFolder(folder, parent);
  }

  /**
   * Puts these files, by name, in the place of a folder's older ones, or refuses the folder.
   *
   * @return where they are now, in the order given
   */
  static List<Path> write(Map<String, String> files, Path folder) throws IOException {
    ResultsFolder.at(folder).replaceWith(files);
    return files.keySet().stream().map(folder::resolve).toList();
  }

  /**
   * Puts these files, by name, in the place of the older ones. What else lies in the folder is
   * kept.
   */
  void replaceWith(Map<String, String> files) throws IOException {
    Files.createDirectories(parent);
    Path fresh = newSibling("new");
    try {
      for (Map.Entry<String, String> file : files.entrySet()) {
        Files.writeString(fresh.resolve(file.getKey()), file.getValue(), StandardCharsets.UTF_8);
      }
      moveIn(fresh, files);
    } finally {
      delete(fresh);
    }
  }

  private void moveIn(Path fresh, Map<String, String> files) throws IOException {
    if (!Files.exists(folder)) {
      move(fresh, folder);
      return;
    }
    Path aside = newSibling("old");
    Path old = aside.resolve("results");
    try {
      move(folder, old);
      try {
        move(fresh, folder);
      } catch (IOException | RuntimeException e) {
        move(old, folder);
        throw e;
      }
      for (Path other : contents(old)) {
        if (!files.containsKey(other.getFileName().toString())) {
          move(other, folder.resolve(other.getFileName()));
        }
      }
      delete(old);
    } finally {
      // Only when it is empty: what could not be put back must not be lost.
      if (contents(aside).isEmpty()) {
        delete(aside);
      }
    }
  }

  /**
   * A folder of our own beside the results, on the same file system, so that a move is one step.
   */
  private Path newSibling(String what) throws IOException {
    for (int n = 1; ; n++) {
      Path sibling = parent.resolve("." + folder.getFileName() + "." + what + n);
      try {
        return Files.createDirectory(sibling);
      } catch (FileAlreadyExistsException e) {
        // Another run's, or left by a crash: not ours to touch.
      }
    }
  }

  private static void move(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  private static List<Path> contents(Path folder) throws IOException {
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.sorted().toList();
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    try (Stream<Path> entries = Files.walk(folder)) {
      for (Path entry : entries.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(entry);
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
