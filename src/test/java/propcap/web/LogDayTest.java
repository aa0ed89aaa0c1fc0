package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.web.desk.Desk;
import propcap.web.desk.Readings;
import propcap.web.request.RefusedException;

/** From which day the page goes on when it is opened, and why it says so. */
class LogDayTest {
  private static final String LOG =
      """
      sowing,tray,event,date,plants,place,trays
      cabbage-1,,sown,2027-02-20,,,6
      cabbage-1,,off-heat,2027-03-09,,,2
      """;

  @TempDir Path folder;
  private Path scenario;

  @BeforeEach
  void aFarmWithALogUpTo9March() throws IOException {
    scenario = Farm.in(folder);
    Files.writeString(scenario, Farm.SCENARIO + "so-far: log.csv\n");
    Files.writeString(folder.resolve("log.csv"), LOG);
  }

  private static Clock on(String day) {
    return Clock.fixed(Instant.parse(day + "T09:00:00Z"), ZoneOffset.UTC);
  }

  private static SoFarTab tab(Desk desk) throws IOException, RefusedException {
    return SoFarTab.of(desk.view(""));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-11-26, 2027-03-10, is before it",
    "2027-02-25, 2027-03-10, is before it",
    "2027-03-09, 2027-03-09, The clock’s day.",
    "2027-03-20, 2027-03-20, The clock’s day.",
    "2027-08-01, 2027-03-10, is after the season"
  })
  void theClocksDayIsTakenWhereTheLogCanGoOnFromIt(String clock, String today, String why)
      throws Exception {
    Desk desk = new Desk(scenario, on(clock));
    assertThat(tab(desk).today()).isEqualTo(today);
    assertThat(desk.view("").reading().faults()).isEmpty();
    assertThat(tab(desk).whyToday()).contains(why);
  }

  /** A slip in a date of a spreadsheet does not take the page beyond the season. */
  @Test
  void aRowThatIsNoDayOfTheSeasonIsNotItsLast() throws Exception {
    Files.writeString(folder.resolve("log.csv"), LOG + "cabbage-1,,off-heat,2028-03-09,,,1\n");
    Desk desk = new Desk(scenario, on("2027-03-20"));
    assertThat(tab(desk).today()).isEqualTo("2027-03-20");
    assertThat(desk.view("").reading().faults()).isNotEmpty();
  }

  @Test
  void theDayStaysWhileItsRowsAreWritten() throws Exception {
    Desk desk = new Desk(scenario, on("2026-11-26"));
    for (int row = 0; row < 2; row++) {
      desk.change(
          "",
          desk.version(),
          (editor, written) ->
              editor.addLogRow(
                  Map.of("sowing", "cabbage-1", "event", "off-heat", "date", "2027-03-10")));
      assertThat(tab(desk).today()).isEqualTo("2027-03-10");
      assertThat(tab(desk).line()).startsWith("From 11 March on: 6 trays");
      desk.undo();
    }
  }

  @Test
  void anotherLogOnDiskIsLookedAtAnew() throws Exception {
    Desk desk = new Desk(scenario, on("2026-11-26"));
    assertThat(tab(desk).today()).isEqualTo("2027-03-10");
    Files.writeString(folder.resolve("log.csv"), LOG + "cabbage-1,,off-heat,2027-03-12,,,1\n");
    Files.setLastModifiedTime(
        folder.resolve("log.csv"), FileTime.from(Instant.parse("2027-03-12T18:00:00Z")));
    assertThat(desk.look()).isTrue();
    assertThat(tab(desk).today()).isEqualTo("2027-03-13");
  }

  @Test
  void theClocksDayCanBeChosenAllTheSameAndIsHeldWithinTheSeason() throws Exception {
    Desk desk = new Desk(scenario, on("2026-11-26"));
    desk.choose(new Readings.Day(null, true, false, false));
    assertThat(tab(desk).today()).isEqualTo("2027-01-11");
    assertThat(tab(desk).isClock()).isTrue();
    assertThat(tab(desk).whyToday())
        .isEqualTo(
            "The clock’s day, 26 November 2026, is outside the season: its nearest is taken.");
    assertThat(tab(desk).afterLast()).isEqualTo("2027-03-10");
  }

  /** As a new user opens it, in any year. */
  @Test
  void theDemonstrationIsOpenedOn10AprilAndCanBeWrittenIn() throws Exception {
    for (String name : new String[] {"scenarios", "demo-data"}) {
      Path copy = Files.createDirectory(folder.resolve(name));
      try (Stream<Path> files = Files.list(Path.of(name))) {
        for (Path file : files.toList()) {
          Files.copy(file, copy.resolve(file.getFileName()));
        }
      }
    }
    Desk desk = new Desk(folder.resolve("scenarios/in-season.yaml"), on("2026-11-26"));
    assertThat(tab(desk).today()).isEqualTo("2027-04-10");
    assertThat(desk.view("").reading().faults()).isEmpty();
    assertThat(tab(desk).readOnly()).isEmpty();
    assertThat(tab(desk).isLogged()).isTrue();
    desk.change(
        "",
        desk.version(),
        (editor, written) ->
            editor.addLogRow(
                Map.of(
                    "sowing",
                    "onion-3",
                    "event",
                    "planted-out",
                    "date",
                    "2027-04-10",
                    "trays",
                    "2")));
    assertThat(desk.view("").reading().faults()).isEmpty();
    assertThat(tab(desk).line()).startsWith("From 11 April on: 415 trays");
    assertThat(desk.view("").reading().warnings().toString())
        .contains("no temperatures of 2027-04-10 yet; each simulated year’s own stand in");
  }
}
