package propcap.evidence.germination;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.CountedTray;

/**
 * Whether the replicates of a germination test agree. The rule of 7 CFR 201.55(a) is for four or
 * two replicates of 100 seeds: a test whose best and worst replicate lie further apart than its
 * table allows at their average is to be made again.
 *
 * @param average mean of the percents of the replicates, rounded to a whole one
 * @param range of the replicates, points of percent
 * @param allowed by the rule; null where the rule does not apply
 * @param chanceOfRange of replicates that lie so far apart or further, were they alike; null for
 *     one replicate or where all or none came up
 */
public record ReplicateTolerance(
    int replicates,
    int average,
    double range,
    @Nullable Integer allowed,
    Verdict verdict,
    @Nullable Double chanceOfRange) {

  /** What the rule says. */
  public enum Verdict {
    WITHIN,
    /** To be tested again. */
    BEYOND,
    /** The rule's table as it could be read ends above this average, and its last row is passed. */
    TABLE_ENDS,
    /** Other numbers of seeds or replicates than the rule is for. */
    NO_RULE
  }

  private static final int RULE_SEEDS = 100;

  /**
   * The table of 7 CFR 201.55(a), for averages of 99 % down to 71 %; each row also holds for the
   * average that makes it up to 101. The copy that could be read ends there.
   */
  private static final int TOP = 99;

  private static final int BOTTOM = 71;
  private static final int MIRROR = 101;

  private static final List<Integer> FOUR =
      List.of(
          5, 6, 7, 8, 9, 10, 10, 11, 11, 12, 12, 13, 13, 14, 14, 14, 15, 15, 15, 16, 16, 16, 17, 17,
          17, 17, 17, 18, 18);

  /** From 97 % down: above it the table has no entry for two replicates. */
  private static final int TOP_OF_TWO = 97;

  private static final List<Integer> TWO =
      List.of(
          6, 6, 7, 8, 8, 9, 9, 9, 10, 10, 11, 11, 11, 11, 12, 12, 12, 13, 13, 13, 13, 13, 14, 14,
          14, 14, 14);

  /** Judges the trays of one lot at one temperature. */
  static ReplicateTolerance of(List<CountedTray> trays) {
    double sum = 0;
    double least = 100;
    double most = 0;
    for (CountedTray tray : trays) {
      double percent = 100.0 * tray.emerged() / tray.seeds();
      sum += percent;
      least = Math.min(least, percent);
      most = Math.max(most, percent);
    }
    int n = trays.size();
    int average = (int) Math.round(sum / n);
    double range = most - least;
    boolean isRuled = (n == 4 || n == 2) && trays.stream().allMatch(t -> t.seeds() == RULE_SEEDS);
    int row = Math.max(average, MIRROR - average);
    Integer allowed = isRuled ? allowed(n, row) : null;
    Verdict verdict =
        allowed == null
            ? Verdict.NO_RULE
            : range <= allowed
                ? Verdict.WITHIN
                : row < BOTTOM ? Verdict.TABLE_ENDS : Verdict.BEYOND;
    return new ReplicateTolerance(n, average, range, allowed, verdict, chanceOfRange(trays, range));
  }

  /**
   * Below the table's end the range allowed grows no less, so that what keeps to the last row is
   * within; what does not is left open.
   */
  private static @Nullable Integer allowed(int replicates, int row) {
    int top = replicates == 4 ? TOP : TOP_OF_TWO;
    List<Integer> ranges = replicates == 4 ? FOUR : TWO;
    return row > top ? null : ranges.get(Math.min(top - row, top - BOTTOM));
  }

  private static @Nullable Double chanceOfRange(List<CountedTray> trays, double range) {
    return trays.size() > 1 && Tally.of(trays).isMixed()
        ? (Double) ReplicateRange.chanceOf(trays, range)
        : null;
  }
}
