package propcap.past;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.TrayPast;

/**
 * Walks through a log round by round, from the exit back to the entrance as the rounds themselves
 * go. So it is known where each tray stood, and on which rounds one that stayed where it was would
 * have had room further on, and hands to move it.
 */
public final class LogWalk {
  private final Scenario scenario;
  private final Spaces spaces;
  private final HoursLeft hours;
  private final List<WalkedTray> trays;

  private LogWalk(Scenario scenario, List<WrittenTray> written) {
    this.scenario = scenario;
    spaces = new Spaces(scenario);
    hours = new HoursLeft(scenario.labour());
    trays = written.stream().map(tray -> new WalkedTray(scenario, spaces, hours, tray)).toList();
  }

  /**
   * What a walk came to.
   *
   * @param trays in the order in which they were given
   * @param overfull places that had more trays than spaces, each once, on the first such day
   */
  public record Walked(List<TrayPast> trays, List<Overfull> overfull) {}

  /**
   * A place with more trays than spaces.
   *
   * @param line of the file, the last row by which it became so
   * @param trays those that stood in it, by sowing and name
   */
  public record Overfull(String place, LocalDate date, int spaces, List<String> trays, int line) {}

  /**
   * Walks through a log.
   *
   * @param trays whose events come in an order that can be, each in the season and before today
   */
  public static Walked walk(Scenario scenario, LocalDate today, List<WrittenTray> trays) {
    LogWalk walk = new LogWalk(scenario, trays);
    List<Overfull> overfull = walk.until(scenario.season().dayOf(today));
    return new Walked(walk.trays.stream().map(WalkedTray::past).toList(), overfull);
  }

  private List<Overfull> until(int today) {
    List<WalkedTray> byTurn = new ArrayList<>(trays);
    byTurn.sort(
        Comparator.comparing(WalkedTray::bedBy)
            .thenComparingInt(WalkedTray::sowing)
            .thenComparing(WalkedTray::isSownAgain)
            .thenComparingInt(WalkedTray::number));
    List<Overfull> overfull = new ArrayList<>();
    for (int day = 0; day < today; day++) {
      spaces.beginDay();
      LocalDate date = scenario.season().date(day);
      boolean isRound = scenario.rounds().isWorkingDay(date);
      if (isRound && hours.isLimited()) {
        int round = day;
        hours.beginRound(
            date, byTurn.stream().mapToDouble(t -> t.minutesAtMost(round)).summaryStatistics());
      }
      for (LoggedEvent step : LoggedEvent.ROUND) {
        for (WalkedTray tray : byTurn) {
          if (!tray.moves(step, day) && isRound) {
            tray.stays(step, day);
          }
        }
      }
      for (WalkedTray tray : byTurn) {
        tray.finish(day);
      }
      tellOverfull(day, overfull);
      byTurn.removeIf(WalkedTray::isGone);
    }
    return overfull;
  }

  private void tellOverfull(int day, List<Overfull> overfull) {
    for (int place : spaces.newlyOverfull()) {
      List<WalkedTray> inIt = trays.stream().filter(t -> t.standsIn(place)).toList();
      overfull.add(
          new Overfull(
              scenario.places().get(place).name(),
              scenario.season().date(day),
              scenario.places().get(place).spaces(),
              inIt.stream().map(WalkedTray::toString).toList(),
              inIt.stream().mapToInt(WalkedTray::lineOfLastMove).max().orElse(0)));
    }
  }
}
