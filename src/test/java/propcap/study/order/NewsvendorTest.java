package propcap.study.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class NewsvendorTest {
  /**
   * A textbook's exercise, as posted with its worked solution ("University of Florida football
   * programs are printed 1 week prior to each home game", solvely.ai): sold at 4.00, printed for
   * 1.00, worth 0.20 as waste paper; demand normal with mean 50,000 and standard deviation 10,000.
   * Answers: lacking 3.00, too many 0.80, ratio 0.7895, z rounded to 0.81, 58,100 programs.
   */
  @Test
  void theTextbooksFootballProgramsComeOut() {
    Newsvendor programs = new Newsvendor(4.00 - 1.00, 1.00 - 0.20);
    assertThat(programs.criticalRatio()).isCloseTo(0.7895, within(0.00005));
    double print =
        new NormalDistribution(50_000, 10_000)
            .inverseCumulativeProbability(programs.criticalRatio());
    // z is 0.8046; the solution reads 0.81 from its table.
    assertThat(print).isCloseTo(58_100, within(60.0));
  }

  /** The twin: with the two costs changed round, the same check must refuse. */
  @Test
  void theCostsChangedRoundWouldNotDo() {
    assertThat(new Newsvendor(0.80, 3.00).criticalRatio()).isCloseTo(0.2105, within(0.0001));
  }

  /** Demand is binomial here: the quantity by the ratio has the highest expected profit of all. */
  @Test
  void theRatiosQuantityEarnsMost() {
    BinomialDistribution demand = new BinomialDistribution(null, 60, 0.4);
    Newsvendor costs = new Newsvendor(1.7, 0.6);
    int best = 0;
    for (int order = 1; order <= 60; order++) {
      best = cost(costs, demand, order) < cost(costs, demand, best) ? order : best;
    }
    assertThat(demand.inverseCumulativeProbability(costs.criticalRatio())).isEqualTo(best);
  }

  private static double cost(Newsvendor costs, BinomialDistribution demand, int order) {
    double sum = 0;
    for (int d = 0; d <= 60; d++) {
      sum +=
          demand.probability(d)
              * (costs.lacking() * Math.max(0, d - order)
                  + costs.surplus() * Math.max(0, order - d));
    }
    return sum;
  }

  @Test
  void whatCostsNothingSettlesIt() {
    assertThat(new Newsvendor(1, 0).criticalRatio()).isEqualTo(1);
    assertThat(new Newsvendor(1, -0.5).criticalRatio()).isEqualTo(1);
    assertThat(new Newsvendor(0, 1).criticalRatio()).isZero();
    assertThat(new Newsvendor(0, 0).criticalRatio()).isZero();
    assertThatIllegalArgumentException().isThrownBy(() -> new Newsvendor(Double.NaN, 1));
  }
}
