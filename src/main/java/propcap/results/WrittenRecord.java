package propcap.results;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import propcap.disk.FileSet;

/**
 * What was written of an answer into a folder, kept there out of sight: by it the files are known
 * again that may be replaced, and those that the grower has changed since.
 *
 * @param source the scenario's or record's file, as it is reached from the folder
 * @param marks SHA-256 of each file, by name
 */
record WrittenRecord(String source, Map<String, String> marks) {
  /** A name of ours: whatever a record says, no file outside the folder is meant. */
  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64}) ([a-z][a-z0-9.-]*)");

  WrittenRecord {
    marks = Map.copyOf(marks);
  }

  static WrittenRecord of(String source, Map<String, String> texts) {
    Map<String, String> marks = new LinkedHashMap<>();
    texts.forEach((name, text) -> marks.put(name, mark(text.getBytes(StandardCharsets.UTF_8))));
    return new WrittenRecord(source, marks);
  }

  static Path file(Path folder, AnswerKind answer) {
    return FileSet.outOfSight(folder, answer.word());
  }

  /** The record of an answer in a folder; empty where it has none that can be read. */
  static Optional<WrittenRecord> read(Path folder, AnswerKind answer) {
    return read(file(folder, answer));
  }

  static Optional<WrittenRecord> read(Path file) {
    try {
      List<String> lines = Files.readAllLines(file);
      Map<String, String> marks = new LinkedHashMap<>();
      for (String line : lines.subList(1, lines.size())) {
        Matcher mark = LINE.matcher(line);
        if (!mark.matches()) {
          return Optional.empty();
        }
        marks.put(mark.group(2), mark.group(1));
      }
      return Optional.of(new WrittenRecord(lines.get(0), marks));
    } catch (IOException | IndexOutOfBoundsException e) {
      return Optional.empty();
    }
  }

  /** As it is kept: the source, then a line for each file. */
  String text() {
    StringBuilder text = new StringBuilder(source).append('\n');
    names().forEach(name -> text.append(marks.get(name)).append(' ').append(name).append('\n'));
    return text.toString();
  }

  /** The files, in order. */
  List<String> names() {
    return marks.keySet().stream().sorted().toList();
  }

  /** Whether a file holds something else than what was written. */
  boolean isOther(String name, Path file) throws IOException {
    return !mark(Files.readAllBytes(file)).equals(marks.get(name));
  }

  /** The SHA-256 of bytes, in hexadecimal digits. */
  static String mark(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
