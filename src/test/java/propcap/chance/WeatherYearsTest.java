package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class WeatherYearsTest {
  private static List<Integer> block(WeatherYears years, int block, int size) {
    return IntStream.range(block * size, (block + 1) * size).mapToObj(years::of).toList();
  }

  @Test
  void everyBlockHoldsEveryYearOnce() {
    WeatherYears years = new WeatherYears(7, 24);
    for (int b = 0; b < 50; b++) {
      assertThat(block(years, b, 24))
          .containsExactlyInAnyOrderElementsOf(IntStream.range(0, 24).boxed().toList());
    }
  }

  @Test
  void blocksAndSeedsHaveOrdersOfTheirOwn() {
    WeatherYears years = new WeatherYears(7, 24);
    assertThat(block(years, 0, 24)).isNotEqualTo(block(years, 1, 24));
    assertThat(block(new WeatherYears(8, 24), 0, 24)).isNotEqualTo(block(years, 0, 24));
  }

  @Test
  void aSeasonHasItsYearInWhateverOrderItIsAsked() {
    WeatherYears forwards = new WeatherYears(3, 5);
    WeatherYears backwards = new WeatherYears(3, 5);
    int[] there = IntStream.range(0, 40).map(forwards::of).toArray();
    int[] back = new int[40];
    for (int n = 39; n >= 0; n--) {
      back[n] = backwards.of(n);
    }
    assertThat(back).isEqualTo(there);
  }

  @Test
  void ofOneYearEverySeasonIsIts() {
    WeatherYears years = new WeatherYears(1, 1);
    assertThat(IntStream.range(0, 10).map(years::of).distinct().toArray()).containsExactly(0);
  }

  /** Six orders of three years, 6,000 blocks: chi-square of 5 degrees, 20.5 at 0.1 %. */
  @Test
  void everyOrderIsAsLikely() {
    WeatherYears years = new WeatherYears(11, 3);
    Map<List<Integer>, Integer> seen = new TreeMap<>(Comparator.comparing(List::toString));
    for (int b = 0; b < 6000; b++) {
      seen.merge(block(years, b, 3), 1, Integer::sum);
    }
    assertThat(seen).hasSize(6);
    double chiSquare =
        seen.values().stream().mapToDouble(k -> (k - 1000.0) * (k - 1000) / 1000).sum();
    assertThat(chiSquare).isLessThan(20.5);
  }
}
