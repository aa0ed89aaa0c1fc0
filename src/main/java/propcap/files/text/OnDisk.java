package propcap.files.text;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;

/** What the files on disk hold: each is read once, and again only when it has changed since. */
public final class OnDisk {
  private record Stamp(FileTime changed, long size) {}

  private final Map<Path, Stamp> stamps = new HashMap<>();
  private final Map<Path, byte[]> held = new HashMap<>();

  /** What a text was read as, and what else that hangs on. */
  private record Known(SourceText source, Object with, Object reading) {}

  private final Map<Path, Known> readings = new HashMap<>();

  /**
   * What a text is read as: the reading of before where neither it nor what else it hangs on has
   * changed. Of a file there is one such reading, so one kind of it.
   *
   * @param with what else the reading hangs on
   */
  @SuppressWarnings("unchecked")
  public synchronized <T> T reading(SourceText source, Object with, Supplier<T> reader) {
    Path key = key(source.file());
    Known known = readings.get(key);
    if (known == null || !known.source().equals(source) || !known.with().equals(with)) {
      known = new Known(source, with, reader.get());
      readings.put(key, known);
    }
    return (T) known.reading();
  }

  /** What a file holds; of one that is too large, a byte more than is taken. */
  synchronized byte[] bytes(Path file) throws IOException {
    BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
    Stamp stamp = new Stamp(now.lastModifiedTime(), now.size());
    Path key = key(file);
    byte[] known = held.get(key);
    if (known == null || !stamp.equals(stamps.get(key))) {
      try (InputStream in = Files.newInputStream(file)) {
        // A file may grow while it is read, and some do not tell their length.
        known = in.readNBytes(SourceText.MOST_BYTES + 1);
      }
      held.put(key, known);
      stamps.put(key, stamp);
    }
    return known;
  }

  /** The text of a file; what is no text in it has a sign in its place. Empty for no file. */
  public String shown(Path file) throws IOException {
    return Files.isRegularFile(file) ? new String(bytes(file), StandardCharsets.UTF_8) : "";
  }

  /**
   * The text of a file.
   *
   * @throws IOException where it is no text, or cannot be read
   */
  String text(Path file) throws IOException {
    return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes(file))).toString();
  }

  /** From here on every file is read anew. */
  public synchronized void forget() {
    held.clear();
  }

  /** By which a file is known, however it is named. */
  public static Path key(Path file) {
    return file.toAbsolutePath().normalize();
  }
}
