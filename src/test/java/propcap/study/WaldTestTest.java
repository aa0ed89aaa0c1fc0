package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.study.Sizing.Found;

/** Wald (1945), "Sequential Tests of Statistical Hypotheses", Annals of Math. Statistics 16. */
class WaldTestTest {
  private static final int TRIES = 2000;
  private static final double ERROR = .05;

  /** 3 standard errors: a test that errs just as often as stated oversteps it once in 740. */
  private static final double LIMIT = ERROR + 3 * Math.sqrt(ERROR * (1 - ERROR) / TRIES);

  private long observations;

  /** Share of tests of a chance that do not say so. */
  private double shareWithout(Found wanted, double goal, double indifference, double chance) {
    SplittableRandom random = new SplittableRandom(41);
    int without = 0;
    for (int i = 0; i < TRIES; i++) {
      WaldTest test = new WaldTest(goal, indifference, ERROR);
      while (test.found() == Found.NEAR) {
        test.add(random.nextDouble() < chance);
        observations++;
      }
      without += test.found() == wanted ? 0 : 1;
    }
    return without / (double) TRIES;
  }

  @ParameterizedTest
  @CsvSource({".9, .02", ".5, .05", ".2, .03", ".99, .02", ".01, .02"})
  void aChanceOffTheGoalByTheIndifferenceIsToldAsPromised(double goal, double indifference) {
    // Near 0 and 100 % the zone ends half way to them.
    double high = Math.min(goal + indifference, (1 + goal) / 2);
    double low = Math.max(goal - indifference, goal / 2);
    assertThat(shareWithout(Found.HOLDS, goal, indifference, high)).isLessThanOrEqualTo(LIMIT);
    assertThat(shareWithout(Found.FAILS, goal, indifference, low)).isLessThanOrEqualTo(LIMIT);
  }

  @ParameterizedTest
  @CsvSource({".9, .02", ".5, .05", ".2, .03"})
  void aChanceOffByAQuarterOfItIsToldWronglyMoreOften(double goal, double indifference) {
    assertThat(shareWithout(Found.HOLDS, goal, indifference, goal + indifference / 4))
        .isGreaterThan(LIMIT);
    assertThat(shareWithout(Found.FAILS, goal, indifference, goal - indifference / 4))
        .isGreaterThan(LIMIT);
  }

  /**
   * Wald's approximation: the bound, ln(19) = 2.944, over the mean evidence of an observation. At a
   * chance of 50 %, for a goal of 90 % +/- 2, that is (ln(.92/.88) + ln(.08/.12)) / 2 = -.1805 and
   * 16.3 observations; what the last one oversteps the bound by, at most ln(.12/.08) = .405, adds
   * at most 2.25. The limits give 5 standard errors more (the count's deviation is 4.8: .11 each).
   */
  @Test
  void farFromTheGoalItTakesAsFewAsWaldSays() {
    assertThat(shareWithout(Found.FAILS, .9, .02, .5)).isZero();
    assertThat(observations / (double) TRIES).isBetween(16.3 - .6, 16.3 + 2.25 + .6);
  }

  /** 2.944 / ln(.92/.88) = 66.2: the 67th yes in a row tells. */
  @Test
  void nothingButYesIsToldAtTheFirstThatReachesTheBound() {
    WaldTest test = new WaldTest(.9, .02, ERROR);
    for (int i = 0; i < 66; i++) {
      test.add(true);
    }
    assertThat(test.found()).isEqualTo(Found.NEAR);
    test.add(true);
    assertThat(test.found()).isEqualTo(Found.HOLDS);
  }

  @Test
  void whatIsToldStaysTold() {
    WaldTest test = new WaldTest(.9, .02, ERROR);
    for (int i = 0; i < 67; i++) {
      test.add(true);
    }
    for (int i = 0; i < 1000; i++) {
      test.add(false);
    }
    assertThat(test.found()).isEqualTo(Found.HOLDS);
  }
}
