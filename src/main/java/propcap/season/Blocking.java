package propcap.season;

import java.util.BitSet;

/** What waits after a round because what stands before it waits too. */
final class Blocking {
  private final DueLists due;
  private final Tray[] trays;
  private final int places;

  Blocking(DueLists due, Tray[] trays, int places) {
    this.due = due;
    this.trays = trays;
    this.places = places;
  }

  void note(Notebook notes) {
    BitSet overdue = due.waitingForRoom(RoundStep.LEAVING_HEAT);
    BitSet unsown = due.waitingForRoom(RoundStep.SOWING);
    if (!unsown.isEmpty() && !overdue.isEmpty()) {
      int[] overdueIn = new int[places];
      overdue.stream().forEach(rank -> overdueIn[trays[rank].place()]++);
      unsown.stream().forEach(rank -> noteBehind(notes, trays[rank].line.germinateIn, overdueIn));
    }
    int forTables = overdue.cardinality() + due.waitingForRoom(RoundStep.POTTING_ON).cardinality();
    if (forTables > 0) {
      BitSet ready = due.waitingForRoom(RoundStep.MOVING_OUT);
      int spaces = ready.stream().map(rank -> trays[rank].spaces()).sum();
      notes.tablesBehindReady += Math.min(forTables, spaces);
    }
  }

  private static void noteBehind(Notebook notes, int[] places, int[] overdueIn) {
    for (int place : places) {
      if (overdueIn[place] > 0) {
        overdueIn[place]--;
        notes.sowBehindOverdue++;
        return;
      }
    }
  }
}
