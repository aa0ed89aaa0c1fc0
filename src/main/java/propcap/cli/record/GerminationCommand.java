package propcap.cli.record;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.OutFolder;
import propcap.cli.kit.Output;
import propcap.cli.kit.Scenarios;
import propcap.evidence.germination.GerminationReport;
import propcap.files.CountsReader;
import propcap.report.germination.GerminationReportAnswer;
import propcap.results.ResultsFolder;

/** How would a seed laboratory report the test? */
@Command(
    name = "germination",
    description = "Reports a germination test in the indices of seed laboratories.",
    mixinStandardHelpOptions = true)
public final class GerminationCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "COUNTS",
      description = "The counts: lot,crop,temperature,tray,seeds,time,emerged.")
  private Path file;

  @Mixin private OutFolder out;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    GerminationReport report =
        GerminationReport.of(CountsReader.read(file, Scenarios.doubted(spec)));
    try (ResultsFolder folder = out.open(spec, file, GerminationReportAnswer.KIND)) {
      String name = OutFolder.stem(file);
      return Output.of(spec, new GerminationReportAnswer(report, name), folder);
    }
  }
}
