package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;
import static propcap.web.ManyWaysInBrowserTest.press;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

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

  /** The report's own styles are on the page as well, and must not reach into its tables. */
  @Test
  void atALaptopsWidthNoFieldLiesOverTheNextColumn() {
    Chromium page = open(LAPTOP);
    page.tab("sowings");
    Object over =
        page.driver()
            .executeScript(
                "return [...document.querySelectorAll('table.sowings td, table.sowings tbody th')]"
                    + ".flatMap(c => [...c.querySelectorAll('input, select, button')].filter(i =>"
                    + " i.getBoundingClientRect().right > c.getBoundingClientRect().right + 1)"
                    + ".map(i => i.dataset.at)).join(' ')");
    assertThat(over).isEqualTo("");
  }

  /** Sown next is often another crop: its name and its lot are not those of the one before. */
  @Test
  void anotherCropNamesASowingThatWasNamedAfterItsCropAnewAndIsOfNoLotYet() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.type("[data-at='sowing 1 lot']", "let-a");
    page.click("[data-at='add sowing']");
    page.awaitValue("[data-at='sowing 2 id']", "lettuce-2");
    page.awaitValue("[data-at='sowing 2 lot']", "let-a");
    page.choose("[data-at='sowing 2 crop']", "cabbage");
    page.awaitValue("[data-at='sowing 2 id']", "cabbage-2");
    page.awaitValue("[data-at='sowing 2 lot']", "");
    page.type("[data-at='sowing 2 id']", "early");
    page.awaitValue("[data-at='sowing 2 id']", "early");
    page.choose("[data-at='sowing 2 crop']", "lettuce");
    page.awaitValue("[data-at='sowing 2 crop']", "lettuce");
    page.awaitValue("[data-at='sowing 2 id']", "early");
  }

  @Test
  void aSowingMoreInAWhatIfLeavesThePlanItsOwn() {
    Chromium page = open(WIDE);
    putWhatIfBeside(page);
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

  private static String shown(Chromium page, String css) {
    return String.valueOf(
        page.driver()
            .executeScript(
                "return [...document.querySelectorAll(arguments[0])].map(e => e.value).join(' ')",
                css));
  }

  private static final String NAMES = "table.sowings tbody th input:not([type='checkbox'])";

  @Test
  void eachRowShowsItsChanceByShapeAndWhenItIsLikelyReady() {
    Chromium page = open(WIDE);
    page.wholeForecast();
    page.tab("sowings");
    JsonObject first =
        JsonParser.parseString(browser.get("/api/forecast").body())
            .getAsJsonObject()
            .getAsJsonArray("sowings")
            .get(0)
            .getAsJsonObject();
    page.awaitText("[data-came='chance 0']", first.get("chance").getAsString());
    page.awaitText("[data-came='ready 0']", first.get("ready").getAsString());
    page.find("[data-came='chance 0'] .dot[aria-label='" + first.get("word").getAsString() + "']");
    // While there is something to mend, what is shown is of before.
    page.type("[data-at='sowing 0 trays']", "many");
    page.awaitText("[data-came='chance 0'].old", first.get("chance").getAsString());
    page.type("[data-at='sowing 0 trays']", "2");
    page.find("[data-came='chance 0']:not(.old) .dot.lost");
    assertThat(page.text("[data-came='chance 0']")).isEqualTo("0 %");
  }

  @Test
  void whatIsTypedIsReadAsWhatIsPastedAndWhatMayBeTwoThingsIsAsked() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.type("[data-at='sowing 0 bed-by']", "12.5.2027");
    page.awaitValue("[data-at='sowing 0 bed-by']", "2027-05-12");
    page.type("[data-at='sowing 0 sow']", "3 March");
    page.awaitValue("[data-at='sowing 0 sow']", "2027-03-03");
    page.type("[data-at='sowing 1 bed-by']", "6/5/2027");
    page.awaitText("#notices", "6/5/2027 may be 6 May 2027 or 5 June 2027");
    page.awaitValue("[data-at='sowing 1 bed-by']", "2027-05-05");
    assertThat(cell(1, "bed-by")).isEqualTo("2027-05-05");
    press(page, Keys.ENTER);
    page.awaitValue("[data-at='sowing 1 bed-by']", "2027-05-06");
    page.awaitText("#notices", "");
    assertThat(cell(1, "bed-by")).isEqualTo("2027-05-06");
    page.tab("places");
    page.click("[data-open='cost House'] summary");
    page.type("[data-at='place House cost.run']", "3,60/day");
    page.awaitValue("[data-at='place House cost.run']", "3.60/day");
  }

  @Test
  void aWordThatIsLikeAKnownOneIsMendedByAPress() {
    Chromium page = open(WIDE);
    page.tab("crops");
    String field = "[data-at$=' germinate-in']";
    page.type(field, "House, Chambre");
    page.awaitText(field + " + .fault", "did you mean Chamber?");
    page.click(".mend[data-at$='Chamber']");
    page.awaitValue(field, "House, Chamber");
    page.await(d -> d.findElements(By.cssSelector(".fault")).isEmpty());
  }

  @Test
  void namesStayAndColumnsFit() {
    Chromium page = open(1280);
    page.tab("sowings");
    page.find("[data-came='chance 0'] .dot");
    String overhang =
        "const box = document.querySelector('.sheetbox'); return box.scrollWidth - box.clientWidth";
    assertThat(page.driver().executeScript(overhang)).isEqualTo(0L);
    page.click("[data-at='all columns']");
    page.find("[data-at='sowing 0 resow-until']");
    assertThat((Long) page.driver().executeScript(overhang)).isPositive();
    WebElement name = page.find("[data-at='sowing 0 id']");
    int before = name.getRect().getX();
    page.driver().executeScript("document.querySelector('.sheetbox').scrollLeft = 200");
    assertThat(page.find("[data-at='sowing 0 id']").getRect().getX()).isEqualTo(before);
    assertThat(page.find("[data-at='sowing 0 crop']").getRect().getX()).isLessThan(before + 200);
    // What is scrolled under the heading cannot be pressed through it.
    String through =
        "return [...document.querySelectorAll('.sheetbox thead tr > *')].filter(head =>"
            + " getComputedStyle(head).position !== 'sticky').length";
    assertThat(page.driver().executeScript(through)).isEqualTo(0L);
  }

  @Test
  void rowsCanBeSortedAndFiltered() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.find("[data-came='chance 0'] .dot");
    page.click("[data-at='sort plants-needed']");
    page.find("th[aria-sort='ascending'] [data-at='sort plants-needed']");
    assertThat(shown(page, NAMES)).isEqualTo("lettuce-1 cabbage-1");
    // What is pasted goes into the rows as they are shown.
    page.paste("[data-at='sowing 1 trays']", "21\n22\n");
    page.awaitValue("[data-at='sowing 0 trays']", "22");
    assertThat(cell(1, "trays")).isEqualTo("21");
    page.click("[data-at='sort plants-needed']");
    assertThat(shown(page, NAMES)).isEqualTo("cabbage-1 lettuce-1");
    page.type("[data-at='filter']", "lett");
    assertThat(shown(page, NAMES)).isEqualTo("lettuce-1");
    page.type("[data-at='filter']", Keys.BACK_SPACE.toString());
    page.type("[data-at='sowing 0 trays']", "2");
    page.find("[data-came='chance 0']:not(.old) .dot.lost");
    page.type("[data-at='sowing 1 plants-needed']", "1");
    page.find("[data-came='chance 1']:not(.old) .dot.safe");
    page.click("[data-at='only unsafe']");
    assertThat(shown(page, NAMES)).isEqualTo("cabbage-1");
    page.click("[data-at='only unsafe']");
    page.click("[data-at='sort chance']");
    assertThat(shown(page, NAMES)).isEqualTo("cabbage-1 lettuce-1");
    page.click("[data-at='sort chance']");
    assertThat(shown(page, NAMES)).isEqualTo("lettuce-1 cabbage-1");
  }

  @Test
  void manyRowsAreChangedInOneStep() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.click("[data-at='choose all']");
    page.click("[data-at='many trays']");
    page.type("#d-percent", "-40");
    page.click("#dialog button[type='submit']");
    page.awaitValue("[data-at='sowing 1 trays']", "7");
    page.awaitValue("[data-at='sowing 0 trays']", "7");
    page.click("#undo");
    page.awaitValue("[data-at='sowing 0 trays']", "12");
    page.find("#undo:disabled");
    page.click("[data-at='many shift']");
    page.type("#d-days", "-9");
    page.click("#dialog button[type='submit']");
    page.awaitValue("[data-at='sowing 0 sow']", "2027-02-11");
    page.awaitValue("[data-at='sowing 1 sow']", "2027-02-20");
    page.click("#undo");
    page.awaitValue("[data-at='sowing 1 sow']", "2027-03-01");
    page.find("#undo:disabled");
    page.click("[data-at='choose 0']");
    page.awaitText(".many", "1 sowing chosen");
    page.click("[data-at='choose 0']");
    page.awaitText(".many", "2 sowings chosen");
    page.click("[data-at='many remove']");
    page.awaitText("#notices", "2 sowings removed");
    assertThat(shown(page, NAMES)).isEmpty();
    page.click("#undo");
    page.awaitValue("[data-at='sowing 1 id']", "lettuce-1");
    page.find("#undo:disabled");
  }

  @Test
  void theCropIsChosenFromTheList() throws Exception {
    // One that is not in the list stays to be mended, and can be taken from it.
    Files.writeString(folder.resolve("sowings.csv"), Farm.PLAN.replace(",cabbage,", ",cabage,"));
    Chromium page = openAnew(WIDE);
    page.tab("sowings");
    page.find("[data-at='sowing 0 crop'] + .fault");
    page.awaitValue("[data-at='sowing 0 crop']", "cabage");
    page.choose("[data-at='sowing 0 crop']", "lettuce");
    page.awaitText("#unsaved", "Unsaved: sowings.csv");
    assertThat(cell(0, "crop")).isEqualTo("lettuce");
  }

  @Test
  void manyRowsOfAWhatIfAreChangedInIt() {
    Chromium page = open(WIDE);
    putWhatIfBeside(page);
    page.tab("sowings");
    page.click("[data-at='choose all']");
    page.click("[data-at='many shift']");
    page.type("#d-days", "2");
    page.click("#dialog button[type='submit']");
    page.awaitValue("[data-at='sowing 0 sow']", "2027-02-22");
    page.awaitValue("[data-at='sowing 1 sow']", "2027-03-03");
    assertThat(page.text("#unsaved")).isEqualTo("Unsaved: what-if-1.yaml");
    page.click("[data-at='choose 0']");
    page.click("[data-at='many remove']");
    page.awaitText("#notices", "1 sowing removed");
    assertThat(shown(page, NAMES)).isEqualTo("cabbage-1");
    assertThat(cell(1, "sow")).isEqualTo("2027-03-01");
  }

  @Test
  void onAPhoneTheRowsAreSortedAndChosenToo() {
    Chromium page = open(PHONE);
    page.tab("sowings");
    page.find("[data-came='chance 0'] .dot");
    page.choose("[data-at='sort list']", "plants-needed");
    assertThat(shown(page, NAMES)).isEqualTo("lettuce-1 cabbage-1");
    page.click("[data-at='choose all shown']");
    page.awaitText(".many", "2 sowings chosen");
    assertThat(page.width()).isLessThanOrEqualTo(PHONE);
  }
}
