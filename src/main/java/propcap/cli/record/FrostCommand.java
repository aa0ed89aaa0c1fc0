package propcap.cli.record;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.OutFolder;
import propcap.cli.kit.Output;
import propcap.cli.kit.Program;
import propcap.cli.kit.Scenarios;
import propcap.evidence.weather.FrostTable;
import propcap.farm.Crop;
import propcap.farm.Season;
import propcap.farm.WeatherYear;
import propcap.files.scenario.CropBook;
import propcap.files.text.FaultsException;
import propcap.files.text.SeveralFiles;
import propcap.files.weather.WeatherFile;
import propcap.report.frost.FrostAnswer;
import propcap.results.ResultsFolder;

/** From when is it safe to go out? */
@Command(
    name = "frost",
    description = "Tells from a weather record when frost becomes unlikely, and what may go out.",
    mixinStandardHelpOptions = true)
public final class FrostCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "WEATHER",
      description = "The record: date,tmin,tmax in C. Other forms: see propcap weather.")
  private Path file;

  @Option(
      names = "--threshold",
      paramLabel = "TEMP",
      converter = Temperature.class,
      description = "A frost to count beside 0 C, -2.2 C and -4.4 C, such as -1C or 30F.")
  private List<Double> thresholds = List.of();

  @Option(
      names = "--frost-at",
      paramLabel = "TEMP",
      converter = Temperature.class,
      defaultValue = "0C",
      description = "The frost that release dates go by. Default: ${DEFAULT-VALUE}.")
  private double frostAtC;

  @Option(
      names = "--crops",
      paramLabel = "FILE",
      description = "The crops to release. Default: the list that Propcap brings.")
  private @Nullable Path crops;

  @Option(
      names = "--from",
      paramLabel = "DATE",
      defaultValue = "2027-01-01",
      description = "The season's first day, of any year. Default: ${DEFAULT-VALUE}.")
  private LocalDate from;

  @Option(
      names = "--to",
      paramLabel = "DATE",
      defaultValue = "2027-07-31",
      description = "The season's last day. Default: ${DEFAULT-VALUE}.")
  private LocalDate to;

  @Mixin private OutFolder out;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Season season = season();
    SeveralFiles files = new SeveralFiles();
    Map<String, Crop> list = files.read(this::cropList).orElse(Map.of());
    List<WeatherYear> years =
        files.read(() -> WeatherFile.read(file, season, Scenarios.doubted(spec))).orElse(List.of());
    files.check();
    List<Double> all =
        Stream.of(FrostTable.THRESHOLDS_C, thresholds, List.of(frostAtC))
            .flatMap(List::stream)
            .map(FrostCommand::toATenth)
            .toList();
    FrostTable table = FrostTable.of(season, years, all, toATenth(frostAtC), list);
    String record = OutFolder.stem(file);
    String cropList = crops == null ? "that Propcap brings" : String.valueOf(crops.getFileName());
    try (ResultsFolder folder = out.open(spec, file, FrostAnswer.KIND)) {
      return Output.of(spec, new FrostAnswer(table, record, cropList), folder);
    }
  }

  private Map<String, Crop> cropList() throws FaultsException {
    return (crops == null ? CropBook.ofPropcap() : CropBook.read(crops, Scenarios.doubted(spec)))
        .crops();
  }

  /** As records hold temperatures, so that 28 F is one with -2.2 C. */
  private static double toATenth(double tempC) {
    return Math.round(10 * tempC) / 10.0;
  }

  private Season season() {
    Program.require(
        spec,
        !to.isBefore(from) && to.isBefore(from.plusYears(1)),
        "--to must lie within a year after --from " + from + ", was " + to);
    return new Season(from, to);
  }
}
