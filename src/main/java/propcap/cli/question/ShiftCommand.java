package propcap.cli.question;

import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.ScenarioCommand;
import propcap.farm.Scenario;
import propcap.report.shift.ShiftsAnswer;
import propcap.study.BadQuestionException;
import propcap.study.shift.Shifting;

/** When is the best day to sow? */
@Command(
    name = "shift",
    description = "Moves groups of sowings earlier and later, each group by itself.")
public final class ShiftCommand extends ScenarioCommand<ShiftsAnswer> {
  private static final int FORTNIGHT = 14;

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
      description = "Earliest shift. Default: -14, or as far as the season allows.")
  private @Nullable Integer from;

  @Option(
      names = "--to",
      paramLabel = "DAYS",
      description = "Latest shift. Default: 14, or as far as the season allows.")
  private @Nullable Integer to;

  @Option(
      names = "--step",
      paramLabel = "DAYS",
      defaultValue = "7",
      description = "Days between shifts. Default: ${DEFAULT-VALUE}.")
  private int step;

  ShiftCommand() {
    super(ShiftsAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<ShiftsAnswer> question(Scenario scenario)
      throws BadQuestionException {
    int earliest = from == null ? inSeason(scenario, -FORTNIGHT) : from;
    int latest = to == null ? inSeason(scenario, FORTNIGHT) : to;
    return (run, progress) ->
        new ShiftsAnswer(Shifting.shift(scenario, matches, earliest, latest, step, run, progress));
  }

  /** As many steps of a fortnight, back or forward, as keep every sowing within the season. */
  private int inSeason(Scenario scenario, int fortnight) throws BadQuestionException {
    int days = fortnight;
    while (days != 0 && step > 0 && Shifting.outside(scenario, matches, days).isPresent()) {
      days = Math.abs(days) <= step ? 0 : days - Integer.signum(days) * step;
    }
    if (days != fortnight) {
      String first = Shifting.outside(scenario, matches, fortnight).orElse("a sowing");
      tell(
          "Shifts of more than %s days %s are left out: %s would be sown outside the season."
              .formatted(Math.abs(days), fortnight < 0 ? "earlier" : "later", first));
    }
    return days;
  }
}
