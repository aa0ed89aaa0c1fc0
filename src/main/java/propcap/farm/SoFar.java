package propcap.farm;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;

/**
 * A season so far: what was written down of it up to the morning of a day, before that day's round.
 *
 * @param today the first day that is still to come
 * @param trays those that were sown, in any order
 * @param weather this season's days from its start up to the day before today, or none
 */
public record SoFar(LocalDate today, List<TrayPast> trays, List<WeatherRecord.Day> weather)
    implements Serializable {
  public SoFar {
    trays = List.copyOf(trays);
    weather = List.copyOf(weather);
  }

  /** The trays of one sowing. */
  public List<TrayPast> of(Sowing sowing) {
    return trays.stream().filter(t -> t.sowing().equals(sowing.id())).toList();
  }

  /** The fewest trays that a sowing has; see {@link Scenario#leastTrays}. */
  int leastTrays(Sowing sowing) {
    return of(sowing).stream().mapToInt(t -> t.number() + 1).max().orElse(0);
  }

  /** Sowings with no fewer trays than have been sown. */
  List<Sowing> within(List<Sowing> sowings) {
    return sowings.stream()
        .map(s -> s.trays() < leastTrays(s) ? s.withTrays(leastTrays(s)) : s)
        .toList();
  }

  /** The same with other trays. */
  public SoFar withTrays(List<TrayPast> newTrays) {
    return new SoFar(today, newTrays, weather);
  }
}
