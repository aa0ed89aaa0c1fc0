package propcap.files.edit;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import propcap.disk.TableCell;
import propcap.files.text.CsvFile;

/**
 * A CSV file's text in which single rows are changed; every other line stays as it was, to the
 * byte.
 */
public final class CsvText {
  /** A row, and where it stands. */
  private record Row(int line, int from, int to, List<String> fields) {
    /** Notes stand in a log alone; no table's header begins like one. */
    private boolean isNote() {
      return fields.get(0).startsWith("#");
    }
  }

  private final List<Row> rows;
  private final Row header;

  private CsvText(String text) {
    this.rows = rows(text);
    this.header =
        rows.stream()
            .filter(row -> !row.isNote())
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("the table has no header"));
  }

  private static List<Row> rows(String text) {
    String unmarked = text.startsWith("\uFEFF") ? text.substring(1) : text;
    List<Integer> starts = new ArrayList<>(List.of(text.length() - unmarked.length()));
    for (int i = 0; i < text.length(); i++) {
      boolean isPair = text.startsWith("\r\n", i);
      if (!isPair && (text.charAt(i) == '\n' || text.charAt(i) == '\r')) {
        starts.add(i + 1);
      }
    }
    starts.add(text.length());
    List<Row> rows = new ArrayList<>();
    try (CsvReader<CsvRecord> csv =
        CsvFile.reader().allowUnclosedQuote(true).ofCsvRecord(unmarked)) {
      List<CsvRecord> records = csv.stream().toList();
      for (int i = 0; i < records.size(); i++) {
        int line = (int) records.get(i).getStartingLineNumber();
        int next =
            i + 1 < records.size()
                ? starts.get((int) records.get(i + 1).getStartingLineNumber() - 1)
                : text.length();
        int from = starts.get(line - 1);
        int to = next;
        while (to > from && (text.charAt(to - 1) == '\n' || text.charAt(to - 1) == '\r')) {
          to--;
        }
        rows.add(new Row(line, from, to, records.get(i).getFields()));
      }
    } catch (CsvParseException | IOException e) {
      throw new IllegalArgumentException("this cannot be read as CSV", e);
    }
    return rows;
  }

  /** The text with fields changed by column, in the rows that start on these lines. */
  static String set(String text, Map<Integer, Map<String, String>> changes) {
    CsvText csv = new CsvText(text);
    String changed = text;
    // From the end, so that what comes before stays where it is.
    for (int line : changes.keySet().stream().sorted(Comparator.reverseOrder()).toList()) {
      Row row = csv.row(line);
      changed =
          changed.substring(0, row.from())
              + csv.written(row.fields(), changes.getOrDefault(line, Map.of()))
              + changed.substring(row.to());
    }
    return changed;
  }

  /** The text with another word wherever a column holds one; as it is without such a column. */
  static String renamed(String text, String column, String from, String to) {
    CsvText csv = new CsvText(text);
    int at = csv.columns().indexOf(column);
    Map<Integer, Map<String, String>> changes = new LinkedHashMap<>();
    for (Row row : csv.rows) {
      boolean isNamed =
          at >= 0
              && at < row.fields().size()
              && TableCell.meant(row.fields().get(at).strip()).equals(from);
      if (isNamed && row.line() != csv.header.line() && !row.isNote()) {
        changes.put(row.line(), Map.of(column, to));
      }
    }
    return set(text, changes);
  }

  /** The text with one row more at its end. */
  static String add(String text, Map<String, String> fields) {
    return add(text, List.of(fields));
  }

  /** The text with rows more at its end. */
  static String add(String text, List<Map<String, String>> rows) {
    CsvText csv = new CsvText(text);
    String newLine = Stream.of("\r\n", "\n", "\r").filter(text::contains).findFirst().orElse("\n");
    int end = csv.rows.get(csv.rows.size() - 1).to();
    StringBuilder added = new StringBuilder(text.substring(0, end));
    rows.forEach(row -> added.append(newLine).append(csv.written(List.of(), row)));
    return added.append(text.length() > end ? text.substring(end) : newLine).toString();
  }

  /** The text without the row that starts on a line. */
  static String remove(String text, int line) {
    CsvText csv = new CsvText(text);
    Row row = csv.row(line);
    int end = text.startsWith("\r\n", row.to()) ? row.to() + 2 : row.to() + 1;
    return text.substring(0, row.from()) + text.substring(Math.min(end, text.length()));
  }

  /** A table of these columns. */
  static String of(List<String> columns, List<Map<String, String>> rows) {
    StringBuilder text = new StringBuilder(String.join(",", columns)).append('\n');
    for (Map<String, String> row : rows) {
      List<String> fields =
          columns.stream().map(c -> field(TableCell.harmless(row.getOrDefault(c, "")))).toList();
      text.append(String.join(",", fields)).append('\n');
    }
    return text.toString();
  }

  /** The names in the header. */
  public static List<String> columns(String text) {
    return new CsvText(text).columns();
  }

  private List<String> columns() {
    return header.fields().stream().map(String::strip).toList();
  }

  private Row row(int line) {
    return rows.stream()
        .filter(r -> r.line() == line && r.line() != header.line())
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no row starts on line " + line));
  }

  private String written(List<String> before, Map<String, String> changed) {
    List<String> columns = columns();
    List<String> fields = new ArrayList<>();
    for (int i = 0; i < Math.max(columns.size(), before.size()); i++) {
      String old = i < before.size() ? before.get(i) : "";
      String fresh = i < columns.size() ? changed.get(columns.get(i)) : null;
      fields.add(field(fresh == null ? old : TableCell.harmless(fresh)));
    }
    return String.join(",", fields);
  }

  private static String field(String field) {
    boolean isPlain = field.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return isPlain ? field : '"' + field.replace("\"", "\"\"") + '"';
  }
}
