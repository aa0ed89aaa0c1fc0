package propcap.study.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class WholeTraysTest {
  @Test
  void wholeTraysAddUp() {
    assertThat(WholeTrays.of(new double[] {1.6, 1.6, 1.4, 0.4})).containsExactly(2, 2, 1, 0);
    assertThat(WholeTrays.of(new double[] {0.3, 0.3, 0.3})).containsExactly(1, 0, 0);
    assertThat(WholeTrays.of(new double[] {0.1, 0.2})).containsExactly(0, 0);
    assertThat(WholeTrays.of(new double[] {16, 0})).containsExactly(16, 0);
    assertThat(WholeTrays.of(new double[0])).isEmpty();
  }

  private static int[] along(int trays, double... shares) {
    return WholeTrays.along(shares, trays, 0, shares.length - 1);
  }

  @Test
  void eachTrayStandsWhereHalfOfItsShareHasCome() {
    assertThat(along(4, 2, 0, 0.5, 1.5)).containsExactly(2, 0, 1, 1);
    assertThat(along(3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3))
        .containsExactly(0, 1, 0, 0, 1, 0, 0, 0, 1, 0);
    assertThat(along(1, 0.1, 0.1, 0.2)).containsExactly(0, 1, 0);
    assertThat(along(0, 0.1, 0.2)).containsExactly(0, 0);
  }

  /** What comes too early or too late for the range is put at its ends. */
  @Test
  void noTrayStandsOutsideTheRange() {
    assertThat(WholeTrays.along(new double[] {1, 0, 1, 1, 1}, 4, 1, 3))
        .containsExactly(0, 0, 2, 2, 0);
  }

  @Test
  void whateverTheSharesTheyAddUpAndNoneIsWhereThereIsNoShare() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < 2_000; i++) {
      double[] shares =
          DoubleStream.generate(() -> Math.max(0, random.nextDouble(-0.5, 1)))
              .limit(random.nextInt(1, 30))
              .toArray();
      int from = random.nextInt(shares.length);
      int to = random.nextInt(from, shares.length);
      shares[to] = 0.01;
      int trays = random.nextInt(50);
      int[] whole = WholeTrays.along(shares, trays, from, to);
      assertThat(IntStream.of(whole).sum()).isEqualTo(trays);
      assertThat(IntStream.range(0, shares.length))
          .allMatch(
              d -> whole[d] >= 0 && (whole[d] == 0 || (shares[d] > 0 && d >= from && d <= to)));
    }
  }
}
