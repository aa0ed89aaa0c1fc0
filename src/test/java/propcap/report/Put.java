package propcap.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import propcap.results.Answer;
import propcap.results.AnswerKind;
import propcap.results.ResultsFolder;

/** Answers put into a folder as commands put them there, and what then lies in it. */
public final class Put {
  private Put() {}

  public static ResultsFolder.Asker asker(Path source, boolean isNamed) {
    return new ResultsFolder.Asker(source, "propcap run " + source.getFileName(), isNamed);
  }

  public static List<Path> in(Path folder, Answer answer) throws IOException {
    try (ResultsFolder results =
        ResultsFolder.open(folder, answer.kind(), asker(Path.of("spring.yaml"), true))) {
      return results.write(answer.files("0.1.0"));
    }
  }

  /** Opens a folder for a kind of answer and writes nothing. */
  public static void nothingIn(Path folder, AnswerKind kind) throws IOException {
    ResultsFolder.open(folder, kind, asker(Path.of("spring.yaml"), true)).close();
  }

  /** The texts of all files in sight, by name. */
  public static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(f -> !f.getFileName().toString().startsWith(".")).toList()) {
        contents.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return contents;
  }
}
