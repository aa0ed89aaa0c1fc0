package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import umontreal.ssj.probdist.BetaDist;
import umontreal.ssj.probdist.NormalDist;

/** The tabulated inverse of the beta distribution against the direct one. */
class QuantileTableTest {
  /** What the table's own description promises. */
  private static final double PROMISED = 1e-5;

  /** Normal scores compared: a uniform beyond these comes once in a thousand million draws. */
  private static final double WIDEST = 6;

  @ParameterizedTest(name = "the {0}th of {1}")
  @CsvSource({
    "1, 2",
    "1, 10",
    "1, 128",
    "5, 10",
    "36, 37",
    "36, 50",
    "36, 72",
    "64, 65",
    "64, 128",
    "127, 128",
    "100, 288",
    "500, 1000"
  })
  void theOrderOfShowingIsWithinThePromise(int toLeave, int fills) {
    assertThat(worst(toLeave, fills - toLeave + 1, -WIDEST)).isLessThan(PROMISED);
  }

  /** Exact: the last of F uniforms has the quantile {@code u^(1/F)}. */
  @ParameterizedTest(name = "the last of {0}")
  @CsvSource({"1", "10", "36", "64", "128", "288"})
  void theLastToShowIsARootOfItsUniform(int fills) {
    QuantileTable table = new QuantileTable(fills, 1);
    for (int i = -6_000; i <= 6_000; i++) {
      double score = i / 1_000.0;
      double exact = Math.exp(Math.log(NormalDist.cdf01(score)) / fills);
      assertThat(table.at(score)).as("score %s", score).isCloseTo(exact, Offset.offset(PROMISED));
    }
  }

  @ParameterizedTest(name = "Beta({0}, {1})")
  @CsvSource({"85, 15", "90, 10", "340, 60", "850, 150", "45, 5", "8.5, 1.5"})
  void aLotsRateIsWithinThePromise(double up, double down) {
    assertThat(worst(up, down, -WIDEST)).isLessThan(PROMISED);
  }

  @ParameterizedTest(name = "rate {0}, correlation {1}")
  @CsvSource({
    "0.3, 0.02", "0.5, 0.02", "0.8, 0.02", "0.95, 0.02", "0.97, 0.02", "0.3, 0.05", "0.8, 0.05",
    "0.97, 0.05", "0.99, 0.05", "0.3, 0.1", "0.8, 0.1", "0.97, 0.1", "0.3, 0.2", "0.8, 0.2",
    "0.9, 0.2", "0.3, 0.3", "0.5, 0.3", "0.8, 0.3"
  })
  void aTraysRateIsWithinThePromise(double rate, double correlation) {
    double sharpness = (1 - correlation) / correlation;
    assertThat(worst(rate * sharpness, (1 - rate) * sharpness, -WIDEST)).isLessThan(PROMISED);
  }

  /** U- and J-shaped ones bend so sharply that a cubic a quarter wide is a little off. */
  @ParameterizedTest(name = "rate {0}, correlation {1}")
  @CsvSource({"0.99, 0.1", "0.95, 0.2", "0.99, 0.2", "0.9, 0.3", "0.95, 0.3", "0.99, 0.3"})
  void aTraysRateBentIntoACornerIsWithinTwoInTenThousand(double rate, double correlation) {
    double sharpness = (1 - correlation) / correlation;
    assertThat(worst(rate * sharpness, (1 - rate) * sharpness, -WIDEST)).isLessThan(2e-4);
  }

  @ParameterizedTest(name = "mean severity {0}")
  @CsvSource({"0.05", "0.1", "0.4", "0.6", "0.9", "0.95"})
  void anOutbreaksSeverityIsWithinAHundredThousandthOrTen(double mean) {
    assertThat(worst(2 * mean, 2 * (1 - mean), -WIDEST)).isLessThan(1e-4);
  }

  /** The twin of these checks: parameters one percent off do not pass. */
  @Test
  void aTableOfParametersAPercentOffIsRefused() {
    assertThat(worst(new QuantileTable(36 * 1.01, 37), 36, 37, -WIDEST)).isGreaterThan(PROMISED);
    assertThat(worst(new QuantileTable(85 * 1.01, 15), 85, 15, -WIDEST)).isGreaterThan(PROMISED);
    assertThat(worst(new QuantileTable(9.9, 0.1 * 1.01), 9.9, 0.1, -4.5)).isGreaterThan(2e-4);
  }

  /**
   * In the tails the share itself is tiny, so its logit is what counts: a thousandth of it is a
   * thousandth of the share.
   */
  @ParameterizedTest(name = "Beta({0}, {1})")
  @CsvSource({"1, 128", "36, 37", "85, 15", "39.2, 9.8", "1.4, 0.9333"})
  void farOutInTheTailsTheLogitIsWithinAThousandth(double alpha, double beta) {
    QuantileTable table = new QuantileTable(alpha, beta);
    for (double score = 5; score <= 7; score += 0.03125) {
      double low = BetaDist.inverseF(alpha, beta, NormalDist.cdf01(-score));
      double high = BetaDist.inverseF(beta, alpha, NormalDist.cdf01(-score));
      assertThat(table.logitAt(-score))
          .as("score -%s", score)
          .isCloseTo(Math.log(low) - Math.log1p(-low), Offset.offset(1e-3));
      assertThat(table.logitAt(score))
          .as("score %s", score)
          .isCloseTo(Math.log1p(-high) - Math.log(high), Offset.offset(1e-3));
    }
  }

  @Test
  void beyondItsEndsTheTableIsHeld() {
    QuantileTable table = new QuantileTable(36, 37);
    assertThat(table.at(9)).isEqualTo(table.at(7));
    assertThat(table.at(Double.POSITIVE_INFINITY)).isEqualTo(table.at(7));
    assertThat(table.at(-9)).isEqualTo(table.at(-7));
    assertThat(table.at(Double.NEGATIVE_INFINITY)).isEqualTo(table.at(-7));
  }

  @ParameterizedTest(name = "Beta({0}, {1})")
  @CsvSource({"36, 37", "1, 128", "85, 15", "1.4, 0.9333", "2.31, 0.0233", "0.05, 0.05"})
  void aHigherScoreNeverGivesALowerShare(double alpha, double beta) {
    QuantileTable table = new QuantileTable(alpha, beta);
    double before = 0;
    for (int i = -7_000; i <= 7_000; i++) {
      double now = table.at(i / 1_000.0);
      assertThat(now).as("score %d/1000", i).isBetween(before, 1.0);
      before = now;
    }
  }

  @Test
  void successAndFailureAreMirrorImages() {
    QuantileTable up = new QuantileTable(8.5, 1.5);
    QuantileTable down = new QuantileTable(1.5, 8.5);
    for (double score = -6; score <= 6; score += 0.1) {
      assertThat(up.at(score)).isCloseTo(1 - down.at(-score), Offset.offset(1e-9));
    }
  }

  @Test
  void aRowMakesEachTableOnce() {
    QuantileTable.Row row = new QuantileTable.Row(3, i -> new QuantileTable(i + 1, 2));
    assertThat(row.size()).isEqualTo(3);
    assertThat(row.get(1)).isSameAs(row.get(1)).isNotSameAs(row.get(2));
    assertThat(row.get(1).at(0)).isEqualTo(new QuantileTable(2, 2).at(0));
  }

  private static double worst(double alpha, double beta, double from) {
    return worst(new QuantileTable(alpha, beta), alpha, beta, from);
  }

  private static double worst(QuantileTable table, double alpha, double beta, double from) {
    double worst = 0;
    for (double score = from; score <= WIDEST; score += 0.01) {
      worst = Math.max(worst, Math.abs(table.at(score) - direct(alpha, beta, score)));
    }
    return worst;
  }

  /** SSJ's inverse, asked only for its lower half: near 1 it fails where a parameter is small. */
  static double direct(double alpha, double beta, double score) {
    return score <= 0
        ? BetaDist.inverseF(alpha, beta, NormalDist.cdf01(score))
        : 1 - BetaDist.inverseF(beta, alpha, NormalDist.cdf01(-score));
  }
}
