package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The page by keyboard, on a phone and read aloud; skipped where there is no browser. */
class ManyWaysInBrowserTest extends InBrowser {
  private static final List<String> TABS =
      List.of("places", "sowings", "crops", "money", "", "log", "questions");

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
    Chromium page = open(WIDE);
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

  @Test
  void nothingIsWiderThanAPhone() {
    Chromium page = open(PHONE);
    page.wholeForecast();
    for (String tab : TABS) {
      page.tab(tab);
      assertThat(page.width()).as("tab %s", tab).isLessThanOrEqualTo(PHONE);
    }
    page.tab("places");
    page.type("[data-at='place Chamber spaces']", "9");
    page.awaitText("#strip", "on time");
  }

  @Test
  void axeFindsNothingSerious() throws Exception {
    for (int width : List.of(WIDE, PHONE)) {
      Chromium page = openAnew(width);
      page.wholeForecast();
      page.click("#outlook details[data-open='plants'] summary");
      List<String> found = new ArrayList<>();
      for (String tab : TABS) {
        page.tab(tab);
        found.addAll(serious(page, tab));
      }
      page.tab("sowings");
      page.click("[data-at='choose 0']");
      page.find(".many");
      found.addAll(serious(page, "a row chosen"));
      page.type("[data-at='sowing 0 trays']", "many");
      page.find("[data-at='sowing 0 trays'] + .fault");
      found.addAll(serious(page, "a fault"));
      page.click("[data-at='view axis']");
      found.addAll(serious(page, "the axis"));
      page.click("#what-if");
      found.addAll(serious(page, "a dialog"));
      assertThat(found).as("at %s pixels", width).isEmpty();
      Files.deleteIfExists(folder.resolve(".small.draft.json"));
    }
  }

  /** What axe calls serious or critical, with an element that has it. */
  static List<String> serious(Chromium page, String where) throws IOException {
    if (!Boolean.TRUE.equals(page.driver().executeScript("return 'axe' in window"))) {
      try (InputStream in = ManyWaysInBrowserTest.class.getResourceAsStream("/axe.min.js")) {
        String axe = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        var unused = page.driver().executeScript(axe + "; window.axe = axe;");
      }
    }
    Object result =
        ((JavascriptExecutor) page.driver())
            .executeAsyncScript(
                "const done = arguments[0]; axe.run(document, {resultTypes: ['violations']}).then(r => done(r.violations"
                    + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                    + ".map(v => v.id + ' at ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(' | '))));");
    return ((List<?>) Objects.requireNonNull(result)).stream().map(r -> where + ": " + r).toList();
  }
}
