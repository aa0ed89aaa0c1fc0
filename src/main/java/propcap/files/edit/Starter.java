package propcap.files.edit;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.disk.CannotWriteException;
import propcap.disk.FileSet;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;

/** Writes a first set of files for a grower to change: {@code propcap new FOLDER}. */
public final class Starter {
  private static final String DOING = "propcap new";
  private static final String CROPS = "crops.yaml";
  private static final List<String> FILES =
      List.of("scenario.yaml", CROPS, "sowings.csv", "weather.csv", "log.csv");

  private Starter() {}

  /**
   * Writes the set into a folder, which is made where there is none.
   *
   * @return the files written
   * @throws FaultsException where one of them is there already, or where the folder cannot be
   *     written to; then nothing is written
   */
  public static List<Path> write(Path folder) throws FaultsException, IOException {
    return write(folder, Starter::content);
  }

  /** Writes the set with other sizes of its places; all else as above. */
  public static List<Path> write(Path folder, StarterSizes sizes)
      throws FaultsException, IOException {
    return write(
        folder,
        name -> {
          String sized = sizes.changed(name, text(name, content(name)));
          return new ByteArrayInputStream(sized.getBytes(StandardCharsets.UTF_8));
        });
  }

  private static @Nullable InputStream content(String name) {
    InputStream written = Starter.class.getResourceAsStream("/propcap/files/starter/" + name);
    if (written == null || !name.equals(CROPS)) {
      return written;
    }
    try (written) {
      String notes = new String(written.readAllBytes(), StandardCharsets.UTF_8);
      return new ByteArrayInputStream(StarterCrops.text(notes).getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes the files from the contents given for each name. */
  static List<Path> write(Path folder, Function<String, @Nullable InputStream> contents)
      throws FaultsException, IOException {
    if (FileSet.isUnfinished(folder)) {
      // It was killed while it put them there: now all of them are.
      FileSet.open(folder, DOING).close();
    }
    Faults faults = new Faults();
    for (String name : FILES) {
      Path file = folder.resolve(name);
      if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
        faults.add(FilePosition.whole(file), "there is such a file already", "a folder without it");
      }
    }
    if (!faults.any()) {
      Map<Path, String> texts = new LinkedHashMap<>();
      FILES.forEach(name -> texts.put(folder.resolve(name), text(name, contents.apply(name))));
      try (FileSet files = FileSet.open(folder, DOING)) {
        files.write(texts, List.of());
        return List.copyOf(texts.keySet());
      } catch (CannotWriteException e) {
        faults.add(FilePosition.whole(e.file()), e.found(), e.right());
      }
    }
    throw new FaultsException(faults.sorted());
  }

  private static String text(String name, @Nullable InputStream content) {
    if (content == null) {
      throw new IllegalStateException("the program lacks its starter file " + name);
    }
    try (content) {
      return new String(content.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
