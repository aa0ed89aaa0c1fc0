package propcap.cli.kit;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.farm.PlanNeeds;
import propcap.files.text.FaultsException;
import propcap.results.Answer;
import propcap.results.AnswerKind;
import propcap.results.ResultsFolder;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;

/**
 * A question about one scenario that takes springs to answer: the scenario is read, the folder of
 * results opened, then it is asked, written and told. Dates and trays of the sowing plan may be
 * left to be found.
 */
@Command(mixinStandardHelpOptions = true)
public abstract class NeedsCommand<T extends Answer> implements Callable<Integer> {
  private final AnswerKind kind;

  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file.")
  private Path file;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  protected NeedsCommand(AnswerKind kind) {
    this.kind = kind;
  }

  @Override
  public final Integer call() throws Exception {
    Scenarios reading = isWithinSeason() ? options.scenariosToday(spec) : options.scenarios(spec);
    PlanNeeds needs = read(reading, file);
    RunOptions.Question<T> question = question(needs);
    try (ResultsFolder folder = options.open(spec, file, kind)) {
      opened(folder);
      T answer = options.ask(spec, needs.scenario(), mostSeasons(), precision(), question);
      int told = Output.of(spec, answer, folder);
      return isNo(answer) ? Program.NO : told;
    }
  }

  /** Reads the scenario, with what the question may find of it left open. */
  protected PlanNeeds read(Scenarios reading, Path scenario) throws FaultsException {
    return reading.readNeeds(scenario);
  }

  /** Whether it is asked on a day of the season, whatever is said of that. */
  protected boolean isWithinSeason() {
    return false;
  }

  /** What may be wanted of what is in the folder before it is written. */
  protected void opened(ResultsFolder folder) throws IOException {}

  /** What is asked, looked at before anything is written. */
  protected abstract RunOptions.Question<T> question(PlanNeeds needs) throws BadQuestionException;

  /** How many springs are simulated at most, where no number is given. */
  protected int mostSeasons() {
    return RunSettings.DEFAULT_SEASONS;
  }

  /** The precision at which it is enough, a share; null where no precision is asked for. */
  protected @Nullable Double precision() {
    return null;
  }

  /** Whether nothing that was tried reaches what was asked. */
  protected boolean isNo(T answer) {
    return false;
  }

  protected final CommandSpec spec() {
    return spec;
  }

  /** A word to the grower beside the answer. */
  protected final void tell(String line) {
    spec.commandLine().getErr().println(line);
  }
}
