package propcap.season;

import java.io.Serializable;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.TrayMove;
import propcap.farm.WorkKind;

/**
 * What came of one season. Sowings are numbered as in the plan, places as in the scenario, days
 * from the season's first, months from that of its first day.
 */
public final class SeasonOutcome implements Serializable {
  private final int weatherYear;
  private final int days;
  private final int months;
  private final int[] cellsSown;
  private final int[] onTime;
  private final int[] late;
  private final int[] medianOutDay;
  private final int[] metDay;
  private final int[] potTrays;
  private final int[] losses;
  private final int[] moves;
  private final int[] use;
  private final int[] waits;
  private final int[] handWaits;
  private final BitSet shortOfHands;

  /** By day and work, thousandths of a minute. */
  private final int[] worked;

  private final int sowBehindOverdue;
  private final int tablesBehindReady;
  private final @Nullable Diary diary;

  SeasonOutcome(Notebook notes, int[] worked) {
    weatherYear = notes.weatherYear;
    days = notes.days;
    months = notes.months;
    cellsSown = notes.cellsSown;
    onTime = notes.onTime;
    late = notes.late;
    medianOutDay = notes.medianOutDay();
    metDay = notes.metDay;
    potTrays = notes.potTrays;
    losses = notes.losses;
    moves = notes.moves;
    use = notes.use;
    waits = notes.waits;
    handWaits = notes.handWaits;
    shortOfHands = notes.shortOfHands;
    this.worked = worked;
    sowBehindOverdue = notes.sowBehindOverdue;
    tablesBehindReady = notes.tablesBehindReady;
    diary = notes.diary;
  }

  /** What it takes in memory, bytes, by the length of what it holds. */
  public long bytes() {
    long ints = 0;
    for (int[] each :
        List.of(
            cellsSown,
            onTime,
            late,
            medianOutDay,
            metDay,
            potTrays,
            losses,
            moves,
            use,
            waits,
            handWaits,
            worked)) {
      ints += 4 + each.length;
    }
    return 200 + Integer.BYTES * ints + (diary == null ? 0 : diary.bytes());
  }

  /** Place of its weather year in the scenario's list. */
  public int weatherYear() {
    return weatherYear;
  }

  public int sowings() {
    return cellsSown.length;
  }

  public int months() {
    return months;
  }

  /** Cells sown, trays sown again included. */
  public int cellsSown(int sowing) {
    return cellsSown[sowing];
  }

  /** Plants out on time, by sowing. */
  public int[] onTime() {
    return onTime.clone();
  }

  public int onTime(int sowing) {
    return onTime[sowing];
  }

  public int late(int sowing) {
    return late[sowing];
  }

  public int lost(int sowing, Loss cause) {
    return losses[sowing * Notebook.LOSSES + cause.ordinal()];
  }

  /** The day by which half of the plants planted out were so; -1 if none ever was. */
  public int medianOutDay(int sowing) {
    return medianOutDay[sowing];
  }

  /** The day by which as many plants were out as are needed; -1 if they never were. */
  public int metDay(int sowing) {
    return metDay[sowing];
  }

  /** Trays of pots that its trays became. */
  public int potTrays(int sowing) {
    return potTrays[sowing];
  }

  /** Trays that made a move. */
  public int trays(int sowing, TrayMove move) {
    return moves[Notebook.move(sowing, move)];
  }

  /** Sum of the day numbers on which trays made a move. */
  public int daySum(int sowing, TrayMove move) {
    return moves[Notebook.move(sowing, move) + 1];
  }

  /** Day of the first tray's move; -1 if no tray made it. */
  public int firstDay(int sowing, TrayMove move) {
    return moves[Notebook.move(sowing, move) + 2];
  }

  /** Day of the last tray's move; -1 if no tray made it. */
  public int lastDay(int sowing, TrayMove move) {
    return moves[Notebook.move(sowing, move) + 3];
  }

  /** Spaces in use after a day's round, or after the last one before a rest day. */
  public int use(int place, int day) {
    return use[place * days + day];
  }

  /** Days of the season on which a place has anything in it after the round. */
  public int daysInUse(int place) {
    int inUse = 0;
    for (int day = 0; day < days; day++) {
      inUse += use(place, day) > 0 ? 1 : 0;
    }
    return inUse;
  }

  /** Tray-days (spaces-days for hardening) that a sowing waited at a step in a month. */
  public int waited(RoomWait step, int sowing, int month) {
    return waits[(step.ordinal() * cellsSown.length + sowing) * months + month];
  }

  /**
   * Tray-days (spaces-days outside and in pots) that a sowing had room and waited for hands, by
   * what was to be done, in a month.
   */
  public int waitedForHands(WorkKind work, int sowing, int month) {
    return handWaits.length == 0
        ? 0
        : handWaits[(work.ordinal() * cellsSown.length + sowing) * months + month];
  }

  /** Whether the hours of a day ran out while something waited for them. */
  public boolean isShortOfHands(int day) {
    return shortOfHands.get(day);
  }

  /** Days on which hours ran out. */
  public int daysShortOfHands() {
    return shortOfHands.cardinality();
  }

  /** What a piece of work took on a day, in which sums are exact. */
  public int thousandthsOfMinutes(WorkKind work, int day) {
    return worked[day * WorkRates.WORKS + work.ordinal()];
  }

  /** What all work took on a day; what is above 35,000 hours is left out. */
  public int thousandthsOfMinutes(int day) {
    return (int) Math.min(Integer.MAX_VALUE, sum(day * WorkRates.WORKS, WorkRates.WORKS));
  }

  /** So many thousandths of minutes in hours. */
  public static double inHours(long thousandthsOfMinutes) {
    return WorkRates.hours(thousandthsOfMinutes);
  }

  /** Hours that a piece of work took on a day. */
  public double hours(WorkKind work, int day) {
    return inHours(thousandthsOfMinutes(work, day));
  }

  /** Hours worked on a day. */
  public double hours(int day) {
    return inHours(sum(day * WorkRates.WORKS, WorkRates.WORKS));
  }

  /** Hours worked in the season. What was begun on its last day and not finished is not in them. */
  public double hours() {
    return inHours(sum(0, worked.length));
  }

  private long sum(int from, int count) {
    long sum = 0;
    for (int i = from; i < from + count; i++) {
      sum += worked[i];
    }
    return sum;
  }

  /**
   * Of the tray-days waiting to be sown, those for which a tray that waited for a table stood in a
   * place that would have done.
   */
  public int sowBehindOverdue() {
    return sowBehindOverdue;
  }

  /**
   * Of the tray-days waiting for a table, those for which plants that waited for the hardening area
   * stood on the tables.
   */
  public int tablesBehindReady() {
    return tablesBehindReady;
  }

  /**
   * Every move of every tray.
   *
   * @throws IllegalStateException where the season was run without a diary
   */
  public Diary diary() {
    if (diary == null) {
      throw new IllegalStateException("no diary was kept of this season");
    }
    return diary;
  }
}
