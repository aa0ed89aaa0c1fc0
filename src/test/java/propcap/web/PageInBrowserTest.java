package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The page in a real browser; skipped where there is none, and in CI. */
class PageInBrowserTest {
  private static final int WIDE = 1400;
  private static final int PHONE = 360;
  private static final List<String> TABS =
      List.of("places", "sowings", "crops", "", "log", "questions");

  @TempDir Path folder;
  private Server server;
  private Path scenario;

  @BeforeEach
  void aServer() throws IOException {
    scenario = Farm.in(folder);
    server = Server.start(scenario, 0, "test");
  }

  @AfterEach
  void close() {
    server.close();
  }

  @Test
  void spacesAreChangedTheForecastFollowsAndAllIsSaved() throws Exception {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      double before = page.wholeForecast();
      double wide = Double.parseDouble(page.find("#band").getDomAttribute("data-half"));
      assertThat(wide).isPositive();
      page.type("[data-at='place House spaces']", "8");
      assertThat(page.wholeForecastOtherThan(before)).isLessThan(before);
      assertThat(page.text("#change")).contains("fewer than before the change");
      assertThat(Files.readString(scenario)).isEqualTo(Farm.SCENARIO);
      page.click("#save");
      page.awaitText("#unsaved", "All is saved");
      assertThat(Files.readString(scenario))
          .isEqualTo(
              Farm.SCENARIO.replace(
                  "{name: House, kind: table, spaces: 80", "{name: House, kind: table, spaces: 8"));
      page.driver().navigate().refresh();
      assertThat(page.find("[data-at='place House spaces']").getDomProperty("value"))
          .isEqualTo("8");
      page.click("#undo");
      page.awaitValue("[data-at='place House spaces']", "80");
      assertThat(page.complaints()).isEmpty();
    }
  }

  @Test
  void aSecondChamberIsPutBesideComparedAndItsAnswerSaved() {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
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
  }

  @Test
  void eachQuestionKeepsItsAnswerAndItsFault() {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      page.tab("questions");
      page.awaitText("#asked-of", "Asked of: As planned");
      page.awaitValue("[data-at='ask size place']", "House");
      page.awaitValue("[data-at='ask size to']", "160");
      page.awaitValue("[data-at='ask shift match']", "lettuce*");
      page.type("[data-at='ask bottleneck steps']", "0");
      page.type("[data-at='ask size from']", "many");
      page.click("[data-at='ask bottleneck']");
      page.find("[data-at='stop bottleneck'], [data-answer='bottleneck']");
      page.click("[data-at='ask shift']");
      page.click("[data-at='ask size']");
      page.awaitText("[data-trouble='size']", "From must be a whole number");
      assertThat(page.text("[data-answer='shift'] h2")).isNotEmpty();
      assertThat(page.text("[data-answer='bottleneck'] h2")).isNotEmpty();
      assertThat(page.text("[data-trouble='size']")).contains("'many'");
      assertThat(page.text("#notices")).isEmpty();
      page.click("[data-at='save bottleneck']");
      page.awaitText("[data-answer='bottleneck']", "results/small-bottleneck/");
    }
  }

  @Test
  void aFaultyWhatIfHasNoForecastAndIsSavedOnlyWhenAsked() {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      page.click("#what-if");
      page.awaitValue("#d-title", "What if 1");
      page.click("#dialog button[type='submit']");
      page.find("[data-file='what-if-1.yaml'][aria-pressed='true']");
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
  }

  @Test
  void aWrongFieldSaysSoAndTheDraftComesBack() throws Exception {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      page.tab("sowings");
      page.type("[data-at='sowing 0 trays']", "many");
      String fault = page.text("[data-at='sowing 0 trays'] + .fault");
      assertThat(fault).contains("trays of cabbage-1 is 'many'", "a whole number");
      assertThat(page.find("[data-at='sowing 0 trays']").getDomAttribute("aria-invalid"))
          .isEqualTo("true");
    }
    server.close();
    server = Server.start(scenario, 0, "test");
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      assertThat(page.text("#notices")).contains("What you had not saved is back");
      page.tab("sowings");
      assertThat(page.find("[data-at='sowing 0 trays']").getDomProperty("value")).isEqualTo("many");
      assertThat(Files.readString(folder.resolve("sowings.csv"))).isEqualTo(Farm.PLAN);
    }
  }

  @Test
  void whatIsCopiedInASpreadsheetCanBePasted() {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      page.tab("sowings");
      var unused =
          page.await(
              driver -> {
                driver.executeScript(
                    "const d = new DataTransfer(); d.setData('text/plain', arguments[1]);"
                        + "arguments[0].dispatchEvent(new ClipboardEvent('paste', {clipboardData: d, bubbles: true, cancelable: true}));",
                    driver.findElement(By.cssSelector("[data-at='sowing 1 sow']")),
                    "2027-03-05\t31\t2,000\n09.03.2027\t12\t900\n");
                return true;
              });
      page.awaitValue("[data-at='sowing 2 sow']", "2027-03-09");
      page.awaitValue("[data-at='sowing 1 plants-needed']", "2000");
      page.awaitValue("[data-at='sowing 1 trays']", "31");
    }
  }

  @Test
  void aSowingIsDraggedAlongTheAxisAndMovedByKeys() {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      page.tab("sowings");
      double before = page.wholeForecast();
      page.click("[data-at='view axis']");
      WebElement handle = page.find("[data-at='axis 0']");
      new Actions(page.driver()).clickAndHold(handle).moveByOffset(60, 0).release().perform();
      page.find("[data-at='axis 0'][aria-valuetext$='Mar']");
      // The axis is drawn anew once the change is answered.
      var unused = page.wholeForecastOtherThan(before);
      page.find("[data-at='axis 1']").sendKeys(Keys.PAGE_DOWN, Keys.ARROW_RIGHT);
      page.find("[data-at='axis 1'][aria-valuetext='23 Feb']");
      page.click("[data-at='view table']");
      page.awaitValue("[data-at='sowing 1 sow']", "2027-02-23");
    }
  }

  /** Goes on with the key for it until the element is reached. */
  static void tabTo(Chromium page, String css) {
    for (int i = 0; i < 200; i++) {
      WebElement active = page.driver().switchTo().activeElement();
      Object isThere =
          ((JavascriptExecutor) page.driver())
              .executeScript("return arguments[0].matches(arguments[1])", active, css);
      if (Boolean.TRUE.equals(isThere)) {
        return;
      }
      new Actions(page.driver()).sendKeys(Keys.TAB).perform();
    }
    throw new AssertionError("the key never came to " + css);
  }

  static void press(Chromium page, CharSequence... keys) {
    new Actions(page.driver()).sendKeys(String.join("", keys)).perform();
  }

  @Test
  void allCanBeDoneByKeyboard() throws Exception {
    try (Chromium page = Chromium.start(WIDE, 1000)) {
      page.open(server.newLink());
      double before = page.wholeForecast();
      tabTo(page, "[data-tab='places']");
      press(page, Keys.ARROW_RIGHT);
      page.find("[data-tab='sowings'][aria-selected='true']");
      press(page, Keys.ARROW_LEFT);
      tabTo(page, "[data-at='place House spaces']");
      press(page, "8", Keys.ENTER);
      assertThat(page.wholeForecastOtherThan(before)).isLessThan(before);
      assertThat(page.driver().switchTo().activeElement().getDomAttribute("data-at"))
          .isEqualTo("place House spaces");
      new Actions(page.driver()).keyDown(Keys.CONTROL).sendKeys("s").keyUp(Keys.CONTROL).perform();
      page.awaitText("#unsaved", "All is saved");
      assertThat(Files.readString(scenario)).contains("spaces: 8,");
    }
  }

  @Test
  void nothingIsWiderThanAPhone() {
    try (Chromium page = Chromium.start(PHONE, 780)) {
      page.open(server.newLink());
      page.wholeForecast();
      for (String tab : TABS) {
        page.tab(tab);
        assertThat(page.width()).as("tab %s", tab).isLessThanOrEqualTo(PHONE);
      }
      page.tab("places");
      page.type("[data-at='place Chamber spaces']", "9");
      page.awaitText("#strip", "on time");
    }
  }

  @Test
  void axeFindsNothingSerious() throws Exception {
    for (int width : List.of(WIDE, PHONE)) {
      try (Chromium page = Chromium.start(width, 900)) {
        page.open(server.newLink());
        page.wholeForecast();
        page.click("#outlook details[data-open='plants'] summary");
        List<String> found = new ArrayList<>();
        for (String tab : TABS) {
          page.tab(tab);
          found.addAll(serious(page, tab));
        }
        page.tab("sowings");
        page.type("[data-at='sowing 0 trays']", "many");
        page.find("[data-at='sowing 0 trays'] + .fault");
        found.addAll(serious(page, "a fault"));
        page.click("[data-at='view axis']");
        found.addAll(serious(page, "the axis"));
        page.click("#what-if");
        found.addAll(serious(page, "a dialog"));
        assertThat(found).as("at %s pixels", width).isEmpty();
      }
      Files.deleteIfExists(folder.resolve(".small.draft.json"));
      server.close();
      server = Server.start(scenario, 0, "test");
    }
  }

  /** What axe calls serious or critical, with an element that has it. */
  static List<String> serious(Chromium page, String where) throws IOException {
    try (InputStream in = PageInBrowserTest.class.getResourceAsStream("/axe.min.js")) {
      String axe = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      ((JavascriptExecutor) page.driver()).executeScript(axe + "; window.axe = axe;");
    }
    Object result =
        ((JavascriptExecutor) page.driver())
            .executeAsyncScript(
                "const done = arguments[0]; axe.run(document).then(r => done(r.violations"
                    + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                    + ".map(v => v.id + ' at ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(' | '))));");
    return ((List<?>) Objects.requireNonNull(result)).stream().map(r -> where + ": " + r).toList();
  }
}
