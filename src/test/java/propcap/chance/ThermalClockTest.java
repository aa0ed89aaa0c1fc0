package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.random.Well19937c;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ThermalClockTest {
  /** By 00:00 of each day: 0, 10, 10, 10, 14, 22. Days 1 and 2 have no warmth. */
  private final ThermalClock clock = new ThermalClock(new double[] {10, 0, 0, 4, 8});

  @Test
  void warmthAddsUpEvenlyWithinADay() {
    assertThat(clock.at(0)).isZero();
    assertThat(clock.at(0.25)).isEqualTo(2.5);
    assertThat(clock.at(1)).isEqualTo(10);
    assertThat(clock.at(2.5)).isEqualTo(10);
    assertThat(clock.at(3.5)).isEqualTo(12);
    assertThat(clock.at(4.75)).isEqualTo(20);
  }

  @Test
  void afterTheSeasonNoWarmthIsAdded() {
    assertThat(clock.at(5)).isEqualTo(22);
    assertThat(clock.at(400)).isEqualTo(22);
  }

  @Test
  void aSumIsReachedWithinItsDay() {
    assertThat(clock.when(2.5)).isEqualTo(0.25);
    assertThat(clock.when(12)).isEqualTo(3.5);
    assertThat(clock.when(20)).isEqualTo(4.75);
  }

  @Test
  void aSumReachedOnTheStrokeOfMidnightIsReachedThen() {
    assertThat(clock.when(14)).isEqualTo(4);
    assertThat(clock.when(22)).isEqualTo(5);
  }

  /** 10 degree days stand from the end of day 0 to the end of day 2. */
  @Test
  void ofDaysWithoutWarmthTheFirstMomentCounts() {
    assertThat(clock.when(10)).isEqualTo(1);
    assertThat(clock.when(Math.nextUp(10.0))).isGreaterThanOrEqualTo(3).isLessThan(3.001);
  }

  @Test
  void aSumOfNothingIsThereFromTheStart() {
    assertThat(clock.when(0)).isZero();
    assertThat(new ThermalClock(new double[] {0, 0, 3}).when(0)).isZero();
  }

  @Test
  void whatTheSeasonDoesNotBringIsNeverReached() {
    assertThat(clock.when(22.001)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(clock.when(Double.POSITIVE_INFINITY)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(new ThermalClock(new double[] {0, 0}).when(0.1)).isEqualTo(Double.POSITIVE_INFINITY);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15})
  void theClockAgreesWithAddingUpDayByDay(long seed) {
    Well19937c chance = new Well19937c(seed);
    double[] rates = new double[120];
    for (int d = 0; d < rates.length; d++) {
      rates[d] = chance.nextDouble() < 0.3 ? 0 : 15 * chance.nextDouble();
    }
    ThermalClock random = new ThermalClock(rates);
    for (int i = 0; i < 500; i++) {
      double t = 130 * chance.nextDouble();
      assertThat(random.at(t)).isCloseTo(slowSum(rates, t), Offset.offset(1e-9));
      double sum = slowSum(rates, 120) * chance.nextDouble();
      double when = random.when(sum);
      assertThat(slowSum(rates, when)).isCloseTo(sum, Offset.offset(1e-9));
      assertThat(slowSum(rates, when - 1e-6)).isLessThan(sum);
    }
  }

  private static double slowSum(double[] rates, double t) {
    double sum = 0;
    for (int d = 0; d < rates.length; d++) {
      sum += rates[d] * Math.max(0, Math.min(1, t - d));
    }
    return sum;
  }
}
