package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Points drawn against distributions that are known. */
class TemperedDrawsTest {
  /** Three normal figures that have nothing to do with each other. */
  private static double before(double[] x) {
    return -(x[0] * x[0] + x[1] * x[1] + x[2] * x[2]) / 2;
  }

  private static TemperedDraws held(ToDoubleFunction<double[]> logLikelihood) {
    return TemperedDraws.of(
        TemperedDrawsTest::before, logLikelihood, new double[] {0, 0, 0}, new double[] {1, 1, 1});
  }

  private static double normal(double x, double sd) {
    return -x * x / (2 * sd * sd);
  }

  /**
   * Three normal figures, of which the sum of two was measured as 1, with an error of 0.1: each of
   * the two is normal with mean 1/2.01 and variance 1 - 1/2.01, and the third as it was.
   */
  @Test
  void aMeasuredSumIsTheNormalAnswer() {
    TemperedDraws draws = held(x -> normal(x[0] + x[1] - 1, 0.1));
    double sd = Math.sqrt(1 - 1 / 2.01);
    for (int f : new int[] {0, 1}) {
      WeightedPoints figure = draws.of(x -> x[f]);
      // Some 500 points of their own: a thirtieth of the standard deviation and more.
      assertThat(figure.mean()).isCloseTo(1 / 2.01, within(0.06));
      assertThat(figure.quantile(0.975)).isCloseTo(1 / 2.01 + 1.95996 * sd, within(0.15));
      assertThat(figure.quantile(0.025)).isCloseTo(1 / 2.01 - 1.95996 * sd, within(0.15));
    }
    assertThat(draws.of(x -> x[2]).quantile(0.975)).isCloseTo(1.95996, within(0.2));
    WeightedPoints sum = draws.of(x -> x[0] + x[1]);
    assertThat(sum.mean()).isCloseTo(2 / 2.01, within(0.01));
    assertThat(sum.quantile(0.975) - sum.quantile(0.025))
        .isCloseTo(2 * 1.95996 * Math.sqrt(2 * 0.01 / 2.01), within(0.03));
  }

  /** A hundred times as sure as before, far off: it is let in bit by bit. */
  @Test
  void whatIsFarFromWhatWasBelievedIsFound() {
    TemperedDraws draws = held(x -> normal(x[0] - 8, 0.01) + normal(x[1] + 5, 0.01));
    WeightedPoints figure = draws.of(x -> x[0]);
    assertThat(figure.mean()).isCloseTo(8 / 1.0001, within(0.001));
    assertThat(figure.quantile(0.975) - figure.quantile(0.025))
        .isCloseTo(2 * 1.95996 * 0.01, within(0.001));
  }

  /** Two hills as likely as each other, one three times as narrow as the other. */
  @Test
  void whatLiesInTwoPlacesIsFoundInBoth() {
    TemperedDraws draws =
        held(
            x -> {
              double flat = x[0] * x[0] / 2;
              double wide = Math.exp(normal(x[0] - 1.5, 0.3)) / 0.3;
              double narrow = Math.exp(normal(x[0] + 1.5, 0.1)) / 0.1;
              return flat + Math.log(wide + narrow + 1e-300);
            });
    WeightedPoints figure = draws.of(x -> x[0]);
    assertThat(figure.mean()).isCloseTo(0, within(0.15));
    assertThat(figure.quantile(0.25)).isCloseTo(-1.5, within(0.04));
    assertThat(figure.quantile(0.75)).isCloseTo(1.5, within(0.06));
  }

  @Test
  void theSameGivesTheSame() {
    ToDoubleFunction<double[]> curved = x -> normal(x[1] - x[0] * x[0], 0.2);
    WeightedPoints first = held(curved).of(x -> x[1]);
    WeightedPoints again = held(curved).of(x -> x[1]);
    assertThat(again.mean()).isEqualTo(first.mean());
    assertThat(again.quantile(0.025)).isEqualTo(first.quantile(0.025));
  }
}
