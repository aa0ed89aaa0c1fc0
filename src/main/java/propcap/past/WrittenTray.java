package propcap.past;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.LoggedEvent;

/**
 * A tray of this season's log as it was written.
 *
 * @param sowing id of its sowing
 * @param name as the grower calls it
 * @param number of the tray in its sowing, from 0; one sown again has that of the one that failed
 * @param attempt 0; 1 and more where it was sown again
 * @param entries in the order of their dates, the first one sown
 */
public record WrittenTray(
    String sowing, String name, int number, int attempt, List<Entry> entries) {
  public WrittenTray {
    entries = List.copyOf(entries);
  }

  /**
   * A line of the log.
   *
   * @param plants in this tray; null: not counted
   * @param place where it stands after it, by name; null: not written
   * @param line of the file
   */
  public record Entry(
      LoggedEvent event,
      LocalDate date,
      @Nullable Integer plants,
      @Nullable String place,
      int line) {}
}
