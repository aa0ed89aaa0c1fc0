package propcap.chance;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a log says of when the seedlings of one tray showed. Times are thermal times since sowing,
 * degree days.
 *
 * @param counts seedlings showing at times, both rising
 * @param notBy a time at which fewer showed than it takes to leave the heat; 0: nothing is known
 * @param by the time at which the tray left the heat, or was looked at last; infinite where it has
 *     not left
 * @param atLeast seedlings that showed by then: as many as it takes to leave the heat; fewer where
 *     it was pulled; 0 where it has not left
 * @param below fewer than these showed by then, for it was thrown out as failed; {@link
 *     #NOT_FAILED} where it was not
 * @param stand what stood in the end; null: not counted, or it has not left
 */
public record KnownShowing(
    List<Count> counts, double notBy, double by, int atLeast, int below, @Nullable Stand stand) {
  /** More than any tray has cells. */
  public static final int NOT_FAILED = Integer.MAX_VALUE;

  public KnownShowing {
    counts = List.copyOf(counts);
  }

  /** Seedlings that showed by a time. */
  public record Count(double degreeDays, int seedlings) {}

  /**
   * A stand that was counted.
   *
   * @param degreeDays by which a seedling must show to be part of it
   * @param plants counted
   * @param slices the time between {@code notBy} and {@code by}, cut by how leggy a tray that was
   *     due in each of them had grown
   * @param keptIfPulled the share that was kept of a tray that was pulled
   */
  public record Stand(double degreeDays, int plants, List<Slice> slices, double keptIfPulled) {
    public Stand {
      slices = List.copyOf(slices);
    }
  }

  /** A tray that was due by a time, and after that of the slice before, kept such a share. */
  public record Slice(double byDegreeDays, double kept) {}

  /** Whether it left the heat, or should have: it is known how far it was by a time. */
  public boolean isOver() {
    return by < Double.POSITIVE_INFINITY;
  }
}
