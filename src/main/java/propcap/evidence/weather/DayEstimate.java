package propcap.evidence.weather;

import org.jspecify.annotations.Nullable;

/**
 * A day of the season as so many years of record tell it, with its 95 % limits.
 *
 * @param day null where frosts go on to the season's end
 * @param low null where the years are too few to bound it from below
 * @param high null where they are too few to bound it from above, or frosts go on to the season's
 *     end
 */
public record DayEstimate(@Nullable Integer day, @Nullable Integer low, @Nullable Integer high) {

  /** The day and its limits, so many days later. */
  DayEstimate plus(int days) {
    return new DayEstimate(plus(day, days), plus(low, days), plus(high, days));
  }

  private static @Nullable Integer plus(@Nullable Integer day, int days) {
    return day == null ? null : day + days;
  }
}
