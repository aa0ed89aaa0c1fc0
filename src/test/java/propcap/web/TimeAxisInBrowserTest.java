package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The sowing plan on its time axis in a real browser; skipped where there is none. */
class TimeAxisInBrowserTest extends InBrowser {
  private Chromium axis() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.click("[data-at='view axis']");
    return page;
  }

  /** One step back undoes it, and there is no second: nothing was sent twice. */
  private static void assertOneStep(Chromium page) {
    page.awaitText("#unsaved", "Unsaved: sowings.csv");
    page.click("#undo");
    page.awaitText("#unsaved", "All is saved");
    page.find("#undo:disabled");
  }

  @Test
  void aDragMovesASowingOnce() {
    Chromium page = axis();
    WebElement handle = page.find("[data-at='axis 0']");
    new Actions(page.driver()).clickAndHold(handle).moveByOffset(60, 0).release().perform();
    String day = page.text("[data-row='0'] .day");
    assertThat(day).endsWith("Mar");
    assertOneStep(page);
    page.find("[data-at='axis 0'][aria-valuetext='20 Feb']");
    page.click("#redo");
    page.awaitText("[data-row='0'] .day", day);
    assertThat(cell(0, "sow")).isGreaterThan("2027-03-01").isLessThan("2027-03-31");
  }

  @Test
  void keysMoveASowingOnce() {
    Chromium page = axis();
    page.find("[data-at='axis 1']").sendKeys(Keys.PAGE_DOWN, Keys.ARROW_RIGHT);
    page.find("[data-at='axis 1'][aria-valuetext='23 Feb']");
    assertOneStep(page);
    assertThat(cell(1, "sow")).isEqualTo("2027-03-01");
    page.click("#redo");
    page.find("[data-at='axis 1'][aria-valuetext='23 Feb']");
    page.click("[data-at='view table']");
    page.awaitValue("[data-at='sowing 1 sow']", "2027-02-23");
  }
}
