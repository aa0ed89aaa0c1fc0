package propcap.cli.question;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.ScenarioCommand;
import propcap.farm.Scenario;
import propcap.report.order.SuppliesAnswer;
import propcap.study.order.Supplying;

/** What to order for the season? */
@Command(
    name = "order",
    description = "Writes the order list: seed, trays, pots, mix and labels, with the arithmetic.")
public final class OrderCommand extends ScenarioCommand<SuppliesAnswer> {
  @Option(
      names = "--chance",
      paramLabel = "SHARE",
      converter = RunOptions.Share.class,
      defaultValue = "90%",
      description =
          "Chance with which each sowing should have its plants. Default: ${DEFAULT-VALUE}.")
  private double chance;

  OrderCommand() {
    super(SuppliesAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<SuppliesAnswer> question(Scenario scenario) {
    return (run, progress) ->
        new SuppliesAnswer(Supplying.supplies(scenario, chance, run, progress));
  }
}
