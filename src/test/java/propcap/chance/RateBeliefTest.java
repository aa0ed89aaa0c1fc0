package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.chance.KnownShowing.Count;
import propcap.chance.KnownShowing.Slice;
import propcap.chance.KnownShowing.Stand;
import propcap.farm.Crop;
import propcap.farm.Crops;
import umontreal.ssj.probdist.BetaDist;

/** What trays tell of their lot's germination rate, to 0.001 in mean and 5 and 95 % points. */
class RateBeliefTest {
  private static final double RIGHT_TO = 0.001;
  private static final double[] POINTS = {0.05, 0.5, 0.95};

  private static double mean(RateBelief belief) {
    double sum = 0;
    for (int i = 0; i < 4000; i++) {
      sum += belief.at((i + 0.5) / 4000);
    }
    return sum / 4000;
  }

  private static RateBelief counted(double alpha, double beta, int came, int not) {
    return new RateBelief(alpha, beta, g -> came * Math.log(g) + not * Math.log1p(-g));
  }

  /**
   * Gelman et al., Bayesian Data Analysis, 3rd edition (the section, 2.4, from memory): of 980
   * births with placenta previa 437 were girls; with a uniform prior the mean is 0.446 and the
   * central 95 % interval 0.415 to 0.477.
   */
  @Test
  void thePlacentaPreviaBirthsGiveTheMeanAndTheIntervalOfTheTextbook() {
    RateBelief births = counted(1, 1, 437, 543);
    assertThat(mean(births)).isCloseTo(0.446, within(0.0006));
    assertThat(births.at(0.025)).isCloseTo(0.415, within(0.0006));
    assertThat(births.at(0.975)).isCloseTo(0.477, within(0.0006));
    // The twin: as many boys.
    assertThat(mean(counted(1, 1, 543, 437))).isGreaterThan(0.55);
  }

  /** The conjugate law: Beta(a, b), and c of n came up, is Beta(a + c, b + n - c). */
  @Test
  void aBetaAndACountAreTheBetaOfBoth() {
    double[][] cases = {
      {90, 10, 100, 28}, {0.9, 0.1, 0, 12}, {17, 3, 5, 95}, {1, 1, 20_000, 4_000}, {2, 2, 0, 0}
    };
    for (double[] c : cases) {
      RateBelief belief = counted(c[0], c[1], (int) c[2], (int) c[3]);
      for (double u : POINTS) {
        double expected = BetaDist.inverseF(c[0] + c[2], c[1] + c[3], u);
        assertThat(belief.at(u)).isCloseTo(expected, within(RIGHT_TO));
      }
      assertThat(mean(belief))
          .isCloseTo((c[0] + c[2]) / (c[0] + c[1] + c[2] + c[3]), within(RIGHT_TO));
    }
  }

  private static Crop crop(int seeds, double tested, double correlation) {
    Crops crop = new Crops();
    crop.cells = 24;
    crop.seedsPerCell = seeds;
    crop.germination = new Crop.Germination(seeds == 1 ? 0.85 : 0.6, tested, correlation);
    crop.emergence = new Crop.Emergence(0, 30, 40, 20, 4.5, 6.5);
    crop.leaveAt = 0.5;
    return crop.make();
  }

  private static KnownShowing known(
      double notBy, double by, @Nullable Stand stand, Count... counts) {
    return new KnownShowing(
        List.of(counts),
        notBy,
        by,
        by < Double.POSITIVE_INFINITY ? 12 : 0,
        KnownShowing.NOT_FAILED,
        stand);
  }

  private static KnownShowing counted(double degreeDays, int seedlings) {
    return known(0, Double.POSITIVE_INFINITY, null, new Count(degreeDays, seedlings));
  }

  private static final KnownShowing SLOW = known(110, Double.POSITIVE_INFINITY, null);
  private static final KnownShowing LEFT = known(80, 100, null);
  private static final KnownShowing STOOD =
      known(80, 100, new Stand(190, 19, List.of(new Slice(100, 1)), 1));
  private static final KnownShowing FAILED = new KnownShowing(List.of(), 0, 140, 0, 6, null);

  private static Map<String, List<KnownShowing>> logs() {
    Map<String, List<KnownShowing>> logs = new LinkedHashMap<>();
    logs.put("one tray counted", List.of(counted(120, 14)));
    logs.put(
        "three counted, at two times", List.of(counted(120, 20), counted(90, 9), counted(90, 12)));
    logs.put("three that are slow", List.of(SLOW, SLOW, SLOW));
    logs.put("left in time, and slow", List.of(LEFT, LEFT, SLOW));
    logs.put("stands", List.of(STOOD, STOOD, LEFT));
    logs.put("one failed, one counted", List.of(FAILED, counted(120, 10)));
    return logs;
  }

  private static double mean(LotBelief belief) {
    double sum = 0;
    for (int i = 0; i < 2000; i++) {
      sum += belief.lotRate((i + 0.5) / 2000);
    }
    return sum / 2000;
  }

  @Test
  void whatTraysTellOfTheirLotIsAsTheSumOverAllRatesOfLotAndTrays() {
    for (Crop crop :
        List.of(crop(1, 100, 0), crop(1, 100, 0.02), crop(2, 40, 0.1), crop(3, 60, 0.05))) {
      for (Map.Entry<String, List<KnownShowing>> log : logs().entrySet()) {
        String as = log.getKey() + ", " + crop.germination() + ", seeds " + crop.seedsPerCell();
        LotBelief belief = LotBelief.of(CropLuck.of(crop), log.getValue());
        RateByForce force = new RateByForce(crop, log.getValue(), 0.06);
        for (double u : POINTS) {
          assertThat(belief.lotRate(u)).as(as).isCloseTo(force.at(u), within(RIGHT_TO));
        }
        assertThat(mean(belief)).as(as).isCloseTo(force.mean(), within(RIGHT_TO));
      }
    }
  }

  /** The twins: a plant more in one tray of three, or trays held for alike that are not. */
  @Test
  void aPlantMoreOrTraysThatDifferLessAreRefused() {
    List<KnownShowing> trays = List.of(counted(120, 20), counted(90, 9), counted(90, 12));
    RateByForce force = new RateByForce(crop(1, 100, 0.02), trays, 0.06);
    LotBelief more =
        LotBelief.of(
            CropLuck.of(crop(1, 100, 0.02)), List.of(counted(120, 21), trays.get(1), trays.get(2)));
    assertThat(Math.abs(mean(more) - force.mean())).isGreaterThan(RIGHT_TO);
    LotBelief alike = LotBelief.of(CropLuck.of(crop(1, 100, 0.01)), trays);
    assertThat(Math.abs(alike.lotRate(0.05) - force.at(0.05))).isGreaterThan(RIGHT_TO);
  }

  /** A tray's own rate, in a lot of which the rate is known. */
  @Test
  void whatATrayTellsOfItselfIsAsTheSumOverAllItsRates() {
    for (double correlation : new double[] {0.02, 0.1, 0.3}) {
      Crop crop = crop(2, 100, correlation);
      TrayRates rates = new TrayRates(correlation);
      for (KnownShowing known : List.of(counted(120, 14), SLOW, LEFT, STOOD, FAILED)) {
        ShowingLaw law =
            new ShowingLaw(new EmergenceCurve(crop), crop.cells(), crop.cellsToLeave(), known);
        TrayRates.Around around = rates.around(0.6);
        double[] below = around.cumulated(rates.of(law::likelihood));
        double[] expected = new RateByForce(crop, List.of(), 0.02).tray(0.6, known, POINTS);
        for (int i = 0; i < POINTS.length; i++) {
          assertThat(around.at(below, POINTS[i]))
              .as(known + ", " + correlation)
              .isCloseTo(expected[i], within(RIGHT_TO));
        }
      }
    }
  }
}
