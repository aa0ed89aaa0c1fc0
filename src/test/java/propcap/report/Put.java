package propcap.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Answers put into a folder as commands put them there, and what then lies in it. */
final class Put {
  private Put() {}

  @FunctionalInterface
  interface Writing {
    List<Path> into(ResultsFolder folder) throws IOException;
  }

  static ResultsFolder.Asker asker(Path source, boolean isNamed) {
    return new ResultsFolder.Asker(source, "propcap run " + source.getFileName(), isNamed);
  }

  static List<Path> in(Path folder, KnownResults answer, Writing writing) throws IOException {
    try (ResultsFolder results =
        ResultsFolder.open(folder, answer, asker(Path.of("spring.yaml"), true))) {
      return writing.into(results);
    }
  }

  /** The texts of all files in sight, by name. */
  static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(f -> !f.getFileName().toString().startsWith(".")).toList()) {
        contents.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return contents;
  }
}
