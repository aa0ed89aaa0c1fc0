package propcap.evidence.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import propcap.chance.RandomStream;
import propcap.farm.FrostRecord;
import propcap.farm.Season;
import propcap.farm.WeatherYear;

/** Records of which only the day of the last frost matters: -3 C until then, 4 C from then on. */
final class FrostYears {
  static final Season SPRING = new Season(LocalDate.of(2027, 1, 1), LocalDate.of(2027, 7, 31));

  private FrostYears() {}

  /** A year for each last frost; below 0 for a year without one. */
  static List<WeatherYear> years(Season season, int... lastFrosts) {
    List<WeatherYear> years = new ArrayList<>();
    for (int last : lastFrosts) {
      double[] minC = new double[season.days()];
      Arrays.fill(minC, 4);
      Arrays.fill(minC, 0, Math.max(0, Math.min(season.days(), last + 1)), -3);
      double[] maxC = new double[season.days()];
      Arrays.fill(maxC, 12);
      years.add(new WeatherYear(2001 + years.size(), minC, maxC));
    }
    return years;
  }

  static FrostRecord record(Season season, int... lastFrosts) {
    return new FrostRecord(season, 0, years(season, lastFrosts));
  }

  /** Last frosts that are the even quantiles of a normal, rounded to whole days. */
  static int[] evenly(int years, double meanDay, double sdDays) {
    NormalDistribution normal = new NormalDistribution(null, meanDay, sdDays);
    int[] days = new int[years];
    Arrays.setAll(
        days, i -> (int) Math.round(normal.inverseCumulativeProbability((i + 0.5) / years)));
    return days;
  }

  /** Last frosts drawn from a normal, rounded to whole days. */
  static int[] drawn(int years, double meanDay, double sdDays, RandomStream stream) {
    NormalDistribution normal = new NormalDistribution(null, meanDay, sdDays);
    int[] days = new int[years];
    Arrays.setAll(days, i -> (int) Math.round(normal.inverseCumulativeProbability(stream.next())));
    return days;
  }

  static int day(int month, int dayOfMonth) {
    return SPRING.dayOf(LocalDate.of(2027, month, dayOfMonth));
  }

  /** The day itself, where there is one. */
  static int dayOf(DayEstimate estimate) {
    return Optional.ofNullable(estimate.day()).orElseThrow();
  }
}
