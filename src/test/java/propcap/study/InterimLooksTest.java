package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class InterimLooksTest {
  @Test
  void eachLookIsAfterTwiceAsManySeasonsUpToTheMost() {
    assertThat(InterimLooks.upTo(5000, 1).after())
        .containsExactly(40, 79, 157, 313, 625, 1250, 2500, 5000);
    assertThat(InterimLooks.upTo(100, 1).after()).containsExactly(50, 100);
  }

  @Test
  void fewSeasonsAreLookedAtOnce() {
    assertThat(InterimLooks.upTo(60, 1).after()).containsExactly(60);
    assertThat(InterimLooks.upTo(2, 1).after()).containsExactly(2);
  }

  /** The error of 5 % is shared among nine sizes and two looks. */
  @Test
  void theErrorIsSharedOut() {
    assertThat(InterimLooks.upTo(100, 1).ofEach(.95, 9)).isCloseTo(1 - .05 / 18, within(1e-12));
  }
}
