package propcap.study.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CountsTest {
  static int[][] numbers() {
    SplittableRandom random = new SplittableRandom(2);
    return new int[][] {
      {4},
      {1, 2},
      {7, 1, 10, 3, 9, 2, 8, 4, 6, 5},
      {0, 0, 0, 0, 100},
      {-5, 3, -700, 12, 12},
      random.ints(1001, 0, 30).toArray(),
      random.ints(500, -9000, 9000).toArray()
    };
  }

  /** The quantiles of Commons Math over the numbers themselves, type 7 of Hyndman and Fan. */
  @ParameterizedTest
  @MethodSource("numbers")
  void countedNumbersHaveTheMeanAndQuantilesOfTheNumbersThemselves(int[] numbers) {
    Counts counts = new Counts();
    Arrays.stream(numbers).forEach(counts::add);
    double[] all = Arrays.stream(numbers).asDoubleStream().toArray();
    Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
    percentile.setData(all);
    for (int p : new int[] {10, 50, 90, 100}) {
      assertThat(counts.quantile(p / 100.0)).isCloseTo(percentile.evaluate(p), within(1e-9));
    }
    int[] sorted = numbers.clone();
    Arrays.sort(sorted);
    for (int i = 0; i < sorted.length; i++) {
      assertThat(counts.inOrder(i)).isEqualTo(sorted[i]);
    }
    assertThat(counts.size()).isEqualTo(numbers.length);
    assertThat(counts.mean()).isCloseTo(Arrays.stream(all).average().orElseThrow(), within(1e-9));
    assertThat(counts.share(n -> n > 4))
        .isEqualTo(Arrays.stream(numbers).filter(n -> n > 4).count() / (double) numbers.length);
  }
}
