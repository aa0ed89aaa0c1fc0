package propcap.study.money;

import org.jspecify.annotations.Nullable;

/** Money over the years: the formulas of any text on investment. */
public final class InvestmentFormulas {
  private InvestmentFormulas() {}

  /**
   * What 1 at the end of each of so many years is worth today: (1 - (1+r)^-n) / r, and n where r is
   * 0.
   */
  public static double annuityFactor(double rate, double years) {
    return rate == 0 ? years : -Math.expm1(-years * Math.log1p(rate)) / rate;
  }

  /** What 1 after so many years is worth today. */
  static double presentValue(double rate, double years) {
    return Math.pow(1 + rate, -years);
  }

  /**
   * What it costs a year to buy something for so many years and to keep it: an annuity, and the
   * upkeep.
   */
  public static double yearly(double buy, double years, double keepPerYear, double rate) {
    return buy / annuityFactor(rate, years) + keepPerYear;
  }

  /**
   * Years until yearly receipts, discounted, have paid an outlay; within a year they come in
   * evenly.
   *
   * @return null where they never do
   */
  static @Nullable Double payback(double outlay, double yearly, double rate) {
    if (outlay <= 0) {
      return 0.0;
    }
    if (yearly <= 0) {
      return null;
    }
    // The years n of which yearly x annuityFactor(rate, n) = outlay.
    double years =
        rate == 0 ? outlay / yearly : -Math.log1p(-outlay * rate / yearly) / Math.log1p(rate);
    if (!Double.isFinite(years)) {
      return null;
    }
    double whole = Math.floor(years);
    double left = Math.max(0, outlay - yearly * annuityFactor(rate, whole));
    return whole + Math.min(1, left / (yearly * presentValue(rate, whole + 1)));
  }
}
