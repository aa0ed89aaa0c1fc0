package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;

/** The season so far in a real browser; skipped where there is none, and in CI. */
class LogInBrowserTest {
  private static final String HEADER = "sowing,tray,event,date,plants,place,trays\n";
  private static final String TO_SOW = "cabbage-1 to be sown, due 20 February";
  private static final String IN_HEAT = "cabbage-1 in the heat Chamber";

  @TempDir Path folder;
  private Server server;

  @BeforeEach
  void aServer() throws IOException {
    server = Server.start(Farm.in(folder), 0, "test");
  }

  @AfterEach
  void close() {
    server.close();
  }

  /** Types in a field of a page that may just be drawn anew. */
  private static void type(Chromium page, String at, String text) {
    var unused =
        page.await(
            d -> {
              d.findElement(By.cssSelector("[data-at='" + at + "']"))
                  .sendKeys(Keys.chord(Keys.CONTROL, "a"), text, Keys.TAB);
              return true;
            });
  }

  private static void write(Chromium page, String group) {
    page.click("[data-at='write " + group + "']");
  }

  @Test
  void whatMovedIsWrittenByClicksAndTakenBack() throws Exception {
    try (Chromium page = Chromium.start(1400, 1000)) {
      page.open(server.newLink());
      page.tab("log");
      page.click("[data-at='keep log']");
      type(page, "today", "2027-03-10");
      page.awaitText("#so-far", "From 10 March on: 0 trays stand");
      type(page, "log " + TO_SOW + " trays", "6");
      type(page, "log " + TO_SOW + " date", "2027-02-20");
      write(page, TO_SOW);
      page.awaitText("#log", "2027-02-20, cabbage-1: 6 trays sown");
      page.awaitText("#so-far", "6 trays stand in the house");
      type(page, "log " + IN_HEAT + " trays", "2");
      type(page, "log " + IN_HEAT + " plants", "60.5");
      page.click("[data-at='log " + IN_HEAT + " event'] option[value='counted']");
      write(page, IN_HEAT);
      page.awaitText("#log", "2027-03-10, cabbage-1: 2 trays counted in the heat, 60.5 plants");
      page.awaitText("#so-far", "From 11 March on");
      page.click("[data-at='take back 1']");
      page.awaitText("#so-far", "From 10 March on");
      page.click("#save");
      page.awaitText("#unsaved", "All is saved");
      assertThat(Files.readString(folder.resolve("log.csv")))
          .isEqualTo(HEADER + "cabbage-1,,sown,2027-02-20,,,6\n");
      assertThat(page.complaints()).isEmpty();
    }
  }

  @Test
  void aWrongRowSaysSoAtItsPlaceAndNothingIsWiderThanAPhone() {
    try (Chromium page = Chromium.start(390, 800)) {
      page.open(server.newLink());
      page.tab("log");
      page.click("[data-at='keep log']");
      type(page, "today", "2027-03-10");
      page.awaitText("#so-far", "From 10 March on");
      write(page, TO_SOW);
      page.awaitText("[data-row='0'] .fault, .faults", "Chamber has 12 trays on 2027-03-10");
      Object wide =
          ((JavascriptExecutor) page.driver())
              .executeScript("return document.documentElement.scrollWidth");
      assertThat(((Number) Objects.requireNonNull(wide)).intValue()).isLessThanOrEqualTo(390);
      page.click("[data-at='overfull']");
      page.awaitText("#so-far", "12 trays stand in the house");
    }
  }
}
