package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;

/**
 * Trays of a lot that should differ by chance alone: those of one temperature, by the last day on
 * which all of them were looked at. A tray that was counted for longer than another must not pass
 * for one that came up better.
 */
final class ReplicateGroups {
  private ReplicateGroups() {}

  static List<List<CountedTray>> of(Collection<CountedTray> lot) {
    Map<Double, List<CountedTray>> byTemperature =
        lot.stream()
            .collect(Collectors.groupingBy(CountedTray::tempC, TreeMap::new, Collectors.toList()));
    List<List<CountedTray>> groups = new ArrayList<>();
    for (List<CountedTray> trays : byTemperature.values()) {
      NavigableSet<Double> common = days(trays.get(0));
      trays.forEach(tray -> common.retainAll(days(tray)));
      if (common.isEmpty()) {
        trays.forEach(tray -> groups.add(List.of(tray)));
      } else {
        groups.add(trays.stream().map(tray -> upTo(tray, common.last())).toList());
      }
    }
    return Collections.unmodifiableList(groups);
  }

  /** After the sowing. */
  private static NavigableSet<Double> days(CountedTray tray) {
    return tray.inspections().stream()
        .map(Inspection::days)
        .filter(days -> days > 0)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static CountedTray upTo(CountedTray tray, double days) {
    return new CountedTray(
        tray.lot(),
        tray.crop(),
        tray.tempC(),
        tray.tray(),
        tray.seeds(),
        tray.inspections().stream().filter(look -> look.days() <= days).toList());
  }
}
