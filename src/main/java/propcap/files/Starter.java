package propcap.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes a first set of files for a grower to change: {@code propcap new FOLDER}. */
public final class Starter {
  private static final List<String> FILES =
      List.of("scenario.yaml", "crops.yaml", "sowings.csv", "weather.csv");

  private Starter() {}

  /**
   * Writes the set into a folder, which is made where there is none.
   *
   * @return the files written
   * @throws FaultsException where one of them is there already, and then nothing is written; or
   *     where the folder cannot be written to
   */
  public static List<Path> write(Path folder) throws FaultsException {
    Faults faults = new Faults();
    for (String name : FILES) {
      Path file = folder.resolve(name);
      if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
        faults.add(Spot.whole(file), "there is such a file already", "a folder without it");
      }
    }
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      faults.add(Spot.whole(folder), "a file", "a folder, or a name that is not taken");
    }
    if (faults.any()) {
      throw new FaultsException(faults.sorted());
    }
    List<Path> written = new ArrayList<>();
    try {
      Map<String, byte[]> contents = contents();
      Files.createDirectories(folder);
      for (Map.Entry<String, byte[]> content : contents.entrySet()) {
        Path file = folder.resolve(content.getKey());
        Files.write(file, content.getValue(), StandardOpenOption.CREATE_NEW);
        written.add(file);
      }
    } catch (IOException e) {
      faults.add(Spot.whole(folder), "cannot be written: " + reason(e), "a folder to write to");
      throw new FaultsException(faults.sorted());
    }
    return List.copyOf(written);
  }

  private static Map<String, byte[]> contents() throws IOException {
    Map<String, byte[]> contents = new LinkedHashMap<>();
    for (String name : FILES) {
      try (InputStream in = Starter.class.getResourceAsStream("starter/" + name)) {
        if (in == null) {
          throw new IllegalStateException("the program lacks its starter file " + name);
        }
        contents.put(name, in.readAllBytes());
      }
    }
    return contents;
  }

  private static String reason(IOException e) {
    return e.getClass().getSimpleName().replace("Exception", "");
  }
}
