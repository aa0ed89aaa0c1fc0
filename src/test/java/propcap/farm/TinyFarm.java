package propcap.farm;

import java.math.BigDecimal;
import java.util.Map;

/**
 * Two sowings of two trays, on mats with room for one of them: sown as planned, a day apart, the
 * second waits for the first and is late.
 */
public final class TinyFarm {
  private TinyFarm() {}

  /** Nothing is left to luck, so that one spring is all springs. */
  public static Scenario make() {
    Farms farm = new Farms();
    farm.mats = 2;
    farm.house = 4;
    farm.yard = 2;
    farm.sowings.add(sowing("one", 5, 25));
    farm.sowings.add(sowing("two", 6, 27));
    Scenario made = farm.make();
    return new Scenario(
        made.name(),
        made.season(),
        made.frostAtC(),
        made.rounds(),
        made.places(),
        made.crops(),
        made.sowings(),
        made.weather(),
        new Prices(
            "EUR",
            Map.of(),
            new Prices.PlantPrices(euros("1"), euros("0.3"), euros("0.5"), null),
            euros("2"),
            BigDecimal.ZERO,
            0,
            false,
            BigDecimal.ZERO),
        Labour.NOT_LIMITED);
  }

  private static BigDecimal euros(String amount) {
    return new BigDecimal(amount);
  }

  private static Sowing sowing(String id, int sowDay, int bedBy) {
    return new Sowing(
        id,
        "cosmos",
        "lot",
        Farms.day(sowDay),
        2,
        20,
        Farms.day(20),
        Farms.day(bedBy),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }
}
