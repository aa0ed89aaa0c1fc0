package propcap.files;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The rows of a station's file, which may have no header and columns that nobody asked for. */
final class StationRows {
  /** Some 270 years of days with 30 kinds of value on each. */
  private static final int MOST_ROWS = 3_000_000;

  private StationRows() {}

  /** A row and the line that it stands on. */
  record Row(Spot spot, List<String> fields) {
    /** A field; empty where the row is too short for it. */
    String field(int number) {
      return number >= 0 && number < fields.size() ? fields.get(number) : "";
    }
  }

  /** All rows that are not blank, as far as the file can be read. */
  static List<Row> of(SourceText source, Faults faults) {
    List<Row> rows = new ArrayList<>();
    int line = 0;
    try (CsvReader<CsvRecord> csv =
            CsvReader.builder()
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(false)
                .ofCsvRecord(source.text());
        CloseableIterator<CsvRecord> records = csv.iterator()) {
      while (records.hasNext()) {
        CsvRecord row = records.next();
        line = (int) row.getStartingLineNumber();
        Spot spot = new Spot(source.file(), line, 0);
        if (rows.size() == MOST_ROWS) {
          faults.add(spot, "more than " + MOST_ROWS + " rows", "the file of one station");
          return rows;
        }
        List<String> fields = row.getFields().stream().map(String::strip).toList();
        if (!fields.stream().allMatch(String::isEmpty)) {
          rows.add(new Row(spot, fields));
        }
      }
    } catch (CsvParseException | IOException e) {
      faults.add(
          new Spot(source.file(), line + 1, 0),
          "from here on this cannot be read as CSV",
          "fields parted by commas, every quote closed");
    }
    return rows;
  }
}
