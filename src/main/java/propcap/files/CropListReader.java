package propcap.files;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import propcap.farm.Crop;

/** Reads a crop list by itself, without a scenario. */
public final class CropListReader {
  private CropListReader() {}

  /**
   * The crops by name, in the file's order. The places that they name are not looked for.
   *
   * @throws FaultsException with all faults of the file, if there is any
   */
  public static Map<String, Crop> read(Path cropsYaml) throws FaultsException {
    Faults faults = new Faults();
    Map<String, Crop> crops = new LinkedHashMap<>();
    Optional<Node.Keyed> list =
        YamlFile.read(cropsYaml, Spot.whole(cropsYaml), faults)
            .flatMap(
                root ->
                    new Fields("", Spot.whole(cropsYaml), root, List.of("crops"), faults)
                        .keyed("crops", "a map of crops by name"));
    list.ifPresent(
        written ->
            written
                .entries()
                .forEach(
                    (name, entry) -> {
                      if (entry.value() instanceof Node.Keyed map) {
                        new CropFields(name, entry, map, faults)
                            .read(UnaryOperator.identity())
                            .ifPresent(crop -> crops.put(name, crop));
                      } else if (!(entry.value() instanceof Node.Unread)) {
                        faults.add(
                            entry.value().spot(),
                            "crop " + Words.shown(name) + " is " + entry.value().kind(),
                            "a map such as {cells: 72, ...}");
                      }
                    }));
    if (faults.any()) {
      throw new FaultsException(faults.sorted());
    }
    return crops;
  }
}
