package propcap.farm;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** A station's daily minima and maxima over several years. */
public final class WeatherRecord {
  /** One row. Degrees C. */
  public record Day(LocalDate date, double minC, double maxC) {
    public Day {
      Checks.finite("tmin of " + date, minC);
      Checks.finite("tmax of " + date, maxC);
      Checks.require(minC <= maxC, "tmin must not be above tmax on " + date);
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
