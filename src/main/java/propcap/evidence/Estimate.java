package propcap.evidence;

import java.util.function.DoubleUnaryOperator;

/**
 * A figure worked out from records, with its 95 % limits.
 *
 * @param low below it the figure lies with a chance of 2.5 %; negative infinity where the records
 *     set no lower limit
 * @param high above it the figure lies with a chance of 2.5 %; infinity where they set no upper one
 */
public record Estimate(double value, double low, double high) {
  /** The chance beyond either limit. */
  public static final double TAIL = 0.025;

  public Estimate {
    if (!Double.isFinite(value) || !(low <= value) || !(value <= high)) {
      throw new IllegalArgumentException(
          "an estimate lies within its limits, was " + value + " in " + low + " to " + high);
    }
  }

  /** A figure within limits that were worked out apart from it, widened to it where need be. */
  public static Estimate within(double value, double low, double high) {
    return new Estimate(value, Math.min(low, value), Math.max(high, value));
  }

  /** A figure within the middle 95 % of a distribution, by its quantiles. */
  public static Estimate within(double value, DoubleUnaryOperator quantile) {
    return within(value, quantile.applyAsDouble(TAIL), quantile.applyAsDouble(1 - TAIL));
  }

  /** The estimate and its limits in another unit. */
  public Estimate times(double factor) {
    return new Estimate(value * factor, low * factor, high * factor);
  }

  public boolean holds(double figure) {
    return low <= figure && figure <= high;
  }

  public boolean hasLow() {
    return Double.isFinite(low);
  }

  public boolean hasHigh() {
    return Double.isFinite(high);
  }
}
