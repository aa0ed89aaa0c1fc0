package propcap.cli.question;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.ScenarioCommand;
import propcap.farm.Scenario;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.now.LastTime;
import propcap.report.now.NowAnswer;
import propcap.results.ResultsFolder;
import propcap.study.now.AskingNow;
import propcap.study.now.SeasonNow;

/** What now, and what can still be done? */
@Command(
    name = "now",
    description =
        "Goes on from this season's log: what is planted, safe, at risk and lost, and what can"
            + " still be done.")
public final class NowCommand extends ScenarioCommand<NowAnswer> {
  @Option(
      names = "--goal",
      paramLabel = "P",
      defaultValue = "90%",
      converter = RunOptions.Share.class,
      description =
          "The chance that makes a sowing safe, where it has no goal of its own. Default:"
              + " ${DEFAULT-VALUE}.")
  private double goal;

  @Option(
      names = "--no-advice",
      description = "Only how it will go on; try nothing that could help.")
  private boolean noAdvice;

  private @Nullable LastTime last;

  NowCommand() {
    super(NowAnswer.KIND);
  }

  @Override
  protected boolean isWithinSeason() {
    return true;
  }

  @Override
  protected void opened(ResultsFolder folder) throws IOException {
    last = folder.before().flatMap(LastTime::of).orElse(null);
  }

  @Override
  protected RunOptions.Question<NowAnswer> question(Scenario scenario) {
    return (run, progress) -> {
      SeasonNow now = AskingNow.ask(scenario, run, goal, !noAdvice, progress);
      return new NowAnswer(
          now, AskingNow.fortnight(scenario, run), new ForecastAnswer(now.now()), last);
    };
  }
}
