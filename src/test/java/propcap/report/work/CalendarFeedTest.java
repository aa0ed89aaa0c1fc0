package propcap.report.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.CalendarComponent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkPlanning;

/**
 * The calendar file, held against the rules of RFC 5545 and read back by another library (ical4j)
 * than the one that writes it. The farm leaves nothing to chance: sown on day 2, off the heat on 7,
 * out on 17, planted on 21.
 */
class CalendarFeedTest {
  private static final String AWKWARD = "köhl, \"rot\"; früh\\spät mit einem sehr langen Namen 花";

  private static final Instant WRITTEN = Instant.parse("2026-11-30T17:45:10Z");

  private static Scenario farm(String id) {
    return farm(id, 2);
  }

  private static Scenario farm(String id, int sowDay) {
    Farms farm = new Farms();
    farm.crops.clear();
    farm.crops.add(new Crops().make());
    farm.sowings.add(Farms.sowing(id, sowDay, 4));
    return farm.make();
  }

  private static String feed(String id, long seed) throws InterruptedException {
    return feed(farm(id), seed, WRITTEN);
  }

  private static String feed(Scenario scenario, long seed, Instant written)
      throws InterruptedException {
    WorkCalendar calendar =
        WorkPlanning.calendar(scenario, new RunSettings(seed, 2, null, 1), done -> {});
    return CalendarFeed.of(calendar, Period.of(scenario.season()), written);
  }

  private static List<CalendarComponent> events(String feed) throws IOException, ParserException {
    Calendar read = new CalendarBuilder().build(new StringReader(feed));
    return read.getComponents("VEVENT");
  }

  private static String value(CalendarComponent event, String property) {
    return event.getProperty(property).map(Property::getValue).orElseThrow();
  }

  @Test
  void anotherLibraryReadsWhatWasWritten()
      throws InterruptedException, IOException, ParserException {
    List<CalendarComponent> events = events(feed("a", 1));
    assertThat(events)
        .extracting(e -> value(e, "DTSTART"))
        .containsExactly("20270303", "20270308", "20270318", "20270322");
    assertThat(events)
        .extracting(e -> value(e, "SUMMARY"))
        .containsExactly(
            "Sow: a, 4 trays",
            "Take off heat: a, 4 trays",
            "Move out to harden: a, 4 trays",
            "Plant out: a, 4 trays");
    assertThat(events)
        .extracting(e -> value(e, "LOCATION"))
        .containsExactly("into Mats", "Mats → House", "House → Yard", "from Yard");
    assertThat(value(events.get(3), "DESCRIPTION"))
        .startsWith("cosmos, lot lot\nOn Mon 22 Mar\n4 trays; about ");
  }

  /** An all-day event of one day ends on the next (RFC 5545, 3.6.1). */
  @Test
  void theEndIsTheFirstDayAfter() throws InterruptedException, IOException, ParserException {
    for (CalendarComponent event : events(feed("a", 1))) {
      LocalDate start = day(value(event, "DTSTART"));
      assertThat(day(value(event, "DTEND"))).isEqualTo(start.plusDays(1));
    }
    assertThat(feed("a", 1)).contains("\r\nDTSTART;VALUE=DATE:20270303\r\n");
  }

  private static LocalDate day(String basic) {
    return LocalDate.parse(basic, DateTimeFormatter.BASIC_ISO_DATE);
  }

  /** RFC 5545, 3.1: lines end in CRLF and have at most 75 octets, folded between letters. */
  @Test
  void linesAreShortAndEndInCrLf() throws InterruptedException {
    String feed = feed(AWKWARD, 1);
    assertThat(feed).endsWith("END:VCALENDAR\r\n").doesNotContain("\r\n\r\n");
    assertThat(feed.replace("\r\n", "")).doesNotContain("\r").doesNotContain("\n");
    assertThat(feed.split("\r\n", -1))
        .allSatisfy(
            line ->
                assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75))
        .anySatisfy(line -> assertThat(line).startsWith(" "));
  }

  @Test
  void awkwardNamesComeBackAsTheyWere() throws InterruptedException, IOException, ParserException {
    assertThat(value(events(feed(AWKWARD, 1)).get(0), "SUMMARY"))
        .isEqualTo("Sow: " + AWKWARD + ", 4 trays");
  }

  @Test
  void foldingNeverCutsALetterAndCountsOctets() {
    String letters = "花".repeat(60);
    String folded = CalendarFeed.folded("X:" + letters + "\r\n");
    assertThat(folded.replace("\r\n ", "")).isEqualTo("X:" + letters + "\r\n");
    assertThat(folded.split("\r\n", -1)[0].getBytes(StandardCharsets.UTF_8)).hasSize(74);
    assertThat(CalendarFeed.folded("X:" + "a".repeat(73) + "\r\n")).doesNotContain("\r\n ");
    assertThat(CalendarFeed.folded("X:" + "a".repeat(74) + "\r\n")).contains("\r\n ");
  }

  /** What a phone holds is moved by a new file, not doubled. */
  @Test
  void idsHangOnTheTaskAloneAndTheSameGivesTheSameBytes()
      throws InterruptedException, IOException, ParserException {
    assertThat(feed("a", 1)).isEqualTo(feed("a", 1));
    List<String> ids = ids(feed("a", 1));
    assertThat(ids).doesNotHaveDuplicates().hasSize(4);
    assertThat(ids(feed("a", 7))).isEqualTo(ids);
    assertThat(ids(feed("b", 1))).doesNotContainAnyElementsOf(ids);
  }

  /** A season that begins earlier, for a sowing more, is the same season. */
  @Test
  void idsStayWhenTheSeasonIsMadeLonger()
      throws InterruptedException, IOException, ParserException {
    Farms longer = new Farms();
    longer.crops.clear();
    longer.crops.add(new Crops().make());
    longer.season = new Season(Farms.START.minusDays(70), Farms.START.plusDays(59));
    longer.minC = new double[longer.season.days()];
    longer.maxC = new double[longer.season.days()];
    Arrays.fill(longer.minC, 8);
    Arrays.fill(longer.maxC, 18);
    longer.sowings.add(Farms.sowing("a", 2, 4));
    assertThat(ids(feed(longer.make(), 1, WRITTEN))).isEqualTo(ids(feed("a", 1)));
  }

  /**
   * RFC 5545, 3.8.7.2 and 3.8.7.3: where there is no METHOD, DTSTAMP is when the event was last
   * revised, as LAST-MODIFIED is; both in UTC. 3.8.7.4: SEQUENCE rises with each revision.
   */
  @Test
  void aFileWrittenLaterIsNewerAndMovesTheSameEvents()
      throws InterruptedException, IOException, ParserException {
    String first = feed(farm("a"), 1, WRITTEN);
    String second = feed(farm("a", 5), 1, WRITTEN.plusSeconds(1));
    assertThat(first).doesNotContain("METHOD");
    assertThat(ids(second)).isEqualTo(ids(first));
    List<CalendarComponent> old = events(first);
    List<CalendarComponent> now = events(second);
    for (int i = 0; i < old.size(); i++) {
      assertThat(value(old.get(i), "DTSTAMP")).isEqualTo("20261130T174510Z");
      assertThat(value(old.get(i), "LAST-MODIFIED")).isEqualTo("20261130T174510Z");
      assertThat(value(now.get(i), "DTSTAMP")).isEqualTo("20261130T174511Z");
      assertThat(value(now.get(i), "LAST-MODIFIED")).isEqualTo("20261130T174511Z");
      assertThat(sequence(now.get(i))).isEqualTo(sequence(old.get(i)) + 1).isPositive();
      assertThat(day(value(now.get(i), "DTSTART")))
          .isEqualTo(day(value(old.get(i), "DTSTART")).plusDays(3));
    }
  }

  /** 3.3.8: an integer is at most 2147483647. A clock that is wrong must not break the file. */
  @ParameterizedTest
  @CsvSource({
    "1970-01-01T00:00:00Z, 0",
    "2020-01-01T00:00:00Z, 0",
    "2020-01-01T00:01:00.9Z, 60",
    "2088-01-19T03:14:07Z, 2147483647",
    "2100-01-01T00:00:00Z, 2147483647"
  })
  void revisionsAreSecondsAndStayIntegers(String written, int sequence)
      throws InterruptedException, IOException, ParserException {
    assertThat(events(feed(farm("a"), 1, Instant.parse(written))))
        .allSatisfy(e -> assertThat(sequence(e)).isEqualTo(sequence));
  }

  private static int sequence(CalendarComponent event) {
    return Integer.parseInt(value(event, "SEQUENCE"));
  }

  /**
   * 3.3.11: backslash, semicolon and comma are escaped and a line break is written as one; 3.8.8.2:
   * a property that begins with X- is TEXT too. 3.1: no other control characters.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Hill; north, \\ south\nof it",
        "Hill\r\nBEGIN:VEVENT\r\nUID:1",
        "bell\u0007 and tab\t and \u007f end",
        AWKWARD
      })
  void theNameOfTheCalendarComesBackAsItWas(String name)
      throws InterruptedException, IOException, ParserException {
    String feed = feed(farm("a").named(name), 1, WRITTEN);
    String was = "Work: " + name.replace("\r\n", "\n").replaceAll("[\u0007\u007f]", " ");
    Calendar read = new CalendarBuilder().build(new StringReader(feed));
    for (String property : List.of("NAME", "X-WR-CALNAME")) {
      assertThat(read.getProperty(property).map(Property::getValue)).contains(was);
    }
    assertThat(read.getComponents("VEVENT")).hasSize(4);
    assertThat(feed.replace("\r\n", "").chars().filter(c -> c < ' ' && c != '\t')).isEmpty();
    assertThat(feed.split("\r\n", -1))
        .allMatch(line -> line.getBytes(StandardCharsets.UTF_8).length <= 75);
  }

  /** The bytes, as 3.3.11 has them. */
  @Test
  void theNameIsEscaped() throws InterruptedException {
    String feed = feed(farm("a").named("N; W, \\ S\nE"), 1, WRITTEN);
    assertThat(feed)
        .contains("\r\nNAME:Work: N\\; W\\, \\\\ S\\nE\r\n")
        .contains("\r\nX-WR-CALNAME:Work: N\\; W\\, \\\\ S\\nE\r\n");
  }

  private static List<String> ids(String feed) throws IOException, ParserException {
    return events(feed).stream().map(e -> value(e, "UID")).toList();
  }
}
