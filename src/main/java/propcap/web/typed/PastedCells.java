package propcap.web.typed;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/** The cells of what was copied in a spreadsheet, or in a CSV file that was opened as text. */
final class PastedCells {
  /** What a spreadsheet puts between cells comes first. */
  private static final List<Character> BETWEEN = List.of('\t', ';', ',');

  /** Spaces of every kind, and what is seen as none at all. */
  private static final Pattern SPACE = Pattern.compile("[\\p{Z}\\p{Cntrl}\\uFEFF\\u200B\\u00AD]+");

  private PastedCells() {}

  /**
   * The rows that hold anything. A CSV file's separators are looked for where the text has no tab
   * and its first row is a heading by them.
   */
  static List<List<String>> of(String text) {
    for (char between : BETWEEN) {
      List<List<String>> rows = split(text, between);
      if (text.indexOf('\t') >= 0
          || (between != '\t' && !rows.isEmpty() && PastedHeading.isOne(rows.get(0), 2))) {
        return rows;
      }
    }
    return split(text, '\t');
  }

  private static List<List<String>> split(String text, char between) {
    List<List<String>> rows = new ArrayList<>();
    for (List<String> cells : raw(text, between)) {
      List<String> plain = new ArrayList<>(cells.stream().map(PastedCells::plain).toList());
      while (!plain.isEmpty() && plain.get(plain.size() - 1).isEmpty()) {
        plain.remove(plain.size() - 1);
      }
      if (!plain.isEmpty()) {
        rows.add(List.copyOf(plain));
      }
    }
    return rows;
  }

  private static List<List<String>> raw(String text, char between) {
    try (CsvReader<CsvRecord> csv =
        CsvReader.builder()
            .fieldSeparator(between)
            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .allowUnclosedQuote(false)
            .ofCsvRecord(text)) {
      return csv.stream().map(CsvRecord::getFields).toList();
    } catch (CsvParseException | IOException e) {
      // A quote that is never closed is a sign in a cell, as for inches.
      return text.lines()
          .map(line -> Arrays.asList(line.split(Pattern.quote("" + between), -1)))
          .toList();
    }
  }

  private static String plain(String cell) {
    return SPACE.matcher(cell).replaceAll(" ").strip();
  }
}
