package propcap.report.germination;

import java.util.LinkedHashMap;
import java.util.Map;
import propcap.evidence.germination.GerminationReport;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;

/**
 * A germination test as a seed laboratory reports it.
 *
 * @param counts what the counts are called
 */
public record GerminationReportAnswer(GerminationReport report, String counts)
    implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "germination",
          "-indices",
          "germination.json",
          "counts version groups",
          "germination.html germination.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines();
    report.groups().forEach(group -> lines.add(GerminationReportPage.verdict(group)));
    return lines.endingWith(
        counts
            + ": "
            + Words.plural(
                report.groups().stream().mapToInt(group -> group.trays().size()).sum(), "tray"));
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("germination.html", page(version).html());
    files.put(kind().file(), GerminationReportTables.json(report, counts, version));
    files.put("germination.csv", GerminationReportTables.csv(report));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return GerminationReportPage.of(report, counts, version);
  }
}
