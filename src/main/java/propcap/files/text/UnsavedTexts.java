package propcap.files.text;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What a grower has changed and not saved yet: each text stands in for the file of its name,
 * whether there is such a file or not.
 *
 * @param disk where all other files are read
 */
public record UnsavedTexts(Map<Path, String> texts, OnDisk disk) {
  public UnsavedTexts {
    Map<Path, String> absolute = new LinkedHashMap<>();
    texts.forEach((file, text) -> absolute.put(OnDisk.key(file), text));
    texts = Map.copyOf(absolute);
  }

  /** Files as they are. */
  public static UnsavedTexts none() {
    return new UnsavedTexts(Map.of(), new OnDisk());
  }

  /** What stands in for a file. */
  public Optional<String> of(Path file) {
    return Optional.ofNullable(texts.get(OnDisk.key(file)));
  }

  /** The text of a file: the draft's, else the file's own. */
  public String text(Path file) throws IOException {
    Optional<String> draft = of(file);
    return draft.isPresent() ? draft.get() : disk.text(file);
  }

  /** Whether there is such a file, or something that stands in for one. */
  public boolean has(Path file) {
    return of(file).isPresent() || Files.exists(file);
  }

  /** The first name for a new file in a folder: the stem, with a number behind it if need be. */
  public Path free(Path folder, String stem, String ending) {
    Path file = folder.resolve(stem + ending);
    for (int n = 2; has(file); n++) {
      file = folder.resolve(stem + "-" + n + ending);
    }
    return file;
  }

  public UnsavedTexts with(Path file, String text) {
    Map<Path, String> more = new LinkedHashMap<>(texts);
    more.put(OnDisk.key(file), text);
    return new UnsavedTexts(more, disk);
  }
}
