package propcap.season;

import java.io.Serializable;
import java.util.Arrays;

/**
 * Which day's hours went into which work, one season through: each entry is what a note of the
 * diary took of a day. What was begun and not finished has a further entry on the next working day.
 */
public final class Timesheet implements Serializable {
  private static final int NOTE = 0;
  private static final int DAY = 1;
  private static final int TIME = 2;
  private static final int WIDTH = 3;

  private int[] entries = new int[WIDTH * 4096];
  private int end;

  Timesheet() {}

  /** Adds time, in thousandths of a minute; what is above 35,000 hours is left out. */
  void add(int note, int day, long time) {
    if (end == entries.length) {
      entries = Arrays.copyOf(entries, 2 * end);
    }
    entries[end + NOTE] = note;
    entries[end + DAY] = day;
    entries[end + TIME] = (int) Math.min(Integer.MAX_VALUE, time);
    end += WIDTH;
  }

  /** How many entries there are. */
  public int size() {
    return end / WIDTH;
  }

  /** The diary's note that an entry's hours went into. */
  public int note(int entry) {
    return entries[entry * WIDTH + NOTE];
  }

  /** The day, by its number in the season, whose hours they are. */
  public int day(int entry) {
    return entries[entry * WIDTH + DAY];
  }

  public double hours(int entry) {
    return WorkRates.hours(entries[entry * WIDTH + TIME]);
  }
}
