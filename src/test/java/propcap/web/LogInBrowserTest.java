package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** The season so far in a real browser; skipped where there is none, and in CI. */
class LogInBrowserTest extends InBrowser {
  private static final String HEADER = "sowing,tray,event,date,plants,place,trays\n";
  private static final String TO_SOW = "cabbage-1 to be sown, due 20 February";
  private static final String OTHER = "another row";

  private static final String IN_HEAT = "cabbage-1 in the heat Chamber";

  /** The tab on a morning in March, with an empty log. */
  private Chromium begin(int width) {
    Chromium page = open(width);
    page.tab("log");
    page.click("[data-at='keep log']");
    page.type("[data-at='today']", "2027-03-10");
    page.awaitText("#so-far", "From 10 March on: 0 trays stand");
    return page;
  }

  private static void type(Chromium page, String group, String field, String text) {
    page.type("[data-at='log " + group + " " + field + "']", text);
  }

  private static void choose(Chromium page, String group, String field, String value) {
    page.choose("[data-at='log " + group + " " + field + "']", value);
  }

  /** Where it says what is wrong with a field. */
  private static String fault(String group, String field) {
    return "[data-at='log " + group + " " + field + "'] + .fault";
  }

  private static void write(Chromium page, String group) {
    page.click("[data-at='write " + group + "']");
  }

  /** Six trays of cabbage are in the heat. */
  private static void sow(Chromium page) {
    type(page, TO_SOW, "trays", "6");
    type(page, TO_SOW, "date", "2027-02-20");
    write(page, TO_SOW);
    page.awaitText("#log", "2027-02-20, cabbage-1: 6 trays sown");
    page.awaitText("#so-far", "6 trays stand in the house");
  }

  @Test
  void whatMovedIsWrittenByClicksAndTakenBack() throws Exception {
    Chromium page = begin(LAPTOP);
    sow(page);
    type(page, IN_HEAT, "trays", "2");
    choose(page, IN_HEAT, "event", "counted");
    type(page, IN_HEAT, "plants", "60.5");
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

  /** Trays 2 and 3 are on the table, so that of those in the heat each is named. */
  @Test
  void traysBetweenOthersAreWrittenByNameAndAnyRowByTheFormForTheRest() throws Exception {
    Chromium page = begin(LAPTOP);
    sow(page);
    page.click("[data-open='another row'] summary");
    choose(page, OTHER, "sowing", "cabbage-1");
    choose(page, OTHER, "event", "off-heat");
    type(page, OTHER, "tray", "2-3");
    type(page, OTHER, "plants", "70");
    choose(page, OTHER, "place", "House");
    type(page, OTHER, "date", "2027-03-01");
    write(page, OTHER);
    page.awaitText("#log", "cabbage-1: trays 2-3 off the heat, 70 plants in each, to House");
    type(page, IN_HEAT, "trays", "7");
    write(page, IN_HEAT);
    page.awaitText(fault(IN_HEAT, "trays"), "a whole number from 1 to 4");
    type(page, IN_HEAT, "trays", "3");
    choose(page, IN_HEAT, "event", "thrown-out");
    type(page, IN_HEAT, "date", "2027-03-09");
    write(page, IN_HEAT);
    page.awaitText("#so-far", "3 trays stand in the house");
    page.click("#undo");
    page.awaitText("#so-far", "6 trays stand in the house");
    page.click("#redo");
    page.awaitText("#so-far", "3 trays stand in the house");
    choose(page, IN_HEAT, "event", "off-heat");
    choose(page, IN_HEAT, "place", "House");
    type(page, IN_HEAT, "date", "2027-03-09");
    write(page, IN_HEAT);
    page.awaitText("#log", "2027-03-09, cabbage-1: 1 tray off the heat, to House");
    page.click("#save");
    page.awaitText("#unsaved", "All is saved");
    assertThat(Files.readString(folder.resolve("log.csv")))
        .isEqualTo(
            HEADER
                + """
                cabbage-1,,sown,2027-02-20,,,6
                cabbage-1,2-3,off-heat,2027-03-01,70,House,
                cabbage-1,1,thrown-out,2027-03-09,,,
                cabbage-1,4-5,thrown-out,2027-03-09,,,
                cabbage-1,,off-heat,2027-03-09,,House,1
                """);
    assertThat(page.complaints()).isEmpty();
  }

  @Test
  void theDayIsThatOfTheClockOrTheWinterBeforeByAClick() {
    Chromium page = begin(LAPTOP);
    page.click("[data-at='winter']");
    page.awaitText("#so-far", "As before the season: what the log says is left aside.");
    page.find("[data-at='winter'][aria-pressed='true']");
    assertThat(page.driver().findElements(By.cssSelector("[data-group]"))).isEmpty();
    page.click("[data-at='clock']");
    page.find("[data-at='clock'][aria-pressed='true']");
    page.find("[data-at='winter'][aria-pressed='false']");
    page.type("[data-at='today']", "soon");
    page.awaitText("[data-at='today'] + .fault", "The day must be a day such as 2027-07-01");
    page.type("[data-at='today']", "10 March");
    page.awaitText("#so-far", "From 10 March on");
    page.find("[data-at='clock'][aria-pressed='false']");
  }

  /** It is asked which of two days is meant, and the one that is pressed is taken. */
  @Test
  void aDayThatMayBeTwoIsAskedForByTwoButtons() {
    Chromium page = begin(LAPTOP);
    sow(page);
    type(page, IN_HEAT, "date", "3/4/2027");
    write(page, IN_HEAT);
    page.click("[data-reading='2027-03-04']");
    page.awaitText("#log", "2027-03-04, cabbage-1: 6 trays off the heat");
    page.type("[data-at='today']", "3/4/2027");
    page.click("[data-reading='2027-04-03']");
    page.awaitText("#so-far", "From 3 April on");
    assertThat(page.text("#notices")).isEmpty();
  }

  /** Nothing is lost of what was filled in, and nothing else goes away. */
  @Test
  void aWrongRowSaysSoAtItsFieldAndIsNotWritten() {
    Chromium page = begin(LAPTOP);
    sow(page);
    choose(page, IN_HEAT, "event", "counted");
    type(page, IN_HEAT, "trays", "2");
    type(page, IN_HEAT, "plants", "5000");
    write(page, IN_HEAT);
    page.awaitText(fault(IN_HEAT, "plants"), "more than the");
    page.awaitText("[data-group='" + IN_HEAT + "'] [role='alert']", "Not written yet.");
    assertThat(page.driver().switchTo().activeElement().getDomAttribute("data-at"))
        .isEqualTo("log " + IN_HEAT + " plants");
    page.awaitValue("[data-at='log " + IN_HEAT + " trays']", "2");
    assertThat(page.text("#notices")).isEmpty();
    assertThat(page.driver().findElements(By.cssSelector("#log li"))).hasSize(1);
    assertThat(page.driver().findElements(By.cssSelector("fieldset[data-group]"))).hasSize(3);
    type(page, IN_HEAT, "plants", "60");
    write(page, IN_HEAT);
    page.awaitText("#log", "2 trays counted in the heat, 60 plants");
    assertThat(page.driver().findElements(By.cssSelector("[data-group] .fault"))).isEmpty();
  }

  @Test
  void theStandIsAskedForOnceItCanBeCounted() {
    Chromium page = begin(LAPTOP);
    sow(page);
    String plants = "[data-at='log " + IN_HEAT + " plants']";
    assertThat(page.driver().findElements(By.cssSelector(plants))).isEmpty();
    page.awaitText("[data-group='" + IN_HEAT + "']", "once the last seedlings are up, 5 days");
    type(page, IN_HEAT, "date", "2027-03-05");
    page.type(plants, "60");
    write(page, IN_HEAT);
    page.awaitText("#log", "2027-03-05, cabbage-1: 6 trays off the heat, 60 plants in each");
  }

  @Test
  void anOverfullPlaceIsToldAtTheTraysAndWrittenAllTheSame() {
    Chromium page = begin(PHONE);
    write(page, TO_SOW);
    page.awaitText("[data-group='" + TO_SOW + "']", "Chamber has 12 trays on 2027-03-10");
    assertThat(page.width()).isLessThanOrEqualTo(PHONE);
    page.click("[data-at='overfull']");
    page.find("[data-at='overfull'][aria-pressed='true']");
    write(page, TO_SOW);
    page.awaitText("#so-far", "12 trays stand in the house");
  }
}
