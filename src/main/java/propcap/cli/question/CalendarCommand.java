package propcap.cli.question;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import propcap.cli.kit.Program;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.ScenarioCommand;
import propcap.farm.Scenario;
import propcap.report.work.CalendarAnswer;
import propcap.report.work.LabelSheet;
import propcap.study.BadQuestionException;
import propcap.study.Period;
import propcap.study.work.WorkPlanning;

/** What is there to do this week? */
@Command(
    name = "calendar",
    description = "Writes the work day by day: week and month sheets, a calendar file, labels.")
public final class CalendarCommand extends ScenarioCommand<CalendarAnswer> {
  @Option(
      names = "--week",
      paramLabel = "WEEK",
      description = "One week only, such as 2027-W12. Default: the whole season.")
  private @Nullable String week;

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "First day, such as 2027-03-22. Default: the season's.")
  private @Nullable LocalDate from;

  @Option(
      names = "--to",
      paramLabel = "DATE",
      description = "Last day, such as 2027-04-04. Default: the season's.")
  private @Nullable LocalDate to;

  @Option(
      names = "--label",
      paramLabel = "SIZE",
      defaultValue = "70x37mm",
      description = "Size of a tray label, width by height. Default: ${DEFAULT-VALUE}.")
  private String label;

  @Option(
      names = "--columns",
      paramLabel = "N",
      defaultValue = "3",
      description = "Labels beside each other on A4. Default: ${DEFAULT-VALUE}.")
  private int columns;

  @Option(
      names = "--rows",
      paramLabel = "N",
      defaultValue = "8",
      description = "Labels below each other on A4. Default: ${DEFAULT-VALUE}.")
  private int rows;

  CalendarCommand() {
    super(CalendarAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<CalendarAnswer> question(Scenario scenario)
      throws BadQuestionException {
    LabelSheet labels = labels();
    Period period = Period.asked(scenario.season(), week, from, to);
    return (run, progress) ->
        new CalendarAnswer(
            WorkPlanning.calendar(scenario, run, progress), period, labels, Program.now(spec()));
  }

  private LabelSheet labels() {
    try {
      return LabelSheet.of(label, columns, rows);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec().commandLine(), e.getMessage(), e);
    }
  }
}
