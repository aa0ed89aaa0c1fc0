package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;
import static propcap.web.ManyWaysInBrowserTest.press;
import static propcap.web.ManyWaysInBrowserTest.tabTo;

import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** Names of places and their order in a real browser; skipped where there is none. */
class PlacesInBrowserTest extends InBrowser {
  private static List<String> order(Chromium page) {
    return page.driver().findElements(By.cssSelector("[data-place]")).stream()
        .map(place -> place.getDomAttribute("data-place"))
        .toList();
  }

  @Test
  void aPlaceIsRenamedInAllThatNamesItInOneStep() throws Exception {
    Chromium page = open(WIDE);
    page.type("[data-at='place-name 0']", "Warm room");
    page.find("[data-place='Warm room']");
    page.awaitText("#unsaved", "Unsaved: crops.yaml, small.yaml");
    page.tab("crops");
    page.awaitValue("[data-at$=' germinate-in']", "Warm room");
    page.tab("places");
    page.wholeForecast();
    page.type("[data-at='place-name 1']", "Yard");
    String fault = "[data-at='place-name 1'] + .fault";
    page.awaitText(fault, "there is a place Yard already, in small.yaml; it is still House");
    page.find("[data-place='House']");
    page.type("[data-at='place-name 1']", " ");
    page.awaitText(fault, "a place needs a name; it is still House");
    page.type("[data-at='place-name 1']", "House");
    page.await(d -> d.findElements(By.cssSelector(fault)).isEmpty());
    page.click("#save");
    page.awaitText("#unsaved", "All is saved");
    assertThat(Files.readString(scenario))
        .isEqualTo(Farm.SCENARIO.replace("name: Chamber", "name: Warm room"));
    page.click("#undo");
    page.find("[data-place='Chamber']");
    page.awaitText("#unsaved", "Unsaved: crops.yaml, small.yaml");
    assertThat(page.complaints()).doesNotContain("TypeError");
  }

  @Test
  void aPlaceIsMovedByKeysAndTheButtonGoesAlong() throws Exception {
    Chromium page = open(WIDE);
    tabTo(page, "[data-at='move down Chamber']");
    press(page, Keys.ENTER);
    page.await(d -> order(page).equals(List.of("House", "Chamber", "Yard")));
    press(page, Keys.ENTER);
    page.await(d -> order(page).equals(List.of("House", "Yard", "Chamber")));
    press(page, Keys.ENTER);
    page.click("#save");
    page.awaitText("#unsaved", "All is saved");
    assertThat(order(page)).containsExactly("House", "Yard", "Chamber");
    assertThat(Files.readString(scenario))
        .endsWith("# Too small by far.\n" + Farm.SCENARIO.lines().toList().get(8) + "\n");
    putWhatIfBeside(page);
    page.click("[data-at='move up Yard']");
    page.awaitText("#notices", "is written in the plan that this scenario changes; move it there");
  }

  @Test
  void itFitsAPhone() throws Exception {
    Chromium page = open(PHONE);
    page.find("[data-at='move down Chamber']");
    assertThat(page.width()).isLessThanOrEqualTo(PHONE);
    assertThat(ManyWaysInBrowserTest.serious(page, "places")).isEmpty();
  }
}
