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
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.results.KnownResults;
import propcap.results.ResultsFolder;
import propcap.study.Bottlenecking;
import propcap.study.Bottlenecks;
import propcap.study.RunSettings;

/** Which place holds the spring up, and what helps most? */
@Command(
    name = "bottleneck",
    description =
        "Tries a tenth more and a tenth less of each place, then adds what helps most, step by step.",
    mixinStandardHelpOptions = true)
final class BottleneckCommand implements Callable<Integer> {
  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file.")
  private Path file;

  @Option(
      names = "--steps",
      paramLabel = "N",
      defaultValue = "5",
      description = "The most steps of the stair. Default: ${DEFAULT-VALUE}.")
  private int steps;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Scenario scenario = options.scenarios(spec).read(file);
    try (ResultsFolder folder = options.open(spec, file, KnownResults.BOTTLENECK)) {
      Bottlenecks bottlenecks =
          options.ask(
              spec,
              scenario,
              RunSettings.DEFAULT_SEASONS,
              (run, progress) -> Bottlenecking.bottlenecks(scenario, run, steps, progress));
      return Output.of(spec, new BottlenecksAnswer(bottlenecks), folder);
    }
  }
}
