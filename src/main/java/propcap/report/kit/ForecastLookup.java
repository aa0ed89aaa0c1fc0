package propcap.report.kit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.Forecast.SowingForecast;

/** A forecast in the order in which the grower wrote the plan. */
public final class ForecastLookup {
  private ForecastLookup() {}

  /** The crops that are sown, in the order of their first sowing, whatever order a map has. */
  public static List<String> crops(Forecast forecast) {
    return forecast.sowings().stream().map(s -> s.sowing().crop()).distinct().toList();
  }

  /** Mean cells sown of a crop, trays sown again included. */
  public static double cellsSown(Forecast forecast, String crop) {
    return sowingsOf(forecast, crop).stream().mapToDouble(s -> s.cellsSown().mean()).sum();
  }

  public static List<SowingForecast> sowingsOf(Forecast forecast, String crop) {
    return forecast.sowings().stream().filter(s -> s.sowing().crop().equals(crop)).toList();
  }

  public static List<Occupancy> openPlaces(Forecast forecast) {
    return forecast.places().stream().filter(p -> p.spaces() > 0).toList();
  }

  /** A map of the forecast in the order of its keys, each of which it must hold. */
  public static <K, V> Map<K, V> inOrder(K[] keys, Map<K, V> map) {
    Map<K, V> ordered = new LinkedHashMap<>();
    Stream.of(keys).forEach(key -> ordered.put(key, present(map, key)));
    return ordered;
  }

  /** What a map of the forecast holds for a key that it must hold. */
  public static <K, V> V present(Map<K, V> map, K key) {
    V value = map.get(key);
    if (value == null) {
      throw new IllegalArgumentException("the forecast says nothing of " + key);
    }
    return value;
  }
}
