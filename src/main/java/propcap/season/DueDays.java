package propcap.season;

import java.util.Arrays;

/**
 * On which days trays will fall due, and for what. People act on their rounds alone, so that the
 * day of a round is all that is kept of a time. What a tray no longer falls due for is left in its
 * place, and not heeded when the day comes.
 */
final class DueDays {
  private static final RoundStep[] STEPS = RoundStep.values();

  /** By day, each tray's rank and step in one number. */
  private final int[][] entries;

  private final int[] counts;

  DueDays(int days) {
    entries = new int[days][];
    counts = new int[days];
  }

  void put(int day, int rank, RoundStep step) {
    int[] ofDay = entries[day];
    if (ofDay == null) {
      ofDay = new int[16];
      entries[day] = ofDay;
    } else if (counts[day] == ofDay.length) {
      ofDay = Arrays.copyOf(ofDay, 2 * ofDay.length);
      entries[day] = ofDay;
    }
    ofDay[counts[day]++] = rank * STEPS.length + step.ordinal();
  }

  /** Puts on the lists what falls due on a day. */
  void fallDue(int day, Tray[] trays, DueLists due) {
    for (int i = 0; i < counts[day]; i++) {
      int rank = entries[day][i] / STEPS.length;
      RoundStep step = STEPS[entries[day][i] % STEPS.length];
      if (trays[rank].fallsDue(step, day)) {
        due.of(step).set(rank);
      }
    }
  }
}
