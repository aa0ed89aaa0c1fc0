package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The sowing plan as a table in a real browser; skipped where there is none. */
class SowingsInBrowserTest extends InBrowser {
  @Test
  void whatIsCopiedInASpreadsheetCanBePasted() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.paste("[data-at='sowing 1 sow']", "2027-03-05\t31\t2,000\n09.03.2027\t12\t900\n");
    page.awaitText("[data-at='paste it']", "Add 1 sowing and change 1 sowing, and mend");
    page.click("[data-at='paste it']");
    page.awaitValue("[data-at='sowing 2 sow']", "2027-03-09");
    page.awaitValue("[data-at='sowing 1 plants-needed']", "2000");
    page.awaitValue("[data-at='sowing 1 trays']", "31");
  }

  @Test
  void aSowingMoreInAWhatIfLeavesThePlanItsOwn() {
    Chromium page = open(WIDE);
    page.click("#what-if");
    page.awaitValue("#d-title", "What if 1");
    page.click("#dialog button[type='submit']");
    page.find("[data-file='what-if-1.yaml'][aria-pressed='true']");
    page.tab("sowings");
    page.click("[data-at='add sowing']");
    page.awaitValue("[data-at='sowing 2 id']", "lettuce-2");
    page.type("[data-at='sowing 2 trays']", "7");
    page.awaitValue("[data-at='sowing 2 trays']", "7");
    page.awaitText("#pairs", "of 3");
    assertThat(page.text("#unsaved")).isEqualTo("Unsaved: what-if-1.yaml");
    page.click("[data-file='small.yaml']");
    page.type("[data-at='sowing 0 trays']", "9");
    page.click("[data-file='what-if-1.yaml']");
    page.awaitValue("[data-at='sowing 0 trays']", "9");
  }
}
