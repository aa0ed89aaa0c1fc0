package propcap.web.typed;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of a column as spreadsheets show them, with a point or a comma before the decimals.
 * What is no number stays as it is, and the reader of plans says so.
 */
final class PastedNumbers {
  private static final Map<String, Set<String>> UNITS =
      Map.of(
          "trays", Set.of("tray", "trays", "flat", "flats"),
          "plants-needed", Set.of("plant", "plants", "transplant", "transplants"),
          "goal", Set.of("%"));

  private static final Pattern WRITTEN =
      Pattern.compile("(\\d{1,3}(?:[ '’]\\d{3})+(?:[.,]\\d+)?|\\d[\\d.,]*)(?<![.,]) ?(%|\\p{L}+)?");
  private static final Pattern GROUPED = Pattern.compile("[1-9]\\d{0,2}(?:\\D\\d{3})+");

  private final Set<String> units;
  private final boolean isShare;

  /** The sign before the decimals; null where the column does not tell. */
  private final @Nullable Character decimal;

  private PastedNumbers(String column, @Nullable Character decimal) {
    this.units = Objects.requireNonNull(UNITS.get(column));
    this.isShare = column.equals("goal");
    this.decimal = decimal;
  }

  static boolean areIn(String column) {
    return UNITS.containsKey(column);
  }

  /** The numbers of a column, whose cells together tell how decimals are written. */
  static PastedNumbers of(String column, Collection<String> cells) {
    List<Character> told = new ArrayList<>();
    for (String cell : cells) {
      Matcher written = WRITTEN.matcher(cell);
      if (written.matches()) {
        decimalOf(ungrouped(digits(written))).ifPresent(told::add);
      }
    }
    return new PastedNumbers(column, told.stream().distinct().count() == 1 ? told.get(0) : null);
  }

  private static String digits(Matcher written) {
    return Objects.requireNonNull(written.group(1));
  }

  /** The digits, points and commas of a number; what else parts thousands is left out. */
  static String ungrouped(String number) {
    return number.replaceAll("['’ ]", "");
  }

  /** The sign before the decimals; empty where there is none, or the number does not tell. */
  static Optional<Character> decimalOf(String digits) {
    int point = digits.lastIndexOf('.');
    int comma = digits.lastIndexOf(',');
    if (point >= 0 && comma >= 0) {
      return Optional.of(point > comma ? '.' : ',');
    }
    int at = Math.max(point, comma);
    if (at < 0) {
      return Optional.empty();
    }
    char sign = digits.charAt(at);
    char other = sign == '.' ? ',' : '.';
    if (digits.indexOf(sign) != at) {
      return Optional.of(other);
    }
    // 1,250 may be either; 12,5 and 0,250 are no thousands.
    return GROUPED.matcher(digits).matches() ? Optional.empty() : Optional.of(sign);
  }

  /** The number as the files write it; a text that is none as it is. */
  String read(String cell) {
    Matcher written = WRITTEN.matcher(cell);
    if (!written.matches()) {
      return cell;
    }
    String unit = written.group(2);
    if (unit != null && !units.contains(unit.toLowerCase(Locale.ROOT))) {
      return cell;
    }
    String digits = ungrouped(digits(written));
    // Trays and plants are whole, so one sign before three digits parts thousands of them.
    char otherwise = !isShare && digits.indexOf(',') < 0 ? ',' : '.';
    char sign = decimal == null ? otherwise : decimal;
    Optional<String> read = plain(digits, sign);
    if (read.isEmpty()) {
      return cell;
    }
    BigDecimal number = new BigDecimal(read.get());
    String plain = number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    return isShare && unit != null ? plain + " %" : plain;
  }

  /**
   * A number with a point before its decimals, as many of them as are written.
   *
   * @param decimal the sign before its decimals; another parts thousands
   * @return empty where it is no number by that
   */
  static Optional<String> plain(String digits, char decimal) {
    int at = digits.indexOf(decimal);
    String whole = at < 0 ? digits : digits.substring(0, at);
    String parts = at < 0 ? "" : digits.substring(at + 1);
    boolean isSound =
        parts.matches("\\d*") && (whole.matches("\\d+") || GROUPED.matcher(whole).matches());
    return isSound
        ? Optional.of(whole.replaceAll("\\D", "") + (parts.isEmpty() ? "" : "." + parts))
        : Optional.empty();
  }
}
