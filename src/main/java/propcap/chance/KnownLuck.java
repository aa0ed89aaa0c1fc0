package propcap.chance;

import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/** What is known of the luck of a season that has begun, tray by tray. */
public final class KnownLuck {
  /**
   * A tray.
   *
   * @param sowing place in the plan, from 0
   * @param number within the sowing, from 0
   * @param attempt 0 for its first sowing
   */
  public record Tray(int sowing, int number, int attempt) {}

  private static final Comparator<Tray> ORDER =
      Comparator.comparingInt(Tray::sowing)
          .thenComparingInt(Tray::number)
          .thenComparingInt(Tray::attempt);

  private final List<Map<Tray, KnownTray>> byYear;

  private static final Made<List<Map<Tray, KnownTray>>, KnownLuck> MADE = new Made<>(20);

  /**
   * What is known of trays, each year for itself; one and the same where as much is known.
   *
   * @param byYear one for each weather year, in the scenario's order; or a single one, where this
   *     season's weather so far is known, so that it is the same in all years
   */
  public static KnownLuck of(List<Map<Tray, KnownTray>> byYear) {
    return MADE.of(byYear, KnownLuck::new);
  }

  private KnownLuck(List<Map<Tray, KnownTray>> byYear) {
    this.byYear =
        byYear.stream().map(year -> Collections.unmodifiableMap(new HashMap<>(year))).toList();
  }

  /** Which of the years that are told apart a weather year is. */
  int yearOf(int weatherYear) {
    return byYear.size() == 1 ? 0 : weatherYear;
  }

  /** How many years are told apart. */
  int years() {
    return byYear.size();
  }

  /** What is known of a tray; null where it has not been sown. */
  @Nullable KnownTray of(int year, Tray tray) {
    return byYear.get(year).get(tray);
  }

  /** What is known of how the trays of some sowings showed, in the order of the trays. */
  List<KnownShowing> showing(int year, IntPredicate ofSowing) {
    return byYear.get(year).entrySet().stream()
        .filter(e -> ofSowing.test(e.getKey().sowing()))
        .sorted(Map.Entry.comparingByKey(ORDER))
        .map(e -> e.getValue().showing())
        .toList();
  }
}
