package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.report.Forecasts;

class ForecastHeadlinesTest {
  @Test
  void tenLinesSayWhatMatters() {
    assertThat(ForecastHeadlines.of(Forecasts.spring()).lines())
        .containsExactly(
            "Base spring: ◐ 32 of 42 sowings are safe and 10 at risk.",
            "  32 of 42 sowings safe (7 to 37 within the error)",
            "  56,300 of 62,520 plants needed on time in a mean spring (95 % interval 54,976 to"
                + " 57,624)",
            "  49 days with Mats full, between 3 March and 20 April (95 % interval 48 to 50)",
            "  ◐ tomato-1: in only 34 springs of 100 are the 2,400 plants in by 15 April: lack of room",
            "  ◐ squash-1: in only 43 springs of 100 are the 2,466 plants in by 21 May: lack of room",
            "  ◐ leek-2: in only 52 springs of 100 are the 2,533 plants in by 22 May: lack of room",
            "The bottleneck is table room (House 1 and House 2): 648 of 929 tray-days of waiting go"
                + " back to it.",
            "Lost, of cells sown: no seedling 10 %, kept too long 6.0 %, on the table 4.3 %",
            "50 springs, seed 7");
  }

  @Test
  void noLineIsWiderThanATerminal() {
    String longName = "a very long name of a crop that goes on and on ".repeat(3).strip();
    for (String line :
        ForecastHeadlines.of(Forecasts.spring(longName, List.of(longName))).lines()) {
      assertThat(line.length()).isLessThanOrEqualTo(100);
    }
  }

  @Test
  void aSpringInWhichNothingHappensHasItsLines() {
    assertThat(ForecastHeadlines.of(Forecasts.bare()).lines())
        .contains(
            "  No place is ever full",
            "Nothing waits: no place holds up another.",
            "Nothing is lost")
        .noneMatch(line -> line.contains("NaN"));
  }
}
