package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** The crops in a real browser; skipped where there is none. */
class CropsInBrowserTest extends InBrowser {
  @Test
  void aFaultThatHasNoFieldIsToldInWords() throws Exception {
    Path crops = folder.resolve("crops.yaml");
    Files.writeString(
        crops, Files.readString(crops).replaceFirst("(?m)^  cabbage:.*$", "$0\n    colour: red"));
    Chromium page = openAnew(WIDE);
    page.tab("crops");
    page.choose("#crop", "cabbage");
    page.awaitText("#panel", "colour");
    assertThat(page.text("#panel")).doesNotContain("[object");
  }

  @Test
  void aCropIsTakenFromTheListWithItsSources() throws Exception {
    Chromium page = open(WIDE);
    page.tab("crops");
    page.click("[data-at='copy crop']");
    page.awaitText("#book-entry", "choose one");
    page.find("#book-search").sendKeys("celo");
    page.awaitText("#book-entry", "Iowa State University Extension (2023)");
    assertThat(page.text("#book-entry")).contains("Half by").doesNotContain("emergence:");
    assertThat(page.find("#book-entry pre").isDisplayed()).isFalse();
    page.find("#book-search").clear();
    page.find("#book-search").sendKeys("aubergine");
    page.awaitText("#book-entry", "eggplant, also aubergine");
    page.find("#book-search").clear();
    page.find("#book-search").sendKeys("celo");
    page.awaitText("#book-entry", "celosia, also cockscomb");
    assertThat(ManyWaysInBrowserTest.serious(page, "the list of crops")).isEmpty();
    page.find("#book-search").sendKeys(Keys.ENTER);
    page.awaitValue("#crop", "celosia");
    page.awaitValue("[data-at='crop celosia germinate-in']", "Chamber");
    page.click("#save");
    page.awaitText("#unsaved", "All is saved");
    assertThat(Files.readString(folder.resolve("crops.yaml"))).contains("[ISU23]");
    page.click("[data-at='copy crop']");
    page.find("#book-search").sendKeys("celo");
    page.awaitText("#book-list", "celosia, also cockscomb (in your list)");
    assertThat(page.complaints()).isEmpty();
  }
}
