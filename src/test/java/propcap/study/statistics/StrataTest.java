package propcap.study.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StrataTest {
  private static final int YEARS = 12;

  /** Numbers of years of means 0 to 11 and of unlike spread, dealt in random orders. */
  private static final class Sample {
    final int[] of;
    final double[] numbers;

    private Sample(int n) {
      of = new int[n];
      numbers = new double[n];
    }

    static Sample of(int n, RandomGenerator random) {
      Sample sample = new Sample(n);
      int[] order = IntStream.range(0, YEARS).toArray();
      for (int i = 0; i < n; i++) {
        int at = i % YEARS;
        int other = at + random.nextInt(YEARS - at);
        int year = order[other];
        order[other] = order[at];
        order[at] = year;
        sample.of[i] = year;
        sample.numbers[i] = year + (1 + year % 4) * random.nextGaussian();
      }
      return sample;
    }
  }

  /** So many years, dealt in turn. */
  private static Strata dealt(int years, int seasons) {
    return Strata.of(IntStream.range(0, seasons).map(i -> i % years).toArray(), years);
  }

  /**
   * By hand: years 1, 2, 3 / 11, 13, 15 / 5, 5, 8 have variances 1, 4 and 3 about means 2, 13 and
   * 6. The variance of the mean is their mean, 8/3, by the nine numbers.
   */
  @Test
  void theErrorIsThatWithinTheYears() {
    Strata.MeanError error = dealt(3, 9).error(new double[] {1, 11, 5, 2, 13, 5, 3, 15, 8});
    assertThat(error.variance()).isCloseTo(8 / 3.0, within(1e-12));
    assertThat(error.se()).isCloseTo(Math.sqrt(8 / 27.0), within(1e-12));
    // Welch: 64 / ((1 + 16 + 9) / 4) - 2 = 7.85, and no more than 9 - 3.
    assertThat(error.freedom()).isEqualTo(6);
  }

  @Test
  void aYearThatAloneDiffersHasTheFreedomOfItsOwnNumbers() {
    double[] numbers = {1, 0, 0, 4, 0, 0, 2, 0, 0, 5, 0, 0};
    // One year of four: s^4 / (s^4 / 5) - 2.
    assertThat(dealt(3, 12).error(numbers).freedom()).isCloseTo(3, within(1e-12));
  }

  @Test
  void ofOneYearItIsTheOrdinaryError() {
    Strata.MeanError error = Strata.one(4).error(new double[] {1, 2, 3, 6});
    assertThat(error.se()).isCloseTo(Math.sqrt(14 / 3.0 / 4), within(1e-12));
    assertThat(error.freedom()).isEqualTo(3);
  }

  @Test
  void whereYearsCameTooSeldomAllCountAsOfOne() {
    double[] numbers = {1, 11, 5, 2, 13, 5};
    assertThat(dealt(3, 6).error(numbers)).isEqualTo(Strata.one(6).error(numbers));
  }

  @Test
  void whereOnlyTheYearDecidesTheErrorIsTheOrdinaryOne() {
    double[] numbers = {1, 11, 5, 1, 11, 5, 1, 11, 5};
    assertThat(dealt(3, 9).error(numbers)).isEqualTo(Strata.one(9).error(numbers));
    assertThat(Strata.one(3).error(new double[] {7, 7, 7}).se()).isZero();
  }

  @Test
  void asManyNumbersAsSeasonsAreWanted() {
    assertThatIllegalArgumentException().isThrownBy(() -> dealt(3, 9).means(new double[8]));
  }

  /**
   * Years of means 0 to 11 and of unlike spread, dealt in random orders, in whole blocks and not:
   * of 2,000 samples the interval holds the mean as often as it says, within three standard errors
   * (95 % by 1.5 %), and the variance told is on average that of the means. The twin that takes all
   * for drawn at random has far too wide an interval where blocks are whole.
   */
  @ParameterizedTest
  @ValueSource(ints = {36, 60, 101, 111, 240, 247})
  void intervalsHoldAsOftenAsTheySayInBlocksThatAreWholeAndNot(int n) {
    int samples = 2000;
    RandomGenerator random = new Well19937c(n);
    int held = 0;
    int heldByTwin = 0;
    double told = 0;
    double seen = 0;
    for (int k = 0; k < samples; k++) {
      Sample sample = Sample.of(n, random);
      double[] numbers = sample.numbers;
      Strata.MeanError error = Strata.of(sample.of, YEARS).error(numbers);
      double off = Samples.mean(numbers) - 5.5;
      double t = new TDistribution(null, error.freedom()).inverseCumulativeProbability(.975);
      held += Math.abs(off) <= t * error.se() ? 1 : 0;
      heldByTwin += Math.abs(off) <= 1.96 * Strata.one(n).error(numbers).se() ? 1 : 0;
      told += error.se() * error.se() / samples;
      seen += off * off / samples;
    }
    assertThat(held / (double) samples).isBetween(.935, .965);
    // The variance of 2,000 squares is 2 in 2,000: three standard errors are 9.5 %.
    assertThat(told / seen).isBetween(.9, 1.1);
    assertThat(heldByTwin / (double) samples).isGreaterThan(.975);
  }

  /** Fewer than three of each year count as drawn at random, which is never too narrow. */
  @ParameterizedTest
  @ValueSource(ints = {5, 12, 17, 24, 35})
  void whereYearsCameTooSeldomIntervalsAreNotTooNarrow(int n) {
    RandomGenerator random = new Well19937c(n);
    int held = 0;
    for (int k = 0; k < 2000; k++) {
      Sample sample = Sample.of(n, random);
      Strata.MeanError error = Strata.of(sample.of, YEARS).error(sample.numbers);
      double t = new TDistribution(null, error.freedom()).inverseCumulativeProbability(.975);
      held += Math.abs(Samples.mean(sample.numbers) - 5.5) <= t * error.se() ? 1 : 0;
    }
    assertThat(held / 2000.0).isGreaterThan(.935);
  }
}
