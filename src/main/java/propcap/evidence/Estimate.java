package propcap.evidence;

/**
 * A number worked out from counts, with its 95 % limits.
 *
 * @param low negative infinity where the counts set no lower limit
 * @param high positive infinity where they set no upper one
 */
public record Estimate(double value, double low, double high) {
  public Estimate {
    if (!Double.isFinite(value) || !(low <= value) || !(value <= high)) {
      throw new IllegalArgumentException(
          "an estimate lies within its limits, was " + value + " in " + low + " to " + high);
    }
  }

  public boolean hasLow() {
    return Double.isFinite(low);
  }

  public boolean hasHigh() {
    return Double.isFinite(high);
  }
}
