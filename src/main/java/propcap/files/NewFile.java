package propcap.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import propcap.farm.WeatherRecord;

/**
 * A file of the grower's that the program writes: whole or not at all, and never in the place of
 * another without a copy of it.
 */
public final class NewFile {
  private NewFile() {}

  /** Writes a weather record; see {@link #write}. */
  public static List<Path> writeWeather(List<WeatherRecord.Day> days, Path file, boolean mayReplace)
      throws FaultsException, IOException {
    return write(WeatherFile.text(days), file, mayReplace);
  }

  /**
   * Writes a file in one step.
   *
   * @param mayReplace whether an older file of that name may give way; a copy of it is kept beside
   *     it
   * @return the file, and after it the copy of the older one if there was one
   * @throws FaultsException where there is an older one that may not be replaced, or something else
   */
  static List<Path> write(String text, Path file, boolean mayReplace)
      throws FaultsException, IOException {
    check(file, mayReplace);
    Path folder = Optional.ofNullable(file.toAbsolutePath().getParent()).orElseThrow();
    Files.createDirectories(folder);
    Path fresh = free(folder.resolve("." + file.getFileName() + ".new"));
    try {
      Files.writeString(fresh, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
      Optional<Path> copy = Files.exists(file) ? Optional.of(copied(file)) : Optional.<Path>empty();
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
      return copy.map(c -> List.of(file, c)).orElse(List.of(file));
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** Refuses a place where the file must not be written, before any work is done. */
  public static void check(Path file, boolean mayReplace) throws FaultsException {
    Faults faults = new Faults();
    if (Files.isDirectory(file)) {
      faults.add(Spot.whole(file), "this is a folder", "the name of a file");
    } else if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !mayReplace) {
      faults.add(
          Spot.whole(file),
          "there is such a file already",
          "another name, or --replace, which keeps a copy of it");
    }
    if (faults.any()) {
      throw new FaultsException(faults.sorted());
    }
  }

  /** Keeps a copy beside a file that is about to change; an earlier copy is somebody's work too. */
  static Path copied(Path file) throws IOException {
    Path copy = free(file.resolveSibling(file.getFileName() + ".bak"));
    return Files.copy(file, copy, StandardCopyOption.COPY_ATTRIBUTES);
  }

  /** The first name that is free: as it is, or with a number behind it from 2 on. */
  private static Path free(Path start) {
    Path name = start;
    for (int number = 2; Files.exists(name, LinkOption.NOFOLLOW_LINKS); number++) {
      name = start.resolveSibling(start.getFileName().toString() + number);
    }
    return name;
  }
}
