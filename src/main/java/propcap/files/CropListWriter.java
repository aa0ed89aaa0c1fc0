package propcap.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import propcap.disk.WholeFile;
import propcap.farm.Crop;

/**
 * Changes values in a grower's crop list and nothing else. The list as it was is kept beside it,
 * and the new one takes its place in one step, once it has been read without a fault.
 */
public final class CropListWriter {
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private final Path file;
  private final String text;

  private CropListWriter(Path file, String text) {
    this.file = file;
    this.text = text;
  }

  /**
   * Prepares to change values of crops, all of them or none.
   *
   * @param values by crop, then by key of the crop, such as {@code emergence}, then by key within
   *     it
   * @throws FaultsException where the list has faults, lacks a crop, or would have faults
   * @throws IOException where the list cannot be written
   */
  public static CropListWriter of(
      Path cropsYaml, Map<String, Map<String, Map<String, String>>> values)
      throws FaultsException, IOException {
    Map<String, Crop> crops = CropBook.read(cropsYaml, doubt -> {}).crops();
    Faults faults = new Faults();
    for (String crop : values.keySet()) {
      if (!crops.containsKey(crop)) {
        faults.add(
            Spot.whole(cropsYaml),
            "no crop " + Words.shown(crop),
            Words.oneOf(crop, crops.keySet()));
      }
    }
    if (faults.any()) {
      throw new FaultsException(faults.sorted());
    }
    WholeFile.check(cropsYaml);
    Path file = cropsYaml.toRealPath();
    String written = Files.readString(file);
    String mark = written.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
    String changed = written.substring(mark.length());
    for (Map.Entry<String, Map<String, Map<String, String>>> crop : values.entrySet()) {
      changed = CropListText.changed(changed, crop.getKey(), crop.getValue());
    }
    Faults would = new Faults();
    CropBook.read(new SourceText(cropsYaml, changed), would);
    if (would.any()) {
      throw withNewValues(would);
    }
    return new CropListWriter(file, mark + changed);
  }

  /**
   * Writes the changed list.
   *
   * @return the copy of the list as it was
   */
  public Path write() throws IOException {
    Path backup = WholeFile.keep(file);
    WholeFile.write(file, text);
    return backup;
  }

  private static FaultsException withNewValues(Faults faults) {
    return new FaultsException(
        faults.sorted().stream()
            .map(
                f ->
                    new Fault(
                        f.file(),
                        f.line(),
                        f.column(),
                        "with the new values " + f.found(),
                        f.right(),
                        f.about()))
            .toList());
  }
}
