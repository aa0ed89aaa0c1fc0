package propcap.cli.question;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.ScenarioCommand;
import propcap.farm.Scenario;
import propcap.report.forecast.ForecastAnswer;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;

/** How will the spring go? */
@Command(
    name = "run",
    description = "Simulates many springs of a scenario and writes the forecast.")
public final class RunCommand extends ScenarioCommand<ForecastAnswer> {
  /** The most that are run for a precision, where no number is given. */
  private static final int MOST_FOR_PRECISION = 100_000;

  @Option(
      names = "--precision",
      paramLabel = "P",
      converter = RunOptions.Share.class,
      description =
          "Stop when half the 95 %% interval of all plants on time is below this share of their mean,"
              + " such as 0.2%%.")
  private @Nullable Double precision;

  RunCommand() {
    super(ForecastAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<ForecastAnswer> question(Scenario scenario) {
    return (run, progress) -> new ForecastAnswer(Forecasting.forecast(scenario, run, progress));
  }

  @Override
  protected int mostSeasons() {
    return precision == null ? RunSettings.DEFAULT_SEASONS : MOST_FOR_PRECISION;
  }

  @Override
  protected @Nullable Double precision() {
    return precision;
  }

  @Override
  protected boolean isNo(ForecastAnswer answer) {
    Forecast forecast = answer.forecast();
    if (precision == null || Forecasting.isPrecise(forecast, precision)) {
      return false;
    }
    tell(
        "The precision asked for was not reached with "
            + forecast.seasons()
            + " springs, the most that were allowed.");
    return true;
  }
}
