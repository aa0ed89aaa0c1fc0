package propcap.farm;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A line of the sowing plan: a batch of trays of one crop from one seed lot.
 *
 * @param crop name of the crop
 * @param lot seed lot; sowings of a crop with the same lot share its luck
 * @param sow date on which it is due to be sown
 * @param plantsNeeded plants wanted in the ground by {@code bedBy}
 * @param bedFrom first date on which the bed is free
 * @param bedBy last date that counts as on time
 * @param bedUntil last date before what is left is thrown out; null: never
 * @param resowUntil last date on which a failed tray is sown again; null: never
 */
public record Sowing(
    String id,
    String crop,
    String lot,
    LocalDate sow,
    int trays,
    int plantsNeeded,
    LocalDate bedFrom,
    LocalDate bedBy,
    @Nullable LocalDate bedUntil,
    @Nullable LocalDate resowUntil) {
  public Sowing {
    Checks.require(!id.isBlank(), "a sowing needs an id");
    Checks.require(!lot.isBlank(), id + " needs a seed lot");
    Checks.atLeast(1, "trays of " + id, trays);
    Checks.atLeast(0, "plants-needed of " + id, plantsNeeded);
    Checks.require(
        !bedBy.isBefore(bedFrom),
        "bed-by must not be before bed-from " + bedFrom + ", was " + bedBy);
    Checks.require(
        bedUntil == null || !bedUntil.isBefore(bedBy),
        "bed-until must not be before bed-by " + bedBy + ", was " + bedUntil);
  }

  /** The same sowing some days later, or earlier: it and its sowing again move, the beds wait. */
  public Sowing shifted(int days) {
    return new Sowing(
        id,
        crop,
        lot,
        sow.plusDays(days),
        trays,
        plantsNeeded,
        bedFrom,
        bedBy,
        bedUntil,
        resowUntil == null ? null : resowUntil.plusDays(days));
  }
}
