package propcap.evidence.stages;

import java.util.Arrays;

/** How warmth adds up on a table from one round to another, in straight lines between times. */
final class WarmthCourse {
  private final double[] times;
  private final double[] degreeDays;

  /**
   * Takes the course.
   *
   * @param times in days, rising
   * @param degreeDays since the first of them, not falling
   */
  WarmthCourse(double[] times, double[] degreeDays) {
    this.times = times.clone();
    this.degreeDays = degreeDays.clone();
  }

  double total() {
    return degreeDays[degreeDays.length - 1];
  }

  /** The degree days by a time within the course; those of its ends outside it. */
  double at(double time) {
    int after = Arrays.binarySearch(times, time);
    if (after >= 0) {
      return degreeDays[after];
    }
    int next = -after - 1;
    return next == 0 ? 0 : next == times.length ? total() : between(times, degreeDays, next, time);
  }

  /** The time at which so many degree days have come together; infinite where they never do. */
  double when(double someDegreeDays) {
    if (someDegreeDays > total()) {
      return Double.POSITIVE_INFINITY;
    }
    int low = 0;
    int high = times.length - 1;
    while (low < high) {
      int middle = (low + high) / 2;
      if (degreeDays[middle] < someDegreeDays) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low == 0 ? times[0] : between(degreeDays, times, low, someDegreeDays);
  }

  private static double between(double[] of, double[] give, int next, double here) {
    double share = (here - of[next - 1]) / (of[next] - of[next - 1]);
    return give[next - 1] + share * (give[next] - give[next - 1]);
  }
}
