package propcap.cli.question;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.ScenarioCommand;
import propcap.farm.Scenario;
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.study.bottleneck.Bottlenecking;

/** Which place holds the spring up, and what helps most? */
@Command(
    name = "bottleneck",
    description =
        "Tries a tenth more and a tenth less of each place, then adds what helps most, step by step.")
public final class BottleneckCommand extends ScenarioCommand<BottlenecksAnswer> {
  @Option(
      names = "--steps",
      paramLabel = "N",
      defaultValue = "5",
      description = "The most steps of the stair. Default: ${DEFAULT-VALUE}.")
  private int steps;

  BottleneckCommand() {
    super(BottlenecksAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<BottlenecksAnswer> question(Scenario scenario) {
    return (run, progress) ->
        new BottlenecksAnswer(Bottlenecking.bottlenecks(scenario, run, steps, progress));
  }
}
