package propcap.report.work;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;
import propcap.study.Period;
import propcap.study.WorkCalendar;
import propcap.study.WorkCalendar.Day;
import propcap.study.WorkCalendar.Planned;
import propcap.study.WorkCalendar.Stint;
import propcap.study.WorkCalendar.Task;

/** The work of a period, for other programs and for a spreadsheet. */
final class CalendarFiles {
  private CalendarFiles() {}

  /** Tasks of which any day may fall into the period, and its days. */
  static String json(WorkCalendar calendar, Period period, String version) {
    return new PutJson()
        .put("scenario", calendar.scenario().name())
        .put("version", version)
        .put("seasons", calendar.seasons())
        .put("seed", calendar.settings().seed())
        .put("from", period.from())
        .put("to", period.to())
        .put("tasks", PutJson.each(tasks(calendar, period), t -> task(t, period)))
        .put("days", PutJson.each(calendar.days(period), CalendarFiles::day))
        .text();
  }

  private static List<Task> tasks(WorkCalendar calendar, Period period) {
    return calendar.tasks().stream()
        .filter(t -> t.isPlannedIn(period) || !t.in(period).isEmpty())
        .toList();
  }

  private static PutJson task(Task task, Period period) {
    Planned planned = task.planned();
    return new PutJson()
        .put("sowing", task.sowing().id())
        .put("crop", task.sowing().crop())
        .put("lot", task.sowing().lot())
        .put("job", task.job().word())
        .put("planned", planned == null ? null : planned(planned, task.sowing().trays()))
        .put("chance", task.chance())
        .put("trays", task.trays())
        .put("earliest", task.earliest())
        .put("latest", task.latest())
        .put("stints", PutJson.each(task.in(period), CalendarFiles::stint));
  }

  private static PutJson planned(Planned planned, int trays) {
    return new PutJson()
        .put("due", planned.due())
        .put("trays", trays)
        .put("later", planned.later())
        .put("never", planned.never())
        .put("trayDaysForRoom", planned.forRoom())
        .put("trayDaysForHands", planned.forHands());
  }

  private static PutJson stint(Stint stint) {
    return new PutJson()
        .put("date", stint.date())
        .put("from", stint.from())
        .put("to", stint.to())
        .put("trays", stint.trays())
        .put("meanTrays", stint.meanTrays())
        .put("plants", stint.plants())
        .put("hours", stint.hours());
  }

  private static PutJson day(Day day) {
    return new PutJson()
        .put("date", day.date())
        .put("isWorking", day.isWorking())
        .put("hours", day.hours());
  }

  /** A row for each day, task and way from place to place. */
  static String csv(WorkCalendar calendar, Period period) {
    RowCsv table = new RowCsv();
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
            "mean-trays",
            "plants",
            "hours",
            "due",
            "earliest",
            "latest",
            "chance"));
    for (Task task : tasks(calendar, period)) {
      LocalDate due = task.planned() == null ? null : task.planned().due();
      for (Stint stint : task.in(period)) {
        table.row(
            List.of(
                RowCsv.date(stint.date()),
                RowCsv.whole(stint.date().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR)),
                task.job().word(),
                task.sowing().id(),
                task.sowing().crop(),
                task.sowing().lot(),
                orEmpty(stint.from()),
                orEmpty(stint.to())),
            RowCsv.numbers(stint.trays(), stint.meanTrays(), stint.plants(), stint.hours()),
            List.of(RowCsv.date(due), RowCsv.date(task.earliest()), RowCsv.date(task.latest())),
            RowCsv.numbers(task.chance()));
      }
    }
    return table.text();
  }

  private static String orEmpty(@Nullable String place) {
    return place == null ? "" : place;
  }
}
