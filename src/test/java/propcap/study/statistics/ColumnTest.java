package propcap.study.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ColumnTest {
  static int[][] numbers() {
    SplittableRandom random = new SplittableRandom(1);
    return new int[][] {
      {},
      {7},
      {0, 0, 0, 0},
      {0, 0, 1, -1, 300},
      {5, 5, 40_000, 6, -40_000},
      {100_000, 100_000, 1},
      {32_767, 32_768, -32_768, -32_769},
      random.ints(1000, 0, 50).toArray(),
      random.ints(1000, 0, 1_000_000).toArray(),
      IntStream.concat(IntStream.generate(() -> 3).limit(500), IntStream.range(0, 40_000)).toArray()
    };
  }

  @ParameterizedTest
  @MethodSource("numbers")
  void everyNumberIsKeptAsItIs(int[] numbers) {
    Column column = new Column();
    IntStream.of(numbers).forEach(column::add);
    assertThat(column.size()).isEqualTo(numbers.length);
    assertThat(IntStream.range(0, numbers.length).map(column::get).toArray()).isEqualTo(numbers);
    assertThat(column.numbers()).isEqualTo(IntStream.of(numbers).asDoubleStream().toArray());
  }

  @Test
  void whatIsAlwaysTheSameTakesNoRoomAndSmallNumbersTwoBytes() {
    Column alike = new Column();
    Column small = new Column();
    Column large = new Column();
    for (int i = 0; i < 10_000; i++) {
      alike.add(9);
      small.add(i % 100);
      large.add(i * 10);
    }
    assertThat(alike.bytes()).isLessThan(100);
    assertThat(small.bytes()).isBetween(20_000L, 23_000L);
    assertThat(large.bytes()).isBetween(40_000L, 46_000L);
  }

  @Test
  void whatASeasonMoreTakesIsToldWithoutWhatIsLeftEmpty() {
    Column alike = new Column();
    Column large = new Column();
    for (int i = 0; i < 3; i++) {
      alike.add(9);
      large.add(i * 100_000);
    }
    assertThat(alike.bytesASeason()).as("they may yet differ").isEqualTo(2);
    assertThat(large.bytesASeason()).isEqualTo(4);
  }
}
