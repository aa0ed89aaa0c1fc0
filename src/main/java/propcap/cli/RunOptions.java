package propcap.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import propcap.study.RunSettings;

/** How to run, the same for every command that simulates. */
final class RunOptions {
  /** The most that are run for a precision, where no number is given. */
  private static final int MOST_FOR_PRECISION = 100_000;

  @Option(
      names = "--seasons",
      paramLabel = "N",
      description = "How many springs to simulate; with --precision, the most. Default: 1000.")
  private @Nullable Integer seasons;

  @Option(
      names = "--precision",
      paramLabel = "P",
      converter = Share.class,
      description =
          "Stop when the 95 %% half-width of all on-time plants is below this share of their mean,"
              + " such as 0.2%%.")
  private @Nullable Double precision;

  @Option(
      names = "--seed",
      paramLabel = "S",
      defaultValue = "" + RunSettings.DEFAULT_SEED,
      description = "Seed of all luck: the same seed, the same answer. Default: ${DEFAULT-VALUE}.")
  private long seed;

  @Option(
      names = "--threads",
      paramLabel = "T",
      description = "Threads that share the work; changes no digit. Default: one a processor.")
  private @Nullable Integer threads;

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where the results go. Default: results/NAME, by the scenario file's name.")
  private @Nullable Path out;

  RunSettings settings() {
    Integer n = seasons;
    int most = precision == null ? RunSettings.DEFAULT_SEASONS : MOST_FOR_PRECISION;
    Integer t = threads;
    return new RunSettings(
        seed,
        n == null ? most : n,
        precision,
        t == null ? Runtime.getRuntime().availableProcessors() : t);
  }

  Path folder(Path scenario) {
    Path given = out;
    if (given != null) {
      return given;
    }
    Path file = scenario.getFileName();
    String name = file == null ? "scenario" : file.toString().replaceFirst("\\.ya?ml$", "");
    return Path.of("results", name);
  }

  /** A share, written as 0.002 or as 0.2%. */
  static final class Share implements ITypeConverter<Double> {
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
