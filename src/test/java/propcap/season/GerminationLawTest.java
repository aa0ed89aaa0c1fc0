package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Loss;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowings;
import propcap.farm.TrayMove;

/**
 * Germination through the engine: against formulas where a tray leaves on a sure day, and against
 * seeds drawn one by one where it does not. A mean may lie 4.5 standard errors off: a false alarm
 * of 7e-6 each, 5e-5 over the seven here.
 */
class GerminationLawTest {
  private static final double K = 4.5;
  private static final int TRAYS = 20;
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  private final Crops crop = new Crops();
  private final Farms farm = new Farms();

  /** Mats at 20 C, a house at a temperature. */
  private Scenario scenario(double houseC) {
    farm.crops = List.of(crop.make());
    Scenario made = farm.make().withEndlessRoom();
    return made.withPlaces(
        made.places().stream().map(p -> p.name().equals("House") ? at(p, houseC) : p).toList());
  }

  private static Place at(Place place, double tempC) {
    return new Place(
        place.name(), place.kind(), place.spaces(), new Climate.Constant(tempC), 0, null);
  }

  /** The lognormal curve of a seed, by days at 20 C. */
  private static double seed(double days, double halfByDays, double mostByDays) {
    double sigma = Math.log(mostByDays / halfByDays) / NORMAL.inverseCumulativeProbability(0.9);
    return NORMAL.cumulativeProbability(Math.log(days / halfByDays) / sigma);
  }

  /**
   * All cells must show for a tray to leave by itself, which with 40 cells that fill with chance
   * 3/4 happens once in 100 000 trays: so trays leave when pulled, after 7 days. In three days at
   * 12.5 C on the table, where the base is 5 C, the seeds go half as fast: 8.5 days at 20 C in all.
   */
  @Test
  void seedlingsTooLateAreThoseThatShowAfterTheStandWindowRefusedIfHalfByIsFivePercentLater() {
    crop.cells = 40;
    crop.seedsPerCell = 2;
    crop.germination = new Crop.Germination(0.5, 0, 0);
    crop.emergence = new Crop.Emergence(5, 30, 40, 20, 6, 9);
    crop.leaveAt = 1;
    crop.pullAfterDays = 7;
    crop.failBelow = 0;
    crop.standWindowDays = 3;
    farm.sowings.add(Farms.sowing("sowing", 0, TRAYS));
    List<SeasonOutcome> seasons = Runs.of(scenario(12.5), 21, 500);
    Mean tooLate = Mean.of(seasons, season -> season.lost(0, Loss.TOO_LATE));
    assertThat(tooLate.errorsFrom(tooLate(seed(8.5, 6, 9)))).isLessThan(K);
    assertThat(tooLate.errorsFrom(tooLate(seed(8.5, 6 * 1.05, 9 * 1.05)))).isGreaterThan(K);
  }

  private static double tooLate(double seed) {
    double fills = 1 - 0.5 * 0.5;
    double showing = 1 - Math.pow(1 - 0.5 * seed, 2);
    return TRAYS * 40 * (fills - showing);
  }

  /**
   * Trays pulled after 6 days with fewer than 9 of 20 cells showing are thrown out, and on that
   * day, the last for it, sown again, once.
   */
  @Test
  void traysFailWithTheirBinomialChanceAndAreSownAgainRefusedIfHalfByIsFivePercentLater() {
    crop.cells = 20;
    crop.germination = new Crop.Germination(0.8, 0, 0);
    crop.emergence = new Crop.Emergence(5, 30, 40, 20, 6, 9);
    crop.pullAfterDays = 6;
    crop.failBelow = 0.45;
    farm.sowings.add(Sowings.sownAgainUntil(Farms.sowing("sowing", 0, TRAYS), Farms.day(6)));
    List<SeasonOutcome> seasons = Runs.of(scenario(20), 22, 500);
    Mean sown = Mean.of(seasons, season -> season.trays(0, TrayMove.SOWN));
    Mean failed = Mean.of(seasons, season -> season.lost(0, Loss.FAILED_TRAY));
    double fails = fails(seed(6, 6, 9));
    assertThat(sown.errorsFrom(TRAYS * (1 + fails))).isLessThan(K);
    assertThat(failed.errorsFrom(TRAYS * 20 * fails * (1 + fails))).isLessThan(K);
    double later = fails(seed(6, 6 * 1.05, 9 * 1.05));
    assertThat(sown.errorsFrom(TRAYS * (1 + later))).isGreaterThan(K);
    assertThat(failed.errorsFrom(TRAYS * 20 * later * (1 + later))).isGreaterThan(K);
  }

  private static double fails(double seed) {
    return new BinomialDistribution(null, 20, 0.8 * seed).cumulativeProbability(8);
  }

  /**
   * The slow, obvious way: each seed of each cell has a rate and a time of its own, and the people
   * count what shows each morning. Mean day of leaving, mean seedlings too late, and the mean of
   * its square, which tells whether the cells of a tray hang together as they should.
   */
  @Test
  void traysGoAsIfEachSeedHadBeenDrawnRefusedIfHalfByIsFivePercentLater() {
    crop.cells = 24;
    crop.seedsPerCell = 3;
    crop.germination = new Crop.Germination(0.4, 0, 1 / 11.0);
    crop.emergence = new Crop.Emergence(5, 30, 40, 20, 6, 9);
    crop.pullAfterDays = 8;
    crop.failBelow = 0;
    crop.standWindowDays = 1;
    for (int s = 0; s < TRAYS; s++) {
      farm.sowings.add(Farms.sowing("sowing " + s, 0, 1));
    }
    List<SeasonOutcome> seasons = Runs.of(scenario(20), 23, 1000);
    double[][] engine = new double[4][TRAYS * seasons.size()];
    for (int i = 0; i < engine[0].length; i++) {
      SeasonOutcome season = seasons.get(i / TRAYS);
      note(
          engine,
          i,
          season.firstDay(i % TRAYS, TrayMove.OFF_HEAT),
          season.lost(i % TRAYS, Loss.TOO_LATE));
    }
    double[][] drawn = seedBySeed(6, 9);
    double[][] later = seedBySeed(6 * 1.05, 9 * 1.05);
    for (int i = 0; i < 4; i++) {
      assertThat(Mean.of(engine[i]).errorsFrom(Mean.of(drawn[i]))).isLessThan(K);
      assertThat(Mean.of(engine[i]).errorsFrom(Mean.of(later[i]))).isGreaterThan(K);
    }
  }

  private static void note(double[][] sums, int tray, int leftOn, int tooLate) {
    sums[0][tray] = leftOn;
    sums[1][tray] = tooLate;
    sums[2][tray] = tooLate * tooLate;
    sums[3][tray] = leftOn * tooLate;
  }

  private static double[][] seedBySeed(double halfByDays, double mostByDays) {
    SplittableRandom random = new SplittableRandom(24);
    double sigma = Math.log(mostByDays / halfByDays) / NORMAL.inverseCumulativeProbability(0.9);
    double[][] trays = new double[4][20_000];
    for (int i = 0; i < trays[0].length; i++) {
      // Beta(4, 6), of mean 0.4 and correlation 1/11: the fourth of nine uniforms.
      double rate = random.doubles(9).sorted().skip(3).findFirst().orElseThrow();
      double[] shows = new double[24];
      for (int cell = 0; cell < shows.length; cell++) {
        shows[cell] = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
          double time = halfByDays * Math.exp(sigma * random.nextGaussian());
          shows[cell] = random.nextDouble() < rate ? Math.min(shows[cell], time) : shows[cell];
        }
      }
      int day = 1;
      while (day < 8 && by(shows, day) < 12) {
        day++;
      }
      note(trays, i, day, by(shows, Double.MAX_VALUE) - by(shows, day + 1));
    }
    return trays;
  }

  private static int by(double[] shows, double days) {
    return (int) Arrays.stream(shows).filter(time -> time <= days).count();
  }
}
