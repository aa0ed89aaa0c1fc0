package propcap.farm;

import java.io.Serializable;
import java.math.BigDecimal;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What plants and trays are worth and cost. Amounts are decimal numbers of the currency, kept
 * exact: only what is shown is rounded.
 *
 * @param currency such as EUR, for show
 * @param byCrop prices by crop name
 * @param otherwise prices of the crops not named; null: there are none
 * @param tray cost of seed and mix for a tray sown, unless its crop sets its own
 * @param potTray cost of a tray of pots
 * @param discount rate a year at which later money counts less, 0 to 1
 * @param sellSurplus whether plants beyond those needed are sold as well
 * @param hour of people's work in the rounds
 */
public record Prices(
    String currency,
    Map<String, PlantPrices> byCrop,
    @Nullable PlantPrices otherwise,
    BigDecimal tray,
    BigDecimal potTray,
    double discount,
    boolean sellSurplus,
    BigDecimal hour)
    implements Serializable {
  public Prices {
    Checks.require(!currency.isBlank(), "money needs a currency");
    byCrop = Map.copyOf(byCrop);
    Checks.notNegative("tray", tray);
    Checks.notNegative("pot-tray", potTray);
    Checks.probability("discount", discount);
    Checks.notNegative("hour", hour);
  }

  /**
   * Prices of one crop, each a plant.
   *
   * @param worth of a plant on time
   * @param late of a plant that is late
   * @param lacking what it costs to lack a plant that is needed, such as buying one in
   * @param tray cost of seed and mix for a tray sown; null: as for all
   */
  public record PlantPrices(
      BigDecimal worth, BigDecimal late, BigDecimal lacking, @Nullable BigDecimal tray)
      implements Serializable {
    public PlantPrices {
      Checks.notNegative("worth", worth);
      Checks.notNegative("late", late);
      Checks.notNegative("short", lacking);
      if (tray != null) {
        Checks.notNegative("tray", tray);
      }
    }
  }

  /**
   * A crop's prices.
   *
   * @throws IllegalArgumentException where it has none
   */
  public PlantPrices of(String crop) {
    PlantPrices own = byCrop.get(crop);
    PlantPrices found = own == null ? otherwise : own;
    if (found == null) {
      throw new IllegalArgumentException("money has no price for " + crop + ", and no default");
    }
    return found;
  }

  /** Cost of seed and mix for a tray of a crop. */
  public BigDecimal trayOf(String crop) {
    BigDecimal own = of(crop).tray();
    return own == null ? tray : own;
  }
}
