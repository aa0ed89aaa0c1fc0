package propcap.farm;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Facts of the trade that the crop records hold. All are common practice. */
class TradeFactsTest {

  /** Common practice: heat comes off at half of the seedlings, 36 in a tray of 72. */
  @Test
  void unlessToldOtherwiseATrayLeavesTheHeatAtHalfItsSeedlings() {
    Crops crop = new Crops();
    crop.cells = 72;
    crop.leaveAt = Crop.DEFAULT_LEAVE_AT;
    assertThat(crop.make().cellsToLeave()).isEqualTo(36);
  }

  /** Parts of a cell are rounded up, and a whole product stays whole in binary. */
  @ParameterizedTest(name = "{1} of {0} cells: {2}")
  @CsvSource({
    "72, 0.5, 36",
    "73, 0.5, 37",
    "100, 0.55, 55",
    "50, 0.58, 29",
    "128, 0.7, 90",
    "10, 0.001, 1",
    "10, 1, 10",
    "1, 0.5, 1"
  })
  void aShareOfATrayIsAWholeNumberOfCells(int cells, double share, int expected) {
    Crops crop = new Crops();
    crop.cells = cells;
    crop.leaveAt = share;
    crop.failBelow = share;
    assertThat(crop.make().cellsToLeave()).isEqualTo(expected);
    assertThat(crop.make().cellsNotToFail()).isEqualTo(expected);
  }

  /** Common practice: all cells of the tray are counted, so that more seeds a cell ask no more. */
  @Test
  void moreSeedsACellDoNotRaiseWhatATrayNeeds() {
    Crops crop = new Crops();
    int single = crop.make().cellsToLeave();
    crop.seedsPerCell = 3;
    assertThat(crop.make().cellsToLeave()).isEqualTo(single);
  }

  /** Common practice: nothing germinates in the yard, everything can in a house. */
  @Test
  void seedGerminatesAnywhereButInTheHardeningArea() {
    for (PlaceKind kind : PlaceKind.values()) {
      assertThat(kind.canGerminate()).isEqualTo(kind != PlaceKind.HARDENING);
    }
  }
}
