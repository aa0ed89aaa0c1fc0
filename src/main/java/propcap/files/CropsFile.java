package propcap.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import propcap.farm.Crop;

/** A crop list by itself, where no scenario says which places there are. */
public final class CropsFile {
  private static final String STARTER = "starter/crops.yaml";

  private CropsFile() {}

  /**
   * Reads a crop list.
   *
   * @return the crops by name, in the list's order
   * @throws FaultsException with all faults of the file, if there is any
   */
  public static Map<String, Crop> read(Path file) throws FaultsException {
    Faults faults = new Faults();
    return crops(file, YamlFile.read(file, Spot.whole(file), faults), faults);
  }

  /** The crop list that a new set of files starts with. */
  public static Map<String, Crop> starter() throws FaultsException {
    Faults faults = new Faults();
    Path file = Path.of(STARTER);
    try (InputStream in = CropsFile.class.getResourceAsStream(STARTER)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its starter file " + STARTER);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return crops(file, YamlFile.read(new SourceText(file, text), faults), faults);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Map<String, Crop> crops(Path file, Optional<Node.Keyed> root, Faults faults)
      throws FaultsException {
    Map<String, Crop> crops = new LinkedHashMap<>();
    root.flatMap(r -> CropList.listed(file, r, faults))
        .ifPresent(
            list ->
                list.entries()
                    .forEach(
                        (name, entry) ->
                            CropList.fields(name, entry, faults)
                                .flatMap(fields -> fields.read(UnaryOperator.identity()))
                                .ifPresent(crop -> crops.put(name, crop))));
    if (faults.any()) {
      throw new FaultsException(faults.sorted());
    }
    return crops;
  }
}
