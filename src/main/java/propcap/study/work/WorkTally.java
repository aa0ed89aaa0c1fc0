package propcap.study.work;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayTask;
import propcap.season.Diary;
import propcap.season.SeasonOutcome;
import propcap.season.Timesheet;
import propcap.study.statistics.Column;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;
import propcap.study.work.WorkCalendar.Planned;
import propcap.study.work.WorkCalendar.Stint;
import propcap.study.work.WorkCalendar.Task;

/** The work of seasons, counted as they come in, in the seasons' order. */
final class WorkTally {
  private final Scenario scenario;

  /** By sowing and job. */
  private final TaskTally[] tasks;

  /** The weather year of each season. */
  private final Column years = new Column();

  /** By day, thousandths of a minute. */
  private final Column[] worked;

  /** By sowing: tray-days that it waited to be sown, of all seasons. */
  private final long[] waitedForRoom;

  private final long[] waitedForHands;

  WorkTally(Scenario scenario) {
    this.scenario = scenario;
    worked = new Column[scenario.season().days()];
    Arrays.setAll(worked, day -> new Column());
    waitedForRoom = new long[scenario.sowings().size()];
    waitedForHands = new long[scenario.sowings().size()];
    tasks = new TaskTally[scenario.sowings().size() * TrayTask.values().length];
    for (int s = 0; s < scenario.sowings().size(); s++) {
      for (TrayTask job : TrayTask.values()) {
        tasks[number(s, job)] = new TaskTally(s, job);
      }
    }
  }

  private static int number(int sowing, TrayTask job) {
    return sowing * TrayTask.values().length + job.ordinal();
  }

  private TaskTally taskOf(Diary diary, int note) {
    return tasks[number(diary.sowing(note), diary.job(note))];
  }

  /** Adds a season, which has a diary. */
  void add(SeasonOutcome outcome) {
    years.add(outcome.weatherYear());
    Diary diary = outcome.diary();
    for (int note = 0; note < diary.size(); note++) {
      taskOf(diary, note).add(diary, note);
    }
    Timesheet timesheet = diary.timesheet();
    for (int i = 0; i < timesheet.size(); i++) {
      int note = timesheet.note(i);
      taskOf(diary, note).addHours(diary, note, timesheet.day(i), timesheet.hours(i));
    }
    for (TaskTally task : tasks) {
      task.endSeason();
    }
    for (int s = 0; s < waitedForRoom.length; s++) {
      waitedForRoom[s] += diary.waitedForRoom(s);
      waitedForHands[s] += diary.waitedForHands(s);
    }
    for (int day = 0; day < worked.length; day++) {
      worked[day].add(outcome.thousandthsOfMinutes(day));
    }
  }

  /** Every task that the plan has or that any season came to. */
  List<Task> tasks() {
    Map<Integer, Task> told = new TreeMap<>();
    for (TrayTask job : TrayTask.values()) {
      List<TaskTally> ofJob = Arrays.stream(tasks).filter(t -> t.job == job).toList();
      int[] whole =
          WholeTrays.of(ofJob.stream().mapToDouble(t -> Samples.mean(t.trays())).toArray());
      for (int i = 0; i < whole.length; i++) {
        TaskTally task = ofJob.get(i);
        if (job == TrayTask.SOW || !task.isNever()) {
          told.put(number(task.sowing, job), task(task, whole[i]));
        }
      }
    }
    return List.copyOf(told.values());
  }

  private Task task(TaskTally task, int whole) {
    Sowing sowing = scenario.sowings().get(task.sowing);
    LocalDate due = workingDay(sowing.sow());
    List<Stint> stints = task.isNever() ? List.of() : task.stints(scenario, whole);
    return new Task(
        sowing,
        task.job,
        task.job == TrayTask.SOW ? planned(task, due, stints) : null,
        task.chance(),
        Stat.of(task.trays(), strata()),
        task.isNever() ? due : date(task.earliest()),
        task.isNever() ? due : date(task.latest()),
        stints);
  }

  private Planned planned(TaskTally task, LocalDate due, List<Stint> stints) {
    int onDay = stints.stream().filter(s -> s.date().equals(due)).mapToInt(Stint::trays).sum();
    int whole = stints.stream().mapToInt(Stint::trays).sum();
    double n = years.size();
    return new Planned(
        due,
        whole - onDay,
        scenario.sowings().get(task.sowing).trays() - whole,
        waitedForRoom[task.sowing] / n,
        waitedForHands[task.sowing] / n);
  }

  private Strata strata() {
    return Strata.of(years, scenario.weather().size());
  }

  /** Every day of the season, with its hours. */
  List<WorkCalendar.Day> days() {
    Strata strata = strata();
    return IntStream.range(0, worked.length)
        .mapToObj(
            day ->
                new WorkCalendar.Day(
                    date(day),
                    scenario.rounds().isWorkingDay(date(day)),
                    Stat.of(hours(day), strata)))
        .toList();
  }

  private double[] hours(int day) {
    return Arrays.stream(worked[day].numbers())
        .map(spent -> SeasonOutcome.inHours((long) spent))
        .toArray();
  }

  /** The first working day on which something that is due on a date can be done. */
  private LocalDate workingDay(LocalDate date) {
    LocalDate day = date;
    while (!scenario.rounds().isWorkingDay(day)) {
      day = day.plusDays(1);
    }
    return day;
  }

  private LocalDate date(int day) {
    return scenario.season().date(day);
  }
}
