package propcap.report.kit;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.disk.TableCell;
import propcap.farm.Worded;

/** A file for a spreadsheet: numbers to four decimals, and no name a formula. */
public final class Csv {
  private static final int DECIMALS = 4;

  private Csv() {}

  public static String number(double number) {
    return BigDecimal.valueOf(Words.finite(number))
        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** What an enum is called in files, such as {@code not-told}. */
  public static String word(Enum<?> of) {
    return Worded.word(of.name());
  }

  /** A field; empty where there is nothing. */
  private static String field(@Nullable Object value) {
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof BigDecimal amount) {
      return amount.toPlainString();
    }
    if (value instanceof Enum<?> of) {
      return word(of);
    }
    return value == null ? "" : TableCell.harmless(value.toString());
  }

  static String text(List<? extends List<? extends @Nullable Object>> rows) {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      rows.forEach(row -> csv.writeRecord(row.stream().map(Csv::field).toList()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }
}
