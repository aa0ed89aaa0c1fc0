package propcap.files.weather;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import propcap.files.text.CsvFile;
import propcap.files.text.Faults;
import propcap.files.text.FilePosition;
import propcap.files.text.PackedText;
import propcap.files.text.SourceText;

/**
 * The rows of a station's file, which may have no header and columns that nobody asked for. They
 * are handed on one by one, for a file may have millions of them.
 */
final class StationRows {
  /** Some 270 years of days with 30 kinds of value on each. */
  private static final int MOST_ROWS = 3_000_000;

  private StationRows() {}

  /** A row and the line that it stands on. */
  record Row(FilePosition spot, List<String> fields) {
    /** A field; empty where the row is too short for it. */
    String field(int number) {
      return number >= 0 && number < fields.size() ? fields.get(number) : "";
    }
  }

  /**
   * Hands on all rows that are not blank, as far as the file can be read.
   *
   * @param taken takes a row in, and says whether the next one is wanted
   * @return whether the file was there and could be read to where it was wanted
   */
  static boolean each(Path file, Predicate<Row> taken, Faults faults) {
    if (!SourceText.isThere(file, FilePosition.whole(file), faults)) {
      return false;
    }
    int line = 0;
    try (PackedText text = PackedText.of(file);
        CloseableIterator<CsvRecord> records = CsvFile.reader().ofCsvRecord(text).iterator()) {
      for (int rows = 0; records.hasNext(); rows++) {
        CsvRecord row = records.next();
        line = (int) row.getStartingLineNumber();
        FilePosition spot = new FilePosition(file, line, 0);
        if (rows == MOST_ROWS) {
          faults.add(spot, "more than " + MOST_ROWS + " rows", "the file of one station");
          return false;
        }
        List<String> fields = row.getFields().stream().map(String::strip).toList();
        if (!fields.stream().allMatch(String::isEmpty) && !taken.test(new Row(spot, fields))) {
          return true;
        }
      }
      return true;
    } catch (CsvParseException | UncheckedIOException | IOException e) {
      tell(e, file, line, faults);
      return false;
    }
  }

  private static void tell(Exception e, Path file, int line, Faults faults) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof PackedText.UnreadableException unreadable) {
        faults.add(
            new FilePosition(file, unreadable.line(), 0), unreadable.found(), unreadable.right());
        return;
      }
    }
    if (e instanceof CsvParseException) {
      faults.add(
          new FilePosition(file, line + 1, 0),
          "from here on this cannot be read as CSV",
          "fields parted by commas, every quote closed");
    } else {
      faults.add(FilePosition.whole(file), "cannot be read", "a file that you may read");
    }
  }
}
