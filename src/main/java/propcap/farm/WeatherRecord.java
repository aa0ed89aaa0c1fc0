package propcap.farm;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** A station's daily minima and maxima over several years. */
public final class WeatherRecord {
  /** One row. Degrees C, within what was ever measured in the air at the ground. */
  public record Day(LocalDate date, double minC, double maxC) implements Serializable {
    /** Below the coldest ever measured, -89.2 C (Vostok 1983, from memory). */
    public static final double LEAST_C = -90;

    /** Above the hottest, 56.7 C (Death Valley 1913, from memory). */
    public static final double MOST_C = 60;

    /** Above the warmest night, 42.6 C (Oman 2018, from memory). */
    public static final double MOST_MIN_C = 45;

    public Day {
      Checks.finite("tmin of " + date, minC);
      Checks.finite("tmax of " + date, maxC);
      Checks.require(minC <= maxC, "tmin must not be above tmax on " + date);
      Checks.require(
          canBe(minC, maxC), "no air ever had " + minC + " to " + maxC + " C, as on " + date);
    }

    /** Whether air at the ground could have had both on one day. */
    public static boolean canBe(double minC, double maxC) {
      return minC >= LEAST_C && minC <= MOST_MIN_C && maxC <= MOST_C;
    }
  }

  private final NavigableMap<LocalDate, Day> days = new TreeMap<>();

  /** Rows in any order; of two rows with one date the last stands. */
  public WeatherRecord(Collection<Day> rows) {
    rows.forEach(row -> days.put(row.date(), row));
  }

  /**
   * The years that cover every day of the season by month and day, in order. 29 February of a year
   * without one takes the 28th's row. May be empty.
   */
  public List<WeatherYear> yearsCovering(Season season) {
    List<WeatherYear> years = new ArrayList<>();
    if (!days.isEmpty()) {
      for (int y = days.firstKey().getYear() - 1; y <= days.lastKey().getYear(); y++) {
        cut(season, y).ifPresent(years::add);
      }
    }
    return List.copyOf(years);
  }

  private Optional<WeatherYear> cut(Season season, int startYear) {
    int shift = startYear - season.start().getYear();
    double[] minC = new double[season.days()];
    double[] maxC = new double[season.days()];
    for (int d = 0; d < minC.length; d++) {
      // plusYears turns 29 February into the 28th where there is none.
      Day row = days.get(season.date(d).plusYears(shift));
      if (row == null) {
        return Optional.empty();
      }
      minC[d] = row.minC();
      maxC[d] = row.maxC();
    }
    return Optional.of(new WeatherYear(startYear, minC, maxC));
  }

  public int size() {
    return days.size();
  }
}
