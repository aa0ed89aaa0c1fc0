package propcap.cli.question;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.Output;
import propcap.cli.kit.Program;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.Scenarios;
import propcap.farm.Scenario;
import propcap.files.text.OnDisk;
import propcap.report.compare.ComparisonAnswer;
import propcap.results.ResultsFolder;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.compare.Comparing;
import propcap.study.compare.Comparison;

/** Does a change pay? */
@Command(
    name = "compare",
    description = "Runs scenarios through the same springs and compares each with the first.",
    mixinStandardHelpOptions = true)
public final class CompareCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "SCENARIO",
      arity = "1..*",
      description = "The scenario as things are, then one or more alternatives.")
  private List<Path> files;

  @Mixin private RunOptions options;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    checkFiles();
    Scenarios reading = options.scenarios(spec);
    List<Scenario> scenarios = new ArrayList<>();
    for (Path file : files) {
      scenarios.add(reading.read(file));
    }
    try (ResultsFolder folder = options.open(spec, files.get(0), ComparisonAnswer.KIND)) {
      Comparison comparison =
          options.ask(
              spec,
              scenarios.get(0),
              RunSettings.DEFAULT_SEASONS,
              (run, progress) -> Comparing.compare(scenarios, run, progress));
      return Output.of(spec, new ComparisonAnswer(comparison), folder);
    }
  }

  /** Two files or more, each of them once: of the same file twice every difference is 0. */
  private void checkFiles() throws BadQuestionException {
    Program.require(
        spec, files.size() >= 2, "compare needs two scenarios or more, such as now.yaml then.yaml");
    Set<Path> seen = new HashSet<>();
    for (Path file : files) {
      if (!seen.add(OnDisk.key(file))) {
        throw new BadQuestionException(file + " is named twice");
      }
    }
  }
}
