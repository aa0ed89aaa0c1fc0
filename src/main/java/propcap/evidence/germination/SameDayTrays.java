package propcap.evidence.germination;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.CountedTray;

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
      List<FoundSeedlings> looks =
          FoundSeedlings.of(tray).stream().filter(look -> look.toDays() > 0).toList();
      List<Double> days = looks.stream().map(FoundSeedlings::toDays).toList();
      int[] fresh = byDays.computeIfAbsent(days, d -> new int[d.size()]);
      Arrays.setAll(fresh, i -> fresh[i] + looks.get(i).seedlings());
    }
    return byDays.entrySet().stream()
        .map(e -> new SameDayTrays(e.getKey(), Arrays.stream(e.getValue()).boxed().toList()))
        .toList();
  }

  double lastDays() {
    return days.get(days.size() - 1);
  }

  int emerged() {
    return seedlings.stream().mapToInt(Integer::intValue).sum();
  }
}
