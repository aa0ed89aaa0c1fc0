package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import propcap.report.Forecasts;
import propcap.report.forecast.VerdictSection.Figure;
import propcap.study.Forecast;

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
    assertThat(Headlines.of(spring).get(0))
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
