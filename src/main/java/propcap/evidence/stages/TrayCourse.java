package propcap.evidence.stages;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import propcap.evidence.stages.TrayEvidence.Leg;
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

  /** Whether plugs or pots stood ready on any leg. */
  boolean mayBeHeld() {
    return legs.stream().anyMatch(leg -> leg.to() > readyBy) || warmth != null;
  }

  /** This course with a part of its legs. */
  TrayCourse with(Predicate<Leg> wanted) {
    return new TrayCourse(
        legs.stream().filter(wanted).toList(),
        outbreakSeen,
        readyAfter,
        readyBy,
        warmth,
        pottedAt,
        potReadyAt,
        movedOutAt);
  }

  /**
   * Whether a leg tells of one stage and nothing else: it is known that nothing was held too long.
   *
   * @param plugKeeps days that a ready plug keeps for certain
   * @param potKeeps days that a ready pot does
   */
  boolean tellsOnly(Loss stage, Leg leg, double plugKeeps, double potKeeps) {
    return warmth == null
        && leg.losses().equals(Set.of(stage))
        && plugBeyond(leg, readyAfter, plugKeeps) == 0
        && potBeyond(leg, potKeeps) == 0;
  }

  /** Days of a leg on which the plug stood ready beyond the days that it keeps. */
  double plugBeyond(Leg leg, double ready, double keeps) {
    return beyond(leg.from(), Math.min(leg.to(), pottedAt), ready + keeps);
  }

  /** Days of a leg on which the pot stood ready beyond the days that it keeps. */
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
