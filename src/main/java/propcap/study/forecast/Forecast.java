package propcap.study.forecast;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.study.RunSettings;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/**
 * How a scenario's spring will go, over many seasons.
 *
 * @param seasons how many were run
 * @param release the day from which each crop may go out, by crop in the order of the plan; a crop
 *     that is never released is absent
 * @param onTime plants out on time, all sowings together
 * @param cellsSown trays sown again included
 * @param sowings in the order of the plan
 * @param losses cells lost by cause; each cause is present
 * @param lossesByCrop the same by crop, for the crops that are sown, in the order of the plan
 * @param places in the scenario's order
 * @param kinds the open places of one kind taken together, one entry for each kind that there is
 * @param waiting tray-days (spaces-days for hardening) that each step waited for room, a season
 * @param waits the same by what was waited for and by month: mean of a season; only what is above 0
 * @param sowBehindOverdue of the tray-days waiting to be sown, mean a season, those for which a
 *     tray ready to leave, with no table to go to, stood in the place waited for
 * @param tablesBehindReady of the tray-days waiting for a table (to leave the heat or be potted
 *     on), mean a season, those for which plants ready for the hardening area stood on the tables
 * @param hands people's hours
 * @param balance what it comes to
 * @param rows one a season, in order
 */
public record Forecast(
    Scenario scenario,
    RunSettings settings,
    int seasons,
    Map<String, LocalDate> release,
    Stat onTime,
    Stat late,
    Stat cellsSown,
    List<SowingForecast> sowings,
    Map<Loss, Stat> losses,
    Map<String, Map<Loss, Stat>> lossesByCrop,
    List<Occupancy> places,
    List<Occupancy> kinds,
    Map<RoomWait, Stat> waiting,
    List<Wait> waits,
    double sowBehindOverdue,
    double tablesBehindReady,
    HandsForecast hands,
    Balance balance,
    List<SeasonRow> rows) {

  /**
   * One sowing's spring.
   *
   * @param cellsSown trays sown again included
   * @param chanceMet share of seasons in which on-time plants reach what is needed, with the ends
   *     of its 95 % interval (see {@link MeanLimits})
   * @param firstOut median over the seasons of the date of the first planting out; null: never
   * @param medianOut the same of the date by which half of a season's plants are out
   * @param lastOut the same of the last planting out
   * @param readyFrom date by which the plants needed are out in 1 spring of 10; null: in fewer
   * @param readyBy date by which the plants needed are out in 9 springs of 10; null: in fewer
   * @param milestones mean over trays and seasons of the dates of its moves; a move that no tray
   *     made is absent
   * @param waiting mean tray-days a season that it waited at each step (spaces-days for hardening)
   * @param shortfall what it lacks and why; null where too few springs were run with endless room
   */
  public record SowingForecast(
      Sowing sowing,
      Stat cellsSown,
      Stat onTime,
      Stat late,
      double chanceMet,
      double chanceMetLow,
      double chanceMetHigh,
      @Nullable LocalDate firstOut,
      @Nullable LocalDate medianOut,
      @Nullable LocalDate lastOut,
      @Nullable LocalDate readyFrom,
      @Nullable LocalDate readyBy,
      Map<TrayMove, Span> milestones,
      Map<RoomWait, Double> waiting,
      @Nullable Shortfall shortfall) {}

  /**
   * What a season comes to.
   *
   * @param supplied plants on time of those needed: what one sowing has above its need makes up for
   *     no other
   * @param margin null where no money is asked
   */
  public record Balance(Stat supplied, @Nullable Stat margin) {}

  /**
   * When trays make a move, over trays and seasons: day numbers of the season.
   *
   * @param first mean over seasons of the first tray's day
   * @param mean mean day over all trays
   * @param last mean over seasons of the last tray's day
   * @param trays mean trays a season that make the move
   */
  public record Span(double first, double mean, double last, double trays) {}

  /**
   * How full a place is.
   *
   * @param name the place's, or such as "all tables"
   * @param spaces room there is
   * @param meanUse time-mean of spaces in use after each day's round
   * @param peak highest use of a season
   * @param fullDays days of a season with no space left
   * @param days one entry a day of the season
   */
  public record Occupancy(
      String name,
      PlaceKind kind,
      int spaces,
      double meanUse,
      Stat peak,
      Stat fullDays,
      List<DayUse> days) {}

  /**
   * Spaces in use after a day's round, over the seasons.
   *
   * @param chanceFull share of seasons with no space left
   * @param demand mean spaces that would be used if every place had endless room; 0 for a place
   *     that shares its work with another of its kind (see {@link Forecast#kinds})
   */
  public record DayUse(
      double mean, double p10, double p50, double p90, double chanceFull, double demand) {}

  /**
   * Waiting for room.
   *
   * @param waitedFor places that would have done, such as "Chamber or Mats"
   * @param trayDays mean a season
   */
  public record Wait(RoomWait step, String waitedFor, YearMonth month, double trayDays) {}

  /**
   * One season.
   *
   * @param season its number, from 0
   * @param weatherYear year of the record that it lived in
   * @param sowingsMet sowings whose need was met on time
   */
  public record SeasonRow(
      int season,
      int weatherYear,
      long cellsSown,
      long onTime,
      long late,
      int sowingsMet,
      Map<Loss, Long> losses,
      Map<RoomWait, Long> waiting) {}

  /** All plants on time, spring by spring. */
  public List<Long> onTimeBySpring() {
    return rows.stream().map(SeasonRow::onTime).toList();
  }

  /**
   * How many plants more are on time in all than in another forecast, on the springs of both.
   *
   * @param others its plants on time, spring by spring from the first on
   */
  public Difference onTimeMoreThan(List<Long> others) {
    int both = Math.min(seasons, others.size());
    return Paired.difference(
        others.stream().limit(both).mapToDouble(plants -> plants).toArray(),
        rows.stream().limit(both).mapToDouble(SeasonRow::onTime).toArray(),
        Strata.of(scenario, settings.seed(), both));
  }

  /** The open places that would do for a sowing at a step, such as "Chamber or Mats". */
  public static String waitedFor(Scenario scenario, Sowing sowing, RoomWait step) {
    List<String> names =
        switch (step) {
          case SOW ->
              scenario.cropOf(sowing).germinateIn().stream()
                  .filter(
                      name ->
                          scenario.places().stream()
                              .anyMatch(p -> p.name().equals(name) && p.isOpen()))
                  .toList();
          case LEAVE, POT -> open(scenario, PlaceKind.TABLE);
          case HARDEN -> open(scenario, PlaceKind.HARDENING);
        };
    return String.join(" or ", names);
  }

  private static List<String> open(Scenario scenario, PlaceKind kind) {
    return scenario.places().stream()
        .filter(p -> p.kind() == kind && p.isOpen())
        .map(Place::name)
        .toList();
  }
}
