package propcap.report;

import java.time.temporal.IsoFields;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.study.Period;
import propcap.study.WorkCalendar;
import propcap.study.WorkCalendar.Day;
import propcap.study.WorkCalendar.Stint;
import propcap.study.WorkCalendar.Task;

/** The work of a period, for other programs and for a spreadsheet. */
final class CalendarFiles {
  private CalendarFiles() {}

  /** Tasks of which any day may fall into the period, and its days. */
  static String json(WorkCalendar calendar, Period period, String version) {
    return new Json()
        .put("scenario", calendar.scenario().name())
        .put("version", version)
        .put("seasons", calendar.seasons())
        .put("seed", calendar.settings().seed())
        .put("from", period.from())
        .put("to", period.to())
        .put("tasks", Json.each(tasks(calendar, period), CalendarFiles::task))
        .put("days", Json.each(calendar.days(period), CalendarFiles::day))
        .text();
  }

  private static List<Task> tasks(WorkCalendar calendar, Period period) {
    return calendar.tasks().stream().filter(t -> !WorkWords.in(t, period).isEmpty()).toList();
  }

  private static Json task(Task task) {
    return new Json()
        .put("sowing", task.sowing().id())
        .put("crop", task.sowing().crop())
        .put("lot", task.sowing().lot())
        .put("job", task.job().word())
        .put("due", task.due())
        .put("chance", task.chance())
        .put("trays", task.trays())
        .put("earliest", task.earliest())
        .put("from", task.from())
        .put("to", task.to())
        .put("latest", task.latest());
  }

  private static Json day(Day day) {
    return new Json()
        .put("date", day.date())
        .put("isWorking", day.isWorking())
        .put("hours", day.hours());
  }

  /** A row for each day, task and way from place to place. */
  static String csv(WorkCalendar calendar, Period period) {
    Csv table = new Csv();
    table.row(
        List.of(
            "date",
            "week",
            "job",
            "sowing",
            "crop",
            "lot",
            "from",
            "to",
            "trays",
            "plants",
            "hours",
            "due",
            "earliest",
            "latest",
            "chance"));
    for (Task task : tasks(calendar, period)) {
      for (Stint stint : WorkWords.in(task, period)) {
        table.row(
            List.of(
                Csv.date(stint.date()),
                Csv.whole(stint.date().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR)),
                task.job().word(),
                task.sowing().id(),
                task.sowing().crop(),
                task.sowing().lot(),
                orEmpty(stint.from()),
                orEmpty(stint.to())),
            Csv.numbers(stint.trays(), stint.plants(), stint.hours()),
            List.of(Csv.date(task.due()), Csv.date(task.earliest()), Csv.date(task.latest())),
            Csv.numbers(task.chance()));
      }
    }
    return table.text();
  }

  private static String orEmpty(@Nullable String place) {
    return place == null ? "" : place;
  }
}
