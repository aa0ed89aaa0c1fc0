package propcap.study.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeanLimitsTest {
  /** So many ones, the rest nought. */
  private static double[] ones(int ones, int of) {
    return IntStream.range(0, of).mapToDouble(i -> i < ones ? 1 : 0).toArray();
  }

  private static Optional<MeanLimits> of(double[] numbers, double confidence) {
    return MeanLimits.of(numbers, Strata.one(numbers.length), confidence);
  }

  private static MeanLimits within01(double[] numbers, double confidence) {
    return MeanLimits.within(numbers, Strata.one(numbers.length), 0, 1, confidence);
  }

  /** Numbers as far above their mean as below have no skewness; t of 9 is 2.262 in any table. */
  @Test
  void evenNumbersHaveStudentsLimits() {
    double[] even = IntStream.rangeClosed(1, 10).asDoubleStream().toArray();
    MeanLimits limits = of(even, .95).orElseThrow();
    double se = Math.sqrt(82.5 / 9 / 10);
    assertThat(limits.low()).isCloseTo(5.5 - 2.262 * se, within(.001));
    assertThat(limits.high()).isCloseTo(5.5 + 2.262 * se, within(.001));
  }

  @Test
  void ofSkewedNumbersTheLimitOnTheSideOfTheTailIsFartherThanStudents() {
    MeanLimits limits = of(ones(8, 100), .95).orElseThrow();
    double student = 1.984 * Math.sqrt(.08 * .92 / 99);
    assertThat(limits.high()).isGreaterThan(.08 + 1.2 * student);
    assertThat(limits.low()).isCloseTo(.08 - student, within(1e-4));
    // Turned round, so are the limits.
    double[] turned = Arrays.stream(ones(8, 100)).map(x -> -x).toArray();
    MeanLimits back = of(turned, .95).orElseThrow();
    assertThat(back.low()).isCloseTo(-limits.high(), within(1e-12));
    assertThat(back.high()).isCloseTo(-limits.low(), within(1e-12));
  }

  @Test
  void higherConfidenceIsFartherOut() {
    double[] numbers = ones(8, 100);
    assertThat(of(numbers, .999).orElseThrow().high())
        .isGreaterThan(of(numbers, .95).orElseThrow().high());
  }

  /** T + a T^2 / 3 + a^2 T^3 / 27 + a / 6 is normal: the way back must give the same. */
  @ParameterizedTest
  @CsvSource({"1.96, .2", "-1.96, .2", "3.3, 1", "-3.3, 1", "2, -.7", "-2, -.7", "1, 1e-5"})
  void hallsTransformationIsUndone(double normal, double a) {
    double t = MeanLimits.untransformed(normal, a);
    assertThat(t + a * t * t / 3 + a * a * t * t * t / 27 + a / 6).isCloseTo(normal, within(1e-9));
  }

  @Test
  void withoutSkewnessNothingIsTransformed() {
    assertThat(MeanLimits.untransformed(1.96, 0)).isEqualTo(1.96);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 4, 96, 99, 100})
  void ofWhatIsNearlyAlwaysTheSameNothingIsTold(int ones) {
    assertThat(of(ones(ones, 100), .95)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 50, 95})
  void ofWhatIsSeenOftenerLimitsAreTold(int ones) {
    assertThat(of(ones(ones, 100), .95)).isPresent();
  }

  /** Of three numbers all are others than the first; that is not seldom. */
  @Test
  void aFewNumbersThatAllDifferHaveLimits() {
    assertThat(of(new double[] {1, 2, 4}, .95)).isPresent();
    assertThat(of(new double[] {1, 2}, .95)).isPresent();
    assertThat(of(new double[] {7}, .95)).isEmpty();
  }

  /**
   * Between 0 and 1 with 3 of 100 at 1: no more than 8.5 % are at 1, the limit of Clopper and
   * Pearson, and at worst all of those others are at an end.
   */
  @Test
  void whatCannotLeaveItsEndsHasLimitsHoweverAlikeItIs() {
    MeanLimits few = within01(ones(3, 100), .95);
    assertThat(few.low()).isZero();
    assertThat(few.high()).isCloseTo(.0852, within(.0001));
    double[] always = new double[100];
    Arrays.fill(always, .9);
    MeanLimits alike = within01(always, .95);
    double other = 1 - Math.pow(.025, .01);
    assertThat(alike.low()).isCloseTo(.9 - .9 * other, within(1e-9));
    assertThat(alike.high()).isCloseTo(.9 + .1 * other, within(1e-9));
  }

  @Test
  void limitsNeverLeaveTheEnds() {
    assertThat(within01(ones(6, 100), .9999).low()).isZero();
  }

  /**
   * 88 of 100: 79.976 to 93.643 %, computed apart from this code from the formula of Clopper and
   * Pearson. None of n is at most 1 - .025^(1 / n).
   */
  @Test
  void aChanceHasTheLimitsOfClopperAndPearson() {
    MeanLimits limits = MeanLimits.ofChance(88, 100, .95);
    assertThat(limits.low()).isCloseTo(.79976, within(5e-6));
    assertThat(limits.high()).isCloseTo(.93643, within(5e-6));
    assertThat(MeanLimits.ofChance(0, 50, .95).low()).isZero();
    assertThat(MeanLimits.ofChance(0, 50, .95).high())
        .isCloseTo(1 - Math.pow(.025, 1 / 50.0), within(1e-8));
    assertThat(MeanLimits.ofChance(50, 50, .95).high()).isEqualTo(1);
  }
}
