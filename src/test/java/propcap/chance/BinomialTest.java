package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import umontreal.ssj.probdist.BinomialDist;

/** Counts by inversion against SSJ and against Commons Math's cumulative chances. */
class BinomialTest {
  private static final double[] CHANCES = {
    1e-9, 1e-4, 0.02, 0.1, 0.3, 0.4999, 0.5, 0.5001, 0.7, 0.85, 0.98, 0.9999, 1 - 1e-9
  };
  private static final double[] ENDS = {1e-15, 1e-9, 1e-4, 1 - 1e-4, 1 - 1e-9, 1 - 1e-15};

  /** What rounding may do to a sum of 2,000 chances, and to Commons Math's continued fraction. */
  private static final double ROUNDING = 1e-11;

  @ParameterizedTest(name = "{0} plants")
  @ValueSource(ints = {1, 2, 7, 72, 128, 512, 2_000})
  void aCountIsTheOneThatSsjFinds(int n) {
    Well19937c uniforms = new Well19937c(1001 + n);
    for (double p : CHANCES) {
      for (int i = 0; i < 60; i++) {
        double u = uniforms.nextDouble();
        assertThat(Binomial.quantile(n, p, u))
            .as("n %d, p %s, u %s", n, p, u)
            .isEqualTo(BinomialDist.inverseF(n, p, u));
      }
    }
  }

  @ParameterizedTest(name = "{0} plants")
  @ValueSource(ints = {1, 2, 7, 72, 128, 512, 2_000})
  void aCountIsTheLeastThatTheUniformDoesNotPass(int n) {
    Well19937c uniforms = new Well19937c(2002 + n);
    for (double p : CHANCES) {
      BinomialDistribution law = new BinomialDistribution(null, n, p);
      for (double u : ENDS) {
        assertThat(least(law, Binomial.quantile(n, p, u), u)).as("n %d p %s", n, p).isTrue();
      }
      for (int i = 0; i < 20; i++) {
        double u = uniforms.nextDouble();
        assertThat(least(law, Binomial.quantile(n, p, u), u)).as("n %d p %s", n, p).isTrue();
      }
    }
  }

  /** The twin of the check above: a chance of 0.300 taken for 0.305 does not pass it. */
  @Test
  void aChanceHalfAPercentOffIsRefused() {
    BinomialDistribution law = new BinomialDistribution(null, 128, 0.305);
    Well19937c uniforms = new Well19937c(3003);
    int refused = 0;
    for (int i = 0; i < 100; i++) {
      double u = uniforms.nextDouble();
      refused += least(law, Binomial.quantile(128, 0.3, u), u) ? 0 : 1;
    }
    assertThat(refused).isPositive();
  }

  private static boolean least(BinomialDistribution law, int count, double u) {
    return law.cumulativeProbability(count) >= u - ROUNDING
        && law.cumulativeProbability(count - 1) < u + ROUNDING;
  }

  @Test
  void noneAreLostAtNoChanceAndAllAtACertainOne() {
    for (double u : ENDS) {
      assertThat(Binomial.quantile(128, 0, u)).isZero();
      assertThat(Binomial.quantile(128, 1, u)).isEqualTo(128);
      assertThat(Binomial.quantile(0, 0.5, u)).isZero();
    }
  }

  @ParameterizedTest(name = "{0} plants")
  @ValueSource(ints = {1, 10, 128, 2_000})
  void aCountNeverFallsAsTheUniformRises(int n) {
    for (double p : CHANCES) {
      int before = 0;
      for (int i = 1; i < 1_000; i++) {
        int now = Binomial.quantile(n, p, i / 1_000.0);
        assertThat(now).as("p %s, u %d/1000", p, i).isBetween(before, n);
        before = now;
      }
    }
  }

  /** Through one half, where the search changes sides, and through the fall back for long sums. */
  @ParameterizedTest(name = "{0} plants")
  @ValueSource(ints = {1, 10, 128, 2_000})
  void aCountNeverFallsAsTheChanceRises(int n) {
    for (double u : new double[] {1e-9, 0.01, 0.3, 0.4999, 0.77, 0.99, 1 - 1e-9}) {
      int before = 0;
      for (int i = 0; i <= 1_000; i++) {
        int now = Binomial.quantile(n, i / 1_000.0, u);
        assertThat(now).as("u %s, p %d/1000", u, i).isBetween(before, n);
        before = now;
      }
    }
  }
}
