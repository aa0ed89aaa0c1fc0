package propcap.past;

import java.time.LocalDate;
import java.util.List;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.SoFar;
import propcap.farm.TrayPast;
import propcap.past.WrittenTray.Entry;

/** A season as it was known on an earlier day than the one up to which its log goes. */
public final class EarlierDay {
  private EarlierDay() {}

  /**
   * The scenario on the morning of a day.
   *
   * @param scenario with a season so far
   * @param day of the season, not after the scenario's today
   */
  public static Scenario of(Scenario scenario, LocalDate day) {
    SoFar soFar = scenario.soFar();
    if (soFar == null) {
      throw new IllegalArgumentException("nothing is known of the season so far");
    }
    List<WrittenTray> written =
        scenario.sowings().stream()
            .flatMap(
                sowing ->
                    soFar.of(sowing).stream()
                        .map(t -> written(t, scenario.season()))
                        .map(t -> before(t, day, scenario.cropOf(sowing))))
            .filter(t -> !t.entries().isEmpty())
            .toList();
    return scenario.withSoFar(
        new SoFar(
            day,
            LogWalk.walk(scenario, day, written).trays(),
            soFar.weather().stream().filter(d -> d.date().isBefore(day)).toList()));
  }

  /** A tray as it would be written down with the place of each move. */
  public static WrittenTray written(TrayPast tray, Season season) {
    return new WrittenTray(
        tray.sowing(),
        tray.name(),
        tray.number(),
        tray.attempt(),
        tray.moves().stream()
            .map(m -> new Entry(m.event(), season.date(m.day()), m.plants(), m.place(), 0))
            .toList());
  }

  private static WrittenTray before(WrittenTray tray, LocalDate day, Crop crop) {
    return new WrittenTray(
        tray.sowing(),
        tray.name(),
        tray.number(),
        tray.attempt(),
        tray.entries().stream()
            .filter(e -> e.date().isBefore(day))
            .map(e -> isYoung(e, day, crop) ? uncounted(e) : e)
            .toList());
  }

  /** A stand stands on the row of off-heat, but is counted only once the last seedlings are up. */
  private static boolean isYoung(Entry entry, LocalDate day, Crop crop) {
    long window = (long) Math.floor(crop.standWindowDays());
    return entry.event() == LoggedEvent.OFF_HEAT && entry.date().plusDays(window + 1).isAfter(day);
  }

  private static Entry uncounted(Entry e) {
    return new Entry(e.event(), e.date(), null, e.place(), e.line());
  }
}
