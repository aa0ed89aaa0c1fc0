package propcap.farm;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;

/** One year of the record, cut to the season: row d is the season's day d. Degrees C. */
public final class WeatherYear implements Serializable {
  private final int year;
  private final double[] minC;
  private final double[] maxC;

  /** The arrays hold one value a day of the season. */
  public WeatherYear(int year, double[] minC, double[] maxC) {
    Checks.require(
        minC.length == maxC.length && minC.length > 0,
        "a weather year needs as many minima as maxima");
    this.year = year;
    this.minC = minC.clone();
    this.maxC = maxC.clone();
  }

  /** The year of the record in which the season starts. */
  public int year() {
    return year;
  }

  public int days() {
    return minC.length;
  }

  public double minC(int day) {
    return minC[day];
  }

  /** The daily mean, taken as the middle of minimum and maximum. */
  public double meanC(int day) {
    return (minC[day] + maxC[day]) / 2;
  }

  /** This year with other first days: those of the season from its start on. */
  WeatherYear after(List<WeatherRecord.Day> first) {
    double[] min = minC.clone();
    double[] max = maxC.clone();
    for (int d = 0; d < first.size(); d++) {
      min[d] = first.get(d).minC();
      max[d] = first.get(d).maxC();
    }
    return new WeatherYear(year, min, max);
  }

  /** Its first days, as a record of a season that starts on a date would have them. */
  public List<WeatherRecord.Day> first(int count, LocalDate start) {
    return IntStream.range(0, count)
        .mapToObj(d -> new WeatherRecord.Day(start.plusDays(d), minC[d], maxC[d]))
        .toList();
  }
}
