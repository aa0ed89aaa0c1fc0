package propcap.cli.kit;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import propcap.files.scenario.SoFarAsked;

/** The season so far, where a command that simulates goes on from a day within it. */
final class SoFarOptions {
  @Option(
      names = "--log",
      paramLabel = "LOG",
      description =
          "This season's log, such as log.csv: go on from what it says. Default: the scenario's"
              + " so-far.")
  private @Nullable Path log;

  @Option(
      names = "--weather-so-far",
      paramLabel = "FILE",
      description =
          "This season's days as recorded, as the weather command reads them. Default: the"
              + " scenario's weather-so-far.")
  private @Nullable Path weather;

  @Option(
      names = "--overfull",
      description = "Go on though the log has more trays in a place than it has spaces.")
  private boolean overfull;

  @Option(
      names = "--on",
      paramLabel = "DATE|ADDRESS",
      description = {
        "DATE: the day from which to go on, such as 2027-04-10, before its round. Default: today, or"
            + " the nearest day of the season.",
        "ADDRESS: simulate on a Spark cluster, such as spark://10.0.0.5:7077; the"
            + " answer stays the same. Default: on this machine. Both may be given."
      })
  private List<String> on = List.of();

  /** What is asked of a season so far. */
  SoFarAsked asked(CommandSpec spec, boolean always) {
    LocalDate clock = LocalDate.ofInstant(Program.now(spec), ZoneId.systemDefault());
    return SoFarAsked.of(log, weather, today(spec), clock, always, overfull);
  }

  private @Nullable LocalDate today(CommandSpec spec) {
    List<String> days = on.stream().filter(SoFarOptions::isDay).toList();
    once(spec, days, "day");
    try {
      return days.isEmpty() ? null : new Day().convert(days.get(0));
    } catch (TypeConversionException e) {
      throw new ParameterException(spec.commandLine(), "--on " + e.getMessage(), e);
    }
  }

  /** Where to simulate; null for this machine. */
  @Nullable String address(CommandSpec spec) {
    List<String> addresses = on.stream().filter(text -> !isDay(text)).toList();
    once(spec, addresses, "address");
    return addresses.isEmpty() ? System.getProperty("spark.master") : addresses.get(0);
  }

  /** No address begins with a figure, and every day does. */
  private static boolean isDay(String text) {
    return text.matches("\\s*[0-9].*");
  }

  private static void once(CommandSpec spec, List<String> given, String what) {
    if (given.size() > 1) {
      throw new ParameterException(
          spec.commandLine(), "--on takes one " + what + ", was " + String.join(" and ", given));
    }
  }
}
