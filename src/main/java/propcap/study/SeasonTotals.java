package propcap.study;

import java.util.function.IntBinaryOperator;
import java.util.stream.IntStream;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.WorkKind;
import propcap.season.SeasonOutcome;

/** What is read of a season as one number, by whoever asks. */
public final class SeasonTotals {
  private SeasonTotals() {}

  /** Plants on time. */
  public static double onTime(SeasonOutcome season) {
    return onTime(season, IntStream.range(0, season.sowings()));
  }

  /** Plants on time of some sowings. */
  public static double onTime(SeasonOutcome season, IntStream sowings) {
    return sowings.mapToLong(season::onTime).sum();
  }

  /** Plants that came late. */
  public static double late(SeasonOutcome season) {
    return IntStream.range(0, season.sowings()).mapToLong(season::late).sum();
  }

  /** Sowings that have the plants that they need on time. */
  public static double met(Scenario scenario, SeasonOutcome season) {
    return IntStream.range(0, season.sowings()).filter(s -> isMet(scenario, season, s)).count();
  }

  /** Whether a sowing has the plants that it needs on time. */
  public static boolean isMet(Scenario scenario, SeasonOutcome season, int sowing) {
    return season.onTime(sowing) >= scenario.sowings().get(sowing).plantsNeeded();
  }

  /** Tray-days waited for room. */
  public static double waited(SeasonOutcome season) {
    double sum = 0;
    for (RoomWait step : RoomWait.values()) {
      sum += waited(season, step);
    }
    return sum;
  }

  /** Tray-days (spaces-days outside and in pots) that had room and waited for hands. */
  public static double waitedForHands(SeasonOutcome season, WorkKind work) {
    return overMonths(season, (s, month) -> season.waitedForHands(work, s, month));
  }

  private static double overMonths(SeasonOutcome season, IntBinaryOperator days) {
    double sum = 0;
    for (int s = 0; s < season.sowings(); s++) {
      for (int month = 0; month < season.months(); month++) {
        sum += days.applyAsInt(s, month);
      }
    }
    return sum;
  }

  /** Tray-days waited for room at one step. */
  public static double waited(SeasonOutcome season, RoomWait step) {
    return overMonths(season, (s, month) -> season.waited(step, s, month));
  }

  /** Plants lost by one cause. */
  public static double lost(SeasonOutcome season, Loss cause) {
    return IntStream.range(0, season.sowings()).mapToLong(s -> season.lost(s, cause)).sum();
  }
}
