package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.evidence.CropEntry;
import propcap.evidence.GerminationFit;
import propcap.evidence.GerminationReport;

/**
 * What germination tests tell: a page, a file for other programs and a table for a spreadsheet, all
 * of them in a {@link ResultsFolder} or none; and the few lines that a terminal shows.
 */
public final class GerminationAnswers {
  private GerminationAnswers() {}

  /**
   * Writes what a test says for the crop list.
   *
   * @param entries of the lots, in their order
   * @param counts what the counts are called
   * @return the files written, the page first
   */
  public static List<Path> write(
      GerminationFit fit,
      List<CropEntry> entries,
      String counts,
      String version,
      ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("germination-fit.html", GerminationFitPage.of(fit, entries, counts, version).html());
    files.put(
        KnownResults.GERMINATION_FIT.file(),
        GerminationFitFiles.json(fit, entries, counts, version));
    files.put("germination-fit.csv", GerminationFitFiles.csv(fit));
    return folder.write(files);
  }

  /** Writes a test as a seed laboratory reports it. */
  public static List<Path> write(
      GerminationReport report, String counts, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("germination.html", GerminationReportPage.of(report, counts, version).html());
    files.put(
        KnownResults.GERMINATION.file(), GerminationReportFiles.json(report, counts, version));
    files.put("germination.csv", GerminationReportFiles.csv(report));
    return folder.write(files);
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(GerminationFit fit, List<CropEntry> entries, String counts) {
    Lines lines = new Lines();
    for (int i = 0; i < entries.size(); i++) {
      GerminationWords words = new GerminationWords(fit.lots().get(i), entries.get(i));
      lines.add(words.verdict()).add(words.base());
    }
    for (int i = 0; i < entries.size(); i++) {
      GerminationWords words = new GerminationWords(fit.lots().get(i), entries.get(i));
      lines.add(words.name() + ": " + words.trays());
      words.remarks().forEach(lines::add);
    }
    return lines.endingWith(
        counts
            + ": "
            + Words.plural(fit.lots().size(), "lot")
            + ", "
            + Words.plural(fit.lots().stream().mapToInt(GerminationFit.Lot::seeds).sum(), "seed"));
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(GerminationReport report, String counts) {
    Lines lines = new Lines();
    report.groups().forEach(group -> lines.add(GerminationReportPage.verdict(group)));
    return lines.endingWith(
        counts
            + ": "
            + Words.plural(
                report.groups().stream().mapToInt(group -> group.trays().size()).sum(), "tray"));
  }
}
