package propcap.cli.question;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import propcap.cli.kit.NeedsCommand;
import propcap.cli.kit.Program;
import propcap.cli.kit.RunOptions;
import propcap.farm.PlanNeeds;
import propcap.report.plan.PlannedAnswer;
import propcap.study.fill.Filling;
import propcap.study.fill.FirstPlan;
import propcap.study.forecast.Safety;
import propcap.study.plan.Budget;
import propcap.study.plan.Planning;
import propcap.study.plan.PlanningQuestion;

/** What to sow when, and how much of it? */
@Command(
    name = "plan",
    description = {
      "Looks for better sowing dates, trays and germination places.",
      "Where the sowing plan has no date or no trays, it finds them first."
    },
    footer = {
      "%nCtrl-C ends the search; the best plan until then is confirmed and written.",
      "Exit code 3: sowings of the plan miss their goal."
    })
public final class PlanCommand extends NeedsCommand<PlannedAnswer> {
  private static final double SECONDS_A_MINUTE = 60;

  @Option(
      names = "--goal",
      paramLabel = "CHANCE",
      converter = RunOptions.Share.class,
      defaultValue = "" + Safety.DEFAULT_GOAL,
      description =
          "Chance with which each sowing must have its plants on time, where the sowing plan says no"
              + " other. Default: 90%%.")
  private double goal;

  @Option(
      names = "--earlier",
      paramLabel = "DAYS",
      defaultValue = "" + PlanningQuestion.DEFAULT_DAYS,
      description =
          "Days by which a sowing may move forward, where it says no sow-from. Default:"
              + " ${DEFAULT-VALUE}.")
  private int earlier;

  @Option(
      names = "--later",
      paramLabel = "DAYS",
      defaultValue = "" + PlanningQuestion.DEFAULT_DAYS,
      description =
          "Days by which a sowing may be put off, where it says no sow-to. Default:"
              + " ${DEFAULT-VALUE}.")
  private int later;

  @Option(
      names = "--most-trays",
      paramLabel = "TIMES",
      defaultValue = "" + PlanningQuestion.DEFAULT_MOST_TRAYS,
      description = "So many times its trays a sowing may have. Default: ${DEFAULT-VALUE}.")
  private double mostTrays;

  @Option(
      names = "--give-up",
      paramLabel = "IDS",
      description =
          "Sowings that may be given up for the sake of others, such as tomato*; once for each."
              + " Default: none.")
  private List<String> giveUp = List.of();

  @Option(
      names = "--minutes",
      paramLabel = "M",
      defaultValue = "2",
      description = "How long to search. Default: ${DEFAULT-VALUE}.")
  private double minutes;

  @Option(
      names = "--tries",
      paramLabel = "N",
      description = "Stop after trying N plans, not by the clock: the same answer on any machine.")
  private @Nullable Integer tries;

  PlanCommand() {
    super(PlannedAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<PlannedAnswer> question(PlanNeeds needs) {
    PlanningQuestion question = new PlanningQuestion(goal, earlier, later, mostTrays, giveUp);
    Budget budget = budget();
    LocalDate earliest = needs.scenario().today();
    return (run, progress) -> {
      FirstPlan first = Filling.fill(needs, goal, earliest, run);
      return new PlannedAnswer(
          Planning.plan(first.scenario(), question, run, budget, progress), first.filled());
    };
  }

  @Override
  protected boolean isNo(PlannedAnswer answer) {
    return !answer.planned().missed().isEmpty();
  }

  private Budget budget() {
    Integer most = tries;
    Program.require(
        spec(),
        !(minutes <= 0) && (most == null || most >= 1),
        "the minutes must be more than 0, and the tries 1 or more");
    return most != null
        ? Budget.ofTries(most)
        : Budget.ofSeconds(SECONDS_A_MINUTE * minutes, System::nanoTime);
  }
}
