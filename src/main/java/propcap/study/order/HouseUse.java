package propcap.study.order;

import java.util.BitSet;
import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.TrayTask;
import propcap.season.Diary;
import propcap.season.SeasonOutcome;
import propcap.study.SeasonTotals;

/**
 * What one season uses in the house as it is, by sowing, beyond the trays that it was given: where
 * trays wait, more fail in the cold and more are potted on than if there were room.
 */
final class HouseUse {
  private final int[] again;
  private final int[] potTrays;
  private final BitSet met = new BitSet();

  /**
   * Reads it from a season with a diary.
   *
   * @param ordered the plan with the trays that are ordered
   * @param sown the plan's numbers of the sowings that the season had; of the others, nothing is
   *     used
   * @param sowings how many the plan has
   */
  HouseUse(Scenario ordered, SeasonOutcome outcome, List<Integer> sown, int sowings) {
    again = new int[sowings];
    potTrays = new int[sowings];
    Diary diary = outcome.diary();
    for (int note = 0; note < diary.size(); note++) {
      again[sown.get(diary.sowing(note))] += diary.job(note) == TrayTask.SOW_AGAIN ? 1 : 0;
    }
    for (int s = 0; s < outcome.sowings(); s++) {
      potTrays[sown.get(s)] = outcome.potTrays(s);
      met.set(sown.get(s), SeasonTotals.isMet(ordered, outcome, s));
    }
  }

  /** Trays sown again after failing, as often as they were. */
  int again(int sowing) {
    return again[sowing];
  }

  /** Whether a sowing that was sown had its plants on time. */
  boolean isMet(int sowing) {
    return met.get(sowing);
  }

  /** Trays of pots that its trays became. */
  int potTrays(int sowing) {
    return potTrays[sowing];
  }
}
