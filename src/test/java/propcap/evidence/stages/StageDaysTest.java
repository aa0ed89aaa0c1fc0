package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;

/** Days in each stage by hand. */
class StageDaysTest {
  private static final Offset<Double> EXACT = Offset.offset(1e-9);

  /**
   * Onion, base 2.5 C and 80 degree days, "4 days at 22.5 C or 16 days at 7.5 C": Brewster, Onions
   * and Other Vegetable Alliums, figure 4.7. Nine in ten are half as long again behind here.
   */
  private static Crop onion() {
    Crops crop = new Crops();
    crop.emergence = new Crop.Emergence(2.5, 25, 35, 22.5, 4, 6);
    return crop.make();
  }

  @Test
  void seedlingsShowInTheDaysThatTheirDegreeDaysTake() {
    assertThat(StageDays.at(onion(), 7.5).halfShow()).isCloseTo(16, EXACT);
    assertThat(StageDays.at(onion(), 7.5).mostShow()).isCloseTo(24, EXACT);
    assertThat(StageDays.asGiven(onion()).halfShow()).isCloseTo(4, EXACT);
    assertThat(StageDays.asGiven(onion()).growingOn())
        .isCloseTo(onion().growingOn().takesDays(), EXACT);
  }

  @Test
  void whatIsTooColdOrTooHotDoesNotComeUp() {
    assertThat(StageDays.at(onion(), 2.5).comesUp()).isFalse();
    assertThat(StageDays.at(onion(), 35).comesUp()).isFalse();
    assertThat(StageDays.at(onion(), 34).comesUp()).isTrue();
  }

  @Test
  void weeksAreTheStagesInARow() {
    StageDays days = new StageDays(4, 6, 20, 14, 11);
    assertThat(days.weeksToBed()).isCloseTo(7, EXACT);
  }

  @Test
  void nothingGrowsBelowItsBase() {
    double baseC = onion().growingOn().baseC();
    assertThat(StageDays.at(onion(), baseC).growsOn()).isFalse();
    assertThat(StageDays.at(onion(), baseC + 1).growsOn()).isTrue();
  }
}
