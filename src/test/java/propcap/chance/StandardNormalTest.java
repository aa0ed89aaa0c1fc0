package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** The tabulated standard normal against Commons Math's. */
class StandardNormalTest {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  @Test
  void aScoreIsRightTo2InTenMillion() {
    for (int i = 1; i < 20_000; i++) {
      double u = i / 20_000.0;
      assertThat(StandardNormal.score(u))
          .as("u %s", u)
          .isCloseTo(NORMAL.inverseCumulativeProbability(u), within(2e-7));
    }
  }

  @Test
  void aScoreFarOutIsRightToo() {
    for (double u = 1e-9; u < 0.1; u *= 1.7) {
      double score = StandardNormal.score(u);
      assertThat(score)
          .as("u %s", u)
          .isCloseTo(NORMAL.inverseCumulativeProbability(u), within(1e-6));
      assertThat(StandardNormal.score(1 - u)).as("1 - %s", u).isCloseTo(-score, within(1e-6));
    }
  }

  @Test
  void aChanceIsRightTo2InTenBillion() {
    for (double score = -9; score < 9; score += 0.0007) {
      assertThat(StandardNormal.chance(score))
          .as("score %s", score)
          .isCloseTo(NORMAL.cumulativeProbability(score), within(2e-10));
    }
  }

  /** So that more luck is never less of anything: where table and tail meet it does not fall. */
  @Test
  void neitherFallsBeyondRounding() {
    double before = Double.NEGATIVE_INFINITY;
    double chanceBefore = 0;
    for (int i = 1; i < 400_000; i++) {
      double score = StandardNormal.score(i / 400_000.0);
      double chance = StandardNormal.chance(-5 + i / 40_000.0);
      assertThat(score).as("u %s", i / 400_000.0).isGreaterThan(before);
      assertThat(chance).as("score %s", -5 + i / 40_000.0).isGreaterThanOrEqualTo(chanceBefore);
      before = score;
      chanceBefore = chance;
    }
  }

  /** The twin of the checks above: the values between nodes are no straight line. */
  @Test
  void aStraightLineBetweenNodesIsRefused() {
    double u = 33.5 / 1024;
    double line =
        (NORMAL.inverseCumulativeProbability(33.0 / 1024)
                + NORMAL.inverseCumulativeProbability(34.0 / 1024))
            / 2;
    assertThat(line).isNotCloseTo(NORMAL.inverseCumulativeProbability(u), within(2e-7));
  }
}
