package propcap.study.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;

class PairedTest {
  /**
   * Monthly costs of two (s, S) policies, five replications each: Law, Simulation Modeling and
   * Analysis, chapter on comparing alternatives, where the paired 90 % interval of the first less
   * the second is [1.65, 8.31]. The data are quoted from memory; that the interval comes out of
   * them to all its digits vouches for them.
   */
  private static final double[] POLICY_1 = {126.97, 124.31, 126.68, 122.66, 127.23};

  private static final double[] POLICY_2 = {118.21, 120.22, 122.45, 122.68, 119.40};

  private static final Strata FIVE = Strata.one(5);

  @Test
  void theTwoPoliciesHaveTheIntervalOfTheTextbook() {
    Difference d = Paired.difference(POLICY_2, POLICY_1, FIVE, true, .90, 1);
    assertThat(d.mean()).isCloseTo(4.98, within(.005));
    assertThat(d.low()).isCloseTo(1.65, within(.005));
    assertThat(d.high()).isCloseTo(8.31, within(.005));
    assertThat(d.low()).isPositive();
    // Five are too few to rely on it where most seasons do not differ.
    assertThat(d.isTold()).isFalse();
    assertThat(d.isClear()).isFalse();
  }

  /** The textbook's Welch interval of the same data, [2.66, 7.30], forgets the pairs. */
  @Test
  void theIntervalIsNotTheOneOfTwoSeparateRuns() {
    Difference d = Paired.difference(POLICY_2, POLICY_1, FIVE, true, .90, 1);
    assertThat(d.low()).isNotCloseTo(2.66, within(.5));
    assertThat(d.high()).isNotCloseTo(7.30, within(.5));
  }

  /** Five at 95 % together are each at 99 %, where Student's t of 4 is 4.604 in any table. */
  @Test
  void manyIntervalsTogetherAreWiderByBonferroni() {
    Difference one = Paired.difference(POLICY_2, POLICY_1, FIVE, true, .99, 1);
    Difference ofFive = Paired.difference(POLICY_2, POLICY_1, FIVE, true, .95, 5);
    assertThat(ofFive.halfWidth()).isCloseTo(one.halfWidth(), within(1e-9));
    assertThat(ofFive.halfWidth() / ofFive.se()).isCloseTo(4.604, within(.0005));
    assertThat(ofFive.low()).isNegative();
  }

  @Test
  void theOtherWayRoundTheDifferenceIsTheSameWithTheOtherSign() {
    Difference there = Paired.difference(POLICY_1, POLICY_2, FIVE, true, .95, 2);
    Difference back = Paired.difference(POLICY_2, POLICY_1, FIVE, true, .95, 2);
    assertThat(there.mean()).isEqualTo(-back.mean());
    assertThat(there.halfWidth()).isEqualTo(back.halfWidth());
    assertThat(there.narrowing()).isEqualTo(back.narrowing());
  }

  @Test
  void aSeasonIsAheadWhereItIsBetterAndATieIsNot() {
    double[] first = {5, 5, 5, 5, 5};
    double[] second = {6, 7, 5, 4, 8};
    assertThat(
            Paired.difference(first, second, Strata.one(first.length), true, .95, 1).shareAhead())
        .isEqualTo(.6);
    assertThat(
            Paired.difference(first, second, Strata.one(first.length), false, .95, 1).shareAhead())
        .isEqualTo(.2);
  }

  /**
   * Variances 5/3 and 4/3, of the differences 1, 0, 1, 0 1/3: apart the interval would be sqrt((5/3
   * + 4/3) / (1/3)) = 3 times as wide.
   */
  @Test
  void pairingNarrowsByTheRootOfTheVariances() {
    Difference d =
        Paired.difference(
            new double[] {1, 2, 3, 4}, new double[] {2, 2, 4, 4}, Strata.one(4), true, .95, 1);
    assertThat(d.mean()).isEqualTo(.5);
    assertThat(d.se()).isCloseTo(Math.sqrt(1 / 12.0), within(1e-12));
    assertThat(d.narrowing()).isCloseTo(3, within(1e-12));
  }

  @Test
  void seasonsThatGoAgainstEachOtherMakePairingWiden() {
    // Variances 2 and 2, of the differences 8.
    Difference d =
        Paired.difference(new double[] {1, 3}, new double[] {3, 1}, Strata.one(2), true, .95, 1);
    assertThat(d.narrowing()).isCloseTo(Math.sqrt(.5), within(1e-12));
  }

  @Test
  void identicalSeriesDifferByExactlyNothing() {
    assertThat(Paired.difference(POLICY_1, POLICY_1.clone(), FIVE, true, .95, 3))
        .isEqualTo(Difference.NONE);
    assertThat(Paired.difference(POLICY_1, POLICY_1.clone(), FIVE, true, .95, 3).isClear())
        .isFalse();
  }

  @Test
  void aDifferenceThatIsAlwaysTheSameHasNoIntervalToBeNarrowed() {
    Difference d =
        Paired.difference(new double[] {1, 5}, new double[] {3, 7}, Strata.one(2), true, .95, 1);
    assertThat(d).isEqualTo(new Difference(2, 0, 0, 1, null, 2));
  }

  @Test
  void ofOneSeasonNoDifferenceIsTold() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                Paired.difference(new double[] {1}, new double[] {2}, Strata.one(1), true, .95, 1))
        .withMessage("a difference takes two seasons or more, not 1");
  }

  /**
   * Hall (1988), table 1, as Owen (2025, arXiv 2501.07645) tells it: the coverage of a 95 %
   * interval by Student's t is off by (0.14 kurtosis - 2.12 skewness^2) phi(z) / n, and so many
   * standard errors more each way take half of that over phi(z) to mend.
   */
  @Test
  void skewnessIsPaidForByTheFormulaOfTheLiterature() {
    double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(.975);
    assertThat(1000 * Paired.forShape(1, 0, z, 1000)).isCloseTo(2.12, within(.005));
    assertThat(1000 * (Paired.forShape(1, 0, z, 1000) - Paired.forShape(1, 1, z, 1000)))
        .isCloseTo(.14, within(.005));
    assertThat(Paired.forShape(0, 5, z, 1000)).isZero();
  }

  /**
   * Gains of one season in five, exponential, of mean 0.2: by Student's t alone 4,000 intervals of
   * 100 seasons, 20 at 95 % together, miss some 2 % (measured by simulation); each may miss 0.25 %.
   * Four standard errors of 4,000 at 0.25 % are 0.32 %.
   */
  @Test
  void rareGainsAreCoveredAsOftenAsIsSaid() {
    RandomGenerator random = new Well19937c(4);
    int missed = 0;
    int missedByStudent = 0;
    double t = new TDistribution(null, 99).inverseCumulativeProbability(1 - .05 / 40);
    double[] nothing = new double[100];
    for (int i = 0; i < 4000; i++) {
      double[] gains = new double[100];
      for (int s = 0; s < gains.length; s++) {
        gains[s] = random.nextDouble() < .2 ? -Math.log(1 - random.nextDouble()) : 0;
      }
      Difference d = Paired.difference(nothing, gains, Strata.one(nothing.length), true, .95, 20);
      missed += d.low() > .2 || d.high() < .2 ? 1 : 0;
      missedByStudent += Math.abs(d.mean() - .2) > t * d.se() ? 1 : 0;
    }
    assertThat(missed / 4000.0).isLessThan(.0025 + .0032);
    assertThat(missedByStudent / 4000.0).isGreaterThan(.0025 + .0064);
  }

  @Test
  void aDifferenceThatFewSeasonsShowIsNotTold() {
    double[] first = new double[1000];
    double[] second = new double[1000];
    for (int s = 0; s < Difference.TOLD_FROM - 1; s++) {
      second[50 * s] = 3;
    }
    Difference few = Paired.difference(first, second, Strata.one(first.length), true, .95, 1);
    assertThat(few.low()).isPositive();
    assertThat(few.differing()).isEqualTo(Difference.TOLD_FROM - 1);
    assertThat(few.isTold()).isFalse();
    assertThat(few.isMore()).isFalse();
    second[999] = 3;
    assertThat(Paired.difference(first, second, Strata.one(first.length), true, .95, 1).isMore())
        .isTrue();
  }
}
