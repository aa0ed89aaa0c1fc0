package propcap.cli.record;

import java.nio.file.Path;
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
import propcap.evidence.weather.GapFilling;
import propcap.evidence.weather.WeatherMaker;
import propcap.farm.Normals;
import propcap.farm.WeatherRecord;
import propcap.files.edit.NewFile;
import propcap.files.text.Fault;
import propcap.files.text.Fields;
import propcap.files.weather.Degrees;
import propcap.files.weather.NormalsFile;
import propcap.files.weather.StationFile;
import propcap.report.frost.StationLines;
import propcap.study.RunSettings;

/** A weather record for the simulator, from a station's files or from monthly means. */
@Command(
    name = "weather",
    description =
        "Reads a station's daily temperatures as a weather service hands them out (GHCN-Daily in"
            + " its three forms, daily summaries, or date,tmin,tmax), or makes days from monthly"
            + " means.",
    mixinStandardHelpOptions = true)
public final class WeatherCommand implements Callable<Integer> {
  /** More days than these a weather record may not have. */
  private static final int MOST_YEARS = 250;

  @Parameters(
      paramLabel = "FILE",
      arity = "0..*",
      description = "The station's files, one or more; gzip is unpacked.")
  private List<Path> files = List.of();

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      description = "What files are in that do not tell: C, F or tenths (of a degree C).")
  private @Nullable Degrees unit;

  @Option(
      names = "--fill",
      paramLabel = "DAYS",
      defaultValue = "" + GapFilling.DEFAULT_MOST_DAYS,
      description = "Longest gap to fill by a straight line. Default: ${DEFAULT-VALUE}.")
  private int fill;

  @Option(names = "--all", description = "Show every gap and every value that was left out.")
  private boolean all;

  @Option(
      names = "--normals",
      paramLabel = "FILE",
      description = "Make the days instead: month,tmin,tmax and, if known, sd and persistence.")
  private @Nullable Path normals;

  @Option(
      names = "--years",
      paramLabel = "N",
      defaultValue = "30",
      description = "How many years to make. Default: ${DEFAULT-VALUE}.")
  private int years;

  @Option(
      names = "--first-year",
      paramLabel = "YEAR",
      defaultValue = "" + WeatherMaker.DEFAULT_FIRST_YEAR,
      description = "What the first made year is called. Default: ${DEFAULT-VALUE}.")
  private int firstYear;

  @Option(
      names = "--seed",
      paramLabel = "S",
      defaultValue = "" + RunSettings.DEFAULT_SEED,
      description =
          "Number that made days start from: the same number, the same days. Default:"
              + " ${DEFAULT-VALUE}.")
  private long seed;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "Where to write the record. Default: nowhere, it is only looked at.")
  private @Nullable Path to;

  @Option(names = "--replace", description = "Let an older file give way; a copy is kept.")
  private boolean replace;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Path from = normals;
    Program.require(
        spec, files.isEmpty() != (from == null), "Give a station's files or --normals, not both");
    Program.require(spec, fill >= 0 && fill <= 366, "--fill must be from 0 to 366, was " + fill);
    Program.require(
        spec,
        years >= 1 && years <= MOST_YEARS,
        "--years must be from 1 to " + MOST_YEARS + ", was " + years);
    Program.require(
        spec,
        firstYear >= Fields.FIRST_YEAR && firstYear + years - 1 <= Fields.LAST_YEAR,
        "--years %s from --first-year %s on do not lie from %s to %s, the years that files may be of"
            .formatted(years, firstYear, Fields.FIRST_YEAR, Fields.LAST_YEAR));
    if (to != null) {
      NewFile.check(to, replace);
    }
    return from == null ? read() : make(from);
  }

  private int read() throws Exception {
    StationFile station = StationFile.read(files, unit);
    station.warnings().forEach(Scenarios.doubted(spec));
    GapFilling.Filled filled = GapFilling.fill(station.record(), fill);
    List<String> leftOut = station.leftOut().stream().map(Fault::toString).toList();
    return tell(
        StationLines.of(station.record().station(), filled, station.flagged(), leftOut, all),
        filled.days());
  }

  private int make(Path from) throws Exception {
    Normals monthly =
        NormalsFile.read(from, unit == null ? Degrees.C : unit, Scenarios.doubted(spec));
    List<WeatherRecord.Day> days = WeatherMaker.make(monthly, firstYear, years, seed);
    return tell(StationLines.made(days, monthly, seed), days);
  }

  private int tell(List<String> lines, List<WeatherRecord.Day> days) throws Exception {
    if (to == null) {
      List<String> all = new ArrayList<>(lines);
      all.add("");
      all.add("Nothing is written; add --to FILE to write the record.");
      return Output.of(spec, all, List.of());
    }
    return Output.of(spec, lines, NewFile.writeWeather(days, to, replace));
  }
}
