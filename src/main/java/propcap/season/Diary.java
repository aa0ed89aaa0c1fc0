package propcap.season;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import propcap.farm.TrayTask;

/**
 * All that was done to every tray in one season, one after the other: what a grower would have
 * written down who noted each tray. Kept only where it is asked for, since it is a hundred times as
 * long as the outcome.
 */
public final class Diary implements Serializable {
  /** What stands for a place before a tray is sown and after it is planted out. */
  public static final int NOWHERE = -1;

  private static final int SOWING = 0;
  private static final int TRAY = 1;
  private static final int JOB = 2;
  private static final int DAY = 3;
  private static final int FROM = 4;
  private static final int TO = 5;
  private static final int SPACES = 6;
  private static final int FILLS = 7;
  private static final int PLANTS = 8;
  private static final int LEFT = 9;
  private static final int WIDTH = 10;

  private static final TrayTask[] JOBS = TrayTask.values();

  /** By rank: where the tray stood before this move, and how many spaces it filled. */
  private final int[] stoodIn;

  private final int[] filled;

  private int[] notes = new int[WIDTH * 4096];
  private int end;

  /** By sowing: tray-days that its trays, but for those sown again, waited to be sown. */
  private final int[] waitedForRoom;

  private final int[] waitedForHands;
  private final Timesheet timesheet = new Timesheet();
  private final List<ThrownOut> thrownOut = new ArrayList<>();

  Diary(int ranks, int sowings) {
    stoodIn = new int[ranks];
    filled = new int[ranks];
    waitedForRoom = new int[sowings];
    waitedForHands = new int[sowings];
  }

  /** Notes that a tray that is due to be sown waits on a day's round, for room or for hands. */
  void waitsToBeSown(Tray tray, boolean forHands) {
    if (tray.attempt == 0) {
      (forHands ? waitedForHands : waitedForRoom)[tray.line.sowing]++;
    }
  }

  /** Notes what has just been done to a tray, and to how many of its plants. */
  void note(Tray tray, TrayTask job, int day, int plants) {
    int rank = tray.rank();
    boolean enters = job.isSowing();
    if (end == notes.length) {
      notes = Arrays.copyOf(notes, 2 * end);
    }
    notes[end + SOWING] = tray.line.sowing;
    notes[end + TRAY] = tray.number;
    notes[end + JOB] = job.ordinal();
    notes[end + DAY] = day;
    notes[end + FROM] = enters ? NOWHERE : stoodIn[rank];
    notes[end + TO] = job == TrayTask.PLANT_OUT ? NOWHERE : tray.place();
    notes[end + SPACES] = enters ? tray.spaces() : filled[rank];
    notes[end + FILLS] = tray.spaces();
    notes[end + PLANTS] = plants;
    notes[end + LEFT] = tray.plants();
    end += WIDTH;
    stoodIn[rank] = tray.place();
    filled[rank] = tray.spaces();
  }

  /** Notes that a tray was thrown out. */
  void thrownOut(Tray tray, int day) {
    thrownOut.add(new ThrownOut(tray.line.sowing, tray.number, tray.attempt, day));
  }

  /**
   * A tray that was thrown out.
   *
   * @param sowing its number in the plan
   * @param tray of its sowing, from 0
   * @param attempt 0 for its first sowing
   */
  public record ThrownOut(int sowing, int tray, int attempt, int day) implements Serializable {}

  /** In the order in which they were thrown out. */
  public List<ThrownOut> thrownOut() {
    return Collections.unmodifiableList(thrownOut);
  }

  /** What it takes in memory, bytes. */
  public long bytes() {
    return (long) Integer.BYTES * (notes.length + stoodIn.length + filled.length) + 100;
  }

  /** Tray-days that a sowing waited for room to be sown; those sown again are not in it. */
  public int waitedForRoom(int sowing) {
    return waitedForRoom[sowing];
  }

  /** Tray-days that a sowing waited for hands to be sown, where there was room. */
  public int waitedForHands(int sowing) {
    return waitedForHands[sowing];
  }

  /** Which day's hours went into what. */
  public Timesheet timesheet() {
    return timesheet;
  }

  /** How many notes there are. */
  public int size() {
    return end / WIDTH;
  }

  /** The sowing that a note is about, by its number in the plan. */
  public int sowing(int note) {
    return notes[note * WIDTH + SOWING];
  }

  /** The tray of its sowing, from 0; one sown again has the number of the one that failed. */
  public int tray(int note) {
    return notes[note * WIDTH + TRAY];
  }

  public TrayTask job(int note) {
    return JOBS[notes[note * WIDTH + JOB]];
  }

  /** The day's number in the season. */
  public int day(int note) {
    return notes[note * WIDTH + DAY];
  }

  /** The place that the tray came from, by its number; {@link #NOWHERE} where it was sown. */
  public int from(int note) {
    return notes[note * WIDTH + FROM];
  }

  /** The place that it went to; {@link #NOWHERE} where it was planted out. */
  public int to(int note) {
    return notes[note * WIDTH + TO];
  }

  /** Trays that it was done to: the spaces that they filled before. */
  public int trays(int note) {
    return notes[note * WIDTH + SPACES];
  }

  /** Spaces that they fill after it: where plugs become pots, the trays of pots. */
  public int fills(int note) {
    return notes[note * WIDTH + FILLS];
  }

  /** Plants that it was done to; cells, as long as nothing shows. */
  public int plants(int note) {
    return notes[note * WIDTH + PLANTS];
  }

  /** Plants that are left after it: where some are lost in the doing, fewer than it was done to. */
  public int left(int note) {
    return notes[note * WIDTH + LEFT];
  }
}
