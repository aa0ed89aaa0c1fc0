package propcap.cli.kit;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import propcap.results.AnswerKind;
import propcap.results.ResultsFolder;

/** Where a command puts its results. */
public final class OutFolder {
  private static final Path RESULTS = Path.of("results");

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where the results go. Default: a folder in results, by the file's name.")
  private @Nullable Path out;

  /**
   * Opens where the results go, or refuses the place before any work is done.
   *
   * @param file of the scenario or record that they are of, once it is read
   */
  public ResultsFolder open(CommandSpec spec, Path file, AnswerKind answer) throws IOException {
    ResultsFolder.finishIn(RESULTS);
    Path folder = out == null ? RESULTS.resolve(stem(file) + answer.ending()) : out;
    String doing = spec.qualifiedName() + " " + file;
    return ResultsFolder.open(folder, answer, new ResultsFolder.Asker(file, doing, out != null));
  }

  /** A file's name without what tells its kind, such as {@code counts}. */
  public static String stem(Path file) {
    Path name = file.getFileName();
    return name == null ? "record" : name.toString().replaceFirst("\\.(csv|txt|ya?ml)$", "");
  }
}
