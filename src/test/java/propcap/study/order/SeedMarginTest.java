package propcap.study.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Crop.Germination;

/** How many to sow, held against exact sums written another way. */
class SeedMarginTest {
  private static SeedMargin sure(double rate) {
    return new SeedMargin(new Germination(rate, 0, 0), 1);
  }

  /**
   * Sowing table for independent seeds at 95 %, with the chance of the plain quotient beside it:
   * computed for the project apart from its code, to the seed.
   */
  @ParameterizedTest
  @CsvSource({
    "100, 0.80, 135, 125, 0.553",
    "100, 0.90, 117, 112, 0.672",
    "500, 0.85, 605, 589, 0.558",
    "1000, 0.80, 1279, 1250, 0.517"
  })
  void theSowingTableComesOut(int plants, double rate, int seeds, int naive, double chance) {
    assertThat(sure(rate).cells(plants, 0.95)).hasValue(seeds);
    assertThat(sure(rate).chance(naive, plants)).isCloseTo(chance, within(0.0005));
  }

  /** For one plant the table is a formula: the least n with (1 - p)^n no more than 1 - chance. */
  @ParameterizedTest
  @CsvSource({"0.5, 4", "0.6, 3", "0.62, 3", "0.75, 2", "0.9, 1", "0.2, 11", "0.05, 45"})
  void onePlantIsTheLogarithmsRule(double rate, int seeds) {
    assertThat(Math.ceil(Math.log(0.1) / Math.log(1 - rate) - 1e-9)).isEqualTo(seeds);
    assertThat(sure(rate).cells(1, 0.9)).hasValue(seeds);
  }

  @ParameterizedTest
  @CsvSource({"20, 0.7", "75, 0.85", "300, 0.92", "7, 0.35"})
  void theAnswerIsTheLeastThatIsEnough(int plants, double rate) {
    int cells = sure(rate).cells(plants, 0.9).orElseThrow();
    assertThat(binomialAtLeast(plants, cells, rate)).isGreaterThanOrEqualTo(0.9);
    assertThat(binomialAtLeast(plants, cells - 1, rate)).isLessThan(0.9);
  }

  /** By logarithms of factorials, term by term. */
  private static double binomialAtLeast(int plants, int cells, double p) {
    double sum = 0;
    for (int k = plants; k <= cells; k++) {
      sum += Math.exp(logChoose(cells, k) + k * Math.log(p) + (cells - k) * Math.log(1 - p));
    }
    return sum;
  }

  private static double logChoose(int n, int k) {
    return Gamma.logGamma(n + 1) - Gamma.logGamma(k + 1) - Gamma.logGamma(n - k + 1);
  }

  /** With one seed a cell the sum over the lot's rate has a closed form: the beta-binomial. */
  @ParameterizedTest
  @CsvSource({"100, 0.8, 100", "500, 0.85, 50", "60, 0.7, 200"})
  void aRateThatIsNotSureIsBetaBinomial(int plants, double rate, int tested) {
    SeedMargin margin = new SeedMargin(new Germination(rate, tested, 0), 1);
    int cells = margin.cells(plants, 0.9).orElseThrow();
    double exact = betaBinomialAtLeast(plants, cells, rate * tested, (1 - rate) * tested);
    assertThat(margin.chance(cells, plants)).isCloseTo(exact, within(0.002));
    assertThat(cells).isGreaterThan(sure(rate).cells(plants, 0.9).orElseThrow());
  }

  private static double betaBinomialAtLeast(int plants, int cells, double a, double b) {
    double sum = 0;
    for (int k = plants; k <= cells; k++) {
      sum +=
          Math.exp(logChoose(cells, k) + Beta.logBeta(k + a, cells - k + b) - Beta.logBeta(a, b));
    }
    return sum;
  }

  /** 1 - (1 - 0.6)^2 = 0.84. */
  @Test
  void twoSeedsACellFillAsOneBetterSeed() {
    SeedMargin two = new SeedMargin(new Germination(0.6, 0, 0), 2);
    assertThat(two.cells(200, 0.9)).isEqualTo(sure(0.84).cells(200, 0.9));
    assertThat(two.cells(200, 0.9)).isNotEqualTo(sure(0.80).cells(200, 0.9));
  }

  @Test
  void nothingNeededTakesNothingAndDeadSeedNeverDoes() {
    assertThat(sure(0.8).cells(0, 0.9)).hasValue(0);
    assertThat(sure(1).cells(40, 0.9)).hasValue(40);
    assertThat(sure(0).cells(1, 0.9)).isEmpty();
  }
}
