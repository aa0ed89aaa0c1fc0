package propcap.season;

import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.TrayMove;
import propcap.farm.TrayTask;
import propcap.farm.WorkKind;

/** What is written down while a season runs. */
final class Notebook {
  static final int LOSSES = Loss.values().length;
  private static final int MILESTONES = TrayMove.values().length;
  private static final int STEPS = RoomWait.values().length;

  final int weatherYear;
  final int days;
  final int months;
  final int[] cellsSown;
  final int[] onTime;
  final int[] late;
  final int[] metDay;
  final int[] potTrays;
  final int[] losses;

  /** By sowing and milestone: trays, sum of days, first day, last day. */
  final int[] moves;

  final int[] use;
  final int[] waits;

  /** By work, sowing and month; empty while nothing has waited for hands. */
  int[] handWaits = {};

  /** Days on which something waited for hands. */
  final BitSet shortOfHands = new BitSet();

  int sowBehindOverdue;
  int tablesBehindReady;

  /** Every move of every tray; null: only the sums above are asked for. */
  final @Nullable Diary diary;

  private final SeasonPlan plan;

  /** Plantings out in the order in which they happen: sowing, day, plants. */
  private int[] plantings = new int[300];

  private int plantingsEnd;

  Notebook(SeasonPlan plan, int weatherYear, boolean withDiary) {
    this.plan = plan;
    this.weatherYear = weatherYear;
    int sowings = plan.sowings();
    diary = withDiary ? new Diary(plan.ranks(), sowings) : null;
    days = plan.days();
    months = plan.months();
    cellsSown = new int[sowings];
    onTime = new int[sowings];
    late = new int[sowings];
    metDay = new int[sowings];
    Arrays.fill(metDay, -1);
    potTrays = new int[sowings];
    losses = new int[sowings * LOSSES];
    moves = new int[sowings * MILESTONES * 4];
    for (int i = 2; i < moves.length; i += 4) {
      moves[i] = -1;
      moves[i + 1] = -1;
    }
    use = new int[plan.places() * days];
    waits = new int[STEPS * sowings * months];
  }

  static int move(int sowing, TrayMove milestone) {
    return (sowing * MILESTONES + milestone.ordinal()) * 4;
  }

  private void moved(Tray tray, TrayMove milestone, int day) {
    int at = move(tray.line.sowing, milestone);
    moves[at]++;
    moves[at + 1] += day;
    if (moves[at + 2] < 0) {
      moves[at + 2] = day;
    }
    moves[at + 3] = day;
  }

  private void note(Tray tray, TrayTask job, int day, int plants) {
    if (diary != null) {
      diary.note(tray, job, day, plants);
    }
  }

  void offHeat(Tray tray, int day) {
    moved(tray, TrayMove.OFF_HEAT, day);
    note(tray, TrayTask.OFF_HEAT, day, tray.plants());
  }

  void thinned(Tray tray, int day) {
    note(tray, TrayTask.THIN, day, tray.plants());
  }

  void movedOut(Tray tray, int day) {
    moved(tray, TrayMove.MOVED_OUT, day);
    note(tray, TrayTask.MOVE_OUT, day, tray.plants());
  }

  void sown(Tray tray, int day) {
    cellsSown[tray.line.sowing] += tray.line.crop.cells();
    moved(tray, TrayMove.SOWN, day);
    note(tray, tray.attempt == 0 ? TrayTask.SOW : TrayTask.SOW_AGAIN, day, tray.plants());
  }

  void potted(Tray tray, int plants, int day) {
    potTrays[tray.line.sowing] += tray.spaces();
    moved(tray, TrayMove.POTTED_ON, day);
    note(tray, TrayTask.POT_ON, day, plants);
  }

  void lost(Tray tray, Loss cause, int plants) {
    losses[tray.line.sowing * LOSSES + cause.ordinal()] += plants;
  }

  void plantedOut(Tray tray, int day) {
    int sowing = tray.line.sowing;
    if (day <= tray.line.bedBy) {
      onTime[sowing] += tray.plants();
    } else {
      late[sowing] += tray.plants();
    }
    if (metDay[sowing] < 0 && onTime[sowing] + late[sowing] >= tray.line.needed) {
      metDay[sowing] = day;
    }
    if (plantingsEnd == plantings.length) {
      plantings = Arrays.copyOf(plantings, 2 * plantingsEnd);
    }
    plantings[plantingsEnd++] = sowing;
    plantings[plantingsEnd++] = day;
    plantings[plantingsEnd++] = tray.plants();
    moved(tray, TrayMove.PLANTED_OUT, day);
    note(tray, TrayTask.PLANT_OUT, day, tray.plants());
  }

  void thrownOut(Tray tray, int day) {
    if (diary != null) {
      diary.thrownOut(tray, day);
    }
  }

  void waited(RoomWait step, Tray tray, int day, int spaces) {
    waits[byMonth(step.ordinal(), tray, day)] += spaces;
    if (diary != null && step == RoomWait.SOW) {
      diary.waitsToBeSown(tray, false);
    }
  }

  void waitedForHands(WorkKind work, Tray tray, int day, int spaces) {
    if (handWaits.length == 0) {
      handWaits = new int[WorkRates.WORKS * cellsSown.length * months];
    }
    handWaits[byMonth(work.ordinal(), tray, day)] += spaces;
    shortOfHands.set(day);
    if (diary != null && work == WorkKind.SOW) {
      diary.waitsToBeSown(tray, true);
    }
  }

  private int byMonth(int kind, Tray tray, int day) {
    return (kind * cellsSown.length + tray.line.sowing) * months + plan.month(day);
  }

  @Nullable Timesheet timesheet() {
    return diary == null ? null : diary.timesheet();
  }

  void used(int place, int fromDay, int toDay, int spaces) {
    Arrays.fill(use, place * days + fromDay, place * days + toDay, spaces);
  }

  int[] medianOutDay() {
    int[] out = new int[cellsSown.length];
    int[] median = new int[cellsSown.length];
    Arrays.fill(median, -1);
    for (int i = 0; i < plantingsEnd; i += 3) {
      int sowing = plantings[i];
      out[sowing] += plantings[i + 2];
      if (median[sowing] < 0 && 2 * out[sowing] >= onTime[sowing] + late[sowing]) {
        median[sowing] = plantings[i + 1];
      }
    }
    return median;
  }

  /** Every cell sown is counted once. */
  void checkAllCounted() {
    for (int s = 0; s < cellsSown.length; s++) {
      int counted = onTime[s] + late[s];
      for (int cause = 0; cause < LOSSES; cause++) {
        counted += losses[s * LOSSES + cause];
      }
      if (counted != cellsSown[s]) {
        throw new IllegalStateException(
            plan.scenario().sowings().get(s).id()
                + ": "
                + cellsSown[s]
                + " cells sown, "
                + counted
                + " accounted for");
      }
    }
  }
}
