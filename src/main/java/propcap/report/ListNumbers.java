package propcap.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a crop list has them: with their unit, and no more digits than are known. */
final class ListNumbers {
  /** No figure of a test or a log is known better. */
  static final int DIGITS = 3;

  private ListNumbers() {}

  /** To so many digits that count, without an exponent. */
  static String number(double number, int digits) {
    String text =
        BigDecimal.valueOf(Words.finite(number))
            .round(new MathContext(digits, RoundingMode.HALF_EVEN))
            .stripTrailingZeros()
            .toPlainString();
    return text.equals("-0") ? "0" : text;
  }

  static String temperature(double tempC) {
    return number(tempC, 4) + " C";
  }

  static String days(double days) {
    return number(days, DIGITS) + " days";
  }

  static String percent(double share) {
    return number(100 * share, DIGITS) + " %";
  }
}
