package propcap.report.frost;

import java.util.LinkedHashMap;
import java.util.Map;
import propcap.evidence.weather.FrostTable;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.results.AnswerKind;
import propcap.results.Headlines;

/**
 * When frost becomes unlikely, as a page, tables, and the lines that a terminal shows.
 *
 * @param record the weather record's name
 * @param cropList the crop list's name
 */
public record FrostAnswer(FrostTable table, String record, String cropList) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "frost",
          "-frost",
          "frost.json",
          "record thresholds releases",
          "frost.html frost.csv frost-days.csv frost-releases.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    FrostWords words = new FrostWords(table);
    Lines lines = new Lines();
    table.thresholds().forEach(t -> lines.add(words.verdict(t)));
    words.warnings().forEach(lines::add);
    return lines.endingWith(record + ": " + words.years() + ", " + words.span());
  }

  @Override
  public Map<String, String> files(String version) {
    FrostTables tables = new FrostTables(table);
    Map<String, String> files = new LinkedHashMap<>();
    files.put("frost.html", page(version).html());
    files.put(kind().file(), tables.json(record, cropList, version));
    files.put("frost.csv", tables.datesCsv());
    files.put("frost-days.csv", tables.dailyCsv());
    files.put("frost-releases.csv", tables.releasesCsv());
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return FrostPage.of(table, record, cropList, version);
  }
}
