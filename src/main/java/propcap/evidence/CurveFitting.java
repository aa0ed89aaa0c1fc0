package propcap.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;

/**
 * Fits a curve to the counts of one lot at one temperature, by maximum likelihood over intervals:
 * the parameters are the logit of the share that germinates, the logarithm of the median time and
 * the logarithm of the spread; limits are those of the profile likelihood.
 */
final class CurveFitting {
  private static final int SHARE = 0;
  private static final int MEDIAN = 1;
  private static final int SPREAD = 2;

  private static final double MOST_LOGIT = 20;
  private static final double MOST_LOG = 15;

  /** Median and spread of a lot at one temperature in common tests: only where to start. */
  private static final double ROUGH_SPREAD = 0.2;

  /** Fewer than this expected in a class, and chi-square is no guide (common practice). */
  private static final double LEAST_EXPECTED = 5;

  private static final int PARAMETERS = 3;
  private static final double CONFIDENCE = 0.95;

  private final ShowingCounts counts;
  private final double correlation;

  /**
   * Fits to counts.
   *
   * @param correlation between two seeds of one tray, taken as known
   */
  CurveFitting(ShowingCounts counts, double correlation) {
    this.counts = counts;
    this.correlation = correlation;
  }

  /** A curve of one shape, before its limits are worked out. */
  record Peak(CurveFamily family, MaximumLikelihood likelihood) {
    double akaike() {
      return 2 * PARAMETERS - 2 * likelihood.height();
    }

    double halfByDays() {
      return Math.exp(likelihood.peak()[MEDIAN]);
    }
  }

  Peak peak(CurveFamily family) {
    double up = (counts.emerged() + 0.5) / (counts.seeds() + 1.0);
    double[] start = {
      Math.log(up / (1 - up)), Math.log(counts.roughMedianDays()), Math.log(ROUGH_SPREAD)
    };
    return new Peak(family, new MaximumLikelihood(logLikelihood(family, 0.5), start, errors(up)));
  }

  /** The errors to be expected, as first steps of the search. */
  private double[] errors(double up) {
    double n = Math.max(1, counts.emerged());
    return new double[] {
      1 / Math.sqrt(counts.seeds() * up * (1 - up)),
      2 * ROUGH_SPREAD / Math.sqrt(n),
      2 / Math.sqrt(n)
    };
  }

  /** With the logarithm of the time by which a share of the seedlings has shown as a parameter. */
  private ToDoubleFunction<double[]> logLikelihood(CurveFamily family, double share) {
    double z = family.quantile(share);
    return point -> {
      double spread = Math.exp(point[SPREAD]);
      double logMedian = point[MEDIAN] - z * spread;
      double germinating = CurveBand.logistic(point[SHARE]);
      return counts.logLikelihoodOfTimes(family, logMedian, spread)
          + counts.logLikelihoodOfTotals(family, germinating, logMedian, spread, correlation);
    };
  }

  /** The curve with its limits. */
  CurveFit fit(Peak top) {
    MaximumLikelihood half = top.likelihood();
    CurveFamily family = top.family();
    double[] peak = half.peak();
    double[] atMost = half.peak();
    atMost[MEDIAN] += family.quantile(0.9) * Math.exp(peak[SPREAD]);
    double up = (counts.emerged() + 0.5) / (counts.seeds() + 1.0);
    MaximumLikelihood most = new MaximumLikelihood(logLikelihood(family, 0.9), atMost, errors(up));
    return new CurveFit(
        family,
        germinating(half),
        exponential(peak[MEDIAN], half, MEDIAN),
        exponential(most.peak()[MEDIAN], most, MEDIAN),
        exponential(peak[SPREAD], half, SPREAD),
        top.akaike(),
        pearson(family, peak[MEDIAN], Math.exp(peak[SPREAD])).orElse(null),
        new CurveBand(family, peak, logLikelihood(family, 0.5)));
  }

  private static Estimate exponential(double at, MaximumLikelihood likelihood, int parameter) {
    double low = likelihood.low(parameter, at - MOST_LOG);
    double high = likelihood.high(parameter, at + MOST_LOG);
    return new Estimate(
        Math.exp(at),
        low <= at - MOST_LOG ? 0 : Math.exp(low),
        high >= at + MOST_LOG ? Double.POSITIVE_INFINITY : Math.exp(high));
  }

  private Estimate germinating(MaximumLikelihood likelihood) {
    double value = CurveBand.logistic(likelihood.peak()[SHARE]);
    double low = CurveBand.logistic(likelihood.low(SHARE, -MOST_LOGIT));
    if (counts.emerged() == counts.seeds()) {
      return allOfThem(low);
    }
    double end = likelihood.high(SHARE, MOST_LOGIT);
    return new Estimate(value, low, end >= MOST_LOGIT ? 1 : CurveBand.logistic(end));
  }

  /** Where all came up the profile's limit is too bold, so the exact one may take its place. */
  private Estimate allOfThem(double low) {
    return new Estimate(1, Math.min(low, exact(counts).getLowerBound()), 1);
  }

  /** The share that had shown by the end: what can be said where no curve can. */
  static Estimate shownByTheEnd(ShowingCounts counts, double correlation) {
    int up = counts.emerged();
    ConfidenceInterval exact = exact(counts);
    if (up == 0) {
      return new Estimate(0, 0, exact.getUpperBound());
    }
    if (up == counts.seeds()) {
      return new Estimate(1, exact.getLowerBound(), 1);
    }
    double share = (double) up / counts.seeds();
    MaximumLikelihood likelihood =
        new MaximumLikelihood(
            point -> totals(counts, CurveBand.logistic(point[0]), correlation),
            new double[] {Math.log(share / (1 - share))},
            new double[] {1 / Math.sqrt(counts.seeds() * share * (1 - share))});
    return new Estimate(
        CurveBand.logistic(likelihood.peak()[0]),
        CurveBand.logistic(likelihood.low(0, -MOST_LOGIT)),
        CurveBand.logistic(likelihood.high(0, MOST_LOGIT)));
  }

  private static double totals(ShowingCounts counts, double share, double correlation) {
    return counts.trays().stream()
        .mapToDouble(t -> BetaBinomial.logLikelihood(t.seeds(), t.emerged(), share, correlation))
        .sum();
  }

  /** Clopper and Pearson (1934): never bolder than it says. */
  private static ConfidenceInterval exact(ShowingCounts counts) {
    return new ClopperPearsonInterval()
        .createInterval(counts.seeds(), counts.emerged(), CONFIDENCE);
  }

  /**
   * Pearson's test of when seedlings showed, given how many did: neighbouring intervals are put
   * together until 5 are expected in each. Trays that were not inspected on the same days are
   * tested apart and added up.
   */
  private Optional<FitTest> pearson(CurveFamily family, double logMedian, double spread) {
    double statistic = 0;
    int classes = 0;
    List<InspectedAlike> groups = InspectedAlike.of(counts.trays());
    for (InspectedAlike group : groups) {
      List<double[]> pairs = new ArrayList<>();
      double end = family.below((Math.log(group.lastDays()) - logMedian) / spread);
      double from = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < group.days().size(); i++) {
        double to = (Math.log(group.days().get(i)) - logMedian) / spread;
        double share = family.between(from, to) / end;
        pairs.add(new double[] {group.seedlings().get(i), group.emerged() * share});
        from = to;
      }
      List<double[]> merged = merged(pairs);
      for (double[] pair : merged) {
        statistic += (pair[0] - pair[1]) * (pair[0] - pair[1]) / pair[1];
      }
      classes += Math.max(0, merged.size() - 1);
    }
    // Of the three parameters the share that germinates plays no part in when they show.
    int degrees = classes - (PARAMETERS - 1);
    return degrees > 0 ? Optional.of(FitTest.of(statistic, degrees)) : Optional.empty();
  }

  /** Observed and expected, put together until enough are expected. */
  private static List<double[]> merged(List<double[]> pairs) {
    List<double[]> merged = new ArrayList<>();
    double[] open = {0, 0};
    for (double[] pair : pairs) {
      open[0] += pair[0];
      open[1] += pair[1];
      if (open[1] >= LEAST_EXPECTED) {
        merged.add(open);
        open = new double[] {0, 0};
      }
    }
    if (merged.isEmpty()) {
      return merged;
    }
    double[] last = merged.get(merged.size() - 1);
    last[0] += open[0];
    last[1] += open[1];
    return merged;
  }
}
