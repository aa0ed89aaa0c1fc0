package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.util.Objects;
import org.assertj.core.data.Offset;
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

  private static double left(Chromium page, String css) {
    Object left =
        page.driver()
            .executeScript(
                "return document.querySelector(arguments[0]).getBoundingClientRect().left", css);
    return ((Number) Objects.requireNonNull(left)).doubleValue();
  }

  @Test
  void aRowShowsItsStagesAndTheyMoveWithTheHandle() {
    Chromium page = axis();
    page.find("[data-row='0'] .stage");
    page.wholeForecast();
    assertThat(
            page.driver()
                .executeScript(
                    "return [...document.querySelectorAll(\"[data-row='0'] .stage:not(.waits)\")]"
                        + ".map(e => e.title.replace(/,.*/, '')).join()"))
        .isEqualTo("in the heat,on the table,hardening off");
    page.find("[data-row='0'] .bed");
    page.find("[data-row='0'] .tail");
    String chance = page.text("[data-row='0'] .chance");
    assertThat(chance).endsWith("%");
    WebElement handle = page.find("[data-at='axis 0']");
    double stageBefore = left(page, "[data-row='0'] .stage");
    double handleBefore = left(page, "[data-at='axis 0']");
    new Actions(page.driver()).clickAndHold(handle).moveByOffset(60, 0).perform();
    double moved = left(page, "[data-at='axis 0']") - handleBefore;
    assertThat(moved).isGreaterThan(40);
    assertThat(left(page, "[data-row='0'] .stage") - stageBefore)
        .isCloseTo(moved, Offset.offset(1.0));
    new Actions(page.driver()).release().perform();
    page.find("[data-row='0'] .layer:not(.old):not(.moved)");
    page.find("[data-row='0'] .chance:not(.old)");
  }

  @Test
  void inTheSeasonALineMarksToday() throws Exception {
    Files.writeString(
        folder.resolve("log.csv"),
        "sowing,tray,event,date,plants,place,trays\ncabbage-1,,sown,2027-02-20,,,6\n");
    Files.writeString(scenario, Farm.SCENARIO + "so-far: log.csv\n");
    Chromium page = openAnew(WIDE);
    page.tab("sowings");
    page.click("[data-at='view axis']");
    page.find("[data-row='0'] .today");
    // The morning after the row of 20 February, on which the sowing was due.
    double day = left(page, "[data-row='0'] .today") - left(page, "[data-row='0'] .track");
    double width = page.find("[data-row='0'] .track").getRect().getWidth();
    assertThat(day / width * 174).isCloseTo(41, Offset.offset(0.5));
  }
}
