package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.shift.ShiftsAnswer;
import propcap.report.size.SizingAnswer;
import propcap.results.Answer;

/** The answers' pages, as a browser is given them. */
class AnswerPagesTest {
  private static final Pattern ID = Pattern.compile("\\sid=\"([^\"]*)\"");
  private static final Pattern REFERENCE = Pattern.compile("url\\(#([^)]*)\\)");

  private static final String COMPARISON = html(new ComparisonAnswer(Questions.comparison()));
  private static final String BOTTLENECK = html(new BottlenecksAnswer(Questions.bottlenecks()));
  private static final String SIZE = html(new SizingAnswer(Questions.sizing(), Questions.order()));
  private static final String SHIFT = html(new ShiftsAnswer(Questions.shifts(true)));

  /** Pages with as little on them as there can be. */
  private static final List<String> BARE =
      List.of(
          html(new ComparisonAnswer(Questions.plain("a", "b", Questions.d(0, 0)))),
          html(new BottlenecksAnswer(Questions.noBottleneck())),
          html(new SizingAnswer(Questions.pairs(), Questions.NO_ORDER)),
          html(new ShiftsAnswer(Questions.unshifted())));

  private static String html(Answer answer) {
    return answer.files("0.1.0").values().iterator().next().replace('\u00a0', ' ');
  }

  private static List<String> pages() {
    return java.util.stream.Stream.concat(
            List.of(COMPARISON, BOTTLENECK, SIZE, SHIFT).stream(), BARE.stream())
        .toList();
  }

  private static List<String> all(Pattern pattern, int group, String text) {
    return pattern.matcher(text).results().map((MatchResult m) -> m.group(group)).toList();
  }

  private static void assertInOrder(String page, String... texts) {
    int from = 0;
    for (String text : texts) {
      int at = page.indexOf(text, from);
      assertThat(at).as(text).isNotNegative();
      from = at + text.length();
    }
  }

  @Test
  void aComparisonSaysWhetherItPaysThenItsVerdictsThenItsParts() {
    assertInOrder(
        COMPARISON,
        "Base spring</h1>",
        "Does it pay?",
        "Do not buy Chamber 2",
        "buys nothing",
        "Does it bring more plants?",
        "A second chamber adds nothing that 400 springs could tell (-40 ± 210 plants on time a"
            + " spring): the tables are full, and trays stretch waiting to leave the heat",
        "<svg",
        "Which crops gain or lose",
        "What waits",
        "Where plants are lost",
        "Every outcome",
        "sowings that have their plants",
        "How to read this",
        "rounded half up to whole units");
  }

  @Test
  void aBottleneckRanksThePlacesAndThenPlansTheSteps() {
    assertInOrder(
        BOTTLENECK,
        "House 1 helps most: 33 more spaces bring +1,240 ± 90 plants on time a spring, 38 for each",
        "Do not buy 12 more spaces of House 2",
        "Less of Chamber helps",
        "<svg",
        "House 1",
        "Mats",
        "What helps most, step by step",
        "Buy first 33 more spaces of House 1 (+1,240 ± 90 plants a spring, net present value",
        "4. Chamber, +7",
        "How to read this");
  }

  @Test
  void aSizeIsAnsweredGuaranteedDrawnAndOrdered() {
    assertInOrder(
        SIZE,
        "Not decided in 2,000 springs: House 2 seems to need 120 spaces, as many as now, so that",
        "With 95 % confidence this is right, or within 3.4 percentage points of the goal, not",
        "<svg",
        "too near the goal to tell",
        "Sizes tried.",
        "What to order",
        "House 2: table area",
        "24.1 m2 (260 ft2)");
  }

  @Test
  void aShiftIsAnsweredGroupByGroup() {
    assertInOrder(
        SHIFT,
        "Sow tomato* 7 days earlier: +210 ± 60 of these plants on time",
        "The best shift of each group",
        "tomato*</h2>",
        "<svg",
        "kale*</h2>",
        "pepper*</h2>");
  }

  @Test
  void aPageNeedsNoOtherFileAndNoScript() {
    for (String html : pages()) {
      assertThat(html.toLowerCase(Locale.ROOT))
          .doesNotContain("<script", "<link", "<img", "<iframe", "@import", "javascript:");
    }
  }

  @Test
  void noNumberIsBroken() {
    for (String html : pages()) {
      assertThat(html).doesNotContain("NaN", "Infinity", "∞", "null", "�");
    }
  }

  /** Windows Glyph List 4 has no other arrows and shapes, and many fonts have no more than it. */
  @Test
  void noMarkIsMissingFromCommonFonts() {
    for (String html : pages()) {
      assertThat(html.replaceAll("[\\x{0}-\\x{2189}←↑→↓■□▪▫▬▲►▼◄◊○●◘◙◦]", "")).isEmpty();
    }
  }

  @Test
  void everyIdIsThereOnceAndEveryReferenceFindsIts() {
    for (String html : pages()) {
      List<String> ids = all(ID, 1, html);
      assertThat(ids).doesNotHaveDuplicates();
      assertThat(ids).containsAll(all(REFERENCE, 1, html));
    }
  }

  @Test
  void thereIsAChartForEachQuestionAndItSaysWhatItShows() {
    Map<String, Integer> charts = Map.of(COMPARISON, 5, BOTTLENECK, 2, SIZE, 1, SHIFT, 3);
    charts.forEach(
        (html, number) -> {
          List<String> drawn = all(Pattern.compile("<svg[^>]*><title>"), 0, html);
          // Each is drawn for a phone as well.
          assertThat(drawn).hasSize(2 * number);
          assertThat(drawn.stream().filter(svg -> svg.contains("class=\"slim\""))).hasSize(number);
        });
  }

  @Test
  void whatIsNotToldApartIsNotBold() {
    assertThat(COMPARISON).contains("<strong>+1,240 ± 90</strong>").contains("-40 ± 210");
    assertThat(COMPARISON).doesNotContain("<strong>-40 ± 210</strong>");
  }

  @Test
  void aDifferenceThatRoundsToNothingIsNothing() {
    String page = html(new ComparisonAnswer(Questions.plain("a", "b", Questions.d(0.0004, 0.004))));
    assertThat(page).doesNotContain("ahead 87 %");
    String more = html(new ComparisonAnswer(Questions.plain("a", "b", Questions.d(0.04, 0.004))));
    assertThat(more).contains("+0.04 ± 0.00", "ahead 87 %");
  }

  @ParameterizedTest
  @ValueSource(strings = {"<b>beet</b>", "beet & \"chard\"", "a</title><i>"})
  void namesAreShownAsTheyAreWritten(String name) {
    String html = html(new ComparisonAnswer(Questions.plain(name, name + "2", Questions.d(9, 2))));
    assertThat(html).doesNotContain("<b>", "<i>", "& \"", "&amp;amp;", "&amp;lt;");
    String escaped = name.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    assertThat(html).contains("<h1>" + escaped + "</h1>");
  }
}
