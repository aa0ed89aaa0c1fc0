package propcap.files.text;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** The text of one of a grower's files, once it is sure that it is one. */
public record SourceText(Path file, String text) {
  public static final int MOST_BYTES = 64 << 20;
  static final String TOO_LARGE = "larger than 64 MiB";
  static final String AT_MOST = "a file of at most 64 MiB";

  /**
   * The file that a value names, relative to the file that the value stands in.
   *
   * @return empty where the value cannot be a file's name, which is reported
   */
  public static Optional<Path> named(String key, Node value, Faults faults) {
    if (value instanceof Node.Text name && !name.text().isBlank()) {
      try {
        return Optional.of(name.spot().file().resolveSibling(name.text()));
      } catch (InvalidPathException e) {
        // Reported below: some characters cannot be in a file's name.
      }
    }
    faults.wrong(value, key + " is " + value.kind(), "the name of a file");
    return Optional.empty();
  }

  /**
   * Reads a file.
   *
   * @param named where the file is named, which is wrong if there is no such file
   */
  public static Optional<SourceText> read(Path file, FilePosition named, Faults faults) {
    return read(file, named, UnsavedTexts.none(), faults);
  }

  /** Reads a file, or the unsaved text that stands in for it. */
  public static Optional<SourceText> read(
      Path file, FilePosition named, UnsavedTexts unsaved, Faults faults) {
    return unsaved
        .of(file)
        .map(text -> text.getBytes(StandardCharsets.UTF_8))
        .or(
            () ->
                isThere(file, named, faults)
                    ? bytes(file, unsaved.disk(), faults)
                    : Optional.empty())
        .flatMap(bytes -> decoded(file, bytes, faults));
  }

  /** Whether a file is one that can be read; reported where it is named if not. */
  public static boolean isThere(Path file, FilePosition named, Faults faults) {
    String shown = FaultWords.shownPath(file);
    if (Files.isDirectory(file)) {
      faults.add(named, shown + " is a folder", "a file");
    } else if (!Files.exists(file)) {
      faults.add(named, "no file " + shown, "the name of a file that is there");
    } else if (!Files.isRegularFile(file)) {
      faults.add(named, shown + " is no file of text", "a file");
    } else {
      return isSmall(file, faults);
    }
    return false;
  }

  private static boolean isSmall(Path file, Faults faults) {
    try {
      if (Files.size(file) <= MOST_BYTES) {
        return true;
      }
      faults.add(FilePosition.whole(file), TOO_LARGE, AT_MOST);
    } catch (IOException e) {
      faults.add(FilePosition.whole(file), "cannot be read", "a file that you may read");
    }
    return false;
  }

  private static Optional<byte[]> bytes(Path file, OnDisk disk, Faults faults) {
    try {
      byte[] bytes = disk.bytes(file);
      if (bytes.length <= MOST_BYTES) {
        return Optional.of(bytes);
      }
      faults.add(FilePosition.whole(file), TOO_LARGE, AT_MOST);
    } catch (IOException e) {
      faults.add(FilePosition.whole(file), "cannot be read", "a file that you may read");
    }
    return Optional.empty();
  }

  private static Optional<SourceText> decoded(Path file, byte[] bytes, Faults faults) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    int wrong = firstWrong(text, bytes);
    if (wrong >= 0) {
      int line = 1 + (int) text.substring(0, wrong).chars().filter(c -> c == '\n').count();
      faults.add(new FilePosition(file, line, 0), "bytes that are no text", "a text file in UTF-8");
      return Optional.empty();
    }
    String unmarked = text.startsWith("\uFEFF") ? text.substring(1) : text;
    if (unmarked.isBlank()) {
      faults.add(FilePosition.whole(file), "the file is empty", "a file with something in it");
      return Optional.empty();
    }
    return Optional.of(new SourceText(file, unmarked));
  }

  /** Where the text is no text: a zero, or a sign that stands for bytes that are none. */
  private static int firstWrong(String text, byte[] bytes) {
    int zero = text.indexOf('\0');
    int replaced = text.indexOf('\uFFFD');
    // The sign may have been written as such; then the text gives the very same bytes back.
    if (replaced < 0 || Arrays.equals(text.getBytes(StandardCharsets.UTF_8), bytes)) {
      return zero;
    }
    return zero < 0 ? replaced : Math.min(zero, replaced);
  }
}
