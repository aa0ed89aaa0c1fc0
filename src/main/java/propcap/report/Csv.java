package propcap.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import propcap.disk.TableCell;
import propcap.study.Difference;
import propcap.study.Stat;

/** A table for a spreadsheet, row by row: numbers to four decimals, and no name a formula. */
final class Csv {
  private static final int DECIMALS = 4;

  private final List<List<String>> rows = new ArrayList<>();

  static List<String> statNames(String name) {
    return List.of(name, name + "-se", name + "-p10", name + "-p50", name + "-p90");
  }

  static List<String> stat(Stat stat) {
    return numbers(stat.mean(), stat.se(), stat.p10(), stat.p50(), stat.p90());
  }

  static List<String> differenceNames(String name) {
    return List.of(
        name,
        name + "-half-width",
        name + "-se",
        name + "-share-ahead",
        name + "-narrowing",
        name + "-differing");
  }

  /** Six empty fields where there is none. */
  static List<String> difference(@Nullable Difference d) {
    if (d == null) {
      return List.of("", "", "", "", "", "");
    }
    List<String> texts = numbers(d.mean(), d.halfWidth(), d.se(), d.shareAhead());
    Double narrowing = d.narrowing();
    texts.add(narrowing == null ? "" : number(narrowing));
    texts.add(whole(d.differing()));
    return texts;
  }

  static List<String> numbers(double... numbers) {
    List<String> texts = new ArrayList<>();
    for (double number : numbers) {
      texts.add(number(number));
    }
    return texts;
  }

  static List<String> wholes(long... numbers) {
    return LongStream.of(numbers).mapToObj(Csv::whole).toList();
  }

  static String whole(long number) {
    return Long.toString(number);
  }

  static String number(double number) {
    return BigDecimal.valueOf(Words.finite(number))
        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  static String date(@Nullable LocalDate date) {
    return date == null ? "" : date.toString();
  }

  @SafeVarargs
  final void row(List<String>... parts) {
    List<String> row = new ArrayList<>();
    for (List<String> part : parts) {
      part.forEach(cell -> row.add(TableCell.harmless(cell)));
    }
    rows.add(row);
  }

  String text() {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      rows.forEach(csv::writeRecord);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }
}
