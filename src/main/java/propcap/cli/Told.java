package propcap.cli;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** What a command tells at its end. */
final class Told {
  private Told() {}

  /** Prints what matters, and which files hold the rest. */
  static int of(CommandSpec spec, List<String> lines, List<Path> written) {
    var terminal = spec.commandLine().getOut();
    lines.forEach(terminal::println);
    terminal.println();
    written.forEach(path -> terminal.println("wrote " + path));
    return Propcap.DONE;
  }
}
