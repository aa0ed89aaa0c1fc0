package propcap.season;

import java.util.Arrays;
import propcap.farm.Milestone;

/**
 * Every move of every tray in one season, one after the other as they were made: what a grower
 * would have written down who noted each tray. Kept only where it is asked for, since it is a
 * hundred times as long as the outcome.
 */
public final class Diary {
  /** What stands for a place before a tray is sown and after it is planted out. */
  public static final int NOWHERE = -1;

  private static final int SOWING = 0;
  private static final int TRAY = 1;
  private static final int MILESTONE = 2;
  private static final int DAY = 3;
  private static final int FROM = 4;
  private static final int TO = 5;
  private static final int SPACES = 6;
  private static final int FILLS = 7;
  private static final int PLANTS = 8;
  private static final int WIDTH = 9;

  private static final Milestone[] MILESTONES = Milestone.values();

  /** By rank: where the tray stood before this move, and how many spaces it filled. */
  private final int[] stoodIn;

  private final int[] filled;

  private int[] notes = new int[WIDTH * 4096];
  private int end;

  Diary(int ranks) {
    stoodIn = new int[ranks];
    filled = new int[ranks];
  }

  /** Notes a move that the tray has just made. */
  void note(Tray tray, Milestone move, int day) {
    int rank = tray.rank();
    boolean enters = move == Milestone.SOWN;
    boolean leaves = move == Milestone.PLANTED_OUT;
    if (end == notes.length) {
      notes = Arrays.copyOf(notes, 2 * end);
    }
    notes[end + SOWING] = tray.line.sowing;
    notes[end + TRAY] = tray.number;
    notes[end + MILESTONE] = move.ordinal();
    notes[end + DAY] = day;
    notes[end + FROM] = enters ? NOWHERE : stoodIn[rank];
    notes[end + TO] = leaves ? NOWHERE : tray.place();
    notes[end + SPACES] = enters ? tray.spaces() : filled[rank];
    notes[end + FILLS] = tray.spaces();
    notes[end + PLANTS] = tray.plants();
    end += WIDTH;
    stoodIn[rank] = tray.place();
    filled[rank] = tray.spaces();
  }

  /** How many moves were made. */
  public int moves() {
    return end / WIDTH;
  }

  /** The sowing of a move, by its number in the plan. */
  public int sowing(int move) {
    return notes[move * WIDTH + SOWING];
  }

  /** The tray of its sowing, from 0; one sown again has the number of the one that failed. */
  public int tray(int move) {
    return notes[move * WIDTH + TRAY];
  }

  public Milestone milestone(int move) {
    return MILESTONES[notes[move * WIDTH + MILESTONE]];
  }

  /** The day's number in the season. */
  public int day(int move) {
    return notes[move * WIDTH + DAY];
  }

  /** The place that the tray came from, by its number; {@link #NOWHERE} where it was sown. */
  public int from(int move) {
    return notes[move * WIDTH + FROM];
  }

  /** The place that it went to; {@link #NOWHERE} where it was planted out. */
  public int to(int move) {
    return notes[move * WIDTH + TO];
  }

  /** Trays that were carried: the spaces that they filled before the move. */
  public int trays(int move) {
    return notes[move * WIDTH + SPACES];
  }

  /** Spaces that they fill after it: where plugs become pots, the trays of pots. */
  public int fills(int move) {
    return notes[move * WIDTH + FILLS];
  }

  /** Plants that were in them after the move; before the first one, cells. */
  public int plants(int move) {
    return notes[move * WIDTH + PLANTS];
  }
}
