package propcap.chance;

/**
 * Thermal time in a place over a season: degree days run at a rate that holds for a day, so that
 * the sum is piecewise linear.
 */
public final class ThermalClock {
  /** Degree days by 00:00 of each day, from 0 to the sum of the season. */
  private final double[] by;

  /** By equal parts of the season's sum, the first day whose sum is in it or in one after it. */
  private final int[] firstOf;

  /** A clock with one rate, degree days a day and not negative, for each day. */
  public ThermalClock(double[] rates) {
    by = new double[rates.length + 1];
    for (int d = 0; d < rates.length; d++) {
      by[d + 1] = by[d] + rates[d];
    }
    firstOf = new int[by.length];
    int day = 0;
    for (int part = 0; part < firstOf.length; part++) {
      while (day < rates.length && part(by[day]) < part) {
        day++;
      }
      firstOf[part] = day;
    }
  }

  private int part(double degreeDays) {
    double whole = by[by.length - 1];
    return degreeDays > 0 ? (int) (degreeDays / whole * (by.length - 1)) : 0;
  }

  /** Degree days from the season's start to time t, days; what lies after the season adds none. */
  public double at(double t) {
    int day = (int) t;
    return day >= by.length - 1 ? by[by.length - 1] : by[day] + (t - day) * (by[day + 1] - by[day]);
  }

  /**
   * The first time, days, at which {@link #at} reaches a sum; infinite if the season ends before.
   */
  public double when(double degreeDays) {
    if (degreeDays > by[by.length - 1]) {
      return Double.POSITIVE_INFINITY;
    }
    // Days without warmth repeat a sum: the first of them is meant.
    int next = firstOf[part(degreeDays)];
    while (by[next] < degreeDays) {
      next++;
    }
    if (next == 0) {
      return 0;
    }
    return next - 1 + (degreeDays - by[next - 1]) / (by[next] - by[next - 1]);
  }
}
