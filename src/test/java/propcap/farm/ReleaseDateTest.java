package propcap.farm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Release dates worked by hand on a record of five years, and against a published frost table. */
class ReleaseDateTest {
  private static final Season TEN_DAYS =
      new Season(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 3, 10));

  /** A year of the record with frosts of -1 C on some days of March, 5 C on the others. */
  private static WeatherYear frosts(int... daysOfMarch) {
    double[] minC = new double[10];
    Arrays.fill(minC, 5);
    for (int day : daysOfMarch) {
      minC[day - 1] = -1;
    }
    return year(minC);
  }

  private static WeatherYear year(double[] minC) {
    double[] maxC = new double[minC.length];
    Arrays.fill(maxC, 12);
    return new WeatherYear(2001, minC, maxC);
  }

  /** Last frosts on 3, 5, 5 and 8 March, and a year with none. */
  private static final List<WeatherYear> FIVE_YEARS =
      List.of(frosts(1, 2, 3), frosts(5), frosts(1, 5), frosts(), frosts(2, 8));

  private static Scenario scenario(Season season, double frostAtC, List<WeatherYear> years) {
    Scenario farm = new Farms().make();
    return new Scenario(
        "frost",
        season,
        frostAtC,
        farm.rounds(),
        farm.places(),
        farm.crops(),
        List.of(),
        years,
        null,
        Labour.NOT_LIMITED);
  }

  private static Optional<LocalDate> release(
      Season season, double frostAtC, List<WeatherYear> years, double risk, int offset) {
    Crops crop = new Crops();
    crop.hardening = new Crop.Hardening(3, 2, -2, 0, 0, risk, offset);
    return scenario(season, frostAtC, years).releaseDate(crop.make());
  }

  private static Optional<LocalDate> release(List<WeatherYear> years, double risk) {
    return release(TEN_DAYS, 0, years, risk, 0);
  }

  /**
   * Years of the five with a frost on or after a day: 4 on 1 to 3 March, 3 on 4 and 5, 1 from 6 to
   * 8, none from 9.
   */
  @ParameterizedTest(name = "a risk of {0}: {1} March")
  @CsvSource({
    "0, 9",
    "0.1, 9",
    "0.1999, 9",
    "0.2, 6",
    "0.4, 6",
    "0.59, 6",
    "0.6, 4",
    "0.79, 4",
    "0.8, 1",
    "1, 1"
  })
  void theReleaseIsTheFirstDayWithNoMoreRiskThanAllowed(double risk, int dayOfMarch) {
    assertThat(release(FIVE_YEARS, risk)).contains(LocalDate.of(2027, 3, dayOfMarch));
  }

  /** A share that is met exactly is within the risk, though 0.29 * 100 is 28.999999999999996. */
  @Test
  void twentyNineYearsInAHundredAreWithinARiskOfTwentyNinePercent() {
    List<WeatherYear> years = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      years.add(i < 29 ? frosts(7) : frosts(4));
    }
    assertThat(release(years, 0.29)).contains(LocalDate.of(2027, 3, 5));
    assertThat(release(years, 0.28)).contains(LocalDate.of(2027, 3, 8));
  }

  @Test
  void theOrderOfTheYearsHasNoPartInIt() {
    List<WeatherYear> turned = new ArrayList<>(FIVE_YEARS);
    Collections.reverse(turned);
    assertThat(release(turned, 0.2)).isEqualTo(release(FIVE_YEARS, 0.2));
  }

  @Test
  void theOffsetMovesTheReleaseBothWays() {
    assertThat(release(TEN_DAYS, 0, FIVE_YEARS, 0.2, 3)).contains(LocalDate.of(2027, 3, 9));
    assertThat(release(TEN_DAYS, 0, FIVE_YEARS, 0.2, -2)).contains(LocalDate.of(2027, 3, 4));
    assertThat(release(TEN_DAYS, 0, FIVE_YEARS, 0.2, -10)).contains(LocalDate.of(2027, 2, 24));
  }

  @Test
  void aRecordWithoutFrostReleasesFromTheFirstDay() {
    assertThat(release(List.of(frosts(), frosts()), 0)).contains(LocalDate.of(2027, 3, 1));
  }

  @Test
  void frostToTheEndOfTheSeasonReleasesNothing() {
    List<WeatherYear> years = List.of(frosts(10), frosts(3));
    assertThat(release(years, 0)).isEmpty();
    assertThat(release(years, 0.49)).isEmpty();
    assertThat(release(years, 0.5)).contains(LocalDate.of(2027, 3, 4));
  }

  @Test
  void aMinimumOfJustFrostAtIsAFrost() {
    double[] minC = {5, 5, -1, 5, 0.5, 5, 5, 5, 5, 5};
    assertThat(release(TEN_DAYS, 0.5, List.of(year(minC)), 0, 0))
        .contains(LocalDate.of(2027, 3, 6));
    assertThat(release(TEN_DAYS, 0.4999, List.of(year(minC)), 0, 0))
        .contains(LocalDate.of(2027, 3, 4));
    assertThat(release(TEN_DAYS, -2, List.of(year(minC)), 0, 0)).contains(LocalDate.of(2027, 3, 1));
  }

  // A made record of 200 years whose last frosts are normal around 25 April.

  private static final Season SPRING =
      new Season(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 6, 30));

  /** Quantiles of a normal around noon of 25 April; the deviation is in days. */
  private static List<WeatherYear> springs(double deviation) {
    NormalDistribution lastFrost = new NormalDistribution(null, 55.5, deviation);
    List<WeatherYear> years = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      double[] minC = new double[SPRING.days()];
      int last = (int) lastFrost.inverseCumulativeProbability((i + 0.5) / 200);
      Arrays.fill(minC, 4);
      Arrays.fill(minC, 0, last + 1, -3);
      years.add(year(minC));
    }
    return years;
  }

  /**
   * Chance of 32 F after a date at Georgetown, Delaware (University of Delaware Research and
   * Education Center). The record is made to its median, with 11.7 days' deviation, the median over
   * 5,178 stations of what NOAA's normals of 1981 to 2010 imply. The table speaks of a freeze after
   * a date, the release of one on or after it: a day is allowed.
   */
  @ParameterizedTest(name = "a risk of {0}: {1}")
  @CsvSource({
    "0.10, 2027-05-10",
    "0.33, 2027-04-30",
    "0.50, 2027-04-25",
    "0.67, 2027-04-20",
    "0.90, 2027-04-10"
  })
  void aRecordLikeGeorgetownsReleasesByItsFrostTable(double risk, LocalDate published) {
    LocalDate found = release(SPRING, 0, springs(11.7), risk, 0).orElseThrow();
    assertThat(found).isBetween(published.minusDays(1), published.plusDays(1));
  }

  /** The twin: a deviation of 14 days for 11.7 misses the table at its ends. */
  @Test
  void aRecordWithLongerSpringsMissesTheTable() {
    LocalDate found = release(SPRING, 0, springs(14), 0.1, 0).orElseThrow();
    assertThat(found).isAfter(LocalDate.of(2027, 5, 11));
  }

  /** Common practice: hardy kinds go out weeks before the last frost, tender ones after it. */
  @Test
  void hardyKindsGoOutBeforeTheTypicalLastFrostAndTenderOnesAfterIt() {
    LocalDate typicalLastFrost = LocalDate.of(2027, 4, 25);
    double risk = Crop.Hardening.DEFAULT_FROST_RISK;
    assertThat(release(SPRING, 0, springs(11.7), risk, -28).orElseThrow())
        .isBefore(typicalLastFrost);
    assertThat(release(SPRING, 0, springs(11.7), risk, 0).orElseThrow()).isAfter(typicalLastFrost);
    assertThat(release(SPRING, 0, springs(11.7), risk, 7).orElseThrow()).isAfter(typicalLastFrost);
  }
}
