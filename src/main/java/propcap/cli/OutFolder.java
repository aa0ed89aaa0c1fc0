package propcap.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import propcap.report.Results;

/** Where a command that reads a grower's records puts its results. */
final class OutFolder {
  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where the results go. Default: a folder in results, by the file's name.")
  private @Nullable Path out;

  /** A file's name without its ending. */
  static String name(Path file) {
    Path last = file.getFileName();
    return last == null ? "counts" : last.toString().replaceFirst("\\.[^.]*$", "");
  }

  /**
   * Where the results go, refused before any work is done if they must not.
   *
   * @param ending what the default folder's name ends in, after the file's name
   */
  Path folder(Path file, String ending) throws IOException {
    Path folder = out == null ? Path.of("results", name(file) + ending) : out;
    Results.check(folder);
    return folder;
  }

  /** Prints what matters, and which files hold the rest. */
  static void tell(CommandSpec spec, List<String> lines, List<Path> written) {
    var terminal = spec.commandLine().getOut();
    lines.forEach(terminal::println);
    terminal.println();
    written.forEach(path -> terminal.println("wrote " + path));
  }
}
