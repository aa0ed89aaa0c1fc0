package propcap.season;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.chance.Luck;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;

/** Seasons run for a test, and all that an outcome tells, as numbers that can be compared. */
final class Runs {
  private Runs() {}

  /** The first seasons of a scenario under a seed. */
  static List<SeasonOutcome> of(Scenario scenario, long seed, int seasons) {
    return of(scenario, new Luck(scenario, seed), seasons);
  }

  /** The first seasons of a scenario under a luck, which may be that of other places. */
  static List<SeasonOutcome> of(Scenario scenario, Luck luck, int seasons) {
    SeasonPlan plan = new SeasonPlan(scenario);
    Luck.Reader reader = luck.reader();
    return IntStream.range(0, seasons).mapToObj(n -> House.season(plan, reader.season(n))).toList();
  }

  /** All that a season tells of one sowing. */
  static List<Integer> sowing(SeasonOutcome season, int sowing) {
    List<Integer> told = new ArrayList<>();
    told.add(season.cellsSown(sowing));
    told.add(season.onTime(sowing));
    told.add(season.late(sowing));
    told.add(season.metDay(sowing));
    told.add(season.medianOutDay(sowing));
    for (Loss cause : Loss.values()) {
      told.add(season.lost(sowing, cause));
    }
    for (TrayMove move : TrayMove.values()) {
      told.add(season.trays(sowing, move));
      told.add(season.daySum(sowing, move));
      told.add(season.firstDay(sowing, move));
      told.add(season.lastDay(sowing, move));
    }
    for (RoomWait step : RoomWait.values()) {
      for (int month = 0; month < season.months(); month++) {
        told.add(season.waited(step, sowing, month));
      }
    }
    return told;
  }

  /** The use of a place, day by day. */
  static List<Integer> use(Scenario scenario, SeasonOutcome season, int place) {
    return IntStream.range(0, scenario.season().days())
        .mapToObj(day -> season.use(place, day))
        .toList();
  }

  /** All that a season tells. */
  static List<List<Integer>> all(Scenario scenario, SeasonOutcome season) {
    List<List<Integer>> told = new ArrayList<>();
    told.add(List.of(season.weatherYear(), season.sowBehindOverdue(), season.tablesBehindReady()));
    for (int s = 0; s < season.sowings(); s++) {
      told.add(sowing(season, s));
    }
    for (int p = 0; p < scenario.places().size(); p++) {
      told.add(use(scenario, season, p));
    }
    return told;
  }

  /** Tray-days that a sowing waited at a step, all months. */
  static int waited(SeasonOutcome season, RoomWait step, int sowing) {
    return IntStream.range(0, season.months()).map(m -> season.waited(step, sowing, m)).sum();
  }
}
