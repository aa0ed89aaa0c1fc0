package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.CalendarComponent;
import org.junit.jupiter.api.Test;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.WorkCalendar;
import propcap.study.WorkPlanning;

/**
 * The calendar file, held against the rules of RFC 5545 and read back by another library (ical4j)
 * than the one that writes it. The farm leaves nothing to chance: sown on day 2, off the heat on 7,
 * out on 17, planted on 21.
 */
class CalendarFeedTest {
  private static final String AWKWARD = "köhl, \"rot\"; früh\\spät mit einem sehr langen Namen 花";

  private static WorkCalendar calendar(String id, long seed) throws InterruptedException {
    Farms farm = new Farms();
    farm.crops.clear();
    farm.crops.add(new Crops().make());
    Sowing plain = Farms.sowing(id, 2, 4);
    farm.sowings.add(plain);
    Scenario scenario = farm.make();
    return WorkPlanning.calendar(scenario, new RunSettings(seed, 2, null, 1), done -> {});
  }

  private static String feed(String id, long seed) throws InterruptedException {
    WorkCalendar calendar = calendar(id, seed);
    return CalendarFeed.of(calendar, Period.of(calendar.scenario().season()));
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
    assertThat(events(feed("a", 1)))
        .extracting(e -> value(e, "DTSTAMP"))
        .containsOnly("20270301T000000Z");
  }

  private static List<String> ids(String feed) throws IOException, ParserException {
    return events(feed).stream().map(e -> value(e, "UID")).toList();
  }
}
