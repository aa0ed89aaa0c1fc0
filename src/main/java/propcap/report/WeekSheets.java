package propcap.report;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Job;
import propcap.farm.Labour;
import propcap.study.Period;
import propcap.study.WorkCalendar;
import propcap.study.WorkCalendar.Stint;
import propcap.study.WorkCalendar.Task;

/** Sheets to pin up by the door, one a week: what to do on which day, with a box to tick. */
public record WeekSheets(String scenario, String version, List<Week> weeks) {
  /** Fewer trays than this in a week, on average, are only mentioned. */
  private static final double WORTH_A_ROW = 0.5;

  /** Heights by the style of the page, and what head, notes and caution leave of it. */
  private static final double ROW_MM = 7.4;

  private static final double BLOCK_MM = 8.8;
  private static final double TIGHT_ROW_MM = 5.7;
  private static final double TIGHT_BLOCK_MM = 7.0;
  private static final double FREE_MM = 188;
  private static final double FREE_OF_TWO_MM = 400;

  public WeekSheets {
    weeks = List.copyOf(weeks);
  }

  /**
   * A sheet.
   *
   * @param perhaps work that comes this week only if the spring is early or late
   */
  public record Week(
      String name, String dates, String work, List<Head> days, List<Block> blocks, String perhaps) {

    /** How close the rows stand: close where this brings the sheet onto one page. */
    public String look() {
      int rows = blocks.stream().mapToInt(b -> b.rows().size()).sum();
      double height = rows * ROW_MM + blocks.size() * BLOCK_MM;
      double ifTight = rows * TIGHT_ROW_MM + blocks.size() * TIGHT_BLOCK_MM;
      boolean savesAPage = (height > FREE_MM && ifTight <= FREE_MM) || height > FREE_OF_TWO_MM;
      return savesAPage ? "weeks tight" : "weeks";
    }
  }

  /** The head of a day's column. */
  public record Head(String day, String date, boolean isRest, String hours, String upTo) {}

  /** All sowings with one kind of work. */
  public record Block(String job, String trays, List<Row> rows) {}

  /** One sowing's work: trays by day, empty where there are none. */
  public record Row(
      String sowing, String crop, String route, List<String> days, String trays, String likely) {}

  static WeekSheets of(WorkCalendar calendar, Period period, String version) {
    return new WeekSheets(
        calendar.scenario().name(),
        version,
        period.weeks().stream().map(monday -> week(calendar, period, monday)).toList());
  }

  private static Week week(WorkCalendar calendar, Period period, LocalDate monday) {
    Period week = new Period(monday, monday.plusDays(6));
    List<Block> blocks = new ArrayList<>();
    List<String> perhaps = new ArrayList<>();
    for (Job job : WorkWords.ROUND) {
      List<Task> tasks =
          calendar.tasks().stream()
              .filter(t -> t.job() == job)
              .sorted(Comparator.comparing(Task::from))
              .toList();
      List<Row> rows = new ArrayList<>();
      for (Task task : tasks) {
        row(task, week, period).ifPresentOrElse(rows::add, () -> mention(task, week, perhaps));
      }
      if (!rows.isEmpty()) {
        int trays = rows.stream().mapToInt(r -> Integer.parseInt(r.trays())).sum();
        blocks.add(new Block(WorkWords.job(job), Words.plural(trays, "tray"), rows));
      }
    }
    List<WorkCalendar.Day> days = calendar.days(week).stream().toList();
    double hours = days.stream().mapToDouble(d -> d.hours().mean()).sum();
    return new Week(
        "Week " + monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR),
        WorkWords.range(monday, week.to()) + " " + week.to().getYear(),
        "about " + WorkWords.hours(hours) + " of work",
        week.days().stream().map(d -> head(calendar, d)).toList(),
        blocks,
        String.join("; ", perhaps));
  }

  private static Head head(WorkCalendar calendar, LocalDate date) {
    String name = WorkWords.dayOfWeek(date).substring(0, 3);
    String day = WorkWords.dayOfWeek(date).substring(4);
    return calendar.days().stream()
        .filter(d -> d.date().equals(date) && d.isWorking())
        .findFirst()
        .map(d -> new Head(name, day, false, WorkWords.hours(d.hours().mean()), upTo(calendar, d)))
        .orElse(new Head(name, day, true, "", ""));
  }

  private static String upTo(WorkCalendar calendar, WorkCalendar.Day day) {
    Labour labour = calendar.scenario().labour();
    String most = "to " + WorkWords.hours(day.hours().p90());
    return labour.isLimited() ? most + " of " + Words.amount(labour.hoursOn(day.date())) : most;
  }

  private static Optional<Row> row(Task task, Period week, Period period) {
    List<Stint> stints = WorkWords.in(task, week);
    int[] whole = trays(task, week);
    if (IntStream.of(whole).sum() == 0 || !period.meets(week.from(), week.to())) {
      return Optional.empty();
    }
    LocalDate due = task.due();
    boolean isPlanned = due != null && week.contains(due);
    return Optional.of(
        new Row(
            task.sowing().id(),
            WorkWords.besideId(task),
            WorkWords.route(task.job(), stints.isEmpty() ? task.stints() : stints),
            IntStream.of(whole).mapToObj(t -> t == 0 ? "" : Integer.toString(t)).toList(),
            Integer.toString(IntStream.of(whole).sum()),
            likely(task, isPlanned)));
  }

  /**
   * Trays of a task on the seven days of a week, whole ones that add up; none where there are so
   * few that they are only mentioned. What the plan says to sow is put on its day: what may wait is
   * said beside it.
   */
  static int[] trays(Task task, Period week) {
    double[] shares = new double[week.days().size()];
    LocalDate due = task.due();
    if (due != null && week.contains(due)) {
      shares[due.getDayOfWeek().getValue() - 1] = task.sowing().trays();
    } else {
      for (Stint stint : WorkWords.in(task, week)) {
        shares[stint.date().getDayOfWeek().getValue() - 1] += stint.trays();
      }
    }
    return Arrays.stream(shares).sum() < WORTH_A_ROW
        ? new int[shares.length]
        : WholeTrays.of(shares);
  }

  /** Trays of all tasks of a kind on the days of a period, as its weeks' sheets have them. */
  static int trays(WorkCalendar calendar, Job job, Period period) {
    int sum = 0;
    for (LocalDate monday : period.weeks()) {
      Period week = new Period(monday, monday.plusDays(6));
      for (Task task : calendar.tasks()) {
        if (task.job() == job) {
          int[] trays = trays(task, week);
          for (int d = 0; d < trays.length; d++) {
            sum += period.contains(week.days().get(d)) ? trays[d] : 0;
          }
        }
      }
    }
    return sum;
  }

  private static String likely(Task task, boolean isPlanned) {
    if (!isPlanned) {
      return WorkWords.likely(task);
    }
    double waiting = WorkWords.waiting(task);
    return waiting < WORTH_A_ROW
        ? "as planned"
        : Words.count(waiting) + " wait for room, to " + Dates.shortDay(task.latest());
  }

  private static void mention(Task task, Period week, List<String> perhaps) {
    boolean mayCome = week.meets(task.earliest(), task.latest());
    if (mayCome && task.due() == null && task.chance() >= 0.1) {
      perhaps.add(
          WorkWords.shortJob(task.job()).toLowerCase(Locale.ROOT)
              + " "
              + task.sowing().id()
              + " ("
              + WorkWords.likely(task)
              + ")");
    }
  }
}
