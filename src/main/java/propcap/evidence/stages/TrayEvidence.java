package propcap.evidence.stages;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import propcap.farm.LoggedTray;
import propcap.farm.Loss;
import propcap.farm.Worded;

/**
 * What one tray of a log tells.
 *
 * @param readiness what its rows say of when it was ready
 * @param ripening null: nothing of when it was ready
 * @param outbreakSeen whether damping-off was written down
 * @param legs what was lost between one count and the next
 * @param untold why some of its counts tell nothing of losses
 * @param waitedDays from ready to the first move; null: not known
 */
public record TrayEvidence(
    LoggedTray tray,
    Readiness readiness,
    @Nullable Ripening ripening,
    boolean outbreakSeen,
    List<Leg> legs,
    Set<Untold> untold,
    @Nullable Integer waitedDays) {
  public TrayEvidence {
    legs = List.copyOf(legs);
    untold = Set.copyOf(untold);
  }

  /** What a tray's rows say of when it was ready. */
  public enum Readiness implements Worded {
    /** The day was written down. */
    WRITTEN,
    /** It was moved without that, so it was ready by then. */
    MOVED,
    /** It was not ready when the log ends, or when it was thrown out. */
    NOT_YET,
    /** It is not known when it left the heat. */
    NO_OFF_HEAT,
    /** It was ready, or moved, before it had any warmth on the table. */
    AT_ONCE,
    /** It was never moved, in a log that does not always write when trays are ready. */
    NOT_SAID,
    /** It has had no row for so long that it was rather forgotten than still on the table. */
    FORGOTTEN
  }

  /** Why counts tell nothing of losses. */
  public enum Untold {
    /** A night that kills while it was outside: frost may have taken a part. */
    KILLING_NIGHT,
    /** It was thrown out with plants left, and why is not written. */
    THROWN_OUT_ALIVE,
    /**
     * Neither when it left the heat nor when it was ready is known, so not how long it was held.
     */
    HELD_NOT_KNOWN
  }

  /** The tray's evidence where, for this reason, nothing is known of when it was ready. */
  TrayEvidence without(Readiness reason) {
    return new TrayEvidence(tray, reason, null, outbreakSeen, legs, untold, waitedDays);
  }

  /** Counts of a stage's losses, whatever else befell the plants between them. */
  public Optional<Count> of(Loss stage) {
    return legs.stream().filter(leg -> leg.losses().contains(stage)).map(Leg::count).findFirst();
  }

  /**
   * When a tray was ready, in degree days since it left the heat.
   *
   * @param above it was not yet ready then
   * @param upTo it was ready then; infinite: it is not known to have been ready
   */
  public record Ripening(double above, double upTo) {
    public Ripening {
      if (!(above >= 0 && upTo > 0 && above <= upTo && Double.isFinite(above))) {
        throw new IllegalArgumentException("no time to be ready: " + above + " to " + upTo);
      }
    }

    /** In the middle of the time in which it became ready. */
    public double middle() {
      return (above + upTo) / 2;
    }
  }

  /** Plants at the start of a stage, and those of them lost in it. */
  public record Count(int plants, int lost) {
    public Count {
      if (lost < 0 || lost > plants) {
        throw new IllegalArgumentException(lost + " lost of " + plants);
      }
    }

    public double share() {
      return (double) lost / plants;
    }
  }

  /**
   * Plants between two counts. Being held too long may have cost some of them besides.
   *
   * @param losses the stages that fall between: GROWING_ON, POTTING, HARDENING
   * @param from time of the first count, in days since 1970
   * @param to time of the second
   */
  public record Leg(Count count, Set<Loss> losses, double from, double to) {
    public Leg {
      losses = Set.copyOf(losses);
      if (!(count.plants() > 0 && from <= to)) {
        throw new IllegalArgumentException("no leg: " + count + " from " + from + " to " + to);
      }
    }
  }
}
