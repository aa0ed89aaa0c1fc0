package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** Pasting a table into the sowing plan in a real browser; skipped where there is none. */
class PasteInBrowserTest extends InBrowser {
  private static final String TABLE =
      """
      Variety\tSow date\tFlats\tPlants needed\tBed from\tBed by\tNotes
      cabbage\t1/3/2027\t12 flats\t1,250\t20 Apr\t10 May\tearly
      cabage\t8/3/2027\tmany\t900\t20 Apr\t10 May\t
      """;

  private Chromium dialog(int width) {
    Chromium page = open(width);
    page.tab("sowings");
    page.click("[data-at='paste']");
    page.find("#dialog[open] #pasted");
    return page;
  }

  private static void put(Chromium page, String text) {
    page.driver()
        .executeScript(
            "const box = document.getElementById('pasted'); box.value = arguments[0];"
                + "box.dispatchEvent(new Event('input', {bubbles: true}));",
            text);
  }

  private int rows() {
    return browser.state().getAsJsonArray("sowings").size();
  }

  @Test
  void whatIsPastedInTheDialogIsShownAskedAndThenWrittenAndTakenBackAtOnce() {
    Chromium page = dialog(WIDE);
    put(page, TABLE);
    page.awaitText("#paste-shown legend", "Which number is the day?");
    page.awaitText("[data-at='order day']", "1/3/2027 is 1 March 2027");
    page.awaitText("[data-at='order month']", "1/3/2027 is 3 January 2027");
    page.find("[data-at='paste it']:disabled");
    page.click("[data-at='order day']");
    page.awaitText("#left-out", "Left out: column “Notes”.");
    page.awaitText("#paste-status", "2 cells are to mend, here or later in the plan.");
    page.awaitText("#paste-shown tbody", "did you mean");
    assertThat(rows()).isEqualTo(2);
    put(page, TABLE.replace("cabage", "cabbage").replace("many", "13"));
    page.click("[data-at='order day']");
    page.awaitText("[data-at='paste it']", "Add 2 sowings");
    page.click("[data-at='paste it']");
    page.awaitValue("[data-at='sowing 3 sow']", "2027-03-08");
    page.awaitValue("[data-at='sowing 2 plants-needed']", "1250");
    page.awaitValue("[data-at='sowing 2 id']", "cabbage-2");
    page.awaitText("#notices", "2 sowings added. Undo takes it back.");
    page.click("#undo");
    page.awaitText("#unsaved", "All is saved");
    assertThat(rows()).isEqualTo(2);
    page.find("#undo:disabled");
  }

  @Test
  void theGrowerSaysWhatAColumnIs() {
    Chromium page = dialog(WIDE);
    put(page, "Sowing\tFlats\tOut of the house\ncabbage-1\t14\t12 May\n");
    page.awaitText("#left-out", "Out of the house");
    page.choose("[data-at='meant 2']", "bed-by");
    page.awaitText("[data-at='paste it']", "Change 1 sowing");
    page.await(d -> d.findElements(By.id("left-out")).isEmpty());
    page.awaitText("#paste-shown tbody", "2027-05-10 2027-05-12");
    page.click("[data-at='paste it']");
    page.awaitValue("[data-at='sowing 0 bed-by']", "2027-05-12");
    page.awaitValue("[data-at='sowing 0 trays']", "14");
  }

  @Test
  void whatIsRightIsPastedInAFieldWithoutAWord() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.paste("[data-at='sowing 0 sow']", "1.3.2027\t31\t2.000\n9.3.2027\t12\t900\n");
    page.awaitValue("[data-at='sowing 1 sow']", "2027-03-09");
    page.awaitValue("[data-at='sowing 0 plants-needed']", "2000");
    page.awaitText("#notices", "2 sowings changed. Undo takes it back.");
  }

  @Test
  void whatIsWrongIsShownBeforeItIsPastedInAField() {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.paste("[data-at='sowing 0 sow']", "1.3.2027\tmany\n9.3.2027\t12\n");
    page.awaitText("#dialog[open] #paste-shown .fault", "many");
    page.awaitText("[data-at='paste it']", "Change 2 sowings, and mend one cell in the plan");
    assertThat(cell(0, "trays")).isEqualTo("12");
    page.driver().switchTo().activeElement().sendKeys(Keys.ESCAPE);
    page.await(d -> d.findElements(By.cssSelector("#dialog[open]")).isEmpty());
    assertThat(cell(0, "trays")).isEqualTo("12");
  }

  @Test
  void anEmptyTableHasAPlaceToPasteInto() throws Exception {
    Files.writeString(
        folder.resolve("sowings.csv"), Farm.PLAN.lines().findFirst().orElseThrow() + "\n");
    Chromium page = openAnew(WIDE);
    page.tab("sowings");
    page.click("[data-at='paste']");
    put(page, TABLE.replace("1/3", "13/3").replace("cabage", "cabbage").replace("many", "9"));
    page.click("[data-at='paste it']:enabled");
    page.awaitValue("[data-at='sowing 1 trays']", "9");
  }

  @Test
  void theDialogFitsItsWindowAndAxeFindsNothingSerious() throws Exception {
    List<String> found = new ArrayList<>();
    for (int width : List.of(1280, 390)) {
      Chromium page = dialog(width);
      put(page, TABLE);
      page.find("[data-at='order day']");
      found.addAll(ManyWaysInBrowserTest.serious(page, "the question"));
      page.click("[data-at='order day']");
      page.find("#left-out");
      found.addAll(ManyWaysInBrowserTest.serious(page, "what is left out"));
      assertThat(page.width()).as("at %s pixels", width).isLessThanOrEqualTo(width);
    }
    assertThat(found).isEmpty();
  }
}
