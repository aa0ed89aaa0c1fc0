package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.report.Forecasts;

class HeadlinesTest {
  @Test
  void tenLinesSayWhatMatters() {
    assertThat(Headlines.of(Forecasts.spring()))
        .containsExactly(
            "Base spring: 50 springs, seed 7",
            "Out on time: 66,598 plants (95 % interval 65,032 to 68,164); late: 2,026",
            "Sowings that have their plants on time in 9 springs of 10: 32 of 42",
            "  tomato-1: in only 3 springs of 10 are the 2,400 plants in by 15 April",
            "  squash-1: in only 4 springs of 10 are the 2,466 plants in by 21 May",
            "  leek-2: in only 5 springs of 10 are the 2,533 plants in by 22 May",
            "Full: Mats on 49 days, House 1 on 38 days, House 2 on 33 days",
            "Longest wait: to leave the heat, for House 1 or House 2, 380 tray-days",
            "The bottleneck is table room (House 1 and House 2): 648 of 929 tray-days of waiting go"
                + " back to it.",
            "Lost, of cells sown: no seedling 10 %, kept too long 6.0 %, on the table 4.3 %");
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
