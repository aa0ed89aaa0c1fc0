package propcap.cli.question;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.ScenarioCommand;
import propcap.farm.Scenario;
import propcap.report.size.SizingAnswer;
import propcap.study.BadQuestionException;
import propcap.study.size.Furnishing;
import propcap.study.size.Goal;
import propcap.study.size.Sizing;
import propcap.study.size.SizingQuestion;
import propcap.study.size.SizingQuestion.Range;
import propcap.study.size.SizingRun;

/** How large must a place be? */
@Command(
    name = "size",
    description = "Finds the smallest size of a place, or of two, for which a goal holds.",
    footer = {
      "%nTwo places, each with sizes of its own:",
      "  --place Chamber --from 20 --to 80 --place House --from 180 --to 340 --step 20",
      "%nExit code 3: no size of the ladder reaches the goal."
    })
public final class SizeCommand extends ScenarioCommand<SizingAnswer> {
  @Option(
      names = "--place",
      paramLabel = "NAME",
      required = true,
      description =
          "The place to size, or Hands for people's hours a day; twice to size two together.")
  private List<String> places;

  @Option(
      names = "--from",
      paramLabel = "N",
      required = true,
      description =
          "Smallest size. Of two places it is given once for both, or twice, in the places' order;"
              + " so are --to and --step.")
  private List<Integer> from;

  @Option(names = "--to", paramLabel = "N", required = true, description = "Largest size.")
  private List<Integer> to;

  @Option(
      names = "--step",
      paramLabel = "N",
      defaultValue = "20",
      description = "Spaces, or hours a day, between sizes. Default: ${DEFAULT-VALUE}.")
  private List<Integer> step;

  @Option(
      names = "--goal",
      paramLabel = "GOAL",
      required = true,
      description =
          "met>=90%% (every sowing, in so many springs), on-time>=95%% (of the plants needed),"
              + " on-time>=80000 (plants), or margin (the largest).")
  private String goal;

  @Option(
      names = "--match",
      paramLabel = "IDS",
      defaultValue = "*",
      description = "Sowings that the goal is about, such as tomato*. Default: all.")
  private String match;

  @Option(
      names = "--indifference",
      paramLabel = "D",
      converter = RunOptions.Share.class,
      description =
          "How near the goal an answer may be wrong: a share, or a number of plants or of money."
              + " Default: 2%% of a chance, half a percent of anything else.")
  private @Nullable Double indifference;

  @Option(
      names = "--aisles",
      paramLabel = "SHARE",
      converter = RunOptions.Share.class,
      defaultValue = "33%",
      description = "Share of a house's floor that is aisle. Default: ${DEFAULT-VALUE}.")
  private double aisles;

  SizeCommand() {
    super(SizingAnswer.KIND);
  }

  @Override
  protected RunOptions.Question<SizingAnswer> question(Scenario scenario)
      throws BadQuestionException {
    SizingQuestion question = new SizingQuestion(ranges(), Goal.parse(goal), match, indifference);
    Furnishing order = new Furnishing(aisles);
    return (run, progress) -> {
      Sizing sizing = SizingRun.size(scenario, question, run, progress);
      return new SizingAnswer(sizing, order.of(sizing));
    };
  }

  @Override
  protected int mostSeasons() {
    return SizingQuestion.DEFAULT_SEASONS;
  }

  @Override
  protected boolean isNo(SizingAnswer answer) {
    return answer.sizing().found().isEmpty();
  }

  private List<Range> ranges() throws BadQuestionException {
    List<Range> ranges = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      ranges.add(
          new Range(
              places.get(i), of("--from", from, i), of("--to", to, i), of("--step", step, i)));
    }
    return ranges;
  }

  /** An option's value for a place: that of all of them, or its own. */
  private int of(String option, List<Integer> given, int place) throws BadQuestionException {
    if (given.size() > 1 && given.size() != places.size()) {
      throw new BadQuestionException(
          String.format(
              "%s is given %d times and --place %d times; give it once for all, or once for each"
                  + " place in their order",
              option, given.size(), places.size()));
    }
    return given.get(given.size() > 1 ? place : 0);
  }
}
