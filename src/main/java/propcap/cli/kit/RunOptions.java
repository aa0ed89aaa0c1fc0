package propcap.cli.kit;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import propcap.farm.Scenario;
import propcap.results.AnswerKind;
import propcap.results.ResultsFolder;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.SeasonEngine;

/** How to run, the same for every command that simulates; and how such a command goes. */
public final class RunOptions {
  @Option(
      names = "--seasons",
      paramLabel = "N",
      description = "How many springs to simulate; where a command stops by itself, the most.")
  private @Nullable Integer seasons;

  @Option(
      names = "--exactly",
      description =
          "Simulate exactly that many springs. Otherwise they are rounded up until each weather year"
              + " comes equally often.")
  private boolean exactly;

  @Option(
      names = "--seed",
      paramLabel = "S",
      defaultValue = "" + RunSettings.DEFAULT_SEED,
      description =
          "Number that the random springs start from: the same number, the same answer. Default:"
              + " ${DEFAULT-VALUE}.")
  private long seed;

  @Option(
      names = "--threads",
      paramLabel = "T",
      description =
          "Threads that share the work; the answer stays the same. Default: one a processor.")
  private @Nullable Integer threads;

  @Mixin private SoFarOptions soFar;

  @Mixin private OutFolder out;

  /** A question that takes seasons to answer. */
  @FunctionalInterface
  public interface Question<T> {
    T answer(RunSettings settings, DoubleConsumer progress)
        throws BadQuestionException, InterruptedException, IOException;
  }

  /** Asks, with a bar on the terminal. */
  <T> T ask(
      CommandSpec spec,
      Scenario scenario,
      int defaultSeasons,
      @Nullable Double precision,
      Question<T> question)
      throws BadQuestionException, InterruptedException, IOException {
    RunSettings asked = settings(spec, defaultSeasons, precision);
    RunSettings settings = exactly ? asked : asked.inWholeBlocks(scenario);
    try (SeasonEngine engine = engine(spec);
        Progress progress = Progress.onTerminal(spec.commandLine().getErr())) {
      return question.answer(settings.on(engine), progress::show);
    }
  }

  private SeasonEngine engine(CommandSpec spec) throws InterruptedException {
    String address = soFar.address(spec);
    return address == null ? SeasonEngine.ofThisMachine() : SeasonEngine.at(address);
  }

  public <T> T ask(CommandSpec spec, Scenario scenario, int defaultSeasons, Question<T> question)
      throws BadQuestionException, InterruptedException, IOException {
    return ask(spec, scenario, defaultSeasons, null, question);
  }

  private RunSettings settings(CommandSpec spec, int defaultSeasons, @Nullable Double precision) {
    Integer n = seasons;
    Integer t = threads;
    try {
      return new RunSettings(
          seed,
          n == null ? defaultSeasons : n,
          precision,
          t == null ? Runtime.getRuntime().availableProcessors() : t);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }

  /** Reads the scenarios of a command, with their season so far where anything is said of one. */
  public Scenarios scenarios(CommandSpec spec) {
    return new Scenarios(spec, soFar.asked(spec, false));
  }

  /** Reads them on a day of the season, whatever is said of it. */
  Scenarios scenariosToday(CommandSpec spec) {
    return new Scenarios(spec, soFar.asked(spec, true));
  }

  /** Opens where the results go; see {@link OutFolder#open}. */
  public ResultsFolder open(CommandSpec spec, Path scenario, AnswerKind answer) throws IOException {
    return out.open(spec, scenario, answer);
  }

  /** A whole number, of springs, spaces or days. */
  public static final class WholeNumber implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String text) {
      try {
        return Math.toIntExact(whole(text));
      } catch (ArithmeticException e) {
        throw new TypeConversionException("'" + text + "' is too large");
      }
    }

    public static Long whole(String text) {
      if (!text.matches("-?[0-9]+")) {
        throw new TypeConversionException("'" + text + "' is not a whole number");
      }
      try {
        return Long.parseLong(text);
      } catch (NumberFormatException e) {
        throw new TypeConversionException("'" + text + "' is too large");
      }
    }
  }

  /** A number that is finite: NaN and endless ones are no answer to any question. */
  public static final class FiniteNumber implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      try {
        double number = Double.parseDouble(text);
        if (Double.isFinite(number)) {
          return number;
        }
      } catch (NumberFormatException e) {
        // Told below, as for any other text that is no number.
      }
      throw new TypeConversionException("'" + text + "' is not a number such as 2 or 0.5");
    }
  }

  /** A share, written as 0.002 or as 0.2%. */
  public static final class Share implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      String number = text.replace("%", "").trim();
      try {
        return Double.parseDouble(number) / (text.contains("%") ? 100 : 1);
      } catch (NumberFormatException e) {
        throw new TypeConversionException("'" + text + "' is not a share such as 0.2% or 0.002");
      }
    }
  }
}
