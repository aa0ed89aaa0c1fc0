package propcap.farm;

import java.io.Serializable;
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
 * @param germinateIn the place, of those in which its crop germinates, that is tried first; null:
 *     the crop's own order
 * @param leeway what a better plan may change of it
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
    @Nullable LocalDate resowUntil,
    @Nullable String germinateIn,
    Leeway leeway)
    implements Serializable {

  /** That a row of a sowing plan may have. */
  public static final int MOST_TRAYS = 100_000;

  /** That a row of a sowing plan may need. */
  public static final int MOST_PLANTS = 1_000_000_000;

  /**
   * What a better plan may change of a sowing, and what it must reach.
   *
   * @param from first date on which it may be sown; null: not said
   * @param to last date on which it may be sown; null: not said
   * @param goal chance, 0 to 1, with which its plants must be on time; null: as for all
   */
  public record Leeway(@Nullable LocalDate from, @Nullable LocalDate to, @Nullable Double goal)
      implements Serializable {
    public static final Leeway NOT_SAID = new Leeway(null, null, null);

    public Leeway {
      Checks.require(
          from == null || to == null || !to.isBefore(from),
          "sow-to must not be before sow-from " + from + ", was " + to);
      if (goal != null) {
        Checks.probability("goal", goal);
      }
    }

    /** Its goal; that of all where it has none of its own. */
    public double goalOr(double ofAll) {
      return goal == null ? ofAll : goal;
    }
  }

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

  /** This sowing some days later, or earlier: it and its sowing again move, the beds wait. */
  public Sowing shifted(int days) {
    LocalDate again = resowUntil == null ? null : resowUntil.plusDays(days);
    return changed(sow.plusDays(days), trays, again, germinateIn);
  }

  /** This sowing on a day, all else as it is written. */
  public Sowing sownOn(LocalDate day) {
    return changed(day, trays, resowUntil, germinateIn);
  }

  /** This sowing with other trays. */
  public Sowing withTrays(int newTrays) {
    return changed(sow, newTrays, resowUntil, germinateIn);
  }

  /** This sowing with a place that is tried first; null: in its crop's own order. */
  public Sowing germinatingIn(@Nullable String place) {
    return changed(sow, trays, resowUntil, place);
  }

  private Sowing changed(
      LocalDate newSow, int newTrays, @Nullable LocalDate again, @Nullable String place) {
    return new Sowing(
        id,
        crop,
        lot,
        newSow,
        newTrays,
        plantsNeeded,
        bedFrom,
        bedBy,
        bedUntil,
        again,
        place,
        leeway);
  }

  /** Whether a sowing's id is one that a match names, where * stands for any letters. */
  public static boolean matches(String match, String id) {
    String[] parts = match.split("\\*", -1);
    int end = id.length() - parts[parts.length - 1].length();
    if (parts.length == 1 || !id.startsWith(parts[0]) || !id.endsWith(parts[parts.length - 1])) {
      return match.equals(id);
    }
    int at = parts[0].length();
    // Each part as early as it can be leaves most room for those behind it.
    for (int i = 1; i < parts.length - 1 && at >= 0; i++) {
      int found = id.indexOf(parts[i], at);
      at = found < 0 ? -1 : found + parts[i].length();
    }
    return at >= 0 && at <= end;
  }
}
