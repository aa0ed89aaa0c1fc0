package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.report.Forecasts;
import propcap.study.forecast.Forecast;

class ReportPageTest {
  private static final Pattern ID = Pattern.compile("\\sid=\"([^\"]*)\"");
  private static final Pattern REFERENCE = Pattern.compile("url\\(#([^)]*)\\)");
  private static final Pattern ADDRESS = Pattern.compile("https?://[^\"' )<]*");

  private static final String PAGE = page(Forecasts.spring(), "0.1.0");
  private static final String BARE = page(Forecasts.bare(), "0.1.0");

  /** As it is read: what only keeps a line from ending is left out. */
  private static String page(Forecast forecast, String version) {
    return ReportPage.html(forecast, version)
        .replace('\u00a0', ' ')
        .replaceAll("<span class=\"kept\">([^<]*)</span>", "$1");
  }

  private static List<String> all(Pattern pattern, int group, String text) {
    return pattern.matcher(text).results().map((MatchResult m) -> m.group(group)).toList();
  }

  private static void assertInOrder(String... texts) {
    int from = 0;
    for (String text : texts) {
      int at = PAGE.indexOf(text, from);
      assertThat(at).as(text).isNotNegative();
      from = at + text.length();
    }
  }

  @Test
  void theSixQuestionsAreAnsweredInOrder() {
    assertInOrder(
        "Base spring</h1>",
        "Random start",
        "Propcap 0.1.0",
        "1. Will we have the plants?",
        "2. What is full, and when",
        "3. What waits for what",
        "4. Where plants are lost",
        "5. When each sowing moves",
        "6. What the work takes",
        "How to read this");
  }

  @Test
  void thePageNeedsNoOtherFileAndNoScript() {
    for (String html : List.of(PAGE, BARE)) {
      assertThat(html.toLowerCase(Locale.ROOT))
          .doesNotContain("<script", "<link", "<img", "<iframe", "@import", "javascript:");
      assertThat(all(ADDRESS, 0, html))
          .isSubsetOf("http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink");
      assertThat(all(Pattern.compile("url\\((.)"), 1, html)).containsOnly("#");
    }
  }

  @Test
  void noNumberIsBroken() {
    for (String html : List.of(PAGE, BARE)) {
      assertThat(html).doesNotContain("NaN", "Infinity", "∞", "null", "�");
    }
  }

  @Test
  void everyIdIsThereOnceAndEveryReferenceFindsIts() {
    for (String html : List.of(PAGE, BARE)) {
      List<String> ids = all(ID, 1, html);
      assertThat(ids).doesNotHaveDuplicates();
      assertThat(ids).containsAll(all(REFERENCE, 1, html));
    }
  }

  @Test
  void theSameForecastGivesTheSameBytes() {
    assertThat(page(Forecasts.spring(), "0.1.0")).isEqualTo(PAGE);
  }

  @Test
  void everyChartScalesAndSaysWhatItShows() {
    List<String> charts = all(Pattern.compile("<svg[^>]*viewBox[^>]*>"), 0, PAGE);
    // Five open places and their tables together, waiting, losses, moves, hands.
    // Each is drawn for a phone as well.
    assertThat(charts).hasSize(20);
    assertThat(charts)
        .allSatisfy(
            chart ->
                assertThat(chart)
                    .containsPattern("viewBox=\"0 0 (680|360) ")
                    .contains("role=\"img\"", "aria-label=\"")
                    .doesNotContain(" width=", " height="));
    // With the house at a glance, which scales by itself.
    assertThat(all(Pattern.compile("<svg[^>]*><title>"), 0, PAGE)).hasSize(21);
  }

  @Test
  void theWorstSowingComesFirstAndIsSaidInWords() {
    assertInOrder(
        "Not all: 32 of 42 sowings have",
        "Most at risk are tomato-1 (34 springs of 100)",
        "<tbody>",
        "tomato-1",
        "in only 34 springs of 100 are the 2,400 plants in by 15 April; in 9 of 10 they are by 21"
            + " April",
        "cabbage-2",
        "ready by 6 April in 9 springs of 10");
  }

  @Test
  void aFullPlaceIsDatedInWords() {
    assertThat(PAGE)
        .contains(
            "House 1 is full on 38 days of a spring (8 springs of 10: 27–49), mostly from 28 March"
                + " to 5 May.");
  }

  @Test
  void whatHoldsUpTheHeatIsNamed() {
    assertThat(PAGE)
        .contains(
            "The bottleneck is table room (House 1 and House 2): 648 of 929 tray-days of waiting",
            "for 390 of them a tray that should have left stood in the way, because the tables"
                + " were full: it is the tables that hold up the heat.");
  }

  @Test
  void aSpringInWhichNothingHappensIsStillAReport() {
    assertThat(BARE)
        .contains(
            "No: the only sowing has not the plants needed",
            "no 95 % interval",
            "in no spring are the 533 plants in by",
            "Table is never full.",
            "Nothing waits: no place holds up another.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"<b>beet</b>", "beet & \"chard\"", "bette à carde 'Œil'", "a</title><i>"})
  void namesAreShownAsTheyAreWritten(String name) {
    Forecast forecast = Forecasts.spring(name, List.of(name, "onion"));
    String html = page(forecast, "0.1.0");
    assertThat(html).doesNotContain("<b>", "<i>", "& \"");
    String escaped = name.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    assertThat(html).contains("<h1>" + escaped + "</h1>");
    assertThat(html).doesNotContain("&amp;amp;", "&amp;lt;");
  }
}
