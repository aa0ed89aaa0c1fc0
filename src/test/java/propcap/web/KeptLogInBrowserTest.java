package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The page of a season of which a log is kept, in a real browser; skipped where there is none. */
class KeptLogInBrowserTest extends InBrowser {
  private static final String HEADER = "sowing,tray,event,date,plants,place,trays\n";
  private static final String SIX_SOWN = "cabbage-1,,sown,2027-02-20,,,6\n";
  private static final String IN_HEAT = "cabbage-1 in the heat Chamber";

  /** More rows than the page shows at once. */
  private static final int MANY = 34;

  /** A log of these rows, kept before the page is opened. */
  private void keepLog(String rows) throws IOException {
    Files.writeString(folder.resolve("log.csv"), HEADER + rows);
    Files.writeString(scenario, Farm.SCENARIO + "so-far: log.csv\n");
    serveAnew();
  }

  @Test
  void olderRowsAreShownWhenAskedFor() throws Exception {
    StringBuilder log = new StringBuilder("cabbage-1,,sown,2027-01-20,,,6\n");
    for (int count = 0; count < MANY; count++) {
      log.append("cabbage-1,1,counted,").append(LocalDate.of(2027, 1, 25).plusDays(count));
      log.append(',').append(count).append(",,\n");
    }
    keepLog(log.toString());
    Chromium page = open(LAPTOP);
    page.tab("log");
    page.type("[data-at='today']", "2027-03-10");
    page.awaitText("#so-far", "From 10 March on: 6 trays stand");
    assertThat(page.driver().findElements(By.cssSelector("#log li"))).hasSize(30);
    page.click("[data-at='all rows']");
    page.find("[data-row='0']");
    assertThat(page.driver().findElements(By.cssSelector("#log li"))).hasSize(1 + MANY);
  }

  /** The clock's day is years after this season, or before it: the log is gone on from. */
  @Test
  void itBeginsOnTheMorningAfterTheLastRowAndADayThatIsChosenStays() throws Exception {
    keepLog("cabbage-1,,sown,2027-02-20,,,6\ncabbage-1,,off-heat,2027-03-05,,,2\n");
    Chromium page = open(LAPTOP);
    page.awaitText("#so-far", "From 6 March on: 6 trays stand");
    // Each morning begins with it.
    page.find("[data-tab='log'][aria-selected='true']");
    page.awaitText("#why-today", "The morning after the log’s last row, since the clock’s day");
    page.type("[data-at='today']", "2027-03-20");
    page.awaitText("#so-far", "From 20 March on");
    page.driver().navigate().refresh();
    page.awaitText("#so-far", "From 20 March on");
    page.tab("log");
    page.awaitText("#why-today", "The day that you chose; it stays");
    page.click("[data-at='after last']");
    page.awaitText("#so-far", "From 6 March on");
    page.find("[data-at='after last'][aria-pressed='true']");
  }

  @Test
  void ofManyFaultsTheFirstAreShownAndTheRestWhenAskedFor() throws Exception {
    StringBuilder rows = new StringBuilder("cabbage-1,,sown,2027-01-20,,,6\n");
    for (int count = 0; count < MANY; count++) {
      rows.append("cabbage-1,1,swon,2027-02-01,,,\n");
    }
    keepLog(rows.toString());
    Chromium page = open(LAPTOP);
    page.tab("log");
    page.awaitText("#more-wrong", MANY + " rows are to mend; here are the first 5 of them.");
    page.find("[data-row='1'] .fault");
    assertThat(page.driver().findElements(By.cssSelector("#log .fault"))).hasSize(5);
    page.click("[data-at='all rows']");
    page.find("[data-row='" + MANY + "']");
    assertThat(page.driver().findElements(By.cssSelector("#log .fault"))).hasSize(MANY);
  }

  @Test
  void aLogElsewhereIsShownWithoutForms() throws Exception {
    Path other = Farm.in(Files.createDirectory(folder.resolve("farm")));
    Files.writeString(other, Farm.SCENARIO + "so-far: ../mine.csv\n");
    Files.writeString(folder.resolve("mine.csv"), HEADER + "cabbage-1,,sown,2027-02-20,,,6\n");
    serveAnew(other);
    Chromium page = open(LAPTOP);
    page.tab("log");
    page.awaitText("#read-only", "it is read, and not written in");
    page.awaitText("#panel", "cabbage-1: 6 trays");
    assertThat(page.driver().findElements(By.cssSelector("#panel form, #log button"))).isEmpty();
  }

  @Test
  void whatNowIsAskedAndItsAnswerSaved() throws Exception {
    Chromium page = open(LAPTOP);
    page.tab("questions");
    page.awaitText("[data-question='now']", "Keep a log first");
    assertThat(page.find("[data-at='ask now']").isEnabled()).isFalse();
    keepLog("cabbage-1,,sown,2027-02-20,,,6\n");
    page = open(LAPTOP);
    page.tab("questions");
    page.find("[data-at='ask now']:enabled");
    page.choose("[data-at='ask now advice']", "no");
    page.click("[data-at='ask now']");
    page.awaitText("[data-answer='now']", "cabbage-1");
    page.click("[data-at='save now']");
    page.awaitText("[data-answer='now']", "results/small-now/now.html");
    // On the same day nothing has changed, and nothing is told of it.
    browser.post("/api/day", Map.of("day", "2027-02-26"));
    page.awaitText("#so-far", "From 26 February on");
    page.click("[data-at='ask now']");
    page.awaitText("[data-answer='now']", "Since it was asked for 21 February");
    assertThat(page.complaints()).isEmpty();
  }

  @Test
  void traysAreMarkedByKeyboardAloneAndTheNextAreAtHand() throws Exception {
    keepLog(SIX_SOWN + "cabbage-1,,off-heat,2027-03-05,,,2\n");
    Chromium page = open(LAPTOP);
    page.awaitText("#so-far", "From 6 March on");
    ManyWaysInBrowserTest.tabTo(page, "[data-tab='log']");
    // Away from it and back, as the arrow keys do.
    ManyWaysInBrowserTest.press(page, Keys.ARROW_LEFT);
    page.find("[data-tab=''][aria-selected='true']");
    ManyWaysInBrowserTest.press(page, Keys.ARROW_RIGHT);
    page.find("[data-tab='log'][aria-selected='true']");
    ManyWaysInBrowserTest.tabTo(page, "[data-at='log " + IN_HEAT + " trays']");
    ManyWaysInBrowserTest.press(page, "9", Keys.ENTER);
    page.awaitText("[data-group='" + IN_HEAT + "'] .fault", "a whole number from 1 to 4");
    var unused = page.await(d -> at(page).equals("log " + IN_HEAT + " trays"));
    ManyWaysInBrowserTest.press(page, "4", Keys.ENTER);
    page.awaitText("#log", "2027-03-06, cabbage-1: 4 trays off the heat");
    // Those in the heat are gone; the trays after them are next.
    unused = page.await(d -> at(page).startsWith("log lettuce-1 to be sown"));
    new Actions(page.driver()).keyDown(Keys.CONTROL).sendKeys("s").keyUp(Keys.CONTROL).perform();
    page.awaitText("#unsaved", "All is saved");
    assertThat(Files.readString(folder.resolve("log.csv")))
        .endsWith("cabbage-1,,off-heat,2027-03-06,,,4\n");
  }

  /** What the key is on. */
  private static String at(Chromium page) {
    return String.valueOf(page.driver().switchTo().activeElement().getDomAttribute("data-at"));
  }

  @Test
  void axeFindsNothingSeriousAndNothingIsWiderThanItsWindow() throws Exception {
    keepLog(SIX_SOWN + "cabbage-1,,off-heat,2027-03-05,,,2\n");
    for (int width : List.of(LAPTOP, PHONE)) {
      Chromium page = open(width);
      page.wholeForecast();
      page.tab("log");
      List<String> found = new ArrayList<>(ManyWaysInBrowserTest.serious(page, "the log"));
      page.click("[data-open='another row'] summary");
      page.type("[data-at='log " + IN_HEAT + " trays']", "9");
      page.click("[data-at='write " + IN_HEAT + "']");
      page.find("[data-group='" + IN_HEAT + "'] .fault");
      page.type("[data-at='today']", "soon");
      page.find("[data-at='today'] + .fault");
      found.addAll(ManyWaysInBrowserTest.serious(page, "faults"));
      assertThat(page.width()).as("faults").isLessThanOrEqualTo(width);
      page.tab("questions");
      found.addAll(ManyWaysInBrowserTest.serious(page, "questions"));
      assertThat(page.width()).as("questions").isLessThanOrEqualTo(width);
      assertThat(found).as("at %s pixels", width).isEmpty();
    }
  }

  /** No choice and no column is cut off. */
  @Test
  void whatIsChosenAndTheTableOfPlacesFitAWindowOf1280Pixels() throws Exception {
    keepLog(SIX_SOWN + "cabbage-1,,off-heat,2027-03-05,,,2\n");
    Chromium page = open(LAPTOP);
    page.wholeForecast();
    page.click("#outlook details[data-open='room'] summary");
    page.find("#outlook details[data-open='room'] table");
    page.tab("log");
    page.find("[data-group='" + IN_HEAT + "']");
    assertThat(
            page.driver()
                .executeScript(
                    "return [...document.querySelectorAll('#outlook details[data-open=room]"
                        + " table')].filter(t => t.offsetWidth > t.parentElement.clientWidth)"
                        + ".length"))
        .isEqualTo(0L);
    // A choice of its own width is as wide as the longest of its words.
    assertThat(
            page.driver()
                .executeScript(
                    "return [...document.querySelectorAll('fieldset[data-group] select')].filter("
                        + "s => { const w = s.offsetWidth; s.style.maxWidth = 'none';"
                        + " s.style.width = 'max-content'; return s.offsetWidth > w; }).length"))
        .isEqualTo(0L);
  }
}
