package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Job;
import propcap.study.Period;
import propcap.study.WorkCalendar;
import propcap.study.WorkCalendar.Day;

/** The week's work as sheets to print, tables, a calendar for a phone and labels for the trays. */
public final class CalendarResults {
  private CalendarResults() {}

  /**
   * Writes all of it into a folder of results, or nothing.
   *
   * @param period what it is about: whole weeks and months that it touches
   * @return the files written, the week's sheet first
   * @throws IllegalArgumentException where a number is not finite
   */
  public static List<Path> write(
      WorkCalendar calendar, Period period, LabelSheet labels, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("weeks.html", Templates.fill("weeks.jte", WeekSheets.of(calendar, period, version)));
    files.put(
        "months.html", Templates.fill("months.jte", MonthSheets.of(calendar, period, version)));
    files.put(
        "labels.html",
        Templates.fill("labels.jte", TrayLabels.of(calendar, period, labels, version)));
    files.put("calendar.ics", CalendarFeed.of(calendar, period));
    files.put("calendar.csv", CalendarFiles.csv(calendar, period));
    files.put(KnownResults.CALENDAR.file(), CalendarFiles.json(calendar, period, version));
    return folder.write(files);
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(WorkCalendar calendar, Period period) {
    Lines lines = new Lines();
    for (Job job : Job.values()) {
      int trays = WeekSheets.trays(calendar, job, period);
      if (trays > 0) {
        lines.add(
            WorkWords.job(job) + ": " + Words.plural(trays, "tray") + sown(calendar, period, job));
      }
    }
    List<Day> days = new ArrayList<>(calendar.days(period));
    double hours = days.stream().mapToDouble(d -> d.hours().mean()).sum();
    days.sort(Comparator.comparingDouble(d -> -d.hours().mean()));
    lines.add(
        "Work: "
            + WorkWords.hours(hours)
            + " on average; most on "
            + WorkWords.dayOfWeek(days.get(0).date())
            + ": "
            + WorkWords.hours(days.get(0).hours().mean())
            + ", in 1 spring of 10 more than "
            + WorkWords.hours(days.get(0).hours().p90()));
    return lines.endingWith(
        calendar.scenario().name()
            + ", "
            + WorkWords.range(period.from(), period.to())
            + ": "
            + Words.plural(calendar.seasons(), "spring")
            + ", seed "
            + calendar.settings().seed());
  }

  /** What the plan sows, by name, where these are few. */
  private static String sown(WorkCalendar calendar, Period period, Job job) {
    List<String> names =
        calendar.tasks().stream()
            .filter(t -> t.job() == job && job == Job.SOW)
            .filter(t -> isDueIn(t.due(), period))
            .map(t -> t.sowing().id() + " " + t.sowing().trays())
            .toList();
    return names.isEmpty() || names.size() > 6 ? "" : " (planned: " + Words.list(names) + ")";
  }

  private static boolean isDueIn(@Nullable LocalDate due, Period period) {
    return due != null && period.contains(due);
  }
}
