package propcap.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.evidence.Stages;
import propcap.files.TrayLogReader;
import propcap.report.Results;
import propcap.report.StagesAnswer;

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

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where the results go. Default: a folder in results, by the log's file.")
  private @Nullable Path out;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    if (!(listedTrays >= 1 && listedTrays <= 1e6)) {
      throw new ParameterException(
          spec.commandLine(), "--list-weighs must be 1 to 1000000 trays, was " + listedTrays);
    }
    Path folder = out == null ? Path.of("results", stem(log) + "-stages") : out;
    Results.check(folder);
    TrayLogReader.TrayLog read = TrayLogReader.read(log, scenario);
    Stages stages = Stages.fit(read.scenario(), read.trays(), listedTrays);
    var terminal = spec.commandLine().getOut();
    StagesAnswer.headlines(stages).forEach(terminal::println);
    terminal.println();
    StagesAnswer.entry(stages).forEach(terminal::println);
    terminal.println();
    StagesAnswer.write(stages, Propcap.Version.text(), folder)
        .forEach(path -> terminal.println("wrote " + path));
    return Propcap.DONE;
  }

  private static String stem(Path file) {
    Path name = file.getFileName();
    return name == null ? "log" : name.toString().replaceFirst("\\.csv$", "");
  }
}
