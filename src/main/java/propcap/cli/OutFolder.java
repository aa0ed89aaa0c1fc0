package propcap.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import propcap.report.Results;

/** Where a command that reads a grower's records puts its results. */
final class OutFolder {
  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where the results go. Default: a folder in results, by the file's name.")
  private @Nullable Path out;

  /**
   * Where the results go, refused before any work is done if they must not.
   *
   * @param ending what the default folder's name ends in, after the file's name
   */
  Path folder(Path file, String ending) throws IOException {
    Path folder = out == null ? Path.of("results", stem(file) + ending) : out;
    Results.check(folder);
    return folder;
  }

  /** A file's name without what tells its kind, such as {@code counts}. */
  static String stem(Path file) {
    Path name = file.getFileName();
    return name == null ? "record" : name.toString().replaceFirst("\\.(csv|txt|ya?ml)$", "");
  }
}
