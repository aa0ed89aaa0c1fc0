package propcap.report.work;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.property.Transparency;
import biweekly.util.DateTimeComponents;
import biweekly.util.ICalDate;
import com.github.mangstadt.vinnie.io.VObjectPropertyValues;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Date;
import java.util.UUID;
import propcap.farm.Season;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.study.Period;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkCalendar.Planned;
import propcap.study.work.WorkCalendar.Task;

/**
 * The work as a calendar that a phone can subscribe to: RFC 5545, an all-day event for each task
 * that has a whole tray or stands in the plan. An event's id hangs on the farm, the season's last
 * year, the sowing and the job only, and its revision rises with each writing, so that a new file
 * moves the events that are there and adds none twice. The same calendar, written at the same
 * moment, gives the same bytes.
 */
final class CalendarFeed {
  /** RFC 5545, 3.1: no line longer than 75 octets, its end not counted. */
  private static final int MOST_OCTETS = 75;

  private static final String LINE_END = "\r\n";

  /** Revisions are seconds since then, so that they rise and stay below 2^31 until 2088. */
  private static final Instant REVISIONS_FROM = Instant.parse("2020-01-01T00:00:00Z");

  private CalendarFeed() {}

  /**
   * The file's text.
   *
   * @param written the moment of writing
   */
  static String of(WorkCalendar calendar, Period period, Instant written) {
    ICalendar feed = new ICalendar();
    feed.setProductId("-//Propcap//Work calendar//EN");
    String name = "Work: " + calendar.scenario().name();
    feed.setName(name);
    // What phones read; NAME, by RFC 7986, is young. Its value is written as it is given.
    feed.addExperimentalProperty("X-WR-CALNAME", VObjectPropertyValues.escape(name));
    calendar.tasks().stream()
        .filter(t -> t.trays(period) > 0 || t.isPlannedIn(period))
        .forEach(t -> t.days().ifPresent(d -> feed.addEvent(event(calendar, t, d, written))));
    return folded(withoutControls(written(feed)));
  }

  private static VEvent event(WorkCalendar calendar, Task task, Period days, Instant written) {
    VEvent event = new VEvent();
    event.setUid(id(calendar, task));
    // 3.8.7.2 and 3.8.7.3: without a METHOD, both are when the event was last revised.
    event.setDateTimeStamp(Date.from(written));
    event.setLastModified(Date.from(written));
    event.setSequence(revision(written));
    event.setDateStart(new DateStart(day(days.from())));
    // The first day on which it no longer is.
    event.setDateEnd(new DateEnd(day(days.to().plusDays(1))));
    event.setSummary(summary(task));
    event.setDescription(description(task, calendar.scenario().season()));
    if (!task.stints().isEmpty()) {
      event.setLocation(WorkWords.route(task.job(), task.stints()));
    }
    event.addCategories(WorkWords.job(task.job()));
    event.setTransparency(Transparency.transparent());
    return event;
  }

  /** By the year in which the season ends, which stays when its first day moves. */
  private static String id(WorkCalendar calendar, Task task) {
    String parts =
        String.join(
            "\0",
            calendar.scenario().name(),
            Integer.toString(calendar.scenario().season().end().getYear()),
            task.sowing().id(),
            task.job().word());
    return UUID.nameUUIDFromBytes(parts.getBytes(StandardCharsets.UTF_8)).toString();
  }

  /**
   * 3.8.7.4: a number that rises with each revision. It should begin with 0, which only a program
   * that remembers the last file can do; readers look for the higher one.
   */
  private static int revision(Instant written) {
    long seconds = Duration.between(REVISIONS_FROM, written).toSeconds();
    return (int) Math.max(0, Math.min(Integer.MAX_VALUE, seconds));
  }

  private static ICalDate day(LocalDate date) {
    return new ICalDate(
        new DateTimeComponents(date.getYear(), date.getMonthValue(), date.getDayOfMonth()), false);
  }

  private static String summary(Task task) {
    int trays = task.traysInAll();
    int planned = task.sowing().trays();
    return WorkWords.job(task.job())
        + ": "
        + task.sowing().id()
        + ", "
        + (task.planned() == null || trays == planned
            ? Words.plural(trays, "tray")
            : trays + " of " + Words.plural(planned, "tray"));
  }

  private static String description(Task task, Season season) {
    String crop = WorkWords.cropAndLot(task);
    String works = "about " + WorkWords.hours(task.hours()) + " of work";
    Planned planned = task.planned();
    if (planned != null) {
      return "%s\nPlanned for %s%s; %s"
          .formatted(
              crop,
              Dates.dayOfWeek(planned.due(), season),
              planned.isOnItsDay()
                  ? ""
                  : ": " + WorkWords.asPlanned(planned, task.latest(), season),
              works);
    }
    String range = Words.range(task.trays());
    String trays = Words.plural(task.trays().mean(), "tray");
    return crop
        + "\n"
        + between(task, season)
        + "\n"
        + trays
        + (Words.amount(task.trays().mean()).equals(range)
            ? "; "
            : " on average, " + range + " in 8 springs of 10; ")
        + works
        + (task.chance() < 1 ? "\nComes to it in " + Words.springs(task.chance()) : "");
  }

  private static String between(Task task, Season season) {
    String earliest = Dates.dayOfWeek(task.earliest(), season);
    return task.earliest().equals(task.latest())
        ? "On " + earliest
        : "Likely between " + earliest + " and " + Dates.dayOfWeek(task.latest(), season);
  }

  private static String written(ICalendar feed) {
    StringWriter text = new StringWriter();
    try (ICalWriter out = new ICalWriter(text, ICalVersion.V2_0)) {
      // It would count characters, where the standard counts octets.
      out.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
      out.write(feed);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  /** 3.1: of the control characters, a value may hold the tabulator only. */
  private static String withoutControls(String text) {
    return text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\x7F]", " ");
  }

  /** Lines too long go on in the next one, after a space, and never in the middle of a letter. */
  static String folded(String text) {
    StringBuilder folded = new StringBuilder();
    for (String line : text.split(LINE_END, -1)) {
      int octets = 0;
      for (int letter : line.codePoints().toArray()) {
        int more = Character.toString(letter).getBytes(StandardCharsets.UTF_8).length;
        if (octets + more > MOST_OCTETS) {
          folded.append(LINE_END).append(' ');
          octets = 1;
        }
        folded.appendCodePoint(letter);
        octets += more;
      }
      folded.append(LINE_END);
    }
    // The text ends in a line's end, so that the last of its parts is empty.
    return folded.substring(0, folded.length() - LINE_END.length());
  }
}
