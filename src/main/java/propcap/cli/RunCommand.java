package propcap.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.farm.Scenario;
import propcap.files.ScenarioReader;
import propcap.report.Headlines;
import propcap.report.Results;
import propcap.study.Forecast;
import propcap.study.Forecasting;
import propcap.study.RunSettings;

/** How will the spring go? */
@Command(
    name = "run",
    description = "Simulates many springs of a scenario and writes the forecast.",
    mixinStandardHelpOptions = true)
final class RunCommand implements Callable<Integer> {
  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file, such as spring.yaml.")
  private Path file;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    var out = spec.commandLine().getOut();
    RunSettings settings = settings();
    Path folder = options.folder(file);
    Results.check(folder);
    Scenario scenario = ScenarioReader.read(file);
    Forecast forecast;
    try (Progress progress = Progress.onTerminal(spec.commandLine().getErr())) {
      forecast = Forecasting.forecast(scenario, settings, progress::show);
    }
    var written = Results.write(forecast, Propcap.Version.text(), folder);
    Headlines.of(forecast).forEach(out::println);
    out.println();
    written.forEach(path -> out.println("wrote " + path));
    return Propcap.DONE;
  }

  private RunSettings settings() {
    try {
      return options.settings();
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }
}
