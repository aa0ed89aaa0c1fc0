package propcap.study.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import propcap.farm.WorkKind;
import propcap.study.statistics.Stat;

/**
 * How many hours of people's work a spring takes, and what waits for them.
 *
 * @param hours of a season
 * @param hoursByWork mean hours of a season; each work is present
 * @param workingDays of the season
 * @param daysShort days of a season on which hours ran out while something waited
 * @param waiting tray-days (spaces-days outside and in pots) that had room and waited for hands, a
 *     season; each work is present
 * @param days one entry a day of the season
 * @param weeks Monday to Sunday, from that of the season's first day
 */
public record HandsForecast(
    Stat hours,
    Map<WorkKind, Double> hoursByWork,
    int workingDays,
    Stat daysShort,
    Map<WorkKind, Stat> waiting,
    List<Day> days,
    List<Week> weeks) {

  /**
   * Hours of a day, over the seasons.
   *
   * @param budget hours that there are; 0 on a rest day, infinite where they are not limited
   * @param chanceShort share of seasons in which something waited for them
   * @param byWork mean hours; each work is present
   */
  public record Day(
      LocalDate date,
      double budget,
      double mean,
      double p10,
      double p50,
      double p90,
      double chanceShort,
      Map<WorkKind, Double> byWork) {}

  /**
   * Hours of a week, over the seasons.
   *
   * @param monday its first day, which may be before the season
   * @param budget of its working days in the season; infinite where they are not limited
   * @param byWork mean hours; each work is present
   * @param daysShort mean days on which hours ran out
   */
  public record Week(
      LocalDate monday,
      double budget,
      Stat hours,
      Map<WorkKind, Double> byWork,
      double daysShort) {}

  /** Tray-days that waited for hands, mean of a season. */
  public double waitingInAll() {
    return waiting.values().stream().mapToDouble(Stat::mean).sum();
  }

  /** Mean hours of a working day. */
  public double hoursPerWorkingDay() {
    return workingDays == 0 ? 0 : hours.mean() / workingDays;
  }

  /** Share of working days on which hours ran out. */
  public double shareShort() {
    return workingDays == 0 ? 0 : daysShort.mean() / workingDays;
  }
}
