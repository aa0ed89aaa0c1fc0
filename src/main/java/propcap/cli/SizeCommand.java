package propcap.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.farm.Scenario;
import propcap.report.Answers;
import propcap.report.KnownResults;
import propcap.report.ResultsFolder;
import propcap.study.Goal;
import propcap.study.OrderList;
import propcap.study.Ordering;
import propcap.study.Sizing;
import propcap.study.SizingQuestion;
import propcap.study.SizingRun;

/** How large must a place be? */
@Command(
    name = "size",
    description = "Finds the smallest size of a place, or of two, for which a goal holds.",
    mixinStandardHelpOptions = true,
    footer = "%nExit code 3: no size of the ladder reaches the goal.")
final class SizeCommand implements Callable<Integer> {
  /** The most that one size may take; sizes that are clear take far fewer. */
  private static final int SEASONS = 5000;

  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file.")
  private Path file;

  @Option(
      names = "--place",
      paramLabel = "NAME",
      required = true,
      description =
          "The place to size, or Hands for people's hours a day; twice to size two together.")
  private List<String> places;

  @Option(names = "--from", paramLabel = "N", required = true, description = "Smallest size.")
  private int from;

  @Option(names = "--to", paramLabel = "N", required = true, description = "Largest size.")
  private int to;

  @Option(
      names = "--step",
      paramLabel = "N",
      defaultValue = "20",
      description = "Spaces, or hours a day, between sizes. Default: ${DEFAULT-VALUE}.")
  private int step;

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
          "How near the goal an answer may be wrong. Default: 2%% of a chance, half a percent of"
              + " anything else.")
  private @Nullable Double indifference;

  @Option(
      names = "--aisles",
      paramLabel = "SHARE",
      converter = RunOptions.Share.class,
      defaultValue = "33%",
      description = "Share of a house's floor that is aisle. Default: ${DEFAULT-VALUE}.")
  private double aisles;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Scenario scenario = Scenarios.read(spec, file);
    SizingQuestion question =
        new SizingQuestion(places, from, to, step, Goal.parse(goal), match, indifference);
    Ordering ordering = new Ordering(aisles);
    try (ResultsFolder folder = options.open(spec, file, KnownResults.SIZE)) {
      Sizing sizing =
          options.ask(
              spec, SEASONS, (run, progress) -> SizingRun.size(scenario, question, run, progress));
      OrderList order = ordering.of(sizing);
      int done =
          Told.of(
              spec,
              Answers.headlines(sizing, order),
              Answers.write(sizing, order, Propcap.Version.text(), folder));
      return sizing.found().isPresent() ? done : Propcap.NO;
    }
  }
}
