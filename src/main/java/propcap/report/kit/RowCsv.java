package propcap.report.kit;

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
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.disk.TableCell;
import propcap.study.Difference;
import propcap.study.MeanLimits;
import propcap.study.Stat;

/** A table for a spreadsheet, row by row: numbers to four decimals, and no name a formula. */
public final class RowCsv {
  private static final int DECIMALS = 4;

  private final List<List<String>> rows = new ArrayList<>();

  public static List<String> statNames(String name) {
    return Stream.of("", "-se", "-low", "-high", "-unlike", "-p10", "-p50", "-p90")
        .map(ending -> name + ending)
        .toList();
  }

  /** No error and no limits where it was seen too seldom; all fields empty where there is none. */
  public static List<String> stat(@Nullable Stat stat) {
    if (stat == null) {
      return List.of("", "", "", "", "", "", "", "");
    }
    MeanLimits limits = stat.limits();
    List<String> texts = numbers(stat.mean());
    texts.addAll(
        limits == null ? List.of("", "", "") : numbers(stat.se(), limits.low(), limits.high()));
    texts.add(whole(stat.unlike()));
    texts.addAll(numbers(stat.p10(), stat.p50(), stat.p90()));
    return texts;
  }

  public static List<String> differenceNames(String name) {
    return List.of(
        name,
        name + "-half-width",
        name + "-se",
        name + "-share-ahead",
        name + "-narrowing",
        name + "-differing");
  }

  /** Six empty fields where there is none; no error where all seasons differ by the same. */
  public static List<String> difference(@Nullable Difference d) {
    if (d == null) {
      return List.of("", "", "", "", "", "");
    }
    Double narrowing = d.narrowing();
    List<String> texts = numbers(d.mean());
    texts.addAll(narrowing == null ? List.of("", "") : numbers(d.halfWidth(), d.se()));
    texts.add(number(d.shareAhead()));
    texts.add(narrowing == null ? "" : number(narrowing));
    texts.add(whole(d.differing()));
    return texts;
  }

  public static List<String> numbers(double... numbers) {
    List<String> texts = new ArrayList<>();
    for (double number : numbers) {
      texts.add(number(number));
    }
    return texts;
  }

  public static List<String> wholes(long... numbers) {
    return LongStream.of(numbers).mapToObj(RowCsv::whole).toList();
  }

  public static String whole(long number) {
    return Long.toString(number);
  }

  public static String number(double number) {
    return BigDecimal.valueOf(Words.finite(number))
        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  public static String date(@Nullable LocalDate date) {
    return date == null ? "" : date.toString();
  }

  @SafeVarargs
  public final void row(List<String>... parts) {
    List<String> row = new ArrayList<>();
    for (List<String> part : parts) {
      part.forEach(cell -> row.add(TableCell.harmless(cell)));
    }
    rows.add(row);
  }

  public String text() {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      rows.forEach(csv::writeRecord);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }
}
