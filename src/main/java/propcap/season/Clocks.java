package propcap.season;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import propcap.chance.ThermalClock;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.WeatherYear;

/** The thermal clocks of every crop in every place of one weather year. */
final class Clocks {
  private final ThermalClock[][] emergence;
  private final ThermalClock[][] growingOn;

  /** Clocks by the crop's and the place's position in these lists. */
  Clocks(List<Crop> crops, List<Place> places, WeatherYear year) {
    emergence = new ThermalClock[crops.size()][];
    growingOn = new ThermalClock[crops.size()][];
    for (int c = 0; c < crops.size(); c++) {
      emergence[c] = clocks(places, year, crops.get(c).emergence()::rate);
      growingOn[c] = clocks(places, year, crops.get(c).growingOn()::rate);
    }
  }

  private static ThermalClock[] clocks(
      List<Place> places, WeatherYear year, DoubleUnaryOperator rate) {
    // Places with one climate share a clock.
    Map<Climate, ThermalClock> byClimate = new HashMap<>();
    return places.stream()
        .map(p -> byClimate.computeIfAbsent(p.climate(), c -> clock(c, year, rate)))
        .toArray(ThermalClock[]::new);
  }

  private static ThermalClock clock(Climate climate, WeatherYear year, DoubleUnaryOperator rate) {
    double[] rates = new double[year.days()];
    for (int d = 0; d < rates.length; d++) {
      rates[d] = rate.applyAsDouble(climate.meanC(year.meanC(d)));
    }
    return new ThermalClock(rates);
  }

  ThermalClock emergence(int crop, int place) {
    return emergence[crop][place];
  }

  ThermalClock growingOn(int crop, int place) {
    return growingOn[crop][place];
  }
}
