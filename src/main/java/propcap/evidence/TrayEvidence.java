package propcap.evidence;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.LoggedTray;
import propcap.farm.Loss;

/**
 * What one tray of a log tells.
 *
 * @param ripening null: nothing of when it was ready
 * @param growingOn null: nothing of the losses on the table
 * @param outbreakSeen whether damping-off was written down
 * @param potting null: nothing of the losses in potting on
 * @param hardening null: nothing of the losses outdoors
 * @param waitedDays from ready to the first move; null: not known
 * @param held counts between which ready plugs waited
 */
public record TrayEvidence(
    LoggedTray tray,
    @Nullable Ripening ripening,
    @Nullable Count growingOn,
    boolean outbreakSeen,
    @Nullable Count potting,
    @Nullable Count hardening,
    @Nullable Integer waitedDays,
    List<Held> held) {
  public TrayEvidence {
    held = List.copyOf(held);
  }

  /**
   * When a tray was ready, in degree days since it left the heat.
   *
   * @param above it was not yet ready then; 0: it is only known to have been ready by the later
   * @param upTo it was ready then
   */
  public record Ripening(double above, double upTo) {
    public Ripening {
      if (!(above >= 0 && upTo > 0 && above <= upTo && Double.isFinite(upTo))) {
        throw new IllegalArgumentException("no time to be ready: " + above + " to " + upTo);
      }
    }

    /** Whether the day is known. */
    public boolean isTimed() {
      return above > 0;
    }

    public double middle() {
      return isTimed() ? (above + upTo) / 2 : upTo;
    }
  }

  /** Plants at the start of a stage, and those of them lost in it. */
  public record Count(int plants, int lost) {
    public Count {
      if (lost < 0 || lost > plants) {
        throw new IllegalArgumentException(lost + " lost of " + plants);
      }
    }

    static Optional<Count> between(Optional<Integer> before, Optional<Integer> after) {
      return before.isPresent() && before.get() > 0 && after.isPresent()
          ? Optional.of(new Count(before.get(), before.get() - after.get()))
          : Optional.empty();
    }

    public double share() {
      return (double) lost / plants;
    }
  }

  /**
   * Plants that waited, ready, between two counts.
   *
   * @param fromDay of the first count, in days since they were ready
   * @param toDay of the second
   * @param besides what else cost plants meanwhile: POTTING, HARDENING, or OVERHELD for no more
   *     than the table's own losses
   */
  public record Held(Count count, double fromDay, double toDay, Loss besides) {
    public Held {
      if (!(fromDay >= 0 && toDay > fromDay && Double.isFinite(toDay))) {
        throw new IllegalArgumentException("no days of waiting: " + fromDay + " to " + toDay);
      }
    }

    /** Days between the counts beyond those that a plug keeps. */
    public double daysBeyond(double holdsDays) {
      return Math.max(0, toDay - holdsDays) - Math.max(0, fromDay - holdsDays);
    }
  }
}
