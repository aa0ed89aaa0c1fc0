package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.List;
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
