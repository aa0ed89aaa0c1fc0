package propcap.evidence.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.FrostRecord;
import propcap.farm.Normals;
import propcap.farm.Normals.Month;
import propcap.farm.WeatherRecord;
import propcap.farm.WeatherRecord.Day;
import propcap.files.weather.Degrees;
import propcap.files.weather.NormalsFile;

/** Made weather against what it was made from: the demonstration's monthly means. */
class WeatherMakerTest {
  private static final int YEARS = 200;

  /** False alarms: 24 means, 12 spreads and 12 correlations at 4 errors, once in 300 times. */
  private static final double ERRORS = 4;

  private static Normals demo() throws Exception {
    return NormalsFile.read(Path.of("demo-data/normals.csv"), Degrees.C, d -> {});
  }

  private static List<Day> made(Normals normals) {
    return WeatherMaker.make(normals, 2001, YEARS, 7);
  }

  private static double[] of(List<Day> days, int month, ToDoubleFunction<Day> value) {
    return days.stream()
        .filter(d -> d.date().getMonthValue() == month)
        .mapToDouble(value)
        .toArray();
  }

  private static double middle(Day day) {
    return (day.minC() + day.maxC()) / 2;
  }

  /** Its luck went beyond what air can have, and the command failed. */
  @Test
  void aHotPlaceHasNoDayThatNoAirEverHad() {
    Normals hot = new Normals(Collections.nCopies(12, new Month(36, 51, 4, 0.7)), false);
    List<Day> days = made(hot);
    assertThat(days).anyMatch(day -> day.maxC() == Day.MOST_C);
    assertThat(days).allMatch(day -> Day.canBe(day.minC(), day.maxC()));
  }

  /** The course of the middle, as it was given. */
  private static AnnualCycle course(Normals normals) {
    return new AnnualCycle(normals.months().stream().mapToDouble(Month::middleC).toArray());
  }

  /** The standard error of a month's mean, the correlation from day to day counted in. */
  private static double seOfMean(Month month) {
    double halfRange = (month.maxC() - month.minC()) / 2;
    double spread = month.spreadC();
    double alike = (1 + month.persistence()) / (1 - month.persistence());
    // Ranges of days do not hang together; their deviation is 31 % of the mean.
    double variance = spread * spread * alike + 0.1 * halfRange * halfRange;
    return Math.sqrt(variance / (28.0 * YEARS));
  }

  private static double worstMean(List<Day> days, Normals normals) {
    double worst = 0;
    for (int m = 1; m <= 12; m++) {
      Month month = normals.months().get(m - 1);
      double min = Arrays.stream(of(days, m, Day::minC)).average().orElseThrow();
      double max = Arrays.stream(of(days, m, Day::maxC)).average().orElseThrow();
      worst = Math.max(worst, Math.abs(min - month.minC()) / seOfMean(month));
      worst = Math.max(worst, Math.abs(max - month.maxC()) / seOfMean(month));
    }
    return worst;
  }

  /** The means are those that were given, and not those of a place half a degree warmer. */
  @Test
  void theMonthlyMeansAreThoseGiven() throws Exception {
    List<Day> days = made(demo());
    assertThat(worstMean(days, demo())).isLessThan(ERRORS);
    Normals warmer =
        new Normals(
            demo().months().stream()
                .map(m -> new Month(m.minC() + 0.5, m.maxC() + 0.5, m.spreadC(), m.persistence()))
                .toList(),
            false);
    assertThat(worstMean(days, warmer)).isGreaterThan(ERRORS);
  }

  /** Departures of the middle from its course, of a month's days in pairs with the next day. */
  private static double[][] departures(List<Day> days, Normals normals, int month) {
    AnnualCycle course = course(normals);
    List<double[]> pairs = new ArrayList<>();
    for (int d = 1; d < days.size(); d++) {
      if (days.get(d).date().getMonthValue() == month) {
        pairs.add(
            new double[] {
              middle(days.get(d - 1)) - course.on(days.get(d - 1).date()),
              middle(days.get(d)) - course.on(days.get(d).date())
            });
      }
    }
    double[][] columns = new double[2][pairs.size()];
    for (int p = 0; p < pairs.size(); p++) {
      columns[0][p] = pairs.get(p)[0];
      columns[1][p] = pairs.get(p)[1];
    }
    return columns;
  }

  /**
   * The relative error of a deviation of n values that hang together by phi^k is {@code sqrt((1 +
   * phi^2) / (1 - phi^2) / (2 n))}.
   */
  private static double worstSpread(List<Day> days, Normals normals, double factor) {
    double worst = 0;
    for (int m = 1; m <= 12; m++) {
      Month month = normals.months().get(m - 1);
      double[] now = departures(days, normals, m)[1];
      double phi2 = month.persistence() * month.persistence();
      double se = month.spreadC() * Math.sqrt((1 + phi2) / (1 - phi2) / (2.0 * now.length));
      double sd = new StandardDeviation().evaluate(now);
      worst = Math.max(worst, Math.abs(sd - factor * month.spreadC()) / se);
    }
    return worst;
  }

  /** The twin: a spread that is 10 % wider is refused. */
  @Test
  void theSpreadFromDayToDayIsTheOneGiven() throws Exception {
    List<Day> days = made(demo());
    assertThat(worstSpread(days, demo(), 1)).isLessThan(ERRORS);
    assertThat(worstSpread(days, demo(), 1.1)).isGreaterThan(ERRORS);
  }

  /** The error of a first-order correlation of n days is {@code sqrt((1 - phi^2) / n)}. */
  private static double worstPersistence(List<Day> days, Normals normals, double added) {
    double worst = 0;
    for (int m = 1; m <= 12; m++) {
      double phi = normals.months().get(m - 1).persistence();
      double[][] pairs = departures(days, normals, m);
      double se = Math.sqrt((1 - phi * phi) / pairs[0].length);
      double found = new PearsonsCorrelation().correlation(pairs[0], pairs[1]);
      worst = Math.max(worst, Math.abs(found - phi - added) / se);
    }
    return worst;
  }

  /** The twin: a persistence that is 0.1 lower is refused. */
  @Test
  void thePersistenceIsTheOneGiven() throws Exception {
    List<Day> days = made(demo());
    assertThat(worstPersistence(days, demo(), 0)).isLessThan(ERRORS);
    assertThat(worstPersistence(days, demo(), -0.1)).isGreaterThan(ERRORS);
  }

  /** Summers and winters of one range, with a tiny one, which a spread of 6 would make cross. */
  @ParameterizedTest(name = "a range of {0}")
  @ValueSource(doubles = {0.1, 1, 12})
  void theMinimumIsNeverAboveTheMaximum(double range) {
    List<Month> months = new ArrayList<>();
    for (int m = 0; m < 12; m++) {
      months.add(new Month(m, m + range, 6, 0.6));
    }
    // Day itself refuses a minimum above the maximum.
    assertThat(WeatherMaker.make(new Normals(months, false), 2001, 20, 1)).hasSize(20 * 365 + 5);
  }

  @Test
  void theSameSeedMakesTheSameDaysAndMoreYearsOnlyAddToThem() throws Exception {
    List<Day> ten = WeatherMaker.make(demo(), 2001, 10, 3);
    assertThat(WeatherMaker.make(demo(), 2001, 10, 3)).isEqualTo(ten);
    assertThat(WeatherMaker.make(demo(), 2001, 12, 3).subList(0, ten.size())).isEqualTo(ten);
    assertThat(WeatherMaker.make(demo(), 2001, 10, 4)).isNotEqualTo(ten);
  }

  @Test
  void theYearsAreWholeLeapDaysIncluded() throws Exception {
    List<Day> days = WeatherMaker.make(demo(), 2003, 2, 1);
    assertThat(days).hasSize(365 + 366);
    assertThat(days.get(0).date()).isEqualTo(LocalDate.of(2003, 1, 1));
    assertThat(days).extracting(Day::date).contains(LocalDate.of(2004, 2, 29));
  }

  /**
   * Spreads of last 0 C frosts from 5,178 stations of NOAA's normals of 1981 to 2010 lie between
   * 9.4 and 17.9 days in eight cases of ten. With given and with default spreads and persistence.
   */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void lastFrostsDifferAsThoseOfRealStationsDo(long seed) throws Exception {
    Normals bare =
        new Normals(
                demo().months().stream()
                    .map(m -> new Month(m.minC(), m.maxC(), 0, Normals.DEFAULT_PERSISTENCE))
                    .toList(),
                false)
            .withDefaultSpreads(List.of(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11));
    for (Normals normals : List.of(demo(), bare)) {
      List<Day> days = WeatherMaker.make(normals, 2001, YEARS, seed);
      FrostRecord record =
          new FrostRecord(
              FrostYears.SPRING, 0, new WeatherRecord(days).yearsCovering(FrostYears.SPRING));
      assertThat(LastFrostFit.of(record).orElseThrow().sdDays()).isBetween(9.4, 17.9);
    }
  }

  /** A course of given monthly means has just these, whatever they are. */
  @Test
  void theCourseOfTheYearHasTheMeansGiven() {
    double[] means = {-5, -4, 0, 5, 11, 15, 16, 14, 12, 5, 1, -6};
    AnnualCycle cycle = new AnnualCycle(means);
    for (int m = 1; m <= 12; m++) {
      LocalDate first = LocalDate.of(2001, m, 1);
      double mean =
          first.datesUntil(first.plusMonths(1)).mapToDouble(cycle::on).average().orElseThrow();
      assertThat(mean).as("month " + m).isCloseTo(means[m - 1], within(1e-9));
    }
  }

  /** The means of a cosine give it back; a line through the months' middles would not. */
  @Test
  void theMeansOfACosineGiveItBack() {
    double[] means = new double[12];
    for (int m = 1; m <= 12; m++) {
      LocalDate first = LocalDate.of(2001, m, 1);
      means[m - 1] =
          first
              .datesUntil(first.plusMonths(1))
              .mapToDouble(d -> 10 - 11 * Math.cos(2 * Math.PI * (d.getDayOfYear() - 20) / 365))
              .average()
              .orElseThrow();
    }
    AnnualCycle cycle = new AnnualCycle(means);
    assertThat(cycle.on(LocalDate.of(2001, 1, 20))).isCloseTo(-1, within(1e-6));
    assertThat(means[0]).isGreaterThan(-0.95);
  }
}
