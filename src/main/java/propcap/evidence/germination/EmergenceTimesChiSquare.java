package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import propcap.farm.CountedTray;

/**
 * Pearson's test of when seedlings showed, given how many did: neighbouring intervals are put
 * together until 5 are expected in each. Trays that were not inspected on the same days are tested
 * apart and added up.
 */
final class EmergenceTimesChiSquare {
  /** Fewer than this expected in a class, and chi-square is no guide (common practice). */
  private static final double LEAST_EXPECTED = 5;

  /** Median and spread: how many germinate plays no part in when they show. */
  private static final int PARAMETERS = 2;

  private EmergenceTimesChiSquare() {}

  /**
   * Trays that were inspected on the same days, as one.
   *
   * @param days of the inspections, later than the sowing
   * @param seedlings new at each of them
   */
  private record SameDayTrays(List<Double> days, List<Integer> seedlings) {
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

  /** Seedlings of a class of intervals. */
  private record Cell(double seen, double expected) {
    Cell and(Cell other) {
      return new Cell(seen + other.seen, expected + other.expected);
    }

    double misfit() {
      return (seen - expected) * (seen - expected) / expected;
    }
  }

  /** Empty where there are too few classes to tell. */
  static Optional<GoodnessOfFit> of(
      List<CountedTray> trays, CurveFamily family, double logMedian, double spread) {
    double statistic = 0;
    int degrees = -PARAMETERS;
    for (SameDayTrays group : SameDayTrays.of(trays)) {
      List<Cell> cells = merged(cells(group, family, logMedian, spread));
      statistic += cells.stream().mapToDouble(Cell::misfit).sum();
      degrees += Math.max(0, cells.size() - 1);
    }
    return degrees > 0 ? Optional.of(GoodnessOfFit.of(statistic, degrees)) : Optional.empty();
  }

  private static List<Cell> cells(
      SameDayTrays group, CurveFamily family, double logMedian, double spread) {
    List<Cell> cells = new ArrayList<>();
    double end = family.below((Math.log(group.lastDays()) - logMedian) / spread);
    double from = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < group.days().size(); i++) {
      double to = (Math.log(group.days().get(i)) - logMedian) / spread;
      double share = family.between(from, to) / end;
      cells.add(new Cell(group.seedlings().get(i), group.emerged() * share));
      from = to;
    }
    return cells;
  }

  private static List<Cell> merged(List<Cell> cells) {
    List<Cell> merged = new ArrayList<>();
    Cell open = new Cell(0, 0);
    for (Cell cell : cells) {
      open = open.and(cell);
      if (open.expected() >= LEAST_EXPECTED) {
        merged.add(open);
        open = new Cell(0, 0);
      }
    }
    if (!merged.isEmpty()) {
      int last = merged.size() - 1;
      merged.set(last, merged.get(last).and(open));
    }
    return merged;
  }
}
