package propcap.report.work;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import propcap.farm.TrayTask;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.study.Period;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkCalendar.Task;

/** Sheets of a month: what is sown by name, and how many trays of everything else. */
public record MonthSheets(String scenario, String version, List<Month> months) {
  public MonthSheets {
    months = List.copyOf(months);
  }

  /** The days of a week, short. */
  public static final List<String> DAYS =
      Arrays.stream(DayOfWeek.values())
          .map(day -> day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH))
          .toList();

  public record Month(String name, String work, List<Week> weeks) {}

  public record Week(String name, List<Day> days) {}

  /**
   * A day.
   *
   * @param isOf whether it lies in the month and in the season; others are left empty
   */
  public record Day(String number, boolean isOf, boolean isRest, String hours, List<Line> lines) {
    /** Its look; a day without work is left out where days stand one below the other. */
    public String look() {
      return (isRest ? "rest" : isOf ? "" : "off") + (lines.isEmpty() ? " none" : "");
    }
  }

  public record Line(String job, String what) {}

  static MonthSheets of(WorkCalendar calendar, Period period, String version) {
    return new MonthSheets(
        calendar.scenario().name(),
        version,
        period.months().stream().map(first -> month(calendar, first)).toList());
  }

  private static Month month(WorkCalendar calendar, LocalDate first) {
    YearMonth month = YearMonth.from(first);
    Period days = new Period(first, month.atEndOfMonth());
    return new Month(
        Dates.monthAndYear(month),
        "about " + WorkWords.hours(calendar.hours(days)) + " of work",
        days.weeks().stream()
            .map(
                monday ->
                    new Week(
                        Integer.toString(monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR)),
                        new Period(monday, monday.plusDays(6))
                            .days().stream().map(d -> day(calendar, days, d)).toList()))
            .toList());
  }

  private static Day day(WorkCalendar calendar, Period month, LocalDate date) {
    return calendar.days(new Period(date, date)).stream()
        .filter(d -> month.contains(date))
        .findFirst()
        .map(
            d ->
                new Day(
                    Integer.toString(date.getDayOfMonth()),
                    true,
                    !d.isWorking(),
                    d.isWorking() ? WorkWords.hours(d.hours().mean()) : "",
                    d.isWorking() ? lines(calendar, date) : List.of()))
        .orElse(
            new Day(
                month.contains(date) ? Integer.toString(date.getDayOfMonth()) : "",
                false,
                false,
                "",
                List.of()));
  }

  private static List<Line> lines(WorkCalendar calendar, LocalDate date) {
    Period day = new Period(date, date);
    List<Line> lines = new ArrayList<>();
    for (TrayTask job : WorkWords.ROUND) {
      String name = WorkWords.shortJob(job);
      if (job == TrayTask.SOW) {
        calendar.tasks(job).stream()
            .filter(t -> t.trays(day) > 0 || t.isPlannedIn(day))
            .forEach(t -> lines.add(new Line(name, sown(t, day))));
      } else if (calendar.trays(job, day) > 0) {
        lines.add(new Line(name, Words.count(calendar.trays(job, day))));
      }
    }
    return lines;
  }

  /** Such as {@code tomato-1 8}, or {@code tomato-1 6 of 8} where on its day not all are sown. */
  private static String sown(Task task, Period day) {
    int trays = task.trays(day);
    int planned = task.sowing().trays();
    return task.sowing().id()
        + " "
        + trays
        + (task.isPlannedIn(day) && trays < planned ? " of " + planned : "");
  }
}
