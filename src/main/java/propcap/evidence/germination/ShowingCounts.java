package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import propcap.farm.CountedTray;

/**
 * The trays of one lot at one temperature, as a likelihood wants them: when a seedling showed is
 * known only to lie between two inspections, and what never showed may yet have come later.
 */
final class ShowingCounts {
  /** The seeds of all trays that were last inspected on one day: up by then, and not. */
  private record End(double days, int up, int down) {
    /** Log-likelihood of a share that is up by then. */
    double logLikelihood(double share) {
      return up * logOf(share) + down * logOf(1 - share);
    }
  }

  /** The log-likelihood of a curve by which none would have shown by the end. */
  private static final double OUT_OF_THE_QUESTION = -1e9;

  private final List<CountedTray> trays;

  /** Those in which a seedling showed, of all trays together. */
  private final List<FoundSeedlings> intervals = new ArrayList<>();

  private final List<End> ends = new ArrayList<>();
  private final Tally tally;

  ShowingCounts(List<CountedTray> trays) {
    this.trays = List.copyOf(trays);
    this.tally = Tally.of(trays);
    Map<Double, Map<Double, Integer>> shown = new TreeMap<>();
    Map<Double, List<CountedTray>> byEnd = new TreeMap<>();
    for (CountedTray tray : trays) {
      for (FoundSeedlings found : FoundSeedlings.of(tray)) {
        if (found.seedlings() > 0) {
          shown
              .computeIfAbsent(found.fromDays(), d -> new TreeMap<>())
              .merge(found.toDays(), found.seedlings(), Integer::sum);
        }
      }
      byEnd.computeIfAbsent(tray.lastDays(), d -> new ArrayList<>()).add(tray);
    }
    shown.forEach(
        (from, tos) -> tos.forEach((to, n) -> intervals.add(new FoundSeedlings(from, to, n))));
    byEnd.forEach(
        (days, there) -> {
          Tally end = Tally.of(there);
          ends.add(new End(days, end.up(), end.seeds() - end.up()));
        });
  }

  List<CountedTray> trays() {
    return trays;
  }

  int seeds() {
    return tally.seeds();
  }

  int emerged() {
    return tally.up();
  }

  double lastDays() {
    return trays.stream().mapToDouble(CountedTray::lastDays).max().orElse(0);
  }

  /**
   * Whether a curve can be told from them. Seedlings in one interval, or in two side by side, fit a
   * curve of any steepness equally well.
   */
  boolean tellACurve() {
    for (FoundSeedlings a : intervals) {
      for (FoundSeedlings b : intervals) {
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
    for (FoundSeedlings interval : intervals) {
      double share =
          family.between(
              z(interval.fromDays(), logMedian, spread), z(interval.toDays(), logMedian, spread));
      sum += interval.seedlings() * logOf(share);
    }
    for (End end : ends) {
      double share = family.below(z(end.days(), logMedian, spread));
      if (end.up() > 0 && share < Double.MIN_NORMAL) {
        return OUT_OF_THE_QUESTION;
      }
      sum -= end.up() * logOf(share);
    }
    return sum;
  }

  /** Log-likelihood of how many had shown by each tray's end, less what hangs on no parameter. */
  double logLikelihoodOfTotals(
      CurveFamily family, double germinating, double logMedian, double spread) {
    double sum = 0;
    for (End end : ends) {
      sum += end.logLikelihood(germinating * family.below(z(end.days(), logMedian, spread)));
    }
    return sum;
  }

  /** Log-likelihood of a share that shows by each tray's end. */
  double logLikelihoodOfShown(double share) {
    return ends.stream().mapToDouble(end -> end.logLikelihood(share)).sum();
  }

  /** The share that germinates to which the totals point, were this the curve. */
  double likeliestShare(CurveFamily family, double logMedian, double spread) {
    double[] shown =
        ends.stream().mapToDouble(end -> family.below(z(end.days(), logMedian, spread))).toArray();
    DoubleUnaryOperator rise =
        share -> {
          double sum = 0;
          for (int i = 0; i < shown.length; i++) {
            double missing = Math.max(1 - share * shown[i], Double.MIN_NORMAL);
            sum += ends.get(i).up() / share - ends.get(i).down() * shown[i] / missing;
          }
          return sum;
        };
    if (emerged() == 0) {
      return 0;
    }
    if (rise.applyAsDouble(1) >= 0) {
      return 1;
    }
    if (ends.size() == 1) {
      return emerged() / (seeds() * shown[0]);
    }
    return new BrentSolver(1e-10).solve(200, rise::applyAsDouble, 0.5 * emerged() / seeds(), 1);
  }

  /** A rough median of those that showed, days: where to start looking for a better one. */
  double roughMedianDays() {
    int half = (emerged() + 1) / 2;
    int sum = 0;
    List<FoundSeedlings> inOrder = new ArrayList<>(intervals);
    inOrder.sort((a, b) -> Double.compare(a.toDays(), b.toDays()));
    for (FoundSeedlings interval : inOrder) {
      sum += interval.seedlings();
      if (sum >= half) {
        return (interval.fromDays() + interval.toDays()) / 2;
      }
    }
    return lastDays();
  }

  /** Whether each tray was counted once, so that nothing tells whether more were to come. */
  boolean countedOnce() {
    return trays.stream().allMatch(tray -> tray.inspections().size() == 1);
  }

  private static double logOf(double share) {
    return Math.log(Math.max(share, Double.MIN_NORMAL));
  }

  private static double z(double days, double logMedian, double spread) {
    return days <= 0 ? Double.NEGATIVE_INFINITY : (Math.log(days) - logMedian) / spread;
  }
}
