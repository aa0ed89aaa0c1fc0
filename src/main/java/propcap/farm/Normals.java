package propcap.farm;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * The climate of a place where nobody kept a daily record.
 *
 * @param months twelve, January first
 * @param hasDefaults whether a spread or a persistence is a planning default
 */
public record Normals(List<Month> months, boolean hasDefaults) {
  /** Spread of the coldest month, degrees C. Planning default, not measured. */
  public static final double DEFAULT_WINTER_SPREAD_C = 4.4;

  /** Spread of the warmest month, degrees C. Planning default, not measured. */
  public static final double DEFAULT_SUMMER_SPREAD_C = 2.6;

  /**
   * Wider than the middles of days lie around their course in any month anywhere, degrees C;
   * planning bound, from memory of continental winters, which have some 8 to 10.
   */
  public static final double MOST_SPREAD_C = 15;

  /** Planning default, not measured. */
  public static final double DEFAULT_PERSISTENCE = 0.65;

  /**
   * A month. Degrees C.
   *
   * @param minC mean of the days' minima
   * @param maxC mean of the days' maxima
   * @param spreadC standard deviation, from day to day, of the middle of minimum and maximum around
   *     its course through the year
   * @param persistence correlation of that middle's departure with the day before's, 0 to below 1
   */
  public record Month(double minC, double maxC, double spreadC, double persistence) {
    public Month {
      Checks.finite("tmin", minC);
      Checks.finite("tmax", maxC);
      Checks.require(minC < maxC, "tmin must be below tmax (" + maxC + " C), was " + minC);
      Checks.require(
          WeatherRecord.Day.canBe(minC, maxC),
          "no month ever had a mean of " + minC + " to " + maxC + " C");
      Checks.require(
          spreadC >= 0 && spreadC <= MOST_SPREAD_C,
          "sd must be from 0 to " + MOST_SPREAD_C + " C, was " + spreadC);
      Checks.require(
          persistence >= 0 && persistence < 1,
          "persistence must be from 0 to below 1, was " + persistence);
    }

    /** The middle of both means, degrees C. */
    public double middleC() {
      return (minC + maxC) / 2;
    }

    Month withSpreadC(double newSpreadC) {
      return new Month(minC, maxC, newSpreadC, persistence);
    }
  }

  public Normals {
    months = List.copyOf(months);
    Checks.require(months.size() == 12, "normals have 12 months, were " + months.size());
  }

  /**
   * These normals with default spreads for some months: the weather changes more from day to day in
   * winter than in summer, so a month's lies between the two as its temperature does.
   *
   * @param which by the months' place in the list
   */
  public Normals withDefaultSpreads(Collection<Integer> which) {
    double coldest = months.stream().mapToDouble(Month::middleC).min().orElse(0);
    double warmest = months.stream().mapToDouble(Month::middleC).max().orElse(0);
    List<Month> changed = new ArrayList<>(months);
    for (int m : which) {
      double warmth =
          warmest > coldest ? (months.get(m).middleC() - coldest) / (warmest - coldest) : 0.5;
      changed.set(
          m,
          months
              .get(m)
              .withSpreadC(
                  DEFAULT_WINTER_SPREAD_C
                      + warmth * (DEFAULT_SUMMER_SPREAD_C - DEFAULT_WINTER_SPREAD_C)));
    }
    return new Normals(changed, hasDefaults || !which.isEmpty());
  }
}
