package propcap.farm;

import java.time.LocalDate;
import java.util.Collections;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What a weather station wrote down, gaps and all. Degrees C; where a day has both values the
 * minimum is not above the maximum.
 *
 * @param station its name or number; empty where the file has none
 */
public record StationRecord(
    String station, NavigableMap<LocalDate, Double> minC, NavigableMap<LocalDate, Double> maxC) {

  public StationRecord {
    minC = Collections.unmodifiableNavigableMap(new TreeMap<>(minC));
    maxC = Collections.unmodifiableNavigableMap(new TreeMap<>(maxC));
    for (LocalDate date : minC.keySet()) {
      Double max = maxC.get(date);
      Checks.require(
          max == null || minC.get(date) <= max, "tmin must not be above tmax on " + date);
    }
  }

  /** The first and the last day with a value; empty where there is none. */
  public Optional<Season> span() {
    return Stream.of(minC, maxC)
        .filter(values -> !values.isEmpty())
        .map(values -> new Season(values.firstKey(), values.lastKey()))
        .reduce(StationRecord::both);
  }

  private static Season both(Season a, Season b) {
    return new Season(
        a.start().isBefore(b.start()) ? a.start() : b.start(),
        a.end().isAfter(b.end()) ? a.end() : b.end());
  }
}
