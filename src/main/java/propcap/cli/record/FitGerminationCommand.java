package propcap.cli.record;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.OutFolder;
import propcap.cli.kit.Output;
import propcap.cli.kit.Scenarios;
import propcap.evidence.germination.CropEntry;
import propcap.evidence.germination.GerminationFit;
import propcap.evidence.germination.GerminationFitting;
import propcap.farm.CountedTray;
import propcap.farm.Crop;
import propcap.files.CountsReader;
import propcap.files.scenario.CropBook;
import propcap.files.text.FaultWords;
import propcap.files.text.FaultsException;
import propcap.files.text.SeveralFiles;
import propcap.report.germination.GerminationFitAnswer;
import propcap.results.ResultsFolder;

/** What does a germination test say for the crop list? */
@Command(
    name = "germination",
    description =
        "Works out from a germination test how many seeds of each lot come up and when, and writes"
            + " it into the crop list if asked to.",
    mixinStandardHelpOptions = true)
final class FitGerminationCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "COUNTS",
      description = "The counts: lot,crop,temperature,tray,seeds,time,emerged.")
  private Path file;

  @Option(
      names = "--crops",
      paramLabel = "CROPS",
      description = "The crop list, for what counts cannot tell; it is only read.")
  private @Nullable Path crops;

  @Option(
      names = "--lot",
      paramLabel = "LOT",
      description = "The lot to write, where a crop has several.")
  private @Nullable String lot;

  @Mixin private WriteOption write;

  @Mixin private OutFolder out;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    SeveralFiles files = new SeveralFiles();
    Map<String, Crop> known = files.read(this::known).orElse(Map.of());
    List<CountedTray> trays =
        files.read(() -> CountsReader.read(file, Scenarios.doubted(spec))).orElse(List.of());
    files.check();
    checkLot(trays);
    Map<String, Double> optimaC = new HashMap<>();
    known.forEach((name, crop) -> optimaC.put(name, crop.emergence().optimumC()));
    GerminationFit fit = GerminationFitting.fit(trays, optimaC);
    List<CropEntry> entries = new ArrayList<>();
    for (GerminationFit.Lot each : fit.lots()) {
      Crop crop = known.get(each.crop());
      entries.add(CropEntry.of(each, crop == null ? null : crop.emergence().atC()));
    }
    String name = OutFolder.stem(file);
    Optional<Path> list = write.list();
    WriteOption.Writing shown =
        list.isEmpty() ? () -> blocks(entries, known) : WriteOption.of(list.get(), values(entries));
    try (ResultsFolder folder = out.open(spec, file, GerminationFitAnswer.KIND)) {
      return Output.of(spec, new GerminationFitAnswer(fit, entries, name), shown.lines(), folder);
    }
  }

  /** The entries as a crop list has them. */
  private static List<String> blocks(List<CropEntry> entries, Map<String, Crop> known) {
    return entries.stream()
        .flatMap(e -> GerminationFitAnswer.block(e, known.get(e.crop())).stream())
        .toList();
  }

  private Map<String, Crop> known() throws FaultsException {
    Optional<Path> list = crops == null ? write.list() : Optional.of(crops);
    return list.isEmpty() ? Map.of() : CropBook.read(list.get(), Scenarios.doubted(spec)).crops();
  }

  /** What to write: a crop's entry holds one lot. */
  private Map<String, Map<String, Map<String, String>>> values(List<CropEntry> entries) {
    Map<String, Map<String, Map<String, String>>> values = new LinkedHashMap<>();
    for (CropEntry entry : entries) {
      if ((lot == null || lot.equals(entry.lot()))
          && values.put(entry.crop(), GerminationFitAnswer.values(entry)) != null) {
        throw new ParameterException(
            spec.commandLine(),
            "There are several lots of " + entry.crop() + ": say which to write with --lot.");
      }
    }
    return values;
  }

  private void checkLot(List<CountedTray> trays) {
    List<String> lots = trays.stream().map(CountedTray::lot).distinct().toList();
    if (lot != null && !lots.contains(lot)) {
      throw new ParameterException(
          spec.commandLine(),
          "There is no lot '" + lot + "'; " + FaultWords.oneOf(lot, lots).words());
    }
  }
}
