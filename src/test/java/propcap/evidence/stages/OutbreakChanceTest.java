package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.util.CombinatoricsUtils;
import org.junit.jupiter.api.Test;

class OutbreakChanceTest {
  @Test
  void chancesOfWhatATrayLostAddUpToOne() {
    double sum = 0;
    for (int lost = 0; lost <= 40; lost++) {
      double ways = CombinatoricsUtils.binomialCoefficientLog(40, lost);
      sum += Math.exp(ways + new OutbreakChance(0.4).log(40, lost, Math.log1p(-0.03)));
    }
    assertThat(sum).isCloseTo(1, within(1e-9));
  }

  /** Two plants, both lost, no background to speak of: E[v^2] = s (2s + 1) / 3, v ~ Beta. */
  @Test
  void anOutbreakAloneIsBetaBinomial() {
    double s = 0.4;
    assertThat(Math.exp(new OutbreakChance(s).log(2, 2, Math.log1p(-1e-12))))
        .isCloseTo(s * (2 * s + 1) / 3, within(1e-9));
  }

  /** One plant: it survives with (1 - g)(1 - s), for the mean of the outbreak is s. */
  @Test
  void onePlantSurvivesBoth() {
    assertThat(Math.exp(new OutbreakChance(0.3).log(1, 0, Math.log1p(-0.2))))
        .isCloseTo(0.8 * 0.7, within(1e-12));
    assertThat(Math.exp(new OutbreakChance(0.3).log(1, 1, Math.log1p(-0.2))))
        .isCloseTo(1 - 0.8 * 0.7, within(1e-12));
  }

  /** As many plants as a log may have in a tray, half of them lost: no overflow. */
  @Test
  void aTrayOfTenThousandPlantsHasAChance() {
    assertThat(new OutbreakChance(0.5).log(10_000, 5_000, -0.7)).isNegative().isFinite();
    assertThat(new OutbreakChance(0.5).log(10_000, 10_000, -30)).isFinite();
  }
}
