package propcap.farm;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What a crop's seed weighs and how much mix its trays and pots take; null: not known.
 *
 * @param gramsPer1000Seeds thousand-seed weight
 * @param mixLitresPerTray to fill a tray of cells
 * @param mixLitresPerPot to fill a pot
 */
public record Materials(
    @Nullable Double gramsPer1000Seeds,
    @Nullable Double mixLitresPerTray,
    @Nullable Double mixLitresPerPot)
    implements Serializable {
  public static final Materials NOT_KNOWN = new Materials(null, null, null);

  public Materials {
    positive("seed-weight", gramsPer1000Seeds);
    positive("mix", mixLitresPerTray);
    positive("pot-mix", mixLitresPerPot);
  }

  private static void positive(String what, @Nullable Double given) {
    if (given != null) {
      Checks.positive(what, given);
    }
  }
}
