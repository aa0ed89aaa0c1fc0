package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class HeadlinesTest {
  @Test
  void tenLinesSayWhatMatters() {
    assertThat(Headlines.of(Forecasts.spring()))
        .containsExactly("Base spring: 50 springs, seed 7", "x");
  }

  @Test
  void noLineIsWiderThanATerminal() {
    String longName = "a very long name of a crop that goes on and on ".repeat(3).strip();
    for (String line : Headlines.of(Forecasts.spring(longName, List.of(longName)))) {
      assertThat(line.length()).isLessThanOrEqualTo(100);
    }
  }

  @Test
  void aSpringInWhichNothingHappensHasItsLines() {
    assertThat(Headlines.of(Forecasts.bare()))
        .contains("No place is ever full", "Nothing waits for room", "Nothing is lost")
        .noneMatch(line -> line.contains("NaN"));
  }
}
