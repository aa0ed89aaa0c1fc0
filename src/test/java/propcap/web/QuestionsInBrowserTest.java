package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Questions and what-ifs in a real browser; skipped where there is none. */
class QuestionsInBrowserTest extends InBrowser {
  @Test
  void aSecondChamberIsPutBesideComparedAndItsAnswerSaved() {
    Chromium page = open(WIDE);
    page.click("#what-if");
    page.type("#d-title", "A second chamber");
    page.click("#dialog button[type='submit']");
    page.find("[data-file='a-second-chamber.yaml'][aria-pressed='true']");
    page.click("[data-at='like Chamber']");
    page.click("#dialog button[type='submit']");
    page.find("[data-place='Chamber 2']");
    assertThat(page.text("#pairs")).contains("A second chamber");
    page.tab("questions");
    page.click("[data-at='ask compare']");
    assertThat(page.text("[data-answer='compare'] h2")).isNotEmpty();
    page.click("[data-at='save compare']");
    page.awaitText("[data-answer='compare']", "results/small-compare/comparison.html");
    assertThat(folder.resolve("results/small-compare/comparison.html")).exists();
    assertThat(page.complaints()).isEmpty();
  }

  /** What must be ordered is more trays than are planned: one click sets them beside the plan. */
  @Test
  void whatAnAnswerProposesIsPutBesideByOneClick() {
    Chromium page = open(WIDE);
    page.tab("questions");
    page.click("[data-at='ask order']");
    page.click("[data-at='beside order']");
    page.awaitText("[data-answer='order']", "stands beside the plan, as trays-as-ordered.yaml");
    page.awaitText("#pairs", "Trays as ordered");
    assertThat(page.text("#asked-of")).isEqualTo("Asked of: As planned");
    page.click("[data-file='trays-as-ordered.yaml']");
    page.awaitText("#asked-of", "Asked of: Trays as ordered");
    page.click("[data-file='small.yaml']");
    page.click("[data-at='take order']");
    page.awaitText("[data-answer='order']", "It is the plan now: Trays as ordered.");
    page.awaitText("#unsaved", "sowings.csv");
    page.click("#undo");
    page.find("[data-answer='order'] .written:empty");
    assertThat(page.complaints()).isEmpty();
  }

  /** What is wrong is told by the names that stand there, as nobody types options here. */
  @Test
  void aWrongFieldIsNamedAsItStandsThere() {
    Chromium page = open(WIDE);
    page.tab("questions");
    page.type("[data-at='ask size least']", "high");
    page.click("[data-at='ask size']");
    assertThat(page.text("[data-trouble='size']"))
        .isEqualTo("“At least, %” must be above 0 and up to 100 %, was 'high'");
    page.type("[data-at='ask size least']", "80 %");
    page.type("[data-at='ask size to']", "3");
    page.click("[data-at='ask size']");
    page.awaitText("[data-trouble='size']", "“To, spaces” must be from 6 to");
    page.type("[data-at='ask shift match']", " ");
    page.click("[data-at='ask shift']");
    page.awaitText("[data-trouble='shift']", "“Sowings, such as tomato” is empty");
    page.type("[data-at='ask calendar from']", "3/4/2027");
    page.type("[data-at='ask calendar to']", "2027-04-30");
    page.click("[data-at='ask calendar']");
    page.click("[data-reading='2027-04-03']");
    assertThat(page.text("[data-answer='calendar']")).isNotEmpty();
    page.awaitValue("[data-at='ask calendar from']", "2027-04-03");
  }

  @Test
  void eachQuestionKeepsItsAnswerAndItsFault() {
    Chromium page = open(WIDE);
    page.tab("questions");
    page.awaitText("#asked-of", "Asked of: As planned");
    // The chamber of six spaces is full on the most days: one more, and so on.
    page.awaitValue("[data-at='ask size place']", "Chamber");
    page.awaitValue("[data-at='ask size from']", "6");
    page.awaitValue("[data-at='ask size to']", "16");
    page.choose("[data-at='ask size place']", "House");
    page.awaitValue("[data-at='ask size from']", "80");
    page.awaitValue("[data-at='ask size step']", "10");
    page.awaitValue("[data-at='ask shift match']", "lettuce*");
    page.type("[data-at='ask bottleneck steps']", "0");
    page.type("[data-at='ask size from']", "many");
    page.click("[data-at='ask bottleneck']");
    page.find("[data-at='stop bottleneck'], [data-answer='bottleneck']");
    page.click("[data-at='ask shift']");
    page.click("[data-at='ask size']");
    page.awaitText("[data-trouble='size']", "“From, spaces” must be a whole number");
    assertThat(page.text("[data-answer='shift'] h2")).isNotEmpty();
    assertThat(page.text("[data-answer='bottleneck'] h2")).isNotEmpty();
    assertThat(page.text("[data-trouble='size']")).contains("'many'");
    assertThat(page.text("#notices")).isEmpty();
    page.click("[data-at='save bottleneck']");
    page.awaitText("[data-answer='bottleneck']", "results/small-bottleneck/");
  }
}
