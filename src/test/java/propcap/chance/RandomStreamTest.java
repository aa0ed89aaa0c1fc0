package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.apache.commons.math3.distribution.UniformRealDistribution;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import umontreal.ssj.rng.LFSR258;

/** Uniforms by key. Correlations of independent uniforms have standard error 1/sqrt(n). */
class RandomStreamTest {
  private static final int SEASONS = 20_000;

  private static double[] take(RandomStream stream, int number) {
    double[] uniforms = new double[number];
    Arrays.setAll(uniforms, i -> stream.next());
    return uniforms;
  }

  private static double[] season(int season, long seed, String... key) {
    RandomStream stream = new RandomStream(seed, key);
    stream.toSeason(season);
    return take(stream, 20);
  }

  @Test
  void oneSeedAndKeyGiveTheSameUniforms() {
    assertThat(season(3, 7, "tray", "a", "0")).isEqualTo(season(3, 7, "tray", "a", "0"));
  }

  @Test
  void streamsMadeInBetweenHaveNoPartInIt() {
    double[] before = season(3, 7, "tray", "a", "0");
    for (int i = 0; i < 10; i++) {
      season(i, i, "weather");
    }
    assertThat(season(3, 7, "tray", "a", "0")).isEqualTo(before);
  }

  @Test
  void anotherSeedKeyOrSeasonGivesOthers() {
    Set<Double> firsts = new HashSet<>();
    for (long seed = -2; seed <= 2; seed++) {
      for (String sowing : new String[] {"a", "b", "a1", "A", ""}) {
        for (String attempt : new String[] {"0", "1", "2"}) {
          for (int season = 0; season < 5; season++) {
            firsts.add(season(season, seed, "tray", sowing, attempt)[0]);
          }
        }
      }
    }
    assertThat(firsts).hasSize(5 * 5 * 3 * 5);
  }

  @Test
  void wordsOfAKeyDoNotRunTogether() {
    assertThat(season(0, 1, "tray", "a1", "0")).isNotEqualTo(season(0, 1, "tray", "a", "10"));
    assertThat(season(0, 1, "1x")).isNotEqualTo(season(0, 11, "x"));
  }

  @Test
  void seasonFiftySevenIsTheSameAskedDirectlyAndAfterWalking() {
    RandomStream walking = new RandomStream(7, "tray", "a", "0");
    for (int season = 0; season < 57; season++) {
      walking.toSeason(season);
      take(walking, season);
    }
    walking.toSeason(57);
    assertThat(take(walking, 20)).isEqualTo(season(57, 7, "tray", "a", "0"));
  }

  @Test
  void goingBackToASeasonGivesItAgain() {
    RandomStream stream = new RandomStream(7, "weather");
    stream.toSeason(5);
    final double[] fifth = take(stream, 20);
    stream.toSeason(9);
    take(stream, 3);
    stream.toSeason(5);
    assertThat(take(stream, 20)).isEqualTo(fifth);
    stream.toSeason(5);
    assertThat(take(stream, 20)).isEqualTo(fifth);
  }

  @Test
  void aTraysBlockIsItsNextUniforms() {
    RandomStream blocks = new RandomStream(7, "tray");
    RandomStream singly = new RandomStream(7, "tray");
    for (int i = 0; i < 3; i++) {
      assertThat(blocks.nextBlock()).isEqualTo(take(singly, DrawPurpose.COUNT));
    }
  }

  /**
   * A digest may fall on a state that the generator cannot have, about once in 10^12 keys; such
   * states are lifted. What a test can see is that the generator takes the state of every key, and
   * that it would refuse one below its bounds.
   */
  @Test
  void everyKeyMakesAStateThatTheGeneratorTakes() {
    for (int i = 0; i < 20_000; i++) {
      String sowing = "sowing-" + i;
      assertThatCode(() -> new RandomStream(7, "tray", sowing, "0")).doesNotThrowAnyException();
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LFSR258().setSeed(new long[] {2, 512, 4096, 131072, 8388607}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LFSR258().setSeed(new long[] {1, 512, 4096, 131072, 8388608}));
  }

  private static double[] firstBySeason(String... key) {
    RandomStream stream = new RandomStream(7, key);
    double[] firsts = new double[SEASONS];
    for (int s = 0; s < SEASONS; s++) {
      stream.toSeason(s);
      firsts[s] = stream.next();
    }
    return firsts;
  }

  /** Four standard errors: a false alarm 6 times in 100,000. */
  private static boolean uncorrelated(double[] x, double[] y) {
    return Math.abs(Moments.correlation(x, y)) <= 4 / Math.sqrt(x.length);
  }

  @ParameterizedTest(name = "{0} {1} and {2} {3}")
  @CsvSource({"a, 0, b, 0", "a, 0, a, 1", "bed-1, 0, bed-2, 0"})
  void streamsOfTwoKeysAreUncorrelated(String one, String first, String other, String second) {
    double[] x = firstBySeason("tray", one, first);
    double[] y = firstBySeason("tray", other, second);
    assertThat(uncorrelated(x, y)).isTrue();
    // The twin: a twentieth of the one mixed into the other.
    double[] mixed = new double[SEASONS];
    Arrays.setAll(mixed, i -> 0.05 * x[i] + 0.95 * y[i]);
    assertThat(uncorrelated(x, mixed)).isFalse();
  }

  @Test
  void aSeasonIsUncorrelatedWithTheNext() {
    double[] x = firstBySeason("weather");
    assertThat(
            uncorrelated(Arrays.copyOfRange(x, 0, SEASONS - 1), Arrays.copyOfRange(x, 1, SEASONS)))
        .isTrue();
  }

  /** 120 pairs of purposes at 4.75 standard errors: a false alarm in 2 of 10,000 runs. */
  @Test
  void theUniformsOfATraysPurposesAreUncorrelated() {
    RandomStream stream = new RandomStream(7, "tray", "a", "0");
    double[][] byDraw = new double[DrawPurpose.COUNT][SEASONS];
    for (int s = 0; s < SEASONS; s++) {
      stream.toSeason(s);
      double[] block = stream.nextBlock();
      for (int d = 0; d < block.length; d++) {
        byDraw[d][s] = block[d];
      }
    }
    for (int d = 0; d < byDraw.length; d++) {
      for (int e = 0; e < d; e++) {
        assertThat(Math.abs(Moments.correlation(byDraw[d], byDraw[e])))
            .as("%s and %s", DrawPurpose.values()[d], DrawPurpose.values()[e])
            .isLessThan(4.75 / Math.sqrt(SEASONS));
      }
    }
  }

  /** At a level of one in a thousand, over 50 keys, 20 seasons and 20 uniforms of each. */
  @Test
  void theUniformsOfAllKeysAndSeasonsTogetherAreUniform() {
    double[] pool = new double[50 * 20 * 20];
    int filled = 0;
    for (int key = 0; key < 50; key++) {
      RandomStream stream = new RandomStream(7, "tray", "sowing-" + key, "0");
      for (int season = 0; season < 20; season++) {
        stream.toSeason(season);
        for (double u : take(stream, 20)) {
          pool[filled++] = u;
        }
      }
    }
    assertThat(uniform(pool)).isTrue();
    // The twin: each raised to the power of 1.06, which moves the median from 0.500 to 0.480.
    Arrays.setAll(pool, i -> Math.pow(pool[i], 1.06));
    assertThat(uniform(pool)).isFalse();
  }

  private static boolean uniform(double[] pool) {
    return new KolmogorovSmirnovTest()
            .kolmogorovSmirnovTest(new UniformRealDistribution(null, 0, 1), pool, false)
        > 0.001;
  }
}
