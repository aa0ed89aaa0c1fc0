package propcap.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import propcap.farm.Job;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.season.Diary;
import propcap.study.WorkCalendar.Stint;
import propcap.study.WorkCalendar.Task;

/** The work of seasons, counted as their diaries come in, in the seasons' order. */
final class WorkTally {
  private final Scenario scenario;
  private final int days;
  private final OneTask[] tasks;

  /** Hours of each day, one array a season. */
  private final List<double[]> hours = new ArrayList<>();

  WorkTally(Scenario scenario) {
    this.scenario = scenario;
    days = scenario.season().days();
    tasks = new OneTask[scenario.sowings().size() * Job.values().length];
    for (int s = 0; s < scenario.sowings().size(); s++) {
      for (Job job : Job.values()) {
        tasks[number(s, job)] = new OneTask(scenario.sowings().get(s), job);
      }
    }
  }

  private static int number(int sowing, Job job) {
    return sowing * Job.values().length + job.ordinal();
  }

  /** Where a task's trays come from and go to, by the places' numbers. */
  private record Route(int from, int to) implements Comparable<Route> {
    @Override
    public int compareTo(Route other) {
      return Comparator.comparingInt(Route::from).thenComparingInt(Route::to).compare(this, other);
    }
  }

  /** Sums over all seasons, by day. */
  private final class ByDay {
    final long[] trays = new long[days];
    final long[] plants = new long[days];
    final double[] hours = new double[days];
  }

  /** One job on one sowing. */
  private final class OneTask {
    final Sowing sowing;
    final Job job;
    final Map<Route, ByDay> routes = new TreeMap<>();

    /** For each season: trays, day of the first and of the last; -1 where there was none. */
    final List<int[]> seasons = new ArrayList<>();

    private int[] season = {0, -1, -1};

    OneTask(Sowing sowing, Job job) {
      this.sowing = sowing;
      this.job = job;
    }

    double add(Diary diary, int note) {
      int day = diary.day(note);
      Route route = new Route(diary.from(note), diary.to(note));
      ByDay sums = routes.computeIfAbsent(route, r -> new ByDay());
      int trays = diary.trays(note);
      int plants = diary.plants(note);
      double took = hoursOf(job, route, trays, plants);
      sums.trays[day] += trays;
      sums.plants[day] += plants;
      sums.hours[day] += took;
      season[0] += trays;
      season[1] = season[1] < 0 ? day : season[1];
      season[2] = day;
      return took;
    }

    void endSeason() {
      seasons.add(season);
      season = new int[] {0, -1, -1};
    }
  }

  /** As a round counts them: a tray that stays on its table is not carried. */
  private double hoursOf(Job job, Route route, int trays, int plants) {
    if (job == Job.OFF_HEAT && route.from() == route.to()) {
      return 0;
    }
    boolean byPlant = job == Job.POT_ON || job == Job.PLANT_OUT;
    return scenario.labour().minutes().hours(job.work(), byPlant ? plants : trays);
  }

  /** Adds a season. */
  void add(Diary diary) {
    double[] today = new double[days];
    for (int note = 0; note < diary.size(); note++) {
      OneTask task = tasks[number(diary.sowing(note), diary.job(note))];
      today[diary.day(note)] += task.add(diary, note);
    }
    for (OneTask task : tasks) {
      task.endSeason();
    }
    hours.add(today);
  }

  /** Every task that any season came to. */
  List<Task> tasks() {
    return Arrays.stream(tasks).filter(t -> !t.routes.isEmpty()).map(this::task).toList();
  }

  private Task task(OneTask task) {
    double[] trays = task.seasons.stream().mapToDouble(s -> s[0]).toArray();
    int[] first = task.seasons.stream().mapToInt(s -> s[1]).filter(d -> d >= 0).sorted().toArray();
    int[] last = task.seasons.stream().mapToInt(s -> s[2]).filter(d -> d >= 0).sorted().toArray();
    return new Task(
        task.sowing,
        task.job,
        task.job == Job.SOW ? workingDay(task.sowing.sow()) : null,
        first.length / (double) trays.length,
        Samples.of(trays).stat(),
        date(quantile(first, 0.1)),
        date(quantile(first, 0.5)),
        date(quantile(last, 0.5)),
        date(quantile(last, 0.9)),
        stints(task));
  }

  /** The day on which so large a share has come to pass: a day that was, so no rest day. */
  private static int quantile(int[] sorted, double share) {
    return sorted[Math.max(0, (int) Math.ceil(share * sorted.length - 1e-9) - 1)];
  }

  private List<Stint> stints(OneTask task) {
    double n = task.seasons.size();
    List<Stint> stints = new ArrayList<>();
    for (int day = 0; day < days; day++) {
      for (Map.Entry<Route, ByDay> route : task.routes.entrySet()) {
        ByDay sums = route.getValue();
        if (sums.trays[day] > 0) {
          stints.add(
              new Stint(
                  date(day),
                  place(route.getKey().from()),
                  place(route.getKey().to()),
                  sums.trays[day] / n,
                  sums.plants[day] / n,
                  sums.hours[day] / n));
        }
      }
    }
    return stints;
  }

  /** Every day of the season, with its hours. */
  List<WorkCalendar.Day> days() {
    List<WorkCalendar.Day> all = new ArrayList<>();
    for (int d = 0; d < days; d++) {
      int day = d;
      double[] ofDay = hours.stream().mapToDouble(h -> h[day]).toArray();
      all.add(
          new WorkCalendar.Day(
              date(day), scenario.rounds().isWorkingDay(date(day)), Samples.of(ofDay).stat()));
    }
    return all;
  }

  private @Nullable String place(int number) {
    return number == Diary.NOWHERE ? null : scenario.places().get(number).name();
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
