package propcap.cli.record;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import propcap.files.edit.CropListWriter;
import propcap.files.text.FaultsException;

/** Whether what was fitted goes into the grower's crop list. */
final class WriteOption {
  @Option(
      names = "--write",
      paramLabel = "CROPS",
      description = "The crop list to write the answer into; a copy of it is kept beside it.")
  private @Nullable Path list;

  /** The list, if one is to be written. */
  Optional<Path> list() {
    return Optional.ofNullable(list);
  }

  /** Writes, and says so. */
  @FunctionalInterface
  interface Writing {
    List<String> lines() throws IOException;
  }

  /**
   * Looks whether values can go into a list, before anything is written.
   *
   * @param values by crop, then by key of the crop, then by key within it
   */
  static Writing of(Path list, Map<String, Map<String, Map<String, String>>> values)
      throws FaultsException, IOException {
    if (values.isEmpty()) {
      return () -> List.of("nothing was learned, so " + list + " stays as it is");
    }
    CropListWriter changed = CropListWriter.of(list, values);
    return () ->
        List.of(
            "wrote " + String.join(", ", values.keySet()) + " into " + list,
            "as it was it is kept in " + changed.write().getFileName());
  }
}
