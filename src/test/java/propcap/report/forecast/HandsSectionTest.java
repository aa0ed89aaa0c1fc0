package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.report.Forecasts;
import propcap.report.kit.Lines;
import propcap.report.kit.WaitingCauses;
import propcap.study.forecast.Forecast;

class HandsSectionTest {
  private static final Forecast SHORT = Forecasts.shortOfHands();

  private static JsonObject hands(Forecast forecast) {
    return JsonParser.parseString(SummaryJson.of(forecast, "0.1.0"))
        .getAsJsonObject()
        .getAsJsonObject("hands");
  }

  @Test
  void withoutABudgetHoursAreToldAndTheirRatesOwnedUpTo() {
    HandsSection section = HandsSection.of(Forecasts.spring());
    assertThat(section.verdict()).startsWith("The work takes ").endsWith(" in the mean.");
    assertThat(section.sentences())
        .anyMatch(s -> s.contains("nothing waits for hands"))
        .anyMatch(s -> s.contains("not from this farm"));
    assertThat(section.rows()).allSatisfy(row -> assertThat(row.budget()).isEqualTo("–"));
    assertThat(section.svg()).doesNotContain("hours that there are");
  }

  @Test
  void withABudgetTheDaysThatRunOutAreToldAndWhatWaits() {
    HandsSection section = HandsSection.of(SHORT);
    assertThat(section.verdict()).contains("hours run out on 20 of 175 working days");
    assertThat(section.sentences())
        .anyMatch(
            s ->
                s.startsWith(
                    "1,230 tray-days a spring had room and waited for hands: planting out 1,200"
                        + " and thinning 30."));
    assertThat(section.rows()).allSatisfy(row -> assertThat(row.budget()).isEqualTo("56"));
    assertThat(section.svg()).contains("hours that there are");
  }

  @Test
  void whereThereIsNoWorkNothingIsPrinted() {
    assertThat(HandsSection.of(Forecasts.bare()).rows()).isEmpty();
    assertThat(ReportPage.html(Forecasts.bare(), "0.1.0")).doesNotContain("What the work takes");
  }

  @Test
  void moreWaitingForHandsThanForRoomMakesThemTheBottleneck() {
    assertThat(WaitingCauses.of(SHORT).verdict(SHORT))
        .isEqualTo(
            "The bottleneck is hands: 1,230 tray-days had room and waited for them, 929 waited for"
                + " room.");
  }

  @Test
  void theTerminalHasALineForLimitedHandsAndNoMoreLines() {
    List<String> lines = ForecastHeadlines.of(SHORT).lines();
    assertThat(lines).hasSizeLessThanOrEqualTo(Lines.MOST);
    assertThat(lines).anyMatch(l -> l.startsWith("Hands: ") && l.contains("run out on 20 of 175"));
    assertThat(ForecastHeadlines.of(Forecasts.spring()).lines())
        .noneMatch(l -> l.startsWith("Hands"));
  }

  @Test
  void filesForOtherProgramsHoldTheHours() {
    assertThat(hands(SHORT).get("hoursPerDay").getAsDouble()).isEqualTo(8);
    assertThat(hands(SHORT).getAsJsonObject("waiting").has("plant-out")).isTrue();
    // Not limited is no number.
    JsonObject counted = hands(Forecasts.spring());
    assertThat(!counted.has("hoursPerDay") || counted.get("hoursPerDay").isJsonNull()).isTrue();
    String[] rows = Tables.hands(SHORT).split("\n", -1);
    assertThat(rows[0])
        .isEqualTo(
            "date,budget,hours,p10,p50,p90,chance-short,hours-plant-out,hours-move,hours-thin,"
                + "hours-pot-on,hours-sow");
    assertThat(rows[1]).startsWith("2027-01-11,8,");
    assertThat(rows).hasSize(1 + 175 + 1);
  }
}
