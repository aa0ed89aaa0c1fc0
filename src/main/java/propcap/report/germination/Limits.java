package propcap.report.germination;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.DoubleFunction;
import propcap.evidence.Estimate;
import propcap.report.kit.Words;

/** Estimates as a grower reads them: the number, and its 95 % limits as far as there are any. */
final class Limits {
  private Limits() {}

  /** Such as {@code 88 % (82 to 92)}. */
  static String percent(Estimate share) {
    return Words.percent(share.value()) + " (" + percentLimits(share) + ")";
  }

  /** Such as {@code 82 to 92 %}. */
  static String percentLimits(Estimate share) {
    return Words.barePercent(share.low()) + " to " + Words.percent(share.high());
  }

  /** Such as {@code 5.1 (4.9 to 5.3)}. */
  static String days(Estimate days) {
    return with(days, Limits::days);
  }

  /** Such as {@code 8.3 C (6.9 to 9.4)}. */
  static String temperature(Estimate tempC) {
    return temperature(tempC.value()) + " (" + limits(tempC, Limits::tenths) + ")";
  }

  /** Such as {@code 0.21 (0.18 to 0.25)}. */
  static String fine(Estimate estimate) {
    return with(estimate, Limits::fine);
  }

  static String whole(Estimate estimate) {
    return with(estimate, Words::amount);
  }

  private static String with(Estimate estimate, DoubleFunction<String> number) {
    return number.apply(estimate.value()) + " (" + limits(estimate, number) + ")";
  }

  /** The limits alone. */
  static String limits(Estimate estimate, DoubleFunction<String> number) {
    if (!estimate.hasLow()) {
      return estimate.hasHigh() ? "at most " + number.apply(estimate.high()) : "no limits";
    }
    return estimate.hasHigh()
        ? number.apply(estimate.low()) + " to " + number.apply(estimate.high())
        : "at least " + number.apply(estimate.low());
  }

  /** Days: to a tenth, or a hundredth where there are few. */
  static String days(double days) {
    return format(days, days < 3 ? 2 : 1);
  }

  static String fine(double number) {
    return format(number, 2);
  }

  private static String tenths(double number) {
    return format(number, 1);
  }

  /** Such as {@code 22 C} or {@code 21.1 C}. */
  static String temperature(double tempC) {
    return rounded(tempC, 1).stripTrailingZeros().toPlainString() + " C";
  }

  /** The same, kept on one line however narrow the column. */
  static String temperatureOnOneLine(double tempC) {
    return temperature(tempC).replace(' ', '\u00a0');
  }

  private static String format(double number, int decimals) {
    return rounded(number, decimals).toPlainString();
  }

  private static BigDecimal rounded(double number, int decimals) {
    return BigDecimal.valueOf(Words.finite(number)).setScale(decimals, RoundingMode.HALF_UP);
  }
}
