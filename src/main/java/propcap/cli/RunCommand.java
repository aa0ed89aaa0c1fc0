package propcap.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.farm.Scenario;
import propcap.report.forecast.ForecastAnswer;
import propcap.results.KnownResults;
import propcap.results.ResultsFolder;
import propcap.study.Forecast;
import propcap.study.Forecasting;
import propcap.study.RunSettings;

/** How will the spring go? */
@Command(
    name = "run",
    description = "Simulates many springs of a scenario and writes the forecast.",
    mixinStandardHelpOptions = true)
final class RunCommand implements Callable<Integer> {
  /** The most that are run for a precision, where no number is given. */
  private static final int MOST_FOR_PRECISION = 100_000;

  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file, such as spring.yaml.")
  private Path file;

  @Option(
      names = "--precision",
      paramLabel = "P",
      converter = RunOptions.Share.class,
      description =
          "Stop when the 95 %% half-width of all on-time plants is below this share of their mean,"
              + " such as 0.2%%.")
  private @Nullable Double precision;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Scenario scenario = options.scenarios(spec).read(file);
    int most = precision == null ? RunSettings.DEFAULT_SEASONS : MOST_FOR_PRECISION;
    try (ResultsFolder folder = options.open(spec, file, KnownResults.FORECAST)) {
      Forecast forecast =
          options.ask(
              spec,
              scenario,
              most,
              precision,
              (settings, progress) -> Forecasting.forecast(scenario, settings, progress));
      int told = Output.of(spec, new ForecastAnswer(forecast), folder);
      return isMissed(forecast) ? Propcap.NO : told;
    }
  }

  private boolean isMissed(Forecast forecast) {
    if (precision == null || Forecasting.isPrecise(forecast, precision)) {
      return false;
    }
    spec.commandLine()
        .getErr()
        .println(
            "The precision asked for was not reached with "
                + forecast.seasons()
                + " springs, the most that were allowed.");
    return true;
  }
}
