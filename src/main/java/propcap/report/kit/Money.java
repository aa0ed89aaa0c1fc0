package propcap.report.kit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import propcap.farm.Scenario;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/** Amounts of a currency, shown rounded half up to whole units but where the error is smaller. */
public record Money(String currency) {

  /** The scenario's currency; empty where no money is asked. */
  public static Optional<Money> of(Scenario scenario) {
    return Optional.ofNullable(scenario.prices()).map(p -> new Money(p.currency()));
  }

  /** For other programs: empty, and so left out, where no money is asked. */
  public static Optional<String> currency(Scenario scenario) {
    return of(scenario).map(Money::currency);
  }

  /** Such as {@code 5,200 EUR}. */
  public String amount(BigDecimal amount) {
    return whole(amount) + " " + currency;
  }

  public String amount(double amount) {
    return amount(BigDecimal.valueOf(Words.finite(amount)));
  }

  /** Such as {@code +1,240 ± 90 EUR}; bare where all seasons differ by the same. */
  public String difference(Difference difference) {
    return bare(difference) + " " + currency;
  }

  public String difference(double mean, double halfWidth) {
    return bare(mean, halfWidth) + " " + currency;
  }

  /** A difference without its currency; where too few springs differ, with their number. */
  public static String bare(Difference difference) {
    if (difference.narrowing() == null) {
      return Words.signed(difference.mean());
    }
    return difference.isTold()
        ? bare(difference.mean(), difference.halfWidth())
        : Words.signed(difference.mean()) + Words.inFew(difference);
  }

  /** A mean and half its interval, without the currency. */
  public static String bare(double mean, double halfWidth) {
    return isOfCents(halfWidth)
        ? Words.difference(mean, cents(halfWidth))
        : Words.signed(mean) + " ± " + whole(BigDecimal.valueOf(Words.finite(halfWidth)));
  }

  /** A level and the larger half of its 95 % interval, without its currency. */
  public static String level(Stat stat) {
    MeanLimits limits = stat.limits();
    return level(
        stat.mean(),
        limits == null ? 0 : Math.max(stat.mean() - limits.low(), limits.high() - stat.mean()));
  }

  /** A level and half its 95 % interval, without its currency. */
  public static String level(double mean, double halfWidth) {
    if (isOfCents(halfWidth)) {
      return Words.estimate(mean, cents(halfWidth));
    }
    String amount = whole(BigDecimal.valueOf(Words.finite(mean)));
    return halfWidth == 0
        ? amount
        : amount + " ± " + whole(BigDecimal.valueOf(Words.finite(halfWidth)));
  }

  /** An error that would be rounded to none is told in hundredths of the currency. */
  private static boolean isOfCents(double halfWidth) {
    return halfWidth > 0 && halfWidth < 0.5;
  }

  private static double cents(double halfWidth) {
    return Math.max(halfWidth, 0.01);
  }

  private static String whole(BigDecimal amount) {
    return Words.count(amount.setScale(0, RoundingMode.HALF_UP).doubleValue());
  }
}
