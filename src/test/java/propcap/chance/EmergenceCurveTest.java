package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Crop;
import propcap.farm.Crops;

class EmergenceCurveTest {
  /** 6.5 days to half and 9.5 to most at 22 C, above a base of 9 C. */
  private static final Crop.Emergence TOMATO = new Crop.Emergence(9, 29, 38, 22, 6.5, 9.5);

  private static EmergenceCurve curve(int seeds, Crop.Emergence emergence) {
    Crops crop = new Crops();
    crop.seedsPerCell = seeds;
    crop.emergence = emergence;
    return new EmergenceCurve(crop.make());
  }

  private static EmergenceCurve curve(int seeds) {
    return curve(seeds, TOMATO);
  }

  @Test
  void halfOfTheSeedsHaveShownByTheMedian() {
    assertThat(curve(1).seed(6.5 * (22 - 9))).isCloseTo(0.5, Offset.offset(1e-9));
  }

  @Test
  void nineInTenHaveShownByMostBy() {
    assertThat(curve(1).seed(9.5 * (22 - 9))).isCloseTo(0.9, Offset.offset(1e-9));
  }

  /** At 33.5 C, half way from optimum to ceiling, the rate is half of that at the optimum. */
  @Test
  void daysNotedAboveTheOptimumCountAtThatRate() {
    EmergenceCurve curve = curve(1, new Crop.Emergence(9, 29, 38, 33.5, 6.5, 9.5));
    assertThat(curve.seed(6.5 * 10)).isCloseTo(0.5, Offset.offset(1e-9));
    assertThat(curve.seed(9.5 * 10)).isCloseTo(0.9, Offset.offset(1e-9));
  }

  @Test
  void nothingShowsBeforeItIsWarm() {
    assertThat(curve(1).seed(0)).isZero();
    assertThat(curve(1).seed(-1)).isZero();
    assertThat(curve(3).cell(0, 0.8)).isZero();
  }

  /** Worked by hand: ln(9.5 / 6.5) = 0.379490, over the normal quantile 1.281552, is 0.296117. */
  @Test
  void theSpreadIsTheLogOfMostByOverHalfByInNormalScores() {
    assertThat(curve(1).sigma()).isCloseTo(0.296117, Offset.offset(1e-6));
  }

  /** Independent seeds, 1-(1-p)^k, to the digits printed. */
  @ParameterizedTest(name = "rate {0}")
  @CsvSource({
    "0.50, 0.5,  0.75,   0.875,    0.9375",
    "0.60, 0.6,  0.84,   0.936,    0.9744",
    "0.70, 0.7,  0.91,   0.973,    0.9919",
    "0.75, 0.75, 0.9375, 0.984375, 0.996094",
    "0.80, 0.8,  0.96,   0.992,    0.9984",
    "0.85, 0.85, 0.9775, 0.996625, 0.999494",
    "0.90, 0.9,  0.99,   0.999,    0.9999",
    "0.95, 0.95, 0.9975, 0.999875, 0.999994"
  })
  void aCellFillsUnlessAllItsSeedsFail(
      double rate, double one, double two, double three, double four) {
    Offset<Double> printed = Offset.offset(5.0001e-7);
    assertThat(curve(1).fills(rate)).isCloseTo(one, printed);
    assertThat(curve(2).fills(rate)).isCloseTo(two, printed);
    assertThat(curve(3).fills(rate)).isCloseTo(three, printed);
    assertThat(curve(4).fills(rate)).isCloseTo(four, printed);
  }

  @Test
  void noCellFillsWithoutGoodSeedAndEveryOneWithSureSeed() {
    for (int seeds : new int[] {1, 2, 3, 5}) {
      assertThat(curve(seeds).fills(0)).isZero();
      assertThat(curve(seeds).fills(1)).isEqualTo(1);
    }
  }

  @ParameterizedTest(name = "{0} seeds a cell")
  @ValueSource(ints = {1, 2, 3, 5})
  void theTimeOfAShareIsTheInverseOfTheShareByATime(int seeds) {
    EmergenceCurve curve = curve(seeds);
    for (double rate : new double[] {0.05, 0.3, 0.8, 0.99, 1}) {
      for (double share : new double[] {1e-6, 0.01, 0.25, 0.5, 0.9, 0.999, 1 - 1e-6}) {
        double time = curve.degreeDaysAt(share, rate);
        assertThat(curve.cell(time, rate)).isCloseTo(share, Offset.offset(1e-8));
      }
      for (double time : new double[] {40, 60, 84.5, 100, 123.5, 160}) {
        double share = curve.cell(time, rate);
        assertThat(curve.degreeDaysAt(share, rate)).isCloseTo(time, Offset.offset(1e-6));
      }
    }
  }

  /** By the text: C(x) = (1 - (1 - g L(x))^k) / P. */
  @ParameterizedTest(name = "{0} seeds a cell")
  @ValueSource(ints = {1, 2, 3, 5})
  void ofTheSeedsOfACellTheFirstIsKept(int seeds) {
    EmergenceCurve curve = curve(seeds);
    for (double time = 30; time < 200; time += 10) {
      double noneYet = Math.pow(1 - 0.7 * curve.seed(time), seeds);
      double fills = 1 - Math.pow(0.3, seeds);
      assertThat(curve.cell(time, 0.7)).isCloseTo((1 - noneYet) / fills, Offset.offset(1e-9));
    }
  }

  @Test
  void aCellWithMoreSeedsShowsEarlier() {
    double before = Double.POSITIVE_INFINITY;
    for (int seeds : new int[] {1, 2, 3, 5}) {
      double half = curve(seeds).degreeDaysAt(0.5, 0.8);
      assertThat(half).isLessThan(before);
      before = half;
    }
  }

  @Test
  void allOfTheFillingCellsShowInTheEnd() {
    assertThat(curve(1).cell(1e6, 0.8)).isEqualTo(1);
    assertThat(curve(3).cell(1e6, 0.8)).isCloseTo(1, Offset.offset(1e-15));
    assertThat(curve(1).degreeDaysAt(1, 0.8)).isEqualTo(Double.POSITIVE_INFINITY);
  }
}
