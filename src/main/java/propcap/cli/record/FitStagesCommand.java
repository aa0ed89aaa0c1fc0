package propcap.cli.record;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.OutFolder;
import propcap.cli.kit.Output;
import propcap.cli.kit.Program;
import propcap.cli.kit.Scenarios;
import propcap.evidence.stages.Stages;
import propcap.files.scenario.TrayLogReader;
import propcap.report.stages.StagesAnswer;
import propcap.results.ResultsFolder;

/** What does the log of trays say of growing on, potting and hardening off? */
@Command(
    name = "stages",
    description = "Fits growing on, losses by stage and damping-off to a log of trays.",
    mixinStandardHelpOptions = true)
final class FitStagesCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "LOG",
      description = "The log: a CSV file with the columns sowing,tray,event,date,plants.")
  private Path log;

  @Option(
      names = "--scenario",
      paramLabel = "SCENARIO",
      required = true,
      description = "The scenario with the crop list, the plan, the places and the weather.")
  private Path scenario;

  @Option(
      names = "--list-weighs",
      paramLabel = "TRAYS",
      defaultValue = "" + Stages.DEFAULT_LISTED_TRAYS,
      description = "How many trays a figure of the crop list weighs. Default: ${DEFAULT-VALUE}.")
  private double listedTrays;

  @Mixin private WriteOption write;

  @Mixin private OutFolder out;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Program.require(
        spec,
        listedTrays >= 1 && listedTrays <= 1e6,
        "--list-weighs must be 1 to 1000000 trays, was " + listedTrays);
    TrayLogReader.TrayLog read = TrayLogReader.read(log, scenario);
    read.warnings().forEach(Scenarios.doubted(spec));
    Stages stages = Stages.fit(read.scenario(), read.trays(), listedTrays);
    StagesAnswer answer = new StagesAnswer(stages);
    Optional<Path> list = write.list();
    WriteOption.Writing shown =
        list.isEmpty() ? answer::entry : WriteOption.of(list.get(), answer.values());
    try (ResultsFolder folder = out.open(spec, log, StagesAnswer.KIND)) {
      return Output.of(spec, answer, shown.lines(), folder);
    }
  }
}
