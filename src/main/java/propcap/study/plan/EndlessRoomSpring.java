package propcap.study.plan;

import java.util.Arrays;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;
import propcap.farm.TrayTask;
import propcap.season.Diary;
import propcap.season.SeasonOutcome;

/**
 * One spring with endless room, by sowing and its first trays: trays do not then touch each other,
 * so that the first ten of thirty are what ten would have been.
 */
public final class EndlessRoomSpring {
  private static final int MOVES = TrayMove.values().length;

  /** By sowing and number of trays, from 0: sums over the first so many. */
  private final int[][] onTime;

  private final int[][] late;
  private final int[][] sown;
  private final int[][] potTrays;

  /** By sowing and move: all trays that make it, and the sum of their days. */
  private final int[][] moved;

  private final int[][] daySums;

  /** Reads the diary of a season of a scenario. */
  public EndlessRoomSpring(Scenario scenario, SeasonOutcome season) {
    int sowings = scenario.sowings().size();
    onTime = new int[sowings][];
    late = new int[sowings][];
    sown = new int[sowings][];
    potTrays = new int[sowings][];
    moved = new int[sowings][MOVES];
    daySums = new int[sowings][MOVES];
    for (int s = 0; s < sowings; s++) {
      int trays = scenario.sowings().get(s).trays();
      onTime[s] = new int[trays + 1];
      late[s] = new int[trays + 1];
      sown[s] = new int[trays + 1];
      potTrays[s] = new int[trays + 1];
      for (TrayMove move : TrayMove.values()) {
        moved[s][move.ordinal()] = season.trays(s, move);
        daySums[s][move.ordinal()] = season.daySum(s, move);
      }
    }
    Diary diary = season.diary();
    for (int note = 0; note < diary.size(); note++) {
      read(scenario, diary, note);
    }
    for (int[][] counts : new int[][][] {onTime, late, sown, potTrays}) {
      Arrays.stream(counts).forEach(c -> Arrays.parallelPrefix(c, Integer::sum));
    }
  }

  private void read(Scenario scenario, Diary diary, int note) {
    int s = diary.sowing(note);
    int nth = 1 + diary.tray(note);
    TrayTask job = diary.job(note);
    if (job == TrayTask.SOW) {
      sown[s][nth]++;
    } else if (job == TrayTask.POT_ON) {
      potTrays[s][nth] += diary.fills(note);
    } else if (job == TrayTask.PLANT_OUT) {
      int bedBy = scenario.season().dayOf(scenario.sowings().get(s).bedBy());
      (diary.day(note) <= bedBy ? onTime : late)[s][nth] += diary.plants(note);
    }
  }

  public int onTime(int sowing, int trays) {
    return onTime[sowing][trays];
  }

  int late(int sowing, int trays) {
    return late[sowing][trays];
  }

  /** Trays sown, those sown again included. */
  int sown(int sowing, int trays) {
    return sown[sowing][trays];
  }

  int potTrays(int sowing, int trays) {
    return potTrays[sowing][trays];
  }

  /** Of all its trays, those that make a move. */
  int moved(int sowing, TrayMove move) {
    return moved[sowing][move.ordinal()];
  }

  /** Sum of the day numbers on which they make it. */
  int daySum(int sowing, TrayMove move) {
    return daySums[sowing][move.ordinal()];
  }
}
