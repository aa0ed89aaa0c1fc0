package propcap.study.work;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayTask;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.statistics.Stat;

/**
 * What there is to do in the house, day by day, as the simulated seasons did it. It is the one
 * account of trays, days and hours: whoever tells of them adds up its stints.
 *
 * @param tasks by the plan's order of sowings, then by the order in which the jobs come
 * @param days one for each day of the season
 */
public record WorkCalendar(
    Scenario scenario, RunSettings settings, int seasons, List<Task> tasks, List<Day> days) {
  public WorkCalendar {
    tasks = List.copyOf(tasks);
    days = List.copyOf(days);
  }

  /**
   * One job on the trays of one sowing.
   *
   * @param planned what the plan says of it; null: the plants say when
   * @param chance share of seasons, 0 to 1, in which any tray comes to it
   * @param trays over all seasons
   * @param earliest day of the first tray: one season of ten with any is earlier
   * @param latest day of the last tray: one season of ten with any is later
   * @param stints where and when, by day
   */
  public record Task(
      Sowing sowing,
      TrayTask job,
      @Nullable Planned planned,
      double chance,
      Stat trays,
      LocalDate earliest,
      LocalDate latest,
      List<Stint> stints) {
    public Task {
      stints = List.copyOf(stints);
    }

    /** What it has on the days of a period. */
    public List<Stint> in(Period period) {
      return stints.stream().filter(s -> period.contains(s.date())).toList();
    }

    /** Whole trays on the days of a period. */
    public int trays(Period period) {
      return in(period).stream().mapToInt(Stint::trays).sum();
    }

    /** Whole trays of the season. */
    public int traysInAll() {
      return stints.stream().mapToInt(Stint::trays).sum();
    }

    /** Hours of the season, of all its trays. */
    public double hours() {
      return stints.stream().mapToDouble(Stint::hours).sum();
    }

    /** Whether the plan has it on a day of a period. */
    public boolean isPlannedIn(Period period) {
      return planned != null && period.contains(planned.due());
    }

    /**
     * From the day of the plan or of its first whole tray to that of its last; empty: it has none.
     */
    public Optional<Period> days() {
      List<LocalDate> dates = stints.stream().filter(s -> s.trays() > 0).map(Stint::date).toList();
      if (planned == null) {
        return dates.isEmpty()
            ? Optional.empty()
            : Optional.of(new Period(dates.get(0), dates.get(dates.size() - 1)));
      }
      LocalDate due = planned.due();
      return Optional.of(new Period(due, dates.isEmpty() ? due : dates.get(dates.size() - 1)));
    }
  }

  /**
   * What the plan says to sow, and what keeps it from being done on its day.
   *
   * @param due the working day for which the plan has it
   * @param later whole trays of the plan that are sown on a later day
   * @param never whole trays that are never sown
   * @param forRoom tray-days, mean of a season, that they wait for room in the heat
   * @param forHands the same where there is room, and people's hours are lacking
   */
  public record Planned(LocalDate due, int later, int never, double forRoom, double forHands) {
    /** Whether all of it is likely sown on its day. */
    public boolean isOnItsDay() {
      return later == 0 && never == 0;
    }
  }

  /**
   * A task on one day, between two places.
   *
   * @param from place that the trays come from; null: they are sown
   * @param to place that they go to; null: they are planted out
   * @param trays whole ones, put on the likely days, that add up: over a task's stints to its mean,
   *     rounded so that the season's work of one kind adds up to its mean
   * @param meanTrays of all seasons
   * @param plants mean of all seasons; cells, as long as nothing shows
   * @param hours of this day, mean of all seasons; of trays begun on the day before too, where they
   *     took longer than there were hours
   */
  public record Stint(
      LocalDate date,
      @Nullable String from,
      @Nullable String to,
      int trays,
      double meanTrays,
      double plants,
      double hours) {}

  /**
   * A day of the season.
   *
   * @param isWorking false on a rest day, when nothing is done
   * @param hours of all jobs, never more than the day has
   */
  public record Day(LocalDate date, boolean isWorking, Stat hours) {}

  /** What falls on the days of a period. */
  public List<Day> days(Period period) {
    return days.stream().filter(d -> period.contains(d.date())).toList();
  }

  /** Mean hours of a period's days. */
  public double hours(Period period) {
    return days(period).stream().mapToDouble(d -> d.hours().mean()).sum();
  }

  /** All tasks of a kind. */
  public List<Task> tasks(TrayTask job) {
    return tasks.stream().filter(t -> t.job() == job).toList();
  }

  /** Whole trays of all tasks of a kind on the days of a period. */
  public int trays(TrayTask job, Period period) {
    return tasks(job).stream().mapToInt(t -> t.trays(period)).sum();
  }
}
