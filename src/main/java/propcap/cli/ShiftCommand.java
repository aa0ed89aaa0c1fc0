package propcap.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.farm.Scenario;
import propcap.files.ScenarioReader;
import propcap.report.Answers;
import propcap.report.KnownResults;
import propcap.report.ResultsFolder;
import propcap.study.RunSettings;
import propcap.study.Shifting;
import propcap.study.Shifts;

/** When is the best day to sow? */
@Command(
    name = "shift",
    description = "Moves groups of sowings earlier and later, each group by itself.",
    mixinStandardHelpOptions = true)
final class ShiftCommand implements Callable<Integer> {
  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file.")
  private Path file;

  @Option(
      names = "--match",
      paramLabel = "IDS",
      defaultValue = "*",
      description =
          "Sowings to move together, such as tomato*; once for each group. Default: all of them.")
  private List<String> matches;

  @Option(
      names = "--from",
      paramLabel = "DAYS",
      defaultValue = "-14",
      description = "Earliest shift. Default: ${DEFAULT-VALUE}.")
  private int from;

  @Option(
      names = "--to",
      paramLabel = "DAYS",
      defaultValue = "14",
      description = "Latest shift. Default: ${DEFAULT-VALUE}.")
  private int to;

  @Option(
      names = "--step",
      paramLabel = "DAYS",
      defaultValue = "7",
      description = "Days between shifts. Default: ${DEFAULT-VALUE}.")
  private int step;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Scenario scenario = ScenarioReader.read(file);
    try (ResultsFolder folder = options.open(spec, file, KnownResults.SHIFT)) {
      Shifts shifts =
          options.ask(
              spec,
              RunSettings.DEFAULT_SEASONS,
              (run, progress) -> Shifting.shift(scenario, matches, from, to, step, run, progress));
      return Told.of(
          spec, Answers.headlines(shifts), Answers.write(shifts, Propcap.Version.text(), folder));
    }
  }
}
