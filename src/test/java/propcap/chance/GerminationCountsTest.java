package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/**
 * How counts of seedlings vary from tray to tray and from season to season. Tolerances are 4
 * standard errors, which a correct count leaves 6 times in 100,000 (two-sided, normal).
 */
class GerminationCountsTest {
  private static final double ERRORS = 4;
  private static final int TRAYS = 20_000;

  private static Crops crop(int cells, double rate, double tested, double correlation) {
    Crops crop = new Crops();
    crop.cells = cells;
    crop.germination = new Crop.Germination(rate, tested, correlation);
    // No tray is ready, so that no table of showing times is made.
    crop.leaveAt = 1;
    return crop;
  }

  private static double[] fills(long seed, int trays, Crops crop) {
    Well19937c chance = new Well19937c(seed);
    CropLuck luck = CropLuck.of(crop.make());
    double[] fills = new double[trays];
    for (int i = 0; i < trays; i++) {
      double[] uniforms = new double[DrawPurpose.COUNT];
      Arrays.setAll(uniforms, d -> chance.nextDouble());
      fills[i] = luck.lot(crop.germination.rate()).tray(uniforms).fills();
    }
    return fills;
  }

  /**
   * Standard deviations for 128 cells at 80 %, of n p (1-p) [1 + (n-1) rho]. The twin in each case
   * is a correlation 0.005 higher.
   */
  @ParameterizedTest(name = "correlation {0}: {1}")
  @CsvSource({"0, 4.5255", "0.01, 6.8183", "0.02, 8.5146", "0.05, 12.269"})
  void traysVaryAsMuchAsTheirCorrelationSays(double correlation, double deviation) {
    double[] trays = fills(5001, TRAYS, crop(128, 0.8, 0, correlation));
    assertThat(Moments.of(trays, trays).within(ERRORS, deviation * deviation)).isTrue();
    assertThat(Moments.mean(trays))
        .isBetween(
            102.4 - ERRORS * deviation / Math.sqrt(TRAYS),
            102.4 + ERRORS * deviation / Math.sqrt(TRAYS));
    double[] wrong = fills(5001, TRAYS, crop(128, 0.8, 0, correlation + 0.005));
    assertThat(Moments.of(wrong, wrong).within(ERRORS, deviation * deviation)).isFalse();
  }

  /** The twin of the means above: seed of 80.5 % is told from seed of 80 %. */
  @Test
  void aRateHalfAPercentOffIsRefused() {
    double mean = Moments.mean(fills(5001, TRAYS, crop(128, 0.805, 0, 0.02)));
    assertThat(mean).isGreaterThan(102.4 + ERRORS * 8.5146 / Math.sqrt(TRAYS));
  }

  /** Two seeds a cell: a cell fills at 96 %, and the counts are binomial. */
  @Test
  void twoSeedsACellMakeStandsEven() {
    Crops crop = crop(128, 0.8, 0, 0);
    crop.seedsPerCell = 2;
    double[] trays = fills(5002, TRAYS, crop);
    assertThat(Moments.of(trays, trays).within(ERRORS, 128 * 0.96 * 0.04)).isTrue();
    assertThat(Moments.of(trays, trays).within(ERRORS, 128 * 0.95 * 0.05)).isFalse();
  }

  /** Largest range allowed between four replicates of 100 seeds, for averages of 99 % down. */
  private static final int[] LARGEST_RANGE = {
    5, 6, 7, 8, 9, 10, 10, 11, 11, 12, 12, 13, 13, 14, 14, 14, 15, 15, 15, 16, 16, 16, 17, 17, 17,
    17, 17, 18, 18
  };

  /**
   * The table is that of 7 CFR 201.55(a). The share of binomial tests that leave it was computed
   * exactly from the same table, apart from this code.
   */
  @ParameterizedTest(name = "rate {0}: {1}")
  @CsvSource({"0.95, 0.0116", "0.90, 0.0169", "0.85, 0.0210", "0.80, 0.0182"})
  void seedTestsExceedTheLegalToleranceAsOftenAsBinomialOnesDo(double rate, double share) {
    assertThat(exceedsAsOftenAs(share, crop(100, rate, 0, 0))).isTrue();
    // The twin: replicates correlated by 0.005.
    assertThat(exceedsAsOftenAs(share, crop(100, rate, 0, 0.005))).isFalse();
  }

  private static boolean exceedsAsOftenAs(double share, Crops crop) {
    double[] replicates = fills(5003, 4 * TRAYS, crop);
    int exceed = 0;
    for (int i = 0; i < TRAYS; i++) {
      double[] four = Arrays.copyOfRange(replicates, 4 * i, 4 * i + 4);
      Arrays.sort(four);
      long average = Math.round(Moments.mean(four));
      // Below 71 %, which binomial tests at these rates do not reach, the last row stands.
      int row = (int) Math.min(99 - average, LARGEST_RANGE.length - 1);
      boolean within = average == 100 || four[3] - four[0] <= LARGEST_RANGE[row];
      exceed += within ? 0 : 1;
    }
    double standardError = Math.sqrt(share * (1 - share) / TRAYS);
    return Math.abs((double) exceed / TRAYS - share) <= ERRORS * standardError;
  }

  private static Sowing sowing(String id, String lot, int trays) {
    LocalDate day = Farms.START;
    return new Sowing(
        id,
        "cosmos",
        lot,
        day,
        trays,
        10,
        day,
        day.plusDays(50),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  /** Counts by tray and season: two trays and one of lot "old", one tray of lot "new". */
  private static double[][] lots(double tested) {
    int seasons = 4_000;
    Farms farm = new Farms();
    farm.crops.clear();
    farm.crops.add(crop(128, 0.85, tested, 0).make());
    farm.sowings.add(sowing("a", "old", 2));
    farm.sowings.add(sowing("b", "old", 1));
    farm.sowings.add(sowing("c", "new", 1));
    Scenario scenario = farm.make();
    Luck.Reader reader = new Luck(scenario, 5004).reader();
    double[][] fills = new double[4][seasons];
    for (int s = 0; s < seasons; s++) {
      SeasonLuck season = reader.season(s);
      fills[0][s] = season.tray(0, 0, 0).fills();
      fills[1][s] = season.tray(0, 1, 0).fills();
      fills[2][s] = season.tray(1, 0, 0).fills();
      fills[3][s] = season.tray(2, 0, 0).fills();
    }
    return fills;
  }

  /**
   * The rate is Beta(85, 15), so that two trays of 128 cells have covariance 128^2 times its
   * variance, 0.85 * 0.15 / 101; within a sowing and between two of the same lot.
   */
  @Test
  void traysOfALotShareItsSeasonAndTraysOfTwoLotsDoNot() {
    double expected = 128 * 128 * 0.85 * 0.15 / 101;
    double[][] fills = lots(100);
    assertThat(Moments.of(fills[0], fills[1]).within(ERRORS, expected)).isTrue();
    assertThat(Moments.of(fills[0], fills[2]).within(ERRORS, expected)).isTrue();
    assertThat(Moments.of(fills[0], fills[3]).within(ERRORS, 0)).isTrue();
    assertThat(Moments.of(fills[2], fills[3]).within(ERRORS, 0)).isTrue();
    // The twins: trays of one lot are not independent, and half as many tested seeds show.
    assertThat(Moments.of(fills[0], fills[2]).within(ERRORS, 0)).isFalse();
    double[][] wrong = lots(50);
    assertThat(Moments.of(wrong[0], wrong[1]).within(ERRORS, expected)).isFalse();
  }

  /** Variance of one tray: n p (1-p) [1 + (n-1) / (tested + 1)]. */
  @Test
  void aTrayVariesOverTheSeasonsByItsLotToo() {
    double[] tray = lots(100)[0];
    double expected = 128 * 0.85 * 0.15 * (1 + 127 / 101.0);
    assertThat(Moments.of(tray, tray).within(ERRORS, expected)).isTrue();
    assertThat(Moments.of(tray, tray).within(ERRORS, 128 * 0.85 * 0.15)).isFalse();
  }
}
