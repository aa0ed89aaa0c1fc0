package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import propcap.report.Forecasts;
import propcap.study.forecast.Forecast;

class WaitingCausesTest {
  private final Forecast spring = Forecasts.spring();

  private String verdict(
      double toBeSown,
      double forTables,
      double toHarden,
      double behindOverdue,
      double behindReady) {
    return new WaitingCauses(toBeSown, forTables, toHarden, behindOverdue, behindReady)
        .verdict(spring);
  }

  @Test
  void everyTrayDayOfWaitingIsLaidAtOneDoor() {
    WaitingCauses bottleneck = new WaitingCauses(400, 300, 50, 380, 120);
    assertThat(bottleneck.dueToHeat()).isEqualTo(20);
    // 300 + 380 = 680, of which 120/300 are passed on: 272, and 408 stay.
    assertThat(bottleneck.dueToTables()).isCloseTo(408, within(1e-9));
    assertThat(bottleneck.dueToHardening()).isCloseTo(322, within(1e-9));
  }

  @Test
  void heatThatNoTrayBlocksIsTooSmallItself() {
    assertThat(verdict(400, 10, 0, 5, 0))
        .startsWith("The bottleneck is the heat (Chamber and Mats)");
  }

  @Test
  void fullTablesThatBlockTheHeatAreTheBottleneck() {
    assertThat(verdict(400, 10, 0, 390, 0))
        .startsWith("The bottleneck is table room (House 1 and House 2)");
  }

  @Test
  void aFullHardeningAreaIsTheBottleneckOfAll() {
    assertThat(verdict(400, 300, 90, 390, 290)).startsWith("The bottleneck is Yard");
  }

  @Test
  void readyPlantsWithRoomToHardenWaitForTheDate() {
    assertThat(verdict(400, 300, 0, 390, 290)).startsWith("No place but the date");
  }

  @Test
  void nothingWaitsWhereThereIsRoom() {
    assertThat(verdict(0, 0, 0, 0, 0)).isEqualTo("Nothing waits: no place holds up another.");
  }
}
