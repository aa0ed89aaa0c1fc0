package propcap.study.money;

import java.math.BigDecimal;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.season.SeasonOutcome;

/**
 * The season's margin: plants sold, less those that are lacking, trays, pots, people's hours and
 * the running of places. What it costs to buy and keep places is not in it. Sums are exact.
 */
public final class Accounts {
  private Accounts() {}

  /** Reads the margin of a season, in the currency of a scenario that has prices. */
  public static ToDoubleFunction<SeasonOutcome> marginOf(Scenario scenario) {
    Prices prices = scenario.prices();
    if (prices == null) {
      throw new IllegalArgumentException(scenario.name() + " has no money");
    }
    return season -> margin(scenario, prices, season).doubleValue();
  }

  /** Margin of a season of a scenario that has prices, in its currency. */
  public static BigDecimal margin(Scenario scenario, Prices prices, SeasonOutcome season) {
    BigDecimal plants =
        IntStream.range(0, season.sowings())
            .mapToObj(s -> sowing(prices, scenario.sowings().get(s), season, s))
            .reduce(BigDecimal.ZERO, BigDecimal::add);
    return plants.subtract(running(scenario, season)).subtract(wages(prices, season));
  }

  /** What one sowing brings of it: all but the running of places. */
  static BigDecimal sowing(Prices prices, Sowing sowing, SeasonOutcome season, int s) {
    Prices.PlantPrices price = prices.of(sowing.crop());
    int onTime = season.onTime(s);
    int late = season.late(s);
    int lacking = Math.max(0, sowing.plantsNeeded() - onTime - late);
    if (!prices.sellSurplus()) {
      onTime = Math.min(onTime, sowing.plantsNeeded());
      late = Math.min(late, sowing.plantsNeeded() - onTime);
    }
    return times(price.worth(), onTime)
        .add(times(price.late(), late))
        .subtract(times(price.lacking(), lacking))
        .subtract(times(prices.trayOf(sowing.crop()), season.trays(s, TrayMove.SOWN)))
        .subtract(times(prices.potTray(), season.potTrays(s)));
  }

  /** What the places in use cost to run. */
  static BigDecimal running(Scenario scenario, SeasonOutcome season) {
    BigDecimal sum = BigDecimal.ZERO;
    for (int p = 0; p < scenario.places().size(); p++) {
      Place.Cost cost = scenario.places().get(p).cost();
      if (cost != null && cost.runPerDay().signum() > 0) {
        sum = sum.add(times(cost.runPerDay(), season.daysInUse(p)));
      }
    }
    return sum;
  }

  private static BigDecimal wages(Prices prices, SeasonOutcome season) {
    return prices.hour().signum() == 0
        ? BigDecimal.ZERO
        : prices.hour().multiply(BigDecimal.valueOf(season.hours()));
  }

  private static BigDecimal times(BigDecimal amount, int count) {
    return amount.multiply(BigDecimal.valueOf(count));
  }
}
