package propcap.cli.question;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.channels.ClosedByInterruptException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
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
import propcap.cli.kit.Output;
import propcap.cli.kit.Program;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.Scenarios;
import propcap.farm.Scenario;
import propcap.farm.Variants;
import propcap.farm.Variants.Variant;
import propcap.files.ChangesReader;
import propcap.files.scenario.ScenarioFolder;
import propcap.files.text.FaultsException;
import propcap.files.text.SeveralFiles;
import propcap.report.sweep.SweepAnswer;
import propcap.results.FinishedRuns;
import propcap.results.ResultsFolder;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.sweep.Sweep;
import propcap.study.sweep.Sweeping;

/** Which of many scenarios does best? */
@Command(
    name = "sweep",
    description =
        "Runs many scenarios through the same springs: those of a folder, or one with a table of"
            + " changes.",
    mixinStandardHelpOptions = true,
    footer = {
      "%nColumns of a table of changes: name, spaces of PLACE (60), shift of SOWINGS (7 days),",
      "trays of SOWINGS (12, or 120 %% of the plan's), hours (12/day).",
      "%nStopped or killed, the same command goes on where it was."
    })
public final class SweepCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "FOLDER|SCENARIO",
      description = "A folder of scenarios; or a scenario's file, with --changes.")
  private Path file;

  @Option(
      names = "--changes",
      paramLabel = "CHANGES",
      description =
          "A table (CSV) of what to change in the scenario, a row for each that is tried.")
  private @Nullable Path changes;

  @Option(
      names = "--grid",
      description = "Try each value of a column of the table with all those of the others.")
  private boolean isGrid;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  private @Nullable Sweeping sweeping;

  @Override
  public Integer call() throws Exception {
    Variants variants = variants();
    try (ResultsFolder folder = options.open(spec, named(file), SweepAnswer.KIND)) {
      FinishedRuns finished = folder.finishedRuns();
      Sweep sweep =
          options.ask(
              spec,
              variants.all().get(0).scenario(),
              RunSettings.DEFAULT_SEASONS,
              (run, progress) -> begun(variants, run, finished).sweep(finished::keep, progress));
      int done = Output.of(spec, new SweepAnswer(sweep), folder);
      finished.keepOnly(begun().keys());
      return done;
    } catch (InterruptedException | ClosedByInterruptException e) {
      return stopped(e);
    }
  }

  /** A folder by its own name, however it was written. */
  private static Path named(Path file) {
    return file.endsWith(".") || file.endsWith("..") ? file.toAbsolutePath().normalize() : file;
  }

  private Sweeping begun(Variants variants, RunSettings run, FinishedRuns finished)
      throws BadQuestionException {
    Sweeping begun = new Sweeping(variants, run, Program.version(), finished::of);
    if (begun.finished() > 0) {
      err()
          .printf(
              "%d of %d scenarios were done before.%n", begun.finished(), variants.all().size());
    }
    sweeping = begun;
    return begun;
  }

  private Sweeping begun() {
    if (sweeping == null) {
      throw new IllegalStateException("the sweep has not begun");
    }
    return sweeping;
  }

  private int stopped(Exception e) throws Exception {
    if (sweeping == null || sweeping.finished() == 0) {
      throw e;
    }
    err()
        .printf(
            "Stopped. %d of %d scenarios are done and kept: the same command goes on from there.%n",
            sweeping.finished(), sweeping.size());
    return Program.STOPPED;
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }

  private Variants variants() throws FaultsException, BadQuestionException, IOException {
    if (Files.isDirectory(file)) {
      if (changes != null || isGrid) {
        throw new ParameterException(
            spec.commandLine(),
            "--changes and --grid go with a scenario's file, and "
                + file
                + " is a folder: its scenarios are tried as they are");
      }
      return ofFolder();
    }
    if (changes == null) {
      throw new ParameterException(
          spec.commandLine(),
          "sweep needs a folder of scenarios, or a scenario with --changes changes.csv");
    }
    SeveralFiles files = new SeveralFiles();
    Optional<Scenario> base = files.read(() -> options.scenarios(spec).read(file));
    Path table = changes;
    Optional<Variants> variants = files.read(() -> ChangesReader.read(table, base, isGrid));
    files.check();
    return variants.orElseThrow();
  }

  private Variants ofFolder() throws FaultsException, BadQuestionException, IOException {
    ScenarioFolder folder = ScenarioFolder.of(file);
    if (folder.scenarios().isEmpty()) {
      throw new BadQuestionException(
          "no scenario in the folder " + file + ": files such as spring.yaml, with sowings:");
    }
    SeveralFiles files = new SeveralFiles();
    Scenarios reading = options.scenarios(spec);
    List<Optional<Scenario>> read = new ArrayList<>();
    for (Path scenario : folder.scenarios()) {
      read.add(files.read(() -> reading.read(scenario)));
    }
    files.check();
    List<String> names = read.stream().map(s -> s.orElseThrow().name()).toList();
    List<Variant> all = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      boolean isItsOwn = Collections.frequency(names, name) == 1;
      String told = isItsOwn ? name : name + " (" + folder.scenarios().get(i).getFileName() + ")";
      all.add(new Variant(told, read.get(i).orElseThrow().named(told), List.of()));
    }
    return new Variants(List.of(), all);
  }
}
