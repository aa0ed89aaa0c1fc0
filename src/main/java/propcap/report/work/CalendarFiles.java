package propcap.report.work;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.report.kit.Table;
import propcap.study.Period;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkCalendar.Day;
import propcap.study.work.WorkCalendar.Stint;
import propcap.study.work.WorkCalendar.Task;

/** The work of a period, for other programs and for a spreadsheet. */
final class CalendarFiles {
  private CalendarFiles() {}

  private record Work(LocalDate from, LocalDate to, List<?> tasks, List<Day> days) {}

  private record Planned(
      LocalDate due,
      int trays,
      int later,
      int never,
      double trayDaysForRoom,
      double trayDaysForHands) {}

  /** Tasks of which any day may fall into the period, and its days. */
  static String json(WorkCalendar calendar, Period period, String version) {
    Table<Task> task =
        new Table<Task>()
            .json("sowing", t -> t.sowing().id())
            .json("crop", t -> t.sowing().crop())
            .json("lot", t -> t.sowing().lot())
            .json("job", Task::job)
            .json("planned", CalendarFiles::planned)
            .json("chance", Task::chance)
            .json("trays", Task::trays)
            .json("earliest", Task::earliest)
            .json("latest", Task::latest)
            .json("stints", t -> t.in(period));
    return Json.text(
        Head.of(calendar.scenario(), version, calendar.seasons(), calendar.settings()),
        new Work(
            period.from(),
            period.to(),
            task.objects(tasks(calendar, period)),
            calendar.days(period)));
  }

  private static List<Task> tasks(WorkCalendar calendar, Period period) {
    return calendar.tasks().stream()
        .filter(t -> t.isPlannedIn(period) || !t.in(period).isEmpty())
        .toList();
  }

  private static @Nullable Planned planned(Task task) {
    WorkCalendar.Planned p = task.planned();
    return p == null
        ? null
        : new Planned(
            p.due(), task.sowing().trays(), p.later(), p.never(), p.forRoom(), p.forHands());
  }

  /** A row for each day, task and way from place to place. */
  static String csv(WorkCalendar calendar, Period period) {
    record Row(Task task, Stint stint) {}
    return new Table<Row>()
        .csv("date", r -> r.stint.date())
        .csv("week", r -> r.stint.date().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR))
        .csv("job", r -> r.task.job())
        .csv("sowing", r -> r.task.sowing().id())
        .csv("crop", r -> r.task.sowing().crop())
        .csv("lot", r -> r.task.sowing().lot())
        .csv("from", r -> r.stint.from())
        .csv("to", r -> r.stint.to())
        .csv("trays", r -> r.stint.trays())
        .csv("mean-trays", r -> r.stint.meanTrays())
        .csv("plants", r -> r.stint.plants())
        .csv("hours", r -> r.stint.hours())
        .csv("due", r -> r.task.planned() == null ? null : r.task.planned().due())
        .csv("earliest", r -> r.task.earliest())
        .csv("latest", r -> r.task.latest())
        .csv("chance", r -> r.task.chance())
        .csv(
            tasks(calendar, period).stream()
                .flatMap(t -> t.in(period).stream().map(s -> new Row(t, s)))
                .toList());
  }
}
