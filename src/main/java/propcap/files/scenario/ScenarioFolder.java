package propcap.files.scenario;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import propcap.files.text.SourceText;

/**
 * The scenarios among the files of a folder: those that extend no other first, each kind by name.
 * Other files of YAML, such as crop lists, are left out.
 */
public record ScenarioFolder(List<Path> scenarios) {
  /** What only a scenario begins a line with. */
  private static final Pattern SCENARIO =
      Pattern.compile("(?m)^(season|sowings|places|weather)\\s*:");

  private static final Pattern EXTENDS = Pattern.compile("(?m)^extends\\s*:");

  public ScenarioFolder {
    scenarios = List.copyOf(scenarios);
  }

  /**
   * Looks at a folder's own files, and at none of a folder in it.
   *
   * @throws IOException where the folder cannot be read
   */
  public static ScenarioFolder of(Path folder) throws IOException {
    List<Path> first = new ArrayList<>();
    List<Path> then = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*.{yaml,yml}")) {
      for (Path file : files) {
        String text = text(file);
        if (EXTENDS.matcher(text).find()) {
          then.add(file);
        } else if (SCENARIO.matcher(text).find()) {
          first.add(file);
        }
      }
    }
    first.sort(Comparator.naturalOrder());
    then.sort(Comparator.naturalOrder());
    first.addAll(then);
    return new ScenarioFolder(first);
  }

  /** As far as it is needed to tell what it is; what is wrong with it is for its reader. */
  private static String text(Path file) throws IOException {
    return Files.isRegularFile(file) && Files.size(file) <= SourceText.MOST_BYTES
        ? Files.readString(file, StandardCharsets.ISO_8859_1)
        : "";
  }
}
