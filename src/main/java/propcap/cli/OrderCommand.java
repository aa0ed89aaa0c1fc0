package propcap.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.farm.Scenario;
import propcap.report.order.SuppliesAnswer;
import propcap.results.KnownResults;
import propcap.results.ResultsFolder;
import propcap.study.RunSettings;
import propcap.study.Supplies;
import propcap.study.Supplying;

/** What to order for the season? */
@Command(
    name = "order",
    description = "Writes the order list: seed, trays, pots, mix and labels, with the arithmetic.",
    mixinStandardHelpOptions = true)
final class OrderCommand implements Callable<Integer> {
  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file.")
  private Path file;

  @Option(
      names = "--chance",
      paramLabel = "SHARE",
      converter = RunOptions.Share.class,
      defaultValue = "90%",
      description =
          "Chance with which each sowing should have its plants. Default: ${DEFAULT-VALUE}.")
  private double chance;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Scenario scenario = options.scenarios(spec).read(file);
    try (ResultsFolder folder = options.open(spec, file, KnownResults.ORDER)) {
      Supplies supplies =
          options.ask(
              spec,
              scenario,
              RunSettings.DEFAULT_SEASONS,
              (run, progress) -> Supplying.supplies(scenario, chance, run, progress));
      return Output.of(spec, new SuppliesAnswer(supplies), folder);
    }
  }
}
