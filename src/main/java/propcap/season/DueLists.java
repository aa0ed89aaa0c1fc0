package propcap.season;

import java.util.Arrays;
import java.util.BitSet;

/** For each step, the ranks of the trays that are due for it. */
final class DueLists {
  private final BitSet[] lists = new BitSet[RoundStep.values().length];

  /** Ranks of the trays that have waited for hands on this round. */
  private final BitSet forHands = new BitSet();

  DueLists(int ranks) {
    Arrays.setAll(lists, step -> new BitSet(ranks));
  }

  BitSet of(RoundStep step) {
    return lists[step.ordinal()];
  }

  /** Takes a tray that is gone off every list. */
  void forget(int rank) {
    for (BitSet list : lists) {
      // To look is cheaper than to clear, and it stands on one list or none.
      if (list.get(rank)) {
        list.clear(rank);
      }
    }
  }

  void beginRound() {
    forHands.clear();
  }

  /**
   * Notes that a tray waits for hands.
   *
   * @return whether it had not on this round
   */
  boolean waitsForHands(int rank) {
    boolean already = forHands.get(rank);
    forHands.set(rank);
    return !already;
  }

  /** Trays due for a step, less those that wait for hands. */
  BitSet waitingForRoom(RoundStep step) {
    if (forHands.isEmpty()) {
      return of(step);
    }
    BitSet list = (BitSet) of(step).clone();
    list.andNot(forHands);
    return list;
  }
}
