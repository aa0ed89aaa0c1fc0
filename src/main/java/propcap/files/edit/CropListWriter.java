package propcap.files.edit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import propcap.disk.WholeFile;
import propcap.farm.Crop;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.CropBook;
import propcap.files.text.Fault;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;
import propcap.files.text.SourceText;

/**
 * Changes values in a grower's crop list and nothing else. The list as it was is kept beside it,
 * and the new one takes its place in one step, once it has been read without a fault.
 */
public final class CropListWriter {
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
   *     it, which may be of a map in its turn: {@code damping-off.chance}
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
            FilePosition.whole(cropsYaml),
            "no crop " + FaultWords.shown(crop),
            FaultWords.oneOf(crop, crops.keySet()));
      }
    }
    faults.check();
    WholeFile.check(cropsYaml);
    Path file = cropsYaml.toRealPath();
    String changed = Files.readString(file);
    for (Map.Entry<String, Map<String, Map<String, String>>> crop : values.entrySet()) {
      changed = changed(changed, crop.getKey(), crop.getValue());
    }
    Faults would = new Faults();
    CropBook.read(new SourceText(cropsYaml, changed.replaceFirst("^\uFEFF", "")), would);
    if (would.any()) {
      throw withNewValues(would);
    }
    return new CropListWriter(file, changed);
  }

  private static String changed(String list, String crop, Map<String, Map<String, String>> values) {
    String changed = list;
    for (Map.Entry<String, Map<String, String>> within : values.entrySet()) {
      for (Map.Entry<String, String> value : within.getValue().entrySet()) {
        Stream<String> inner = Stream.of(value.getKey().split("\\.", -1));
        List<Step> path =
            Stream.concat(Stream.of("crops", crop, within.getKey()), inner).map(Step::to).toList();
        changed = YamlText.set(changed, path, value.getValue());
      }
    }
    return changed;
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
            .map(f -> new Fault(f.spot(), "with the new values " + f.found(), f.right(), f.about()))
            .toList());
  }
}
