package propcap.files;

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
import java.util.Optional;
import propcap.farm.Season;

/** What the files on disk hold: each is read once, and again only when it has changed since. */
public final class OnDisk {
  private record Stamp(FileTime changed, long size) {}

  private final Map<Path, Stamp> stamps = new HashMap<>();
  private final Map<Path, byte[]> held = new HashMap<>();

  /** A weather record, and the season that its years are cut to. */
  private record Cut(SourceText source, Optional<Season> season) {}

  private final Map<Path, Cut> cuts = new HashMap<>();
  private final Map<Path, WeatherFile.Told> weather = new HashMap<>();

  /** What a record says: most of a scenario's rows are days that no change on the page is about. */
  synchronized WeatherFile.Told weather(SourceText source, Optional<Season> season) {
    Path key = key(source.file());
    Cut cut = new Cut(source, season);
    WeatherFile.Told known = weather.get(key);
    if (known == null || !cut.equals(cuts.get(key))) {
      known = WeatherFile.Told.of(source, season);
      cuts.put(key, cut);
      weather.put(key, known);
    }
    return known;
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

  static Path key(Path file) {
    return file.toAbsolutePath().normalize();
  }
}
