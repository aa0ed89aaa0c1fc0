package propcap.cli.kit;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import propcap.results.Answer;
import propcap.results.ResultsFolder;

/** What a command gives at its end: lines on the terminal, files in a folder. */
public final class Output {
  private Output() {}

  /** Writes the files of an answer, then prints what matters and which files hold the rest. */
  public static int of(CommandSpec spec, Answer answer, ResultsFolder folder) throws IOException {
    List<Path> written = folder.write(answer.files(Program.version()));
    return of(spec, answer.headlines().lines(), written);
  }

  /** Writes the files of an answer, then prints what matters and, after a blank line, more. */
  public static int of(CommandSpec spec, Answer answer, List<String> more, ResultsFolder folder)
      throws IOException {
    List<Path> written = folder.write(answer.files(Program.version()));
    List<String> lines = new ArrayList<>(answer.headlines().lines());
    lines.add("");
    lines.addAll(more);
    return of(spec, lines, written);
  }

  /** Prints what matters, and which files were written. */
  public static int of(CommandSpec spec, List<String> lines, List<Path> written) {
    var terminal = spec.commandLine().getOut();
    lines.forEach(terminal::println);
    terminal.println();
    written.forEach(path -> terminal.println("wrote " + path));
    return Program.DONE;
  }
}
