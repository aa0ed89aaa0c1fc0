package propcap.study;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.Sowings;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Forecasting;

/**
 * Farms made up from a number that need what every other spring brings on time: as they are made
 * up, nearly all of their sowings lack plants in every spring, and nothing can be told of a chance.
 */
public final class EvenChances {
  private EvenChances() {}

  /** The same farm for the same number. */
  public static Scenario from(long seed) throws InterruptedException {
    Scenario made = RandomScenarios.from(seed);
    List<Sowing> sowings = new ArrayList<>();
    for (SowingForecast of :
        Forecasting.forecast(made, new RunSettings(3, 40, null, 1), done -> {}).sowings()) {
      sowings.add(Sowings.needing(of.sowing(), (int) Math.max(1, of.onTime().p50())));
    }
    return made.withSowings(sowings);
  }
}
