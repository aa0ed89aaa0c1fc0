package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.inference.ChiSquareTest;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Crop;
import propcap.farm.Crops;

/**
 * A tray's showing times, had without simulating every cell, against trays in which every seed is
 * simulated. Two samples of {@link #TRAYS} trays are compared by a test that refuses alike ones
 * once in a thousand.
 */
class ShowingTimesTest {
  private static final int TRAYS = 4_000;
  private static final double LEVEL = 0.001;
  private static final int CELLS = 60;
  private static final double HALF_BY = 6.5;
  private static final double MOST_BY = 9.5;

  private final Crops crop = new Crops();

  ShowingTimesTest() {
    crop.cells = CELLS;
    crop.emergence = new Crop.Emergence(9, 29, 38, 22, HALF_BY, MOST_BY);
  }

  private void seeds(int perCell, double rate) {
    crop.seedsPerCell = perCell;
    crop.germination = new Crop.Germination(rate, 0, 0);
  }

  // The slow way: every seed by itself.

  /** When a cell shows, degree days; infinite if none of its seeds comes up. */
  private double cell(Well19937c chance) {
    double first = Double.POSITIVE_INFINITY;
    for (int i = 0; i < crop.seedsPerCell; i++) {
      boolean comesUp = chance.nextDouble() < crop.germination.rate();
      double sigma = Math.log(MOST_BY / HALF_BY) / 1.2815515655446004;
      double shows = HALF_BY * (22 - 9) * Math.exp(sigma * chance.nextGaussian());
      first = comesUp ? Math.min(first, shows) : first;
    }
    return first;
  }

  /** The times of a tray's cells in order, those that never show last. */
  private double[] tray(Well19937c chance) {
    double[] times = new double[CELLS];
    Arrays.setAll(times, i -> cell(chance));
    Arrays.sort(times);
    return times;
  }

  private double[] slowTimes(long seed, ToDoubleFunction<double[]> of) {
    Well19937c chance = new Well19937c(seed);
    double[] found = new double[TRAYS];
    Arrays.setAll(found, i -> of.applyAsDouble(tray(chance)));
    return found;
  }

  private long[] slowCounts(long seed, ToDoubleFunction<double[]> by) {
    Well19937c chance = new Well19937c(seed);
    long[] trays = new long[CELLS + 1];
    for (int i = 0; i < TRAYS; i++) {
      double[] times = tray(chance);
      double until = by.applyAsDouble(times);
      trays[(int) Arrays.stream(times).filter(t -> t <= until).count()]++;
    }
    return trays;
  }

  // The quick way: the tray's luck.

  private TrayLuck[] luck(long seed) {
    Well19937c chance = new Well19937c(seed);
    CropLuck laws = CropLuck.of(crop.make());
    TrayLuck[] trays = new TrayLuck[TRAYS];
    for (int i = 0; i < TRAYS; i++) {
      double[] uniforms = new double[DrawPurpose.COUNT];
      Arrays.setAll(uniforms, d -> chance.nextDouble());
      trays[i] = laws.lot(crop.germination.rate()).tray(uniforms);
    }
    return trays;
  }

  private long[] quickCounts(long seed, ToIntFunction<TrayLuck> showing) {
    long[] trays = new long[CELLS + 1];
    for (TrayLuck tray : luck(seed)) {
      trays[showing.applyAsInt(tray)]++;
    }
    return trays;
  }

  private static boolean sameTimes(double[] x, double[] y) {
    return new KolmogorovSmirnovTest().kolmogorovSmirnovTest(x, y) > LEVEL;
  }

  /** Chi-square over the counts, joined up from below until each class holds 20 trays or more. */
  private static boolean sameCounts(long[] x, long[] y) {
    long[] a = new long[x.length];
    long[] b = new long[x.length];
    int classes = 0;
    for (int i = 0; i < x.length; i++) {
      a[classes] += x[i];
      b[classes] += y[i];
      classes += a[classes] + b[classes] >= 20 ? 1 : 0;
    }
    a[classes - 1] += a[classes];
    b[classes - 1] += b[classes];
    return new ChiSquareTest()
            .chiSquareTestDataSetsComparison(Arrays.copyOf(a, classes), Arrays.copyOf(b, classes))
        > LEVEL;
  }

  @ParameterizedTest(name = "{0} seeds a cell")
  @ValueSource(ints = {1, 2, 3, 5})
  void ofFortyEightFillingCellsTheThirtiethShowsWhenItShould(int perCell) {
    seeds(perCell, 0.7);
    CropLuck laws = CropLuck.of(crop.make());
    Well19937c quick = new Well19937c(4001);
    Well19937c slow = new Well19937c(4002);
    double[] drawn = new double[TRAYS];
    double[] thirtieth = new double[TRAYS];
    double[] next = new double[TRAYS];
    for (int i = 0; i < TRAYS; i++) {
      drawn[i] = laws.curve().degreeDaysAt(laws.readyShare(48, quick.nextDouble()), 0.7);
      double[] times = new double[48];
      for (int c = 0; c < times.length; c++) {
        do {
          times[c] = cell(slow);
        } while (Double.isInfinite(times[c]));
      }
      Arrays.sort(times);
      thirtieth[i] = times[29];
      next[i] = times[30];
    }
    assertThat(sameTimes(drawn, thirtieth)).isTrue();
    // The twin: one cell later is refused.
    assertThat(sameTimes(drawn, next)).isFalse();
  }

  @ParameterizedTest(name = "{0} seeds a cell")
  @ValueSource(ints = {1, 2, 5})
  void aWholeTrayIsReadyWhenHalfOfItsCellsShow(int perCell) {
    // A share of cells so filled, 0.84, that a tray falls short of 30 once in ten million.
    seeds(perCell, 1 - Math.pow(0.16, 1.0 / perCell));
    double[] drawn = Arrays.stream(luck(4003)).mapToDouble(TrayLuck::readyAt).toArray();
    assertThat(sameTimes(drawn, slowTimes(4004, t -> t[29]))).isTrue();
    assertThat(sameTimes(drawn, slowTimes(4004, t -> t[30]))).as("the twin").isFalse();
  }

  @ParameterizedTest(name = "{0} seeds a cell")
  @ValueSource(ints = {1, 3})
  void asManyShowSomeWarmthAfterLeavingAsShould(int perCell) {
    seeds(perCell, 1 - Math.pow(0.16, 1.0 / perCell));
    long[] drawn = quickCounts(4005, t -> t.showingBy(t.readyAt() + 15));
    assertThat(sameCounts(drawn, slowCounts(4006, t -> t[29] + 15))).isTrue();
    // The twin: 10 % more warmth is refused.
    assertThat(sameCounts(drawn, slowCounts(4006, t -> t[29] + 16.5))).isFalse();
  }

  @ParameterizedTest(name = "{0} seeds a cell")
  @ValueSource(ints = {1, 3})
  void asManyShowBeforeATrayIsReadyAsShould(int perCell) {
    seeds(perCell, 1 - Math.pow(0.16, 1.0 / perCell));
    long[] drawn = quickCounts(4007, t -> t.showingBy(0.9 * t.readyAt()));
    assertThat(sameCounts(drawn, slowCounts(4008, t -> 0.9 * t[29]))).isTrue();
    // The twin: 0.88 of the time is refused.
    assertThat(sameCounts(drawn, slowCounts(4008, t -> 0.88 * t[29]))).isFalse();
  }

  /** At 80 degree days about half of the trays are ready: both sides are in play. */
  @ParameterizedTest(name = "{0} seeds a cell")
  @ValueSource(ints = {1, 2, 3})
  void asManyShowByASetTimeAsShould(int perCell) {
    seeds(perCell, 1 - Math.pow(0.1, 1.0 / perCell));
    double by = new EmergenceCurve(crop.make()).degreeDaysAt(0.55, crop.germination.rate());
    long[] drawn = quickCounts(4009, t -> t.showingBy(by));
    assertThat(sameCounts(drawn, slowCounts(4010, t -> by))).isTrue();
    // The twin: 2 % more warmth is refused.
    assertThat(sameCounts(drawn, slowCounts(4010, t -> 1.02 * by))).isFalse();
  }

  @Test
  void inATrayThatNeverGetsReadyAsManyShowAsShould() {
    crop.leaveAt = 0.9;
    seeds(1, 0.6);
    assertThat(luck(4011)).allMatch(t -> t.fills() < 54 && Double.isInfinite(t.readyAt()));
    long[] drawn = quickCounts(4011, t -> t.showingBy(90));
    assertThat(sameCounts(drawn, slowCounts(4012, t -> 90))).isTrue();
    // The twin: 3 % more warmth is refused.
    assertThat(sameCounts(drawn, slowCounts(4012, t -> 92.7))).isFalse();
  }

  @ParameterizedTest(name = "leaving at {0}")
  @ValueSource(doubles = {0.01, 0.5, 0.8, 1})
  void noSeedlingGoesBackUnderAndAtReadinessJustEnoughShow(double leaveAt) {
    crop.leaveAt = leaveAt;
    seeds(2, 0.6);
    int toLeave = crop.make().cellsToLeave();
    for (TrayLuck tray : Arrays.copyOf(luck(4013), 300)) {
      int before = 0;
      for (double time = 0; time < 400; time += 4) {
        int now = tray.showingBy(time);
        assertThat(now).isBetween(before, tray.fills());
        before = now;
      }
      assertThat(tray.showingBy(1e9)).isEqualTo(tray.fills());
      if (tray.fills() >= toLeave) {
        assertThat(tray.showingBy(tray.readyAt())).isGreaterThanOrEqualTo(toLeave);
        assertThat(tray.showingBy(tray.readyAt() * (1 - 1e-9))).isLessThan(toLeave);
      }
    }
  }

  /** Common practice: thinned to one, so that a filled cell counts once whatever was sown in it. */
  @Test
  void oneSeedlingACellIsKept() {
    seeds(5, 0.9);
    assertThat(luck(4014)).allMatch(t -> t.fills() <= CELLS && t.showingBy(1e9) <= CELLS);
    seeds(5, 1);
    assertThat(luck(4014)).allMatch(t -> t.fills() == CELLS);
  }
}
