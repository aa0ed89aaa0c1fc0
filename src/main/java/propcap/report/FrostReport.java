package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.evidence.FrostTable;

/** When frost becomes unlikely, as a page, tables, and the lines that a terminal shows. */
public final class FrostReport {
  private FrostReport() {}

  /**
   * Writes the page and the tables into a folder of results.
   *
   * @param record the weather record's name
   * @param cropList the crop list's name
   * @return the files written, the page first
   */
  public static List<Path> write(
      FrostTable table, String record, String cropList, String version, ResultsFolder folder)
      throws IOException {
    FrostFiles texts = new FrostFiles(table);
    Map<String, String> files = new LinkedHashMap<>();
    files.put("frost.html", FrostPage.of(table, record, cropList, version).html());
    files.put(KnownResults.FROST.file(), texts.json(record, cropList, version));
    files.put("frost.csv", texts.datesCsv());
    files.put("frost-days.csv", texts.dailyCsv());
    files.put("frost-releases.csv", texts.releasesCsv());
    return folder.write(files);
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(FrostTable table, String record) {
    FrostWords words = new FrostWords(table);
    Lines lines = new Lines();
    table.thresholds().forEach(t -> lines.add(words.verdict(t)));
    words.warnings().forEach(lines::add);
    return lines.endingWith(record + ": " + words.years() + ", " + words.span());
  }
}
