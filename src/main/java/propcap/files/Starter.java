package propcap.files;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Writes a first set of files for a grower to change: {@code propcap new FOLDER}. */
public final class Starter {
  private static final String CROPS = "crops.yaml";
  private static final List<String> FILES =
      List.of("scenario.yaml", CROPS, "sowings.csv", "weather.csv");

  private Starter() {}

  /**
   * Writes the set into a folder, which is made where there is none.
   *
   * @return the files written
   * @throws FaultsException where one of them is there already, and then nothing is written; or
   *     where the folder cannot be written to
   */
  public static List<Path> write(Path folder) throws FaultsException {
    return write(folder, Starter::content);
  }

  private static @Nullable InputStream content(String name) {
    InputStream written = Starter.class.getResourceAsStream("starter/" + name);
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

  /** The same from other contents. */
  static List<Path> write(Path folder, Function<String, @Nullable InputStream> contents)
      throws FaultsException {
    Faults faults = new Faults();
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      faults.add(Spot.whole(folder), "this is a file", "a folder, or a name that is not taken");
    }
    for (String name : FILES) {
      Path file = folder.resolve(name);
      if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
        faults.add(Spot.whole(file), "there is such a file already", "a folder without it");
      }
    }
    List<Path> written = new ArrayList<>();
    if (!faults.any()) {
      try {
        Files.createDirectories(folder);
        for (String name : FILES) {
          copy(contents.apply(name), folder.resolve(name), written);
        }
      } catch (IOException e) {
        faults.add(Spot.whole(folder), "this cannot be written to", "a folder that can");
        remove(written);
      }
    }
    if (faults.any()) {
      throw new FaultsException(faults.sorted());
    }
    return List.copyOf(written);
  }

  private static void copy(@Nullable InputStream content, Path file, List<Path> written)
      throws IOException {
    if (content == null) {
      throw new IllegalStateException("the program lacks its starter file " + file.getFileName());
    }
    try (content;
        OutputStream out = Files.newOutputStream(file, StandardOpenOption.CREATE_NEW)) {
      written.add(file);
      content.transferTo(out);
    }
  }

  /** Half a set would only stand in the way of the next try. */
  private static void remove(List<Path> written) {
    for (Path file : written) {
      try {
        Files.deleteIfExists(file);
      } catch (IOException e) {
        // The fault that led here is reported; this one would say the same.
      }
    }
  }
}
