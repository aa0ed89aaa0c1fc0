package propcap.farm;

import java.io.Serializable;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A place with room for trays.
 *
 * @param spaces how many trays fit; 0 is a closed place
 * @param stretchLossPerDay chance a day, 0 to 1, that a seedling is lost that stays here after its
 *     tray was ready to leave the heat
 * @param cost what the place costs, for the spaces that it has; null: not asked
 */
public record Place(
    String name,
    PlaceKind kind,
    int spaces,
    Climate climate,
    double stretchLossPerDay,
    @Nullable Cost cost)
    implements Serializable {
  public Place {
    Checks.require(!name.isBlank(), "a place needs a name");
    Checks.atLeast(0, "spaces of " + name, spaces);
    Checks.probability("stretch-loss of " + name, stretchLossPerDay);
  }

  /**
   * What a place costs, in the scenario's currency.
   *
   * @param buy once
   * @param lastsYears years until it must be bought again
   * @param keepPerYear upkeep, used or not
   * @param runPerDay for each day with anything in it
   */
  public record Cost(
      BigDecimal buy, double lastsYears, BigDecimal keepPerYear, BigDecimal runPerDay)
      implements Serializable {
    public Cost {
      Checks.notNegative("buy", buy);
      Checks.positive("lasts", lastsYears);
      Checks.notNegative("keep", keepPerYear);
      Checks.notNegative("run", runPerDay);
    }
  }

  /** This place with other spaces; what it costs stays as it is. */
  public Place withSpaces(int newSpaces) {
    return new Place(name, kind, newSpaces, climate, stretchLossPerDay, cost);
  }

  public boolean isOpen() {
    return spaces > 0;
  }
}
