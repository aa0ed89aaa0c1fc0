package propcap.farm;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What was written down of one tray.
 *
 * @param sowing id of its sowing
 * @param tray its name within the sowing
 * @param crop name of its crop
 * @param table on which it grew on
 * @param entries in the order of their dates, no event twice
 */
public record LoggedTray(
    String sowing, String tray, String crop, Place table, List<Entry> entries) {
  public LoggedTray {
    entries = List.copyOf(entries);
    Checks.require(!entries.isEmpty(), "a tray needs an event");
    Checks.require(table.kind() == PlaceKind.TABLE, "trays grow on on a table");
    for (int i = 1; i < entries.size(); i++) {
      Checks.require(
          !entries.get(i).date().isBefore(entries.get(i - 1).date()),
          "the dates of a tray must not fall");
    }
  }

  /**
   * A line of the log.
   *
   * @param plants alive in the tray; null: not counted
   */
  public record Entry(LoggedEvent event, LocalDate date, @Nullable Integer plants) {
    public Entry {
      Checks.require(plants == null || plants >= 0, "plants must be 0 or more, were " + plants);
    }
  }

  public Optional<Entry> at(LoggedEvent event) {
    return entries.stream().filter(e -> e.event() == event).findFirst();
  }

  public Optional<LocalDate> date(LoggedEvent event) {
    return at(event).map(Entry::date);
  }

  /** Plants counted at an event; empty where it was not written down or they were not counted. */
  public Optional<Integer> plants(LoggedEvent event) {
    return at(event).flatMap(e -> Optional.ofNullable(e.plants()));
  }

  public boolean had(LoggedEvent event) {
    return at(event).isPresent();
  }
}
