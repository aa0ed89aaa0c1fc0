package propcap.cli.record;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** From the grower's records to the crop list. */
@Command(
    name = "fit",
    description = "Works out entries of the crop list from your own records.",
    mixinStandardHelpOptions = true,
    subcommands = {FitGerminationCommand.class, FitStagesCommand.class})
public final class FitCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    throw new ParameterException(
        spec.commandLine(), "Say what to fit: fit germination COUNTS.csv, or fit stages LOG.csv");
  }
}
