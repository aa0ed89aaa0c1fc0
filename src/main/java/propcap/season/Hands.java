package propcap.season;

import org.jspecify.annotations.Nullable;
import propcap.farm.WorkKind;

/**
 * People's hours while a season runs. Work may be begun while anything is left of the day; what it
 * takes beyond that is owed, and is the first thing that the next working day goes into. So no day
 * has more than its hours, and a tray that takes more than a day is done all the same.
 */
final class Hands {
  private final WorkRates rates;

  /** What each piece of work took of which day; null: only the sums are asked for. */
  private final @Nullable Timesheet timesheet;

  /** By day and work, thousandths of a minute; what is above 35,000 hours is left out. */
  private final int[] spent;

  private int today;
  private long left;
  private int begun;

  /** Never more than one piece of work is owed: nothing is begun before it is done. */
  private long owed;

  private int owedWork;
  private int owedPiece;

  // Of days that are past, done again as a log has them.
  private int settled;
  private long workedInPast;
  private long lastInPast;

  Hands(WorkRates rates, @Nullable Timesheet timesheet) {
    this.rates = rates;
    this.timesheet = timesheet;
    spent = new int[rates.days() * WorkRates.WORKS];
  }

  /** A working day begins: what is owed comes first. */
  void begin(int day) {
    today = day;
    left = rates.ofDay(day);
    useForOwed();
  }

  /** Whether a piece of work can be begun; what takes no time always can. */
  boolean canBegin(WorkKind work) {
    return left > 0 || rates.each(work) == 0;
  }

  /**
   * Begins a piece of work on so many trays or plants, as the work is counted: that of the diary's
   * next note.
   *
   * @throws IllegalStateException where nothing is left of the day
   */
  void spend(WorkKind work, int units) {
    int piece = begun++;
    long takes = rates.each(work) * units;
    if (takes == 0) {
      return;
    }
    if (left == 0) {
      throw new IllegalStateException("work is begun on a day that has no hours left");
    }
    owed = takes;
    owedWork = work.ordinal();
    owedPiece = piece;
    useForOwed();
  }

  /** Notes a piece of work of a day that is past, however many hours it had. */
  void worked(int day, WorkKind work, int units) {
    int piece = begun++;
    long took = rates.each(work) * units;
    owePast(day);
    workedInPast += took;
    owedWork = took > 0 ? work.ordinal() : owedWork;
    owedPiece = took > 0 ? piece : owedPiece;
    lastInPast = took > 0 ? took : lastInPast;
    int at = day * WorkRates.WORKS + work.ordinal();
    spent[at] = (int) Math.min(Integer.MAX_VALUE, spent[at] + took);
    if (timesheet != null && took > 0) {
      timesheet.add(piece, day, took);
    }
  }

  /**
   * Works out what past days before one have left owed, at most the last piece of work: a grower
   * may have worked longer than the plan has it.
   */
  void owePast(int before) {
    for (; settled < before; settled++) {
      if (rates.isWorkingDay(settled)) {
        owed = Math.max(0, Math.min(lastInPast, owed + workedInPast - rates.ofDay(settled)));
      }
      workedInPast = 0;
    }
  }

  private void useForOwed() {
    long time = Math.min(owed, left);
    if (time == 0) {
      return;
    }
    owed -= time;
    left -= time;
    int at = today * WorkRates.WORKS + owedWork;
    spent[at] = (int) Math.min(Integer.MAX_VALUE, spent[at] + time);
    if (timesheet != null) {
      timesheet.add(owedPiece, today, time);
    }
  }

  /** By day and work, thousandths of a minute. */
  int[] spent() {
    return spent;
  }
}
