package propcap.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What a grower has changed and not saved yet: each text stands in for the file of its name,
 * whether there is such a file or not.
 */
public record Drafts(Map<Path, String> texts) {
  /** Files as they are. */
  public static final Drafts NONE = new Drafts(Map.of());

  public Drafts {
    Map<Path, String> absolute = new LinkedHashMap<>();
    texts.forEach((file, text) -> absolute.put(key(file), text));
    texts = Map.copyOf(absolute);
  }

  private static Path key(Path file) {
    return file.toAbsolutePath().normalize();
  }

  /** What stands in for a file. */
  public Optional<String> of(Path file) {
    return Optional.ofNullable(texts.get(key(file)));
  }

  /** The text of a file: the draft's, else the file's own. */
  public String text(Path file) throws IOException {
    Optional<String> draft = of(file);
    return draft.isPresent() ? draft.get() : Files.readString(file, StandardCharsets.UTF_8);
  }

  /** Whether there is such a file, or something that stands in for one. */
  public boolean has(Path file) {
    return of(file).isPresent() || Files.exists(file);
  }

  public Drafts with(Path file, String text) {
    Map<Path, String> more = new LinkedHashMap<>(texts);
    more.put(key(file), text);
    return new Drafts(more);
  }

  public Drafts without(Path file) {
    Map<Path, String> fewer = new LinkedHashMap<>(texts);
    fewer.remove(key(file));
    return new Drafts(fewer);
  }
}
