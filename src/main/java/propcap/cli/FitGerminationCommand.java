package propcap.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.evidence.CropEntry;
import propcap.evidence.GerminationFit;
import propcap.evidence.GerminationFitting;
import propcap.farm.CountedTray;
import propcap.farm.Crop;
import propcap.files.CountsReader;
import propcap.files.CropListReader;
import propcap.files.CropListWriter;
import propcap.files.FaultsException;
import propcap.report.CropEntryText;
import propcap.report.GerminationAnswers;

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
      names = "--write",
      paramLabel = "CROPS",
      description = "The crop list to write the answer into; a copy of it is kept beside it.")
  private @Nullable Path write;

  @Option(
      names = "--lot",
      paramLabel = "LOT",
      description = "The lot to write, where a crop has several.")
  private @Nullable String lot;

  @Mixin private OutFolder out;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Path folder = out.folder(file, "-germination");
    Map<String, Crop> known = known();
    Map<String, Double> optimaC = new HashMap<>();
    known.forEach((name, crop) -> optimaC.put(name, crop.emergence().optimumC()));
    List<CountedTray> trays = CountsReader.read(file);
    GerminationFit fit = GerminationFitting.fit(trays, optimaC);
    List<CropEntry> entries = new ArrayList<>();
    for (GerminationFit.Lot each : fit.lots()) {
      Crop crop = known.get(each.crop());
      entries.add(CropEntry.of(each, crop == null ? null : crop.emergence().atC()));
    }
    String changed = write(entries);
    String name = OutFolder.name(file);
    List<Path> written =
        GerminationAnswers.write(fit, entries, name, Propcap.Version.text(), folder);
    OutFolder.tell(spec, GerminationAnswers.headlines(fit, entries, name), written);
    PrintWriter terminal = spec.commandLine().getOut();
    terminal.println();
    if (changed.isEmpty()) {
      entries.forEach(
          entry ->
              new CropEntryText(entry).block(known.get(entry.crop())).forEach(terminal::println));
    } else {
      terminal.println(changed);
    }
    return Propcap.DONE;
  }

  private Map<String, Crop> known() throws FaultsException {
    Path list = crops == null ? write : crops;
    return list == null ? Map.of() : CropListReader.read(list);
  }

  /** Writes into the list, if one is given, and says so; a crop's entry holds one lot. */
  private String write(List<CropEntry> entries) throws FaultsException, IOException {
    Path list = write;
    if (list == null) {
      return "";
    }
    Map<String, Map<String, Map<String, String>>> values = new LinkedHashMap<>();
    for (CropEntry entry : entries) {
      if ((lot == null || lot.equals(entry.lot()))
          && values.put(entry.crop(), new CropEntryText(entry).values()) != null) {
        throw new ParameterException(
            spec.commandLine(),
            "There are several lots of " + entry.crop() + ": say which to write with --lot.");
      }
    }
    if (values.isEmpty()) {
      throw new ParameterException(spec.commandLine(), "There is no lot " + lot + ".");
    }
    Path backup = CropListWriter.change(list, values);
    return "wrote "
        + String.join(", ", values.keySet())
        + " into "
        + list
        + "; as it was it is kept in "
        + backup.getFileName();
  }
}
