package propcap.cli.record;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.Output;
import propcap.cli.kit.Program;
import propcap.cli.kit.Scenarios;
import propcap.farm.Scenario;
import propcap.files.edit.NewFile;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.UnsavedTexts;
import propcap.report.PageWords;
import propcap.season.PretendedLog.Counting;
import propcap.study.RunSettings;
import propcap.study.pretend.Pretending;

/** A log to practise with. */
@Command(
    name = "pretend",
    description = {
      "Writes the log that a grower would have kept of one simulated spring up to a day, and that"
          + " spring's weather so far: a season to practise on.",
      "None of it ever was."
    },
    mixinStandardHelpOptions = true)
public final class PretendCommand implements Callable<Integer> {
  @Parameters(paramLabel = "SCENARIO", description = "The scenario's file.")
  private Path file;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      required = true,
      description = "The day on whose morning the log ends, such as 2027-04-10.")
  private LocalDate today;

  @Option(
      names = "--season",
      paramLabel = "N",
      defaultValue = "0",
      description =
          "Which of the simulated springs, from 0 on, as in seasons.csv of a run with the same"
              + " seed. Default: ${DEFAULT-VALUE}.")
  private int season;

  @Option(
      names = "--year",
      paramLabel = "YEAR",
      description =
          "The year of the weather record that it has; --season then counts the springs of that"
              + " year. Default: whichever the spring has.")
  private @Nullable Integer year;

  @Option(
      names = "--seed",
      paramLabel = "S",
      defaultValue = "" + RunSettings.DEFAULT_SEED,
      description =
          "Number that the random springs start from: the same number, the same spring. Default:"
              + " ${DEFAULT-VALUE}.")
  private long seed;

  @Option(
      names = "--count",
      paramLabel = "WHAT",
      defaultValue = "STANDS",
      description =
          "What is counted: nothing; stands (each tray's stand, and its plants at each move); all"
              + " (that, and on the last day what shows in each tray still in the heat). Default:"
              + " stands.")
  private Counting counting;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      defaultValue = "log.csv",
      description = "Where to write the log. Default: ${DEFAULT-VALUE}.")
  private Path log;

  @Option(
      names = "--weather-out",
      paramLabel = "FILE",
      defaultValue = "weather-so-far.csv",
      description = "Where to write the weather so far. Default: ${DEFAULT-VALUE}.")
  private Path weather;

  @Option(names = "--replace", description = "Let older files give way; copies are kept.")
  private boolean replace;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Program.require(
        spec,
        season >= 0 && season < Pretending.SPRINGS,
        "--season must be from 0 to " + (Pretending.SPRINGS - 1) + ", was " + season);
    Program.require(
        spec,
        !log.toAbsolutePath().normalize().equals(weather.toAbsolutePath().normalize()),
        "--out and --weather-out must be two files");
    NewFile.check(log, replace);
    NewFile.check(weather, replace);
    ScenarioReader.Reading reading = ScenarioReader.read(file, UnsavedTexts.none());
    reading.warnings().forEach(Scenarios.doubted(spec));
    Scenario scenario = reading.sound();
    Pretending.Pretended spring = Pretending.pretend(scenario, seed, season, year, today, counting);
    List<Path> written =
        new ArrayList<>(NewFile.writeLog(spring.trays(), notes(spring), log, replace));
    written.addAll(NewFile.writeWeather(spring.weather(), weather, replace));
    long sowings = spring.trays().stream().map(t -> t.sowing()).distinct().count();
    return Output.of(
        spec,
        List.of(
            "A spring to practise on, up to %s: spring %s of seed %s, in the weather of %s"
                .formatted(
                    PageWords.day(today, scenario.season()),
                    spring.season(),
                    seed,
                    spring.weatherYear()),
            "%s trays of %s sowings have been sown; none of it ever was."
                .formatted(spring.trays().size(), sowings),
            "Try it: ./propcap now %s --on %s --log %s --weather-so-far %s"
                .formatted(file, today, log, weather)),
        written);
  }

  private List<String> notes(Pretending.Pretended spring) {
    return List.of(
        "Invented: no tray of it was ever sown. propcap pretend made it from spring "
            + spring.season()
            + " of seed "
            + seed
            + " and the",
        "weather of %s, up to the morning of %s.".formatted(spring.weatherYear(), today));
  }
}
