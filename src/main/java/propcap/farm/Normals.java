package propcap.farm;

import java.util.List;

/**
 * The climate of a place where nobody kept a daily record.
 *
 * @param months twelve, January first
 * @param hasDefaults whether a spread or a persistence is a planning default
 */
public record Normals(List<Month> months, boolean hasDefaults) {
  /** Planning default, not measured. */
  public static final double DEFAULT_SPREAD_C = 4;

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
      Checks.notNegative("sd", spreadC);
      Checks.require(
          persistence >= 0 && persistence < 1,
          "persistence must be from 0 to below 1, was " + persistence);
    }
  }

  public Normals {
    months = List.copyOf(months);
    Checks.require(months.size() == 12, "normals have 12 months, were " + months.size());
  }
}
