package propcap.study;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;

/** Money put to a farm that has none; what is not said costs nothing. */
public final class Money {
  public BigDecimal worth = amount("0.95");
  public BigDecimal late = amount("0.40");
  public BigDecimal lacking = amount("1.20");
  public BigDecimal tray = BigDecimal.ZERO;
  public BigDecimal potTray = BigDecimal.ZERO;
  public double discount = .06;
  public boolean sellSurplus = true;

  public static BigDecimal amount(String text) {
    return new BigDecimal(text);
  }

  public static Place.Cost cost(String buy, double lastsYears, String keep, String run) {
    return new Place.Cost(amount(buy), lastsYears, amount(keep), amount(run));
  }

  public Prices prices() {
    return new Prices(
        "EUR",
        Map.of(),
        new Prices.PlantPrices(worth, late, lacking, null),
        tray,
        potTray,
        discount,
        sellSurplus,
        BigDecimal.ZERO);
  }

  /** A farm at these prices. */
  public Scenario in(Scenario farm) {
    return in(farm, prices());
  }

  public static Scenario in(Scenario farm, Prices prices) {
    return new Scenario(
        farm.name(),
        farm.season(),
        farm.frostAtC(),
        farm.rounds(),
        farm.places(),
        farm.crops(),
        farm.sowings(),
        farm.weather(),
        prices,
        Labour.NOT_LIMITED);
  }

  /** A farm whose place costs so much; and, for a place of other spaces, has so many. */
  public static Scenario withCost(
      Scenario farm, String name, int spaces, Place.@Nullable Cost cost) {
    List<Place> places = new ArrayList<>();
    for (Place p : farm.places()) {
      places.add(
          p.name().equals(name)
              ? new Place(name, p.kind(), spaces, p.climate(), p.stretchLossPerDay(), cost)
              : p);
    }
    return farm.withPlaces(places);
  }
}
