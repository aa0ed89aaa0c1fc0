package propcap.evidence;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.evidence.TrayEvidence.Leg;
import propcap.farm.Loss;

/**
 * A tray's counts and the times that decide how long it was held. Times are in days since 1970;
 * infinite: it never came to that.
 *
 * @param readyAfter the round before {@code readyBy}
 * @param readyBy the round on which it was found ready, or, where nobody wrote that, on which it
 *     was moved
 * @param warmth on the table since it left the heat, by which being ready has its law where nobody
 *     wrote it; null where it is written, or where no leg hangs on it
 * @param pottedAt when it was potted on
 * @param potReadyAt when the pot was ready
 * @param movedOutAt when it left the table for the open
 */
record TrayCourse(
    List<Leg> legs,
    boolean outbreakSeen,
    double readyAfter,
    double readyBy,
    @Nullable WarmthCourse warmth,
    double pottedAt,
    double potReadyAt,
    double movedOutAt) {
  TrayCourse {
    legs = List.copyOf(legs);
  }

  boolean has(Loss stage) {
    return legs.stream().anyMatch(leg -> leg.losses().contains(stage));
  }

  /** Days of a leg on which the plug stood ready beyond the days that it keeps. */
  double plugBeyond(Leg leg, double ready, double keeps) {
    return beyond(leg.from(), Math.min(leg.to(), pottedAt), ready + keeps);
  }

  /** The same of the pot. */
  double potBeyond(Leg leg, double keeps) {
    return leg.to() <= pottedAt
        ? 0
        : beyond(Math.max(leg.from(), pottedAt), leg.to(), potReadyAt + keeps);
  }

  private static double beyond(double from, double to, double kept) {
    return Math.max(0, to - Math.max(from, kept));
  }

  /** Days of a leg on the table after growing on: as a ready plug, or in pots. */
  double waiting(Leg leg) {
    return leg.losses().contains(Loss.GROWING_ON)
        ? 0
        : Math.max(0, Math.min(leg.to(), movedOutAt) - leg.from());
  }
}
