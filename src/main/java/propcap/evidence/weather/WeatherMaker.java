package propcap.evidence.weather;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import propcap.chance.RandomStream;
import propcap.farm.Normals;
import propcap.farm.Normals.Month;
import propcap.farm.WeatherRecord.Day;
import umontreal.ssj.probdist.NormalDist;
import umontreal.ssj.probdist.WeibullDist;
import umontreal.ssj.util.Num;

/**
 * Makes a daily record for a grower who has no station, after Richardson (1981, Water Resources
 * Research 17): the year's course, and around it a first-order autoregression from day to day.
 *
 * <p>With m(d) and r(d) the courses of the middle and the range of a day's temperatures, s and phi
 * the month's spread and persistence, Z standard normal and Y Weibull with mean 1,
 *
 * <pre>
 *   a(d) = phi a(d-1) + sqrt(1 - phi^2) Z(d)
 *   middle = m(d) + s a(d)
 *   range  = r(d) Y(d)
 *   tmin, tmax = middle -/+ range / 2
 * </pre>
 *
 * <p>Richardson's two series, of maxima and of minima, may cross; a middle and a range that is
 * above 0 cannot, and leave every mean as it was given; no day goes beyond what air ever had. Rain
 * has no part in it, nor do years that are warm as a whole: real springs differ a little more than
 * made ones.
 */
public final class WeatherMaker {
  /** Made years count from here, unless told otherwise. */
  public static final int DEFAULT_FIRST_YEAR = 2001;

  /**
   * The shape by which ranges differ from day to day: as good as symmetric, with a deviation of 31
   * % of the mean. Planning default, not measured.
   */
  static final double RANGE_SHAPE = 3.6;

  /** Mean of a Weibull variate of this shape and of scale 1. */
  private static final double RANGE_MEAN = Math.exp(Num.lnGamma(1 + 1 / RANGE_SHAPE));

  private final Normals normals;
  private final AnnualCycle middleC;
  private final AnnualCycle rangeC;
  private final RandomStream stream;

  private WeatherMaker(Normals normals, long seed) {
    this.normals = normals;
    this.middleC = cycle(normals, m -> (m.minC() + m.maxC()) / 2);
    this.rangeC = cycle(normals, m -> m.maxC() - m.minC());
    this.stream = new RandomStream(seed, "made weather");
  }

  private static AnnualCycle cycle(Normals normals, ToDoubleFunction<Month> mean) {
    return new AnnualCycle(normals.months().stream().mapToDouble(mean).toArray());
  }

  /**
   * Makes whole years, to a tenth of a degree. The same seed makes the same days, and more years
   * only add to them.
   */
  public static List<Day> make(Normals normals, int firstYear, int years, long seed) {
    return new WeatherMaker(normals, seed).days(firstYear, years);
  }

  private List<Day> days(int firstYear, int years) {
    List<Day> days = new ArrayList<>();
    double departure = normal();
    LocalDate end = LocalDate.of(firstYear + years, 1, 1);
    for (LocalDate date = LocalDate.of(firstYear, 1, 1);
        date.isBefore(end);
        date = date.plusDays(1)) {
      Month month = normals.months().get(date.getMonthValue() - 1);
      double phi = month.persistence();
      departure = phi * departure + Math.sqrt(1 - phi * phi) * normal();
      double middle = middleC.on(date) + month.spreadC() * departure;
      // Months so unlike their neighbours that the course of the range falls below 0 have none.
      double range =
          Math.max(0, rangeC.on(date))
              * WeibullDist.inverseF(RANGE_SHAPE, 1, 0, stream.next())
              / RANGE_MEAN;
      days.add(day(date, middle - range / 2, middle + range / 2));
    }
    return days;
  }

  /** What no air ever had, which a hot place's luck comes to once in many years, is cut. */
  private static Day day(LocalDate date, double minC, double maxC) {
    double low = Math.max(Day.LEAST_C, Math.min(Day.MOST_MIN_C, minC));
    double high = Math.max(low, Math.min(Day.MOST_C, maxC));
    return new Day(date, tenths(low), tenths(high));
  }

  private double normal() {
    return NormalDist.inverseF01(stream.next());
  }

  private static double tenths(double tempC) {
    return BigDecimal.valueOf(tempC).setScale(1, RoundingMode.HALF_UP).doubleValue();
  }
}
