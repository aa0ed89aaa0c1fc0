package propcap.report;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.property.Transparency;
import biweekly.util.DateTimeComponents;
import biweekly.util.ICalDate;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.UUID;
import propcap.farm.Job;
import propcap.study.Period;
import propcap.study.WorkCalendar;
import propcap.study.WorkCalendar.Task;

/**
 * The work as a calendar that a phone can subscribe to: RFC 5545, an all-day event for each task.
 * An event's id hangs on the farm, the season, the sowing and the job only, so that a new file
 * moves the events that are there and adds none twice. The same calendar gives the same bytes.
 */
final class CalendarFeed {
  /** RFC 5545, 3.1: no line longer than 75 octets, its end not counted. */
  private static final int MOST_OCTETS = 75;

  private static final String LINE_END = "\r\n";

  private CalendarFeed() {}

  static String of(WorkCalendar calendar, Period period) {
    ICalendar feed = new ICalendar();
    feed.setProductId("-//Propcap//Work calendar//EN");
    String name = "Work: " + calendar.scenario().name();
    feed.setName(name);
    // What phones read; NAME, by RFC 7986, is young.
    feed.addExperimentalProperty("X-WR-CALNAME", name);
    calendar.tasks().stream()
        .filter(t -> period.meets(first(t), last(t)))
        .forEach(t -> feed.addEvent(event(calendar, t)));
    return folded(written(feed));
  }

  private static LocalDate first(Task task) {
    LocalDate due = task.due();
    return due == null ? task.from() : due;
  }

  private static LocalDate last(Task task) {
    LocalDate due = task.due();
    return due == null ? task.to() : due;
  }

  private static VEvent event(WorkCalendar calendar, Task task) {
    LocalDate season = calendar.scenario().season().start();
    VEvent event = new VEvent();
    event.setUid(
        UUID.nameUUIDFromBytes(
                String.join(
                        "\0",
                        calendar.scenario().name(),
                        season.toString(),
                        task.sowing().id(),
                        task.job().word())
                    .getBytes(StandardCharsets.UTF_8))
            .toString());
    // Must be there, and must not be the clock's: the first instant of the season stands for it.
    event.setDateTimeStamp(Date.from(season.atStartOfDay().toInstant(ZoneOffset.UTC)));
    event.setDateStart(new DateStart(day(first(task))));
    // The first day on which it no longer is.
    event.setDateEnd(new DateEnd(day(last(task).plusDays(1))));
    event.setSummary(summary(task));
    event.setDescription(description(task));
    event.setLocation(WorkWords.route(task.job(), task.stints()));
    event.addCategories(WorkWords.job(task.job()));
    event.setTransparency(Transparency.transparent());
    return event;
  }

  private static ICalDate day(LocalDate date) {
    return new ICalDate(
        new DateTimeComponents(date.getYear(), date.getMonthValue(), date.getDayOfMonth()), false);
  }

  private static String summary(Task task) {
    double trays = task.due() == null ? task.trays().mean() : task.sowing().trays();
    return WorkWords.job(task.job())
        + ": "
        + task.sowing().id()
        + ", "
        + Words.plural(Math.max(1, Math.rint(trays)), "tray");
  }

  private static String description(Task task) {
    double hours = task.stints().stream().mapToDouble(WorkCalendar.Stint::hours).sum();
    String crop = WorkWords.cropAndLot(task);
    String works = "about " + WorkWords.hours(hours) + " of work";
    if (task.job() == Job.SOW) {
      double waiting = Math.rint(WorkWords.waiting(task));
      String wait =
          waiting < 1
              ? ""
              : "\nLikely "
                  + Words.count(waiting)
                  + " of them wait for room in the heat, to "
                  + WorkWords.dayOfWeek(task.latest());
      return crop + "\nAs planned, " + works + wait;
    }
    String range = Words.range(task.trays());
    String trays = Words.plural(task.trays().mean(), "tray");
    return crop
        + "\n"
        + between(task)
        + "\n"
        + trays
        + (trays.startsWith(range + " ") ? "; " : " on average, " + range + " in 8 springs of 10; ")
        + works
        + (task.chance() < 1 ? "\nComes to it in " + Words.springs(task.chance()) : "");
  }

  private static String between(Task task) {
    String earliest = WorkWords.dayOfWeek(task.earliest());
    return task.earliest().equals(task.latest())
        ? "On " + earliest
        : "Likely between " + earliest + " and " + WorkWords.dayOfWeek(task.latest());
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
