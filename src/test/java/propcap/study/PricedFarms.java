package propcap.study;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;

/** Farms made up from a number, with money: places that cost something to run, hours, a surplus. */
public final class PricedFarms {
  private PricedFarms() {}

  /** The same farm for the same number. */
  public static Scenario from(long seed) {
    SplittableRandom random = new SplittableRandom(7 * seed + 1);
    return priced(RandomScenarios.from(seed), random);
  }

  /** A farm at prices drawn at random. */
  public static Scenario priced(Scenario made, SplittableRandom random) {
    Labour labour =
        random.nextInt(3) > 0
            ? made.labour()
            : new Labour(
                random.nextDouble(0.1, 2), new Labour.Minutes(5, 2, 6, 0.5, 0.5), List.of());
    List<Place> places =
        made.places().stream()
            .map(
                p ->
                    new Place(
                        p.name(),
                        p.kind(),
                        p.spaces(),
                        p.climate(),
                        p.stretchLossPerDay(),
                        Money.cost("0", 1, "0", String.valueOf(random.nextInt(3)))))
            .toList();
    Prices prices =
        new Prices(
            "EUR",
            Map.of(),
            new Prices.PlantPrices(cents(random, 150), cents(random, 80), cents(random, 150), null),
            cents(random, 300),
            cents(random, 300),
            0,
            random.nextInt(3) == 0,
            random.nextBoolean() ? BigDecimal.ZERO : cents(random, 2000));
    return new Scenario(
        made.name(),
        made.season(),
        made.frostAtC(),
        made.rounds(),
        places,
        made.crops(),
        made.sowings(),
        made.weather(),
        prices,
        labour);
  }

  private static BigDecimal cents(SplittableRandom random, int most) {
    return BigDecimal.valueOf(random.nextInt(most), 2);
  }
}
