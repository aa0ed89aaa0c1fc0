package propcap.report.work;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Labour;
import propcap.farm.LoggedEvent;
import propcap.farm.Season;
import propcap.farm.TrayTask;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.study.Period;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkCalendar.Planned;
import propcap.study.work.WorkCalendar.Stint;
import propcap.study.work.WorkCalendar.Task;

/** Sheets to pin up by the door, one a week: what to do on which day, with a box to tick. */
public record WeekSheets(String scenario, String version, List<Week> weeks) {
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

    /** The same by day. */
    public List<DayList> byDay() {
      return IntStream.range(0, days.size())
          .mapToObj(d -> new DayList(days.get(d), blocksOn(d), d))
          .toList();
    }

    private List<Block> blocksOn(int day) {
      return blocks.stream()
          .map(b -> b.with(b.rows().stream().filter(r -> !r.days().get(day).isEmpty()).toList()))
          .filter(b -> !b.rows().isEmpty())
          .toList();
    }

    /** How close the rows stand: close where this brings the sheet onto one page. */
    public String look() {
      int rows = blocks.stream().mapToInt(b -> b.rows().size()).sum();
      double height = rows * ROW_MM + blocks.size() * BLOCK_MM;
      double ifTight = rows * TIGHT_ROW_MM + blocks.size() * TIGHT_BLOCK_MM;
      boolean savesAPage = (height > FREE_MM && ifTight <= FREE_MM) || height > FREE_OF_TWO_MM;
      return savesAPage ? "weeks tight" : "weeks";
    }
  }

  /**
   * What is due on one day, for a screen too narrow for the days beside each other.
   *
   * @param jobs the blocks that have work on it, with the rows that have
   */
  public record DayList(Head day, List<Block> jobs, int number) {
    public String trays(Row row) {
      return row.days().get(number);
    }

    /** What the numbers are of, for there is no head of a column above them. */
    public String unit(Row row) {
      return trays(row).equals("1") ? "tray" : "trays";
    }
  }

  /** The head of a day's column. */
  public record Head(String day, String date, boolean isRest, String hours, String upTo) {}

  /**
   * All sowings with one kind of work.
   *
   * @param event the log's word for it; empty where the log has none
   */
  public record Block(String job, String trays, String event, List<Row> rows) {
    Block with(List<Row> some) {
      return new Block(job, trays, event, some);
    }
  }

  /** One sowing's work: trays by day, empty where there are none. */
  public record Row(
      String sowing, String crop, String route, List<String> days, String trays, String likely) {}

  static WeekSheets of(WorkCalendar calendar, Period period, String version) {
    return new WeekSheets(
        calendar.scenario().name(),
        version,
        period.weeks().stream().map(monday -> week(calendar, monday)).toList());
  }

  private static Week week(WorkCalendar calendar, LocalDate monday) {
    Period week = new Period(monday, monday.plusDays(6));
    List<Block> blocks = new ArrayList<>();
    List<String> perhaps = new ArrayList<>();
    for (TrayTask job : WorkWords.ROUND) {
      List<Row> rows = new ArrayList<>();
      calendar.tasks(job).stream()
          .sorted(Comparator.comparing(WeekSheets::firstDay))
          .forEach(
              t ->
                  row(calendar, t, week)
                      .ifPresentOrElse(
                          rows::add,
                          () -> mention(t, week, calendar.scenario().season(), perhaps)));
      if (!rows.isEmpty()) {
        String trays = Words.plural(calendar.trays(job, week), "tray");
        String event = job.logged().map(LoggedEvent::word).orElse("");
        blocks.add(new Block(WorkWords.job(job), trays, event, rows));
      }
    }
    return new Week(
        "Week " + monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR),
        Dates.rangeAndYear(monday, week.to()),
        "about " + WorkWords.hours(calendar.hours(week)) + " of work",
        week.days().stream().map(d -> head(calendar, d)).toList(),
        blocks,
        String.join("; ", perhaps));
  }

  private static LocalDate firstDay(Task task) {
    return task.days().map(Period::from).orElse(task.earliest());
  }

  private static Head head(WorkCalendar calendar, LocalDate date) {
    String name = date.getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    String day = Dates.shortDayOfAnyYear(date);
    return calendar.days(new Period(date, date)).stream()
        .filter(WorkCalendar.Day::isWorking)
        .findFirst()
        .map(d -> new Head(name, day, false, WorkWords.hours(d.hours().mean()), upTo(calendar, d)))
        .orElse(new Head(name, day, true, "", ""));
  }

  private static String upTo(WorkCalendar calendar, WorkCalendar.Day day) {
    Labour labour = calendar.scenario().labour();
    String most = "to " + WorkWords.hours(day.hours().p90());
    return labour.isLimited() ? most + " of " + Words.amount(labour.hoursOn(day.date())) : most;
  }

  /** What has no whole tray in a week has no row, unless the plan has it there. */
  private static Optional<Row> row(WorkCalendar calendar, Task task, Period week) {
    int trays = task.trays(week);
    if (trays == 0 && !task.isPlannedIn(week)) {
      return Optional.empty();
    }
    List<Stint> stints = task.in(week);
    return Optional.of(
        new Row(
            task.sowing().id(),
            WorkWords.besideId(task),
            WorkWords.route(task.job(), trays == 0 ? task.stints() : stints),
            byDay(stints).mapToObj(t -> t == 0 ? "" : Integer.toString(t)).toList(),
            Integer.toString(trays),
            likely(task, week, calendar.scenario().season())));
  }

  private static IntStream byDay(List<Stint> stints) {
    int[] trays = new int[7];
    stints.forEach(s -> trays[s.date().getDayOfWeek().getValue() - 1] += s.trays());
    return IntStream.of(trays);
  }

  private static String likely(Task task, Period week, Season season) {
    Planned planned = task.planned();
    if (planned == null) {
      return WorkWords.likely(task, season);
    }
    return week.contains(planned.due())
        ? WorkWords.asPlanned(planned, task.latest(), season)
        : "planned for " + Dates.shortDay(planned.due(), season);
  }

  private static void mention(Task task, Period week, Season season, List<String> perhaps) {
    boolean mayCome = week.meets(task.earliest(), task.latest());
    if (mayCome && task.planned() == null && task.chance() >= 0.1) {
      perhaps.add(
          WorkWords.shortJob(task.job()).toLowerCase(Locale.ROOT)
              + " "
              + task.sowing().id()
              + " ("
              + WorkWords.likely(task, season)
              + ")");
    }
  }
}
