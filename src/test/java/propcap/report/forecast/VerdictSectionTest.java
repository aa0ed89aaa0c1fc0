package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import propcap.farm.TinyFarm;
import propcap.report.Forecasts;
import propcap.report.forecast.VerdictSection.Figure;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.Forecasting;

class VerdictSectionTest {

  @Test
  void theAnswerStandsFirstOnThePageAndInTheTerminal() {
    Forecast spring = Forecasts.spring();
    VerdictSection verdict = VerdictSection.of(spring);
    assertThat(verdict.sentence()).isEqualTo("32 of 42 sowings are safe and 10 at risk.");
    assertThat(verdict.mark()).isEqualTo("◐");
    assertThat(verdict.figures())
        .extracting(Figure::value)
        .containsExactly("32 of 42", "56,300 of 62,520", "49 days");
    assertThat(verdict.figures()).noneMatch(f -> f.error().isEmpty());
    assertThat(ForecastHeadlines.of(spring).lines().get(0))
        .isEqualTo("Base spring: ◐ 32 of 42 sowings are safe and 10 at risk.");
    String page = ReportPage.html(spring, "0.1.0");
    assertThat(page.indexOf(verdict.sentence()))
        .isBetween(0, page.indexOf("The house at a glance"));
    assertThat(new ForecastAnswer(spring).safe()).isEqualTo("32 of 42");
  }

  @Test
  void aFarmThatNeverHasItsPlantsIsLost() {
    VerdictSection verdict = VerdictSection.of(Forecasts.bare());
    assertThat(verdict.mark()).isEqualTo("○");
    assertThat(verdict.sentence()).isEqualTo("The only sowing is lost.");
    assertThat(verdict.figures()).contains(new Figure("No place", "is ever full", ""));
  }

  /** The first and the last day on which every second spring has no space left. */
  @Test
  void thePlaceThatIsFullTheLongestIsToldWithItsDays() {
    Forecast spring = Forecasts.spring();
    Occupancy fullest =
        Collections.max(
            spring.places().stream().filter(p -> p.spaces() > 0).toList(),
            Comparator.comparingDouble(p -> p.fullDays().mean()));
    List<LocalDate> full = new ArrayList<>();
    for (int day = 0; day < fullest.days().size(); day++) {
      if (fullest.days().get(day).chanceFull() >= 0.5) {
        full.add(spring.scenario().season().date(day));
      }
    }
    DateTimeFormatter words = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
    assertThat(full).hasSizeGreaterThan(2);
    assertThat(VerdictSection.of(spring).figures().get(2).what())
        .isEqualTo(
            "with "
                + fullest.name()
                + " full, between "
                + full.get(0).format(words)
                + " and "
                + full.get(full.size() - 1).format(words));
  }

  /** Twenty plants on time at 1 EUR, twenty late ones at 0.30, and four trays at 2 EUR. */
  @Test
  void whereThereArePricesTheMarginIsTheFourthFigure() throws Exception {
    Forecast tiny =
        Forecasting.forecast(TinyFarm.make(), new RunSettings(1, 20, null, 1), done -> {});
    assertThat(VerdictSection.of(tiny).figures())
        .element(3)
        .extracting(Figure::value, Figure::what)
        .containsExactly("18 EUR", "margin in a mean spring");
    assertThat(VerdictSection.of(Forecasts.spring()).figures()).hasSize(3);
  }

  /** 89.7 % rounds to 90 %, and is below it. */
  @Test
  void everySowingIsMarkedByShapeAndByWord() {
    String page = ReportPage.html(Forecasts.spring(), "0.1.0");
    assertThat(page)
        .containsPattern("class=\"standing\">\\s*<span class=\"dot safe\"[^>]*></span>\\s*safe<")
        .containsPattern(
            "class=\"standing\">\\s*<span class=\"dot risk\"[^>]*></span>\\s*at risk<");
    assertThat(ReportPage.html(Forecasts.bare(), "0.1.0"))
        .containsPattern("<span class=\"dot lost\"[^>]*></span>\\s*lost<");
  }
}
