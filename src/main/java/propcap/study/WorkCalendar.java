package propcap.study;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Job;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/**
 * What there is to do in the house, day by day, as the simulated seasons did it.
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
   * @param due the working day for which the plan has it; null: the plants say when
   * @param chance share of seasons, 0 to 1, in which any tray comes to it
   * @param trays over all seasons
   * @param earliest day of the first tray: one season of ten with any is earlier
   * @param from day of the first tray in the middle season
   * @param to day of the last tray in the middle season
   * @param latest day of the last tray: one season of ten with any is later
   * @param stints where and when, by day
   */
  public record Task(
      Sowing sowing,
      Job job,
      @Nullable LocalDate due,
      double chance,
      Stat trays,
      LocalDate earliest,
      LocalDate from,
      LocalDate to,
      LocalDate latest,
      List<Stint> stints) {
    public Task {
      stints = List.copyOf(stints);
    }
  }

  /**
   * What is to be expected of a task on one day, between two places; means over all seasons.
   *
   * @param from place that the trays come from; null: they are sown
   * @param to place that they go to; null: they are planted out
   * @param plants cells, as long as nothing shows
   */
  public record Stint(
      LocalDate date,
      @Nullable String from,
      @Nullable String to,
      double trays,
      double plants,
      double hours) {}

  /**
   * A day of the season.
   *
   * @param isWorking false on a rest day, when nothing is done
   * @param hours of all jobs
   */
  public record Day(LocalDate date, boolean isWorking, Stat hours) {}

  /** What falls on the days of a period. */
  public List<Day> days(Period period) {
    return days.stream().filter(d -> period.contains(d.date())).toList();
  }
}
