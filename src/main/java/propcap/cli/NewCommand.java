package propcap.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.Program;
import propcap.files.edit.Starter;

/** A first set of files to change into one's own. */
@Command(
    name = "new",
    description = "Writes a small commented set of files that runs, to start from.",
    mixinStandardHelpOptions = true)
final class NewCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FOLDER", description = "Where the files go; made if need be.")
  private Path folder;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    var out = spec.commandLine().getOut();
    Starter.write(folder).forEach(path -> out.println("wrote " + path));
    out.println("Try it: ./propcap run " + folder.resolve("scenario.yaml"));
    return Program.DONE;
  }
}
