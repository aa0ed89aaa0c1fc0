package propcap.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.Program;

/** What options does a command have? Commands within others have their own. */
@Command(
    name = "help",
    description = "Shows the options of a command, such as: propcap help fit germination.",
    helpCommand = true)
final class HelpCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "COMMAND",
      arity = "0..*",
      description = "The command, and the one within it. Default: all commands.")
  private List<String> names = List.of();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    CommandLine asked = spec.commandLine().getParent();
    for (String name : names) {
      CommandLine within = asked.getSubcommands().get(name);
      if (within == null) {
        throw new ParameterException(
            spec.commandLine(), "There is no command '" + name + "'" + others(asked));
      }
      asked = within;
    }
    asked.usage(spec.commandLine().getOut());
    return Program.DONE;
  }

  private static String others(CommandLine asked) {
    return asked.getSubcommands().isEmpty()
        ? " within " + asked.getCommandName() + "."
        : "; there are: " + String.join(", ", asked.getSubcommands().keySet()) + ".";
  }
}
