package propcap.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import propcap.farm.Crop;

/**
 * Changes values in a grower's crop list and nothing else. The list as it was is kept beside it,
 * and the new one takes its place in one step, once it has been read without a fault.
 */
public final class CropListWriter {
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private CropListWriter() {}

  /**
   * Changes values of crops, all of them or none.
   *
   * @param values by crop, then by key of the crop, such as {@code emergence}, then by key within
   *     it
   * @return the copy of the list as it was
   * @throws FaultsException where the list has faults, lacks a crop, or would have faults; it is
   *     then left as it was
   */
  public static Path change(Path cropsYaml, Map<String, Map<String, Map<String, String>>> values)
      throws FaultsException, IOException {
    Map<String, Crop> crops = CropBook.read(cropsYaml).crops();
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
    Path file = cropsYaml.toRealPath();
    String written = Files.readString(file);
    String mark = written.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
    String changed = written.substring(mark.length());
    for (Map.Entry<String, Map<String, Map<String, String>>> crop : values.entrySet()) {
      changed = CropListText.changed(changed, crop.getKey(), crop.getValue());
    }
    Path fresh = Files.createTempFile(file.toAbsolutePath().getParent(), ".crops", ".new");
    try {
      // Over a copy, so that owner and rights stay what they were.
      Files.copy(
          file, fresh, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
      Files.writeString(fresh, mark + changed, StandardCharsets.UTF_8);
      CropBook.read(fresh);
      Path backup = NewFile.copied(file);
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
      return backup;
    } catch (FaultsException e) {
      throw named(e, fresh, cropsYaml);
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** The faults as of the file that the grower knows. */
  private static FaultsException named(FaultsException e, Path fresh, Path cropsYaml) {
    return new FaultsException(
        e.faults().stream()
            .map(
                f ->
                    f.file().equals(fresh)
                        ? new Fault(
                            cropsYaml,
                            f.line(),
                            f.column(),
                            "with the new values " + f.found(),
                            f.right())
                        : f)
            .toList());
  }
}
