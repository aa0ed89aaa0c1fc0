package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import propcap.evidence.stages.TrayEvidence.Count;

class BetaBeliefTest {
  /** The worked value: 88 of 100 after Beta(1, 1). */
  @Test
  void eightyEightOfAHundredIsTheWorkedBeta() {
    BetaBelief after = new BetaBelief(1 + 88, 1 + 12);
    assertThat(after.quantile(0.025)).isCloseTo(0.80165, within(5e-6));
    assertThat(after.quantile(0.5)).isCloseTo(0.87499, within(5e-6));
    assertThat(after.quantile(0.975)).isCloseTo(0.92965, within(5e-6));
  }

  @Test
  void countsThatAreNoneAreRefused() {
    assertThatThrownBy(() -> new BetaBelief(0, 1)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> new Count(3, 4)).hasMessageContaining("4 lost of 3");
  }
}
