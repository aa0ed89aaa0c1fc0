package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;
import static propcap.web.ManyWaysInBrowserTest.press;

import java.nio.file.Files;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;

/** Changes, steps back and saving in a real browser; skipped where there is none. */
class SavingInBrowserTest extends InBrowser {
  @Test
  void spacesAreChangedTheForecastFollowsAndAllIsSaved() throws Exception {
    Chromium page = open(WIDE);
    double before = page.wholeForecast();
    double wide = Double.parseDouble(page.find("#band").getDomAttribute("data-half"));
    assertThat(wide).isPositive();
    page.type("[data-at='place House spaces']", "8");
    assertThat(page.wholeForecastOtherThan(before)).isLessThan(before);
    assertThat(page.text("#change"))
        .matches("With the last change [\\d,]+ fewer plants are on time\\.");
    assertThat(page.find("#change .down").isDisplayed()).isTrue();
    assertThat(Files.readString(scenario)).isEqualTo(Farm.SCENARIO);
    page.click("#save");
    page.awaitText("#unsaved", "All is saved");
    assertThat(Files.readString(scenario))
        .isEqualTo(
            Farm.SCENARIO.replace(
                "{name: House, kind: table, spaces: 80", "{name: House, kind: table, spaces: 8"));
    page.driver().navigate().refresh();
    assertThat(page.find("[data-at='place House spaces']").getDomProperty("value")).isEqualTo("8");
    page.click("#undo");
    page.awaitValue("[data-at='place House spaces']", "80");
    assertThat(page.complaints()).isEmpty();
  }

  /** Beside the plan there is little room: nothing there may need more, or be drawn too small. */
  @Test
  void theForecastIsNoWiderThanItsPanelAndItsNumberAsLargeAsOthers() {
    Chromium page = open(LAPTOP);
    putWhatIfBeside(page);
    page.click("[data-at='like Chamber']");
    assertThat(page.find("#d-name").getLocation().getY())
        .isEqualTo(page.find("#d-spaces").getLocation().getY());
    page.click("#dialog button[type='submit']");
    page.find("[data-place='Chamber 2']");
    page.click("[data-open='side-by-side'] > summary");
    page.find("[data-open='side-by-side'] table");
    assertThat(
            page.driver()
                .executeScript(
                    "const o = document.querySelector('#outlook'); return o.scrollWidth - o.clientWidth"))
        .isEqualTo(0L);
    page.tab("sowings");
    var unused =
        page.await(
            d ->
                d.findElement(By.cssSelector("#band text")).getRect().getHeight() >= 14
                    ? true
                    : null);
  }

  @Test
  void aFaultyWhatIfHasNoForecastAndIsSavedOnlyWhenAsked() {
    Chromium page = open(WIDE);
    putWhatIfBeside(page);
    page.click("[data-at='like Chamber']");
    page.click("#dialog button[type='submit']");
    page.find("[data-place='Chamber 2']");
    page.tab("sowings");
    page.type("[data-at='sowing 0 bed-by']", "2027-04-01");
    assertThat(page.text("[data-at='sowing 0 bed-by'] + .fault")).contains("before bed-from");
    page.awaitText("[data-tab='sowings']", "1 to mend");
    page.driver().navigate().refresh();
    var unused = page.wholeForecast();
    page.click("[data-file='what-if-1.yaml']");
    page.awaitText("#outlook-body", "No forecast yet");
    page.awaitText("#outlook-status", "One thing is still to mend; no forecast yet");
    page.tab("questions");
    page.awaitText("#asked-of", "Asked of: What if 1");
    page.click("#save");
    page.awaitText("#dialog-title", "One thing is still to mend; save all the same?");
    assertThat(folder.resolve("what-if-1.yaml")).doesNotExist();
    page.click("#dialog button[type='submit']");
    page.awaitText("#notices", "Saved: what-if-1.yaml. One thing is still to mend.");
    assertThat(folder.resolve("what-if-1.yaml")).exists();
    assertThat(page.text("#notices")).doesNotContain(".bak");
    page.awaitText("#unsaved", "All is saved; one thing is still to mend");
  }

  @Test
  void aWrongFieldSaysSoAndTheDraftComesBack() throws Exception {
    Chromium page = open(WIDE);
    page.tab("sowings");
    page.type("[data-at='sowing 0 trays']", "many");
    String fault = page.text("[data-at='sowing 0 trays'] + .fault");
    assertThat(fault).contains("trays of cabbage-1 is 'many'", "a whole number");
    assertThat(page.find("[data-at='sowing 0 trays']").getDomAttribute("aria-invalid"))
        .isEqualTo("true");
    openAnew(WIDE);
    assertThat(page.text("#notices")).contains("What you had not saved is back");
    page.tab("sowings");
    assertThat(page.find("[data-at='sowing 0 trays']").getDomProperty("value")).isEqualTo("many");
    assertThat(Files.readString(folder.resolve("sowings.csv"))).isEqualTo(Farm.PLAN);
  }

  @Test
  void whatIsNotSavedIsDiscardedOnlyWhenThatIsMeant() {
    Chromium page = open(WIDE);
    page.type("[data-at='place House spaces']", "8");
    page.awaitText("#unsaved", "Unsaved: small.yaml");
    page.click("#discard");
    page.awaitText("#dialog", "small.yaml");
    page.click("#dialog button:not([type='submit'])");
    page.awaitText("#unsaved", "Unsaved: small.yaml");
    assertThat(spaces()).isEqualTo("8");
    page.click("#discard");
    page.click("#dialog button[type='submit']");
    page.awaitText("#unsaved", "All is saved");
    assertThat(spaces()).isEqualTo("80");
    page.click("#undo");
    page.awaitValue("[data-at='place House spaces']", "8");
  }

  @Test
  void theKeysForItStepBackOutsideOfAField() {
    Chromium page = open(WIDE);
    page.type("[data-at='place House spaces']", "8");
    page.awaitText("#unsaved", "Unsaved: small.yaml");
    press(page, Keys.chord(Keys.CONTROL, "z"));
    assertThat(spaces()).as("within a field the keys are the field's").isEqualTo("8");
    page.find("#panel").sendKeys(Keys.chord(Keys.CONTROL, "z"));
    page.awaitValue("[data-at='place House spaces']", "80");
    page.awaitText("#unsaved", "All is saved");
    page.find("#panel").sendKeys(Keys.chord(Keys.CONTROL, Keys.SHIFT, "z"));
    page.awaitValue("[data-at='place House spaces']", "8");
  }

  @Test
  void theForecastOfAFaultyPlanSaysThatItIsOfThePlanBefore() {
    Chromium page = open(WIDE);
    page.wholeForecast();
    page.tab("sowings");
    page.type("[data-at='sowing 0 trays']", "many");
    page.awaitText("#outlook-before", "Of the plan before the fault in sowings.csv, line 2.");
    assertThat(page.find("#strip").getDomProperty("textContent"))
        .startsWith("Before the fault in sowings.csv, line 2: ");
    page.type("[data-at='sowing 1 trays']", "few");
    page.awaitText("#outlook-before", "Of the plan before the 2 faults in sowings.csv.");
    page.type("[data-at='sowing 0 trays']", "9");
    page.type("[data-at='sowing 1 trays']", "9");
    page.wholeForecast();
    page.await(d -> d.findElements(By.id("outlook-before")).isEmpty());
    assertThat(page.find("#strip").getDomProperty("textContent")).doesNotContain("Before");
  }

  @Test
  void onceTheProgramIsStoppedNothingSeemsSavedAndNothingIsChanged() {
    Chromium page = open(WIDE);
    page.wholeForecast();
    page.tab("sowings");
    page.find("[data-at='sowing 0 trays']").sendKeys("7");
    server.close();
    page.awaitText("#unsaved", "Propcap is not running any more; what you change now is not kept");
    page.awaitText("#gone", "“127” was not taken");
    assertThat(page.text(".tools")).doesNotContain("All is saved");
    assertThat(page.find("#save").isEnabled()).isFalse();
    assertThat(page.find("#undo").isEnabled()).isFalse();
    page.awaitValue("[data-at='sowing 0 trays']", "12");
    assertThat(page.find("#work").getDomAttribute("inert")).isNotNull();
    press(page, Keys.chord(Keys.CONTROL, "s"));
    press(page, Keys.chord(Keys.CONTROL, "z"));
    assertThat(page.driver().findElements(By.cssSelector(".notice"))).hasSize(1);
  }

  @Test
  void aChangeThatDoesNotReachTheProgramIsNotShownAndThePageGoesOnOnceItDoes() {
    Chromium page = open(WIDE);
    page.offline(true);
    page.type("[data-at='place House spaces']", "8");
    page.awaitText("#unsaved", "Propcap is not running any more");
    page.awaitValue("[data-at='place House spaces']", "80");
    page.offline(false);
    page.awaitText("#unsaved", "All is saved");
    page.type("[data-at='place House spaces']", "8");
    page.awaitText("#unsaved", "Unsaved: small.yaml");
    assertThat(page.driver().findElements(By.id("gone"))).isEmpty();
    assertThat(spaces()).isEqualTo("8");
  }

  private String spaces() {
    return browser
        .state()
        .getAsJsonArray("places")
        .get(1)
        .getAsJsonObject()
        .getAsJsonObject("cells")
        .get("spaces")
        .getAsString();
  }

  @Test
  void twoTabsShowOnePlanAndNeitherLosesWhatTheOtherDid() {
    Chromium page = open(WIDE);
    String first = page.driver().getWindowHandle();
    page.driver().switchTo().newWindow(WindowType.TAB);
    page.resize(WIDE, 1000);
    page.open(server.newLink());
    page.type("[data-at='place House spaces']", "70");
    page.awaitText("#unsaved", "Unsaved: small.yaml");
    page.driver().switchTo().window(first);
    page.awaitValue("[data-at='place House spaces']", "70");
    page.type("[data-at='place Yard spaces']", "60");
    page.awaitText("#unsaved", "Unsaved: small.yaml");
    page.closeOthers();
    page.awaitValue("[data-at='place Yard spaces']", "60");
    page.click("#undo");
    page.awaitValue("[data-at='place Yard spaces']", "80");
    page.awaitValue("[data-at='place House spaces']", "70");
    page.click("#undo");
    page.awaitText("#unsaved", "All is saved");
  }
}
