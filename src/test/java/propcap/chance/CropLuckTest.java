package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Crop;
import propcap.farm.Crops;
import umontreal.ssj.probdist.NormalDist;

/** A crop's tabulated laws against the direct way. */
class CropLuckTest {
  private static final double[] LOT_RATES = {0.3, 0.4123, 0.6371, 0.8, 0.8567, 0.9, 0.95};

  private static CropLuck germinating(double rate, double tested, double correlation) {
    Crops crop = new Crops();
    crop.germination = new Crop.Germination(rate, tested, correlation);
    return CropLuck.of(crop.make());
  }

  /** Between tables a quarter of a logit apart as well as along each: the sum of two errors. */
  @ParameterizedTest(name = "correlation {0}: within {1}")
  @CsvSource({"0.01, 5e-6", "0.02, 5e-6", "0.05, 6e-6", "0.1, 1e-5", "0.2, 2e-5", "0.3, 6e-5"})
  void aTraysRateIsNearTheDirectInverse(double correlation, double bound) {
    assertThat(worst(germinating(0.8, 0, correlation), correlation)).isLessThan(bound);
  }

  @ParameterizedTest(name = "correlation {0}: within {1}")
  @CsvSource({"0.05, 6e-6", "0.1, 3e-5", "0.2, 1e-4", "0.3, 2e-4"})
  void aTrayOfANearlySureLotIsNearTheDirectInverse(double correlation, double bound) {
    CropLuck crop = germinating(0.8, 0, correlation);
    assertThat(worst(crop, correlation, 0.97)).isLessThan(bound);
    assertThat(worst(crop, correlation, 0.99)).isLessThan(bound);
  }

  /** The twin: a correlation of 0.02 taken for 0.0201 does not pass. */
  @Test
  void aCorrelationHalfAPercentOffIsRefused() {
    assertThat(worst(germinating(0.8, 0, 0.0201), 0.02)).isGreaterThan(5e-6);
  }

  private static double worst(CropLuck crop, double correlation) {
    double worst = 0;
    for (double rate : LOT_RATES) {
      worst = Math.max(worst, worst(crop, correlation, rate));
    }
    return worst;
  }

  private static double worst(CropLuck crop, double correlation, double rate) {
    double sharpness = (1 - correlation) / correlation;
    double worst = 0;
    for (double score = -6; score <= 6; score += 0.03) {
      double direct = QuantileTableTest.direct(rate * sharpness, (1 - rate) * sharpness, score);
      double tabulated = crop.lot(rate).trayRate(NormalDist.cdf01(score));
      worst = Math.max(worst, Math.abs(tabulated - direct));
    }
    return worst;
  }

  @Test
  void withoutCorrelationATrayHasItsLotsRate() {
    assertThat(germinating(0.8, 0, 0).lot(0.7).trayRate(0.01)).isEqualTo(0.7);
  }

  @Test
  void aDeadLotStaysDeadAndASureOneSure() {
    CropLuck crop = germinating(0.8, 0, 0.1);
    assertThat(crop.lot(0).trayRate(0.99)).isZero();
    assertThat(crop.lot(1).trayRate(0.01)).isEqualTo(1);
  }

  @Test
  void aRateThatWasNotTestedIsTakenAsCertain() {
    assertThat(germinating(0.85, 0, 0).lotRate(0.01)).isEqualTo(0.85);
  }

  /**
   * 88 of 100 seeds came up and nothing else is known: Beta(89, 13), with 2.5, 50 and 97.5 %
   * quantiles 0.80165, 0.87499 and 0.92965 (computed apart from this code).
   */
  @Test
  void aTestedLotVariesAsATestOfThatSizeDoes() {
    CropLuck crop = germinating(89.0 / 102, 102, 0);
    assertThat(crop.lotRate(0.025)).isCloseTo(0.80165, Offset.offset(1e-5));
    assertThat(crop.lotRate(0.5)).isCloseTo(0.87499, Offset.offset(1e-5));
    assertThat(crop.lotRate(0.975)).isCloseTo(0.92965, Offset.offset(1e-5));
  }

  @Test
  void aTrayWithoutAnOutbreakLosesNothingToIt() {
    Crops crop = new Crops();
    crop.dampingOff = new Crop.DampingOff(0.04, 0.4);
    CropLuck luck = CropLuck.of(crop.make());
    assertThat(luck.severity(0.04, 0.9)).isZero();
    assertThat(luck.severity(0.0399, 0.9)).isPositive();
  }

  /** Beta(2s, 2(1-s)) at s = 1/2 is uniform, so that its quantile is the uniform itself. */
  @Test
  void anOutbreakOfHalfSeverityIsUniform() {
    Crops crop = new Crops();
    crop.dampingOff = new Crop.DampingOff(1, 0.5);
    CropLuck luck = CropLuck.of(crop.make());
    for (double u : new double[] {0.001, 0.1, 0.25, 0.5, 0.9, 0.999}) {
      assertThat(luck.severity(0.5, u)).isCloseTo(u, Offset.offset(1e-5));
    }
  }

  @Test
  void halfOfTheTraysGrowFasterThanTheMedianAndTheSpreadIsOneDeviation() {
    Crops crop = new Crops();
    crop.spread = 0.1;
    CropLuck luck = CropLuck.of(crop.make());
    assertThat(luck.pace(0.5)).isCloseTo(1, Offset.offset(1e-12));
    assertThat(luck.pace(NormalDist.cdf01(1))).isCloseTo(Math.exp(0.1), Offset.offset(1e-9));
  }
}
