package propcap.results;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import propcap.disk.WholeFile;

/**
 * Numbers that are finished while an answer is not, each in a file of its own out of the grower's
 * sight, so that what is done stays done. A file begins with the SHA-256 of what comes after; what
 * has come to harm is as if it were not there.
 */
public final class FinishedRuns {
  /** Of our names only, for others' files are none of ours to delete. */
  private static final Pattern KEY = Pattern.compile("[0-9a-f]{64}");

  private final Path folder;

  FinishedRuns(Path folder) {
    this.folder = folder;
  }

  /** What was kept under a key; empty where nothing was, or it is not as it was written. */
  public Optional<String> of(String key) {
    try {
      String kept = Files.readString(folder.resolve(key));
      int end = kept.indexOf('\n');
      String text = kept.substring(end + 1);
      return end > 0 && mark(text).equals(kept.substring(0, end))
          ? Optional.of(text)
          : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** Keeps a text, whole or not at all. */
  public void keep(String key, String text) throws IOException {
    WholeFile.write(folder.resolve(key), mark(text) + "\n" + text);
  }

  private static String mark(String text) {
    return WrittenRecord.mark(text.getBytes(StandardCharsets.UTF_8));
  }

  /** Clears away what is kept under any other key. */
  public void keepOnly(Set<String> keys) throws IOException {
    List<Path> others = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        String name = String.valueOf(file.getFileName());
        if (KEY.matcher(name).matches() && !keys.contains(name)) {
          others.add(file);
        }
      }
    } catch (NoSuchFileException e) {
      return;
    }
    for (Path file : others) {
      WholeFile.delete(file);
    }
  }
}
