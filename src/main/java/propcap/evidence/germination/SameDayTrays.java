package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;

/**
 * Trays that were inspected on the same days, as one.
 *
 * @param days of the inspections, later than the sowing
 * @param seedlings new at each of them
 */
record SameDayTrays(List<Double> days, List<Integer> seedlings) {
  SameDayTrays {
    days = List.copyOf(days);
    seedlings = List.copyOf(seedlings);
  }

  static List<SameDayTrays> of(List<CountedTray> trays) {
    Map<List<Double>, int[]> byDays = new LinkedHashMap<>();
    for (CountedTray tray : trays) {
      List<Inspection> looks =
          tray.inspections().stream().filter(inspection -> inspection.days() > 0).toList();
      List<Double> days = looks.stream().map(Inspection::days).toList();
      int[] fresh = byDays.computeIfAbsent(days, d -> new int[d.size()]);
      int before = 0;
      for (int i = 0; i < fresh.length; i++) {
        fresh[i] += looks.get(i).emerged() - before;
        before = looks.get(i).emerged();
      }
    }
    List<SameDayTrays> groups = new ArrayList<>();
    byDays.forEach(
        (days, fresh) -> {
          List<Integer> seedlings = new ArrayList<>();
          for (int n : fresh) {
            seedlings.add(n);
          }
          groups.add(new SameDayTrays(days, seedlings));
        });
    return groups;
  }

  double lastDays() {
    return days.get(days.size() - 1);
  }

  int emerged() {
    return seedlings.stream().mapToInt(Integer::intValue).sum();
  }
}
