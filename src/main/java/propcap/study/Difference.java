package propcap.study;

import org.jspecify.annotations.Nullable;

/**
 * How an alternative differs from another scenario on the same seasons: alternative minus first.
 *
 * @param mean of the seasons' differences
 * @param halfWidth of its interval: Student's, of the paired differences; where fewer than half of
 *     the seasons differ the farther of the {@link MeanLimits}
 * @param se standard error of the mean
 * @param shareAhead share of the seasons in which the alternative is better, 0 to 1; a tie is not
 * @param narrowing how many times wider the interval would be had the two been run on luck of their
 *     own; null where all seasons differ by the same, so that there is no interval
 */
public record Difference(
    double mean, double halfWidth, double se, double shareAhead, @Nullable Double narrowing) {
  public double low() {
    return mean - halfWidth;
  }

  public double high() {
    return mean + halfWidth;
  }

  /** Whether the interval leaves 0 out. */
  public boolean isClear() {
    return low() > 0 || high() < 0;
  }
}
