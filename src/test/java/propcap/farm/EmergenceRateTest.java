package propcap.farm;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** The rate of development by temperature. */
class EmergenceRateTest {
  private static final Offset<Double> ROUNDING = Offset.offset(1e-12);
  private final Crop.Emergence tomato = new Crop.Emergence(9, 29, 38, 22, 6.5, 9.5);

  /** Garcia-Huidobro, Monteith and Squire (1982), J. Exp. Bot. 33. */
  @Test
  void belowTheOptimumEachDegreeAboveTheBaseCounts() {
    assertThat(tomato.rate(10)).isEqualTo(1);
    assertThat(tomato.rate(22)).isEqualTo(13);
    assertThat(tomato.rate(29)).isEqualTo(20);
  }

  @Test
  void nothingDevelopsAtTheBaseOrTheCeilingOrBeyond() {
    for (double tempC : new double[] {-20, 8.9, 9, 38, 38.1, 50}) {
      assertThat(tomato.rate(tempC)).isZero();
    }
  }

  @Test
  void halfWayFromOptimumToCeilingTheRateIsHalved() {
    assertThat(tomato.rate(33.5)).isCloseTo(10, ROUNDING);
  }

  /**
   * The broken stick of Alvarado and Bradford (2002): 1/t = (min(T, To) - Tb) / theta (1 - (min(
   * max(T, To), Tc) - To) / (Tc - To)), with theta here 84.5 degree days.
   */
  @Test
  void theRateIsTheBrokenStickUpToTheCeiling() {
    for (double tempC = 9; tempC < 42; tempC += 0.1) {
      double above = (Math.min(Math.max(tempC, 29), 38) - 29) / (38 - 29);
      double published = (Math.min(tempC, 29) - 9) / 84.5 * (1 - above);
      assertThat(tomato.rate(tempC) / tomato.medianDegreeDays())
          .as("%s C", tempC)
          .isCloseTo(published, ROUNDING);
    }
  }

  /** The twin: a ceiling one degree higher leaves the stick above the optimum. */
  @Test
  void aCeilingADegreeOffLeavesTheStick() {
    Crop.Emergence wrong = new Crop.Emergence(9, 29, 39, 22, 6.5, 9.5);
    assertThat(wrong.rate(22)).isEqualTo(tomato.rate(22));
    assertThat(wrong.rate(30)).isGreaterThan(tomato.rate(30) + 0.2);
  }

  @Test
  void theMedianIsHalfByInDegreeDaysOfItsTemperature() {
    assertThat(tomato.medianDegreeDays()).isEqualTo(6.5 * 13);
    assertThat(new Crop.Emergence(9, 29, 38, 33.5, 6.5, 9.5).medianDegreeDays())
        .isCloseTo(65, ROUNDING);
  }

  @Test
  void growingOnStopsAtItsBaseAndGainsNothingAboveItsOptimum() {
    Crop.GrowingOn growingOn =
        new Crop.GrowingOn(8, 24, 18, 24, 0.1, 0.03, Crop.DampingOff.NONE, 10, 0.03);
    assertThat(growingOn.rate(8)).isZero();
    assertThat(growingOn.rate(-5)).isZero();
    assertThat(growingOn.rate(18)).isEqualTo(10);
    assertThat(growingOn.rate(24)).isEqualTo(16);
    assertThat(growingOn.rate(40)).isEqualTo(16);
  }

  @Test
  void plugsAndPotsAreTimedAtGrowingOnsTemperature() {
    Crops crop = new Crops();
    crop.takesDays = 24;
    crop.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 18, 20, 12, 0.02);
    // Growing on is at 20 C above a base of 0 C here.
    assertThat(crop.make().growingOnDegreeDays()).isEqualTo(24 * 20);
    assertThat(crop.make().pottedDegreeDays()).isEqualTo(20 * 20);
  }
}
