package propcap.study.statistics;

import org.jspecify.annotations.Nullable;

/**
 * How an alternative differs from another scenario on the same seasons: alternative minus first.
 *
 * @param mean of the seasons' differences
 * @param halfWidth of its interval (see {@link Paired})
 * @param se standard error of the mean
 * @param shareAhead share of the seasons in which the alternative is better, 0 to 1; a tie is not
 * @param narrowing how many times wider the interval would be had the two been run on luck of their
 *     own; null where all seasons differ by the same, so that there is no interval
 * @param differing seasons in which the two differ at all
 */
public record Difference(
    double mean,
    double halfWidth,
    double se,
    double shareAhead,
    @Nullable Double narrowing,
    int differing) {

  /**
   * Seasons that must differ before the interval of a mean is told. Of fewer, a rare and large one
   * among those not seen would weigh too much: measured in {@code ComparingGuaranteeTest}.
   */
  public static final int TOLD_FROM = 20;

  /** No season differs. */
  public static final Difference NONE = new Difference(0, 0, 0, 0, null, 0);

  public double low() {
    return mean - halfWidth;
  }

  public double high() {
    return mean + halfWidth;
  }

  /** Whether the interval can be relied on: seasons enough differ, or none does. */
  public boolean isTold() {
    return differing == 0 || differing >= TOLD_FROM;
  }

  /** Whether the alternative clearly has more: the interval is told and lies above 0. */
  public boolean isMore() {
    return isTold() && low() > 0;
  }

  /** Whether the alternative clearly has less. */
  public boolean isLess() {
    return isTold() && high() < 0;
  }

  /** Whether the interval is told and leaves 0 out. */
  public boolean isClear() {
    return isMore() || isLess();
  }
}
