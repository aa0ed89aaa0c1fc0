package propcap.cli.question;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import propcap.cli.kit.NeedsCommand;
import propcap.cli.kit.RunOptions;
import propcap.farm.PlanNeeds;
import propcap.report.latest.LatestAnswer;
import propcap.study.BadQuestionException;
import propcap.study.fill.Filling;
import propcap.study.fill.FirstPlan;
import propcap.study.forecast.Safety;
import propcap.study.latest.LatestQuestion;
import propcap.study.latest.LatestSowing;
import propcap.study.latest.NewSowing;

/** Until when may it be sown? */
@Command(
    name = "latest",
    description = {
      "Finds for each sowing the last day to sow, alone and in the house as full as it is.",
      "With --crop, of a sowing that is not in the plan: is it too late to start it?"
    },
    footer =
        "%nExit code 3: there is a sowing that is not in time often enough on any day that is left.")
public final class LatestCommand extends NeedsCommand<LatestAnswer> {
  @Option(
      names = "--match",
      paramLabel = "IDS",
      description =
          "Sowings to find the day of, each by itself, such as tomato*; once for each group."
              + " Default: all of them, or with --crop that one alone.")
  private List<String> matches = List.of();

  @Option(
      names = "--goal",
      paramLabel = "CHANCE",
      converter = RunOptions.Share.class,
      defaultValue = "" + Safety.DEFAULT_GOAL,
      description =
          "Chance with which a sowing must have its plants on time, where the sowing plan says no"
              + " other. Default: 90%%.")
  private double goal;

  @Option(
      names = "--crop",
      paramLabel = "CROP",
      description =
          "A crop of the crop list, to be sown besides the plan; needs --bed-by, --plants.")
  private @Nullable String crop;

  @Option(
      names = "--bed-by",
      paramLabel = "DATE",
      description = "Of that crop: the last day on which its plants are in the ground on time.")
  private @Nullable LocalDate bedBy;

  @Option(
      names = "--bed-from",
      paramLabel = "DATE",
      description = "The first day on which its bed is free. Default: the season's first.")
  private @Nullable LocalDate bedFrom;

  @Option(names = "--plants", paramLabel = "N", description = "How many plants are needed of it.")
  private @Nullable Integer plants;

  @Option(
      names = "--trays",
      paramLabel = "N",
      description = "How many trays of it are sown. Default: as many as reach the goal.")
  private @Nullable Integer trays;

  LatestCommand() {
    super(LatestAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<LatestAnswer> question(PlanNeeds written)
      throws BadQuestionException {
    NewSowing added = added();
    PlanNeeds needs = added == null ? written : added.in(written);
    List<String> asked = new ArrayList<>(matches);
    if (added != null) {
      asked.add(added.idIn(written.scenario()));
    } else if (asked.isEmpty()) {
      asked.add("*");
    }
    LatestQuestion question = new LatestQuestion(goal, asked, written.scenario().today());
    return (run, progress) -> {
      FirstPlan first = Filling.fill(needs, goal, question.earliest(), run);
      return new LatestAnswer(
          LatestSowing.latest(first.scenario(), question, run, progress), first.filled());
    };
  }

  @Override
  protected int mostSeasons() {
    return LatestSowing.DEFAULT_SEASONS;
  }

  @Override
  protected boolean isNo(LatestAnswer answer) {
    return !answer.latest().never().isEmpty();
  }

  /** The sowing that is not in the plan; null where none is asked about. */
  private @Nullable NewSowing added() {
    String of = crop;
    LocalDate by = bedBy;
    Integer needed = plants;
    if (of == null) {
      if (by != null || needed != null || bedFrom != null || trays != null) {
        throw new ParameterException(
            spec().commandLine(),
            "--bed-by, --bed-from, --plants and --trays are of a --crop; say which, such as --crop"
                + " zinnia");
      }
      return null;
    }
    if (by == null || needed == null) {
      throw new ParameterException(
          spec().commandLine(),
          "of --crop "
              + of
              + " it must be known by when and how many, such as --bed-by 2027-07-01 --plants 500");
    }
    return new NewSowing(of, needed, bedFrom, by, trays);
  }
}
