package propcap.season;

import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;

/** For each step, the ranks of the trays that are due for it. */
final class DueLists {
  private final Map<RoundStep, BitSet> lists = new EnumMap<>(RoundStep.class);

  /** Ranks of the trays that have waited for hands on this round. */
  private final BitSet forHands = new BitSet();

  DueLists(int ranks) {
    for (RoundStep step : RoundStep.values()) {
      lists.put(step, new BitSet(ranks));
    }
  }

  BitSet of(RoundStep step) {
    BitSet list = lists.get(step);
    if (list == null) {
      throw new IllegalStateException("no list for " + step);
    }
    return list;
  }

  /** Takes a tray that is gone off every list. */
  void forget(int rank) {
    for (BitSet list : lists.values()) {
      list.clear(rank);
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
