package propcap.study.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import propcap.study.Stats;

class SamplesTest {
  /**
   * Ten delays of a bank's customers: Law, Simulation Modeling and Analysis, chapter 4, where their
   * mean is 2.03, their variance 0.31 and the 90 % interval 2.03 +/- 0.32.
   */
  private static final Samples DELAYS =
      Samples.of(
          new double[] {1.53, 1.66, 1.24, 2.34, 2.00, 1.69, 2.69, 2.86, 1.70, 2.60},
          Strata.one(10));

  @Test
  void theBanksDelaysHaveTheMeanAndErrorOfTheTextbook() {
    assertThat(DELAYS.mean()).isCloseTo(2.031, within(1e-12));
    assertThat(10 * Math.pow(DELAYS.standardError(), 2)).isCloseTo(.3091, within(5e-5));
    // Student's t of 9 degrees of freedom is 1.833 at 90 %.
    assertThat(1.833 * DELAYS.standardError()).isCloseTo(.32, within(.005));
  }

  /** The same at 95 %, where Student's t of 9 degrees of freedom is 2.262 in any table. */
  @Test
  void theHalfWidthIsStudentsAt95Percent() {
    assertThat(DELAYS.halfWidth()).isCloseTo(2.262 * Math.sqrt(.3091 / 10), within(2e-4));
    assertThat(DELAYS.halfWidth()).isNotCloseTo(1.96 * Math.sqrt(.3091 / 10), within(2e-4));
  }

  @Test
  void aSingleSeasonHasNoErrorAndAnEndlessHalfWidth() {
    Samples one = Samples.of(new double[] {7}, Strata.one(1));
    assertThat(one.standardError()).isZero();
    assertThat(one.halfWidth()).isInfinite();
    assertThat(one.stat()).isEqualTo(Stats.always(7, 1));
  }

  /**
   * Hyndman and Fan (1996), The American Statistician 50, type 7: of 1 to 10 the tenth lies at 1 +
   * 9 / 10 = 1.9. Their type 6 would have 1.1, their type 5 1.5.
   */
  @Test
  void quantilesAreOfTypeSevenWhateverTheOrder() {
    double[] shuffled = {7, 1, 10, 3, 9, 2, 8, 4, 6, 5};
    Stat stat = Samples.of(shuffled, Strata.one(10)).stat();
    assertThat(stat.p10()).isCloseTo(1.9, within(1e-12));
    assertThat(stat.p50()).isCloseTo(5.5, within(1e-12));
    assertThat(stat.p90()).isCloseTo(9.1, within(1e-12));
  }

  @Test
  void theGivenArrayMayChangeAfterwards() {
    double[] given = {1, 2, 3};
    Samples samples = Samples.of(given, Strata.one(3));
    given[0] = 100;
    assertThat(samples.mean()).isEqualTo(2);
  }
}
