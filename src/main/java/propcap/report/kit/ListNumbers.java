package propcap.report.kit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a crop list has them: with their unit, and no more digits than are known. */
public final class ListNumbers {
  /** No figure of a test or a log is known better. */
  public static final int DIGITS = 3;

  private ListNumbers() {}

  /** To so many digits that count, without an exponent. */
  public static String number(double number, int digits) {
    String text =
        BigDecimal.valueOf(Words.finite(number))
            .round(new MathContext(digits, RoundingMode.HALF_EVEN))
            .stripTrailingZeros()
            .toPlainString();
    return text.equals("-0") ? "0" : text;
  }

  public static String temperature(double tempC) {
    return number(tempC, 4) + " C";
  }

  public static String days(double days) {
    return number(days, DIGITS) + " days";
  }

  public static String percent(double share) {
    return number(100 * share, DIGITS) + " %";
  }
}
