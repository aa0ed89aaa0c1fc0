package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import propcap.farm.Labour;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;

/** Prices, hands and rest days in a real browser; skipped where there is none. */
class MoneyInBrowserTest extends InBrowser {
  @Test
  void pricesHandsAndRestDaysAreGivenWithoutATextEditor() throws Exception {
    Chromium page = open(WIDE);
    page.tab("money");
    page.click("[data-at='add prices']");
    page.type("#d-currency", "EUR");
    page.type("#d-tray", "1.10");
    page.type("#d-pot-tray", "2.40");
    page.type("#d-worth", "0.30");
    page.type("#d-late", "0.10");
    page.type("#d-short", "0.45");
    page.click("#dialog button[type='submit']");
    page.awaitValue("[data-at='head money.plants.default.worth']", "0.30");
    page.type("[data-at='head money.plants.default.late']", "cheap");
    page.awaitText("[data-at='head money.plants.default.late'] + .fault", "'cheap'");
    page.awaitText("[data-tab='money']", "1 to mend");
    assertThat(ManyWaysInBrowserTest.serious(page, "money")).isEmpty();
    if (System.getProperty("pictures") != null) {
      page.picture(Path.of(System.getProperty("pictures"), "money-wide.png"));
    }
    page.type("[data-at='head money.plants.default.late']", "0.05");
    page.type("[data-at='head money.hour']", "14.50");
    page.choose("[data-at='head money.sell-surplus']", "true");
    page.type("[data-at='head labour.hours']", "12/day");
    page.type("[data-at='head labour.minutes.sow']", "4/tray");
    page.tab("");
    page.click("[data-at='rest SATURDAY']");
    page.click("[data-at='rest SUNDAY']");
    page.click("#save");
    page.awaitText("#unsaved", "All is saved");
    Scenario read = ScenarioReader.read(scenario);
    Prices prices = Objects.requireNonNull(read.prices());
    assertThat(prices.currency()).isEqualTo("EUR");
    assertThat(prices.of("cabbage").late()).isEqualTo(new BigDecimal("0.05"));
    assertThat(prices.sellSurplus()).isTrue();
    assertThat(read.labour().hoursPerDay()).isEqualTo(12);
    assertThat(read.labour().minutes().sow()).isEqualTo(4);
    assertThat(read.rounds().rest())
        .containsExactlyInAnyOrder(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);
    assertThat(Files.readString(scenario)).contains("# Too small by far.");
    assertThat(page.complaints()).isEmpty();
  }

  @Test
  void weeksWithExtraPeopleAreGivenBesideTheUsualHours() throws Exception {
    Chromium page = open(WIDE);
    page.tab("money");
    page.type("[data-at='head labour.hours']", "12/day");
    page.click("[data-at='add extra']");
    page.type("#d-from", "5.4.2027");
    page.type("#d-until", "17 April");
    page.type("#d-hours", "7,5/day");
    page.click("#dialog button[type='submit']");
    page.awaitValue("[data-at='head labour.extra.0.from']", "2027-04-05");
    page.awaitValue("[data-at='head labour.extra.0.until']", "2027-04-17");
    page.type("[data-at='head labour.extra.0.until']", "2027-04-01");
    page.awaitText("[data-at='head labour.extra.0.until'] + .fault", "before");
    page.awaitText("[data-tab='money']", "1 to mend");
    page.type("[data-at='head labour.extra.0.until']", "2027-04-18");
    page.click("#save");
    page.awaitText("#unsaved", "All is saved");
    assertThat(ScenarioReader.read(scenario).labour().extra())
        .containsExactly(
            new Labour.Extra(LocalDate.of(2027, 4, 5), LocalDate.of(2027, 4, 18), 7.5));
    page.click("[data-at='remove extra 0']");
    page.await(d -> d.findElements(By.cssSelector("[data-extra]")).isEmpty());
    page.click("#undo");
    page.awaitValue("[data-at='head labour.extra.0.hours']", "7.5/day");
    assertThat(ManyWaysInBrowserTest.serious(page, "money")).isEmpty();
    assertThat(page.complaints()).isEmpty();
  }

  @Test
  void itFitsAPhone() throws Exception {
    Chromium page = open(PHONE);
    page.tab("money");
    page.find("[data-at='add prices']");
    assertThat(page.width()).isLessThanOrEqualTo(PHONE);
    assertThat(ManyWaysInBrowserTest.serious(page, "money")).isEmpty();
  }
}
