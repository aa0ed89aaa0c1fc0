package propcap.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;

/**
 * The trays of one lot at one temperature, as a likelihood wants them: when a seedling showed is
 * known only to lie between two inspections, and what never showed may yet have come later.
 */
final class ShowingCounts {
  /** Seedlings that showed after one inspection and by the next, of all trays together. */
  record Interval(double fromDays, double toDays, int seedlings) {}

  /** The totals of the trays that were last inspected on one day. */
  record End(double days, BetaBinomial totals) {}

  private final List<CountedTray> trays;
  private final List<Interval> intervals = new ArrayList<>();
  private final List<End> ends = new ArrayList<>();

  ShowingCounts(List<CountedTray> trays) {
    this.trays = List.copyOf(trays);
    Map<Double, Map<Double, Integer>> shown = new TreeMap<>();
    Map<Double, List<CountedTray>> byEnd = new TreeMap<>();
    for (CountedTray tray : trays) {
      double from = 0;
      int before = 0;
      for (Inspection inspection : tray.inspections()) {
        int fresh = inspection.emerged() - before;
        if (fresh > 0) {
          shown
              .computeIfAbsent(from, d -> new TreeMap<>())
              .merge(inspection.days(), fresh, Integer::sum);
        }
        from = inspection.days();
        before = inspection.emerged();
      }
      byEnd.computeIfAbsent(tray.lastDays(), d -> new ArrayList<>()).add(tray);
    }
    shown.forEach((from, tos) -> tos.forEach((to, n) -> intervals.add(new Interval(from, to, n))));
    byEnd.forEach((days, there) -> ends.add(new End(days, new BetaBinomial(there))));
  }

  List<CountedTray> trays() {
    return trays;
  }

  /** Those in which a seedling showed. */
  List<Interval> intervals() {
    return intervals;
  }

  int seeds() {
    return trays.stream().mapToInt(CountedTray::seeds).sum();
  }

  int emerged() {
    return trays.stream().mapToInt(CountedTray::emerged).sum();
  }

  double lastDays() {
    return trays.stream().mapToDouble(CountedTray::lastDays).max().orElse(0);
  }

  /**
   * Whether a curve can be told from them. Seedlings in one interval, or in two side by side, fit a
   * curve of any steepness equally well.
   */
  boolean tellACurve() {
    for (Interval a : intervals) {
      for (Interval b : intervals) {
        boolean apart = a.toDays() < b.fromDays();
        boolean oneBetween =
            a.toDays() == b.fromDays()
                && intervals.stream()
                    .anyMatch(c -> c.toDays() <= a.fromDays() || c.fromDays() >= b.toDays());
        if (apart || oneBetween) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * Log-likelihood of when the seedlings showed, given how many had by each tray's end: it does not
   * hang on how many seeds germinate, nor on whether trays differ in that.
   */
  double logLikelihoodOfTimes(CurveFamily family, double logMedian, double spread) {
    double sum = 0;
    for (Interval interval : intervals) {
      double share =
          family.between(
              z(interval.fromDays(), logMedian, spread), z(interval.toDays(), logMedian, spread));
      sum += interval.seedlings() * Math.log(Math.max(share, Double.MIN_NORMAL));
    }
    for (End end : ends) {
      double share = family.below(z(end.days(), logMedian, spread));
      sum -= end.totals().emerged() * Math.log(Math.max(share, Double.MIN_NORMAL));
    }
    return sum;
  }

  /** Log-likelihood of how many had shown by each tray's end, less what hangs on no parameter. */
  double logLikelihoodOfTotals(
      CurveFamily family, double germinating, double logMedian, double spread, double correlation) {
    double sum = 0;
    for (End end : ends) {
      double up = germinating * family.below(z(end.days(), logMedian, spread));
      sum += end.totals().logLikelihood(up, correlation);
    }
    return sum;
  }

  /** A rough median of those that showed, days: where to start looking for a better one. */
  double roughMedianDays() {
    int half = (emerged() + 1) / 2;
    int sum = 0;
    List<Interval> inOrder = new ArrayList<>(intervals);
    inOrder.sort((a, b) -> Double.compare(a.toDays(), b.toDays()));
    for (Interval interval : inOrder) {
      sum += interval.seedlings();
      if (sum >= half) {
        return (interval.fromDays() + interval.toDays()) / 2;
      }
    }
    return lastDays();
  }

  private static double z(double days, double logMedian, double spread) {
    return days <= 0 ? Double.NEGATIVE_INFINITY : (Math.log(days) - logMedian) / spread;
  }
}
