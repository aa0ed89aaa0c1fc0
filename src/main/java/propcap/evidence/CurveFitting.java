package propcap.evidence;

import java.util.function.ToDoubleFunction;

/**
 * Fits a curve to the counts of one lot at one temperature, by maximum likelihood over intervals:
 * the parameters are the logit of the share that germinates, the logarithm of the median time and
 * the logarithm of the spread; limits are those of the profile likelihood.
 */
final class CurveFitting {
  private static final int MEDIAN = 1;
  private static final int SPREAD = 2;
  private static final int PARAMETERS = 3;

  private static final double MOST_LOG = 15;

  /** Of a lot at one temperature in common tests: only where to start. */
  private static final double ROUGH_SPREAD = 0.2;

  private final ShowingCounts counts;
  private final double correlation;
  private final ShareLimits share;

  /**
   * Fits to counts.
   *
   * @param correlation between two seeds of one tray: its likeliest value
   */
  CurveFitting(ShowingCounts counts, double correlation, ShareLimits share) {
    this.counts = counts;
    this.correlation = correlation;
    this.share = share;
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
    double up = roughShare();
    double[] start = {
      Math.log(up / (1 - up)), Math.log(counts.roughMedianDays()), Math.log(ROUGH_SPREAD)
    };
    return new Peak(
        family, new MaximumLikelihood(logLikelihood(family, 0.5), start, roughErrors()));
  }

  private double roughShare() {
    return (counts.emerged() + 0.5) / (counts.seeds() + 1.0);
  }

  /** The errors to be expected, as first steps of the search. */
  private double[] roughErrors() {
    double up = roughShare();
    double n = counts.emerged();
    return new double[] {
      1 / Math.sqrt(counts.seeds() * up * (1 - up)),
      2 * ROUGH_SPREAD / Math.sqrt(n),
      2 / Math.sqrt(n)
    };
  }

  /** With the logarithm of the time by which a part of the seedlings has shown as a parameter. */
  private ToDoubleFunction<double[]> logLikelihood(CurveFamily family, double part) {
    double z = family.quantile(part);
    return point -> {
      double spread = Math.exp(point[SPREAD]);
      double logMedian = point[MEDIAN] - z * spread;
      return counts.logLikelihoodOfTimes(family, logMedian, spread)
          + counts.logLikelihoodOfTotals(
              family, CurveBand.logistic(point[0]), logMedian, spread, correlation);
    };
  }

  /** The curve with its limits. */
  CurveFit fit(Peak top) {
    CurveFamily family = top.family();
    double[] peak = top.likelihood().peak();
    double[] atMost = top.likelihood().peak();
    atMost[MEDIAN] += family.quantile(0.9) * Math.exp(peak[SPREAD]);
    MaximumLikelihood most =
        MaximumLikelihood.knownAt(atMost, logLikelihood(family, 0.9), roughErrors());
    return new CurveFit(
        family,
        share.ofCurve(family, peak, roughErrors()),
        exponential(top.likelihood(), MEDIAN),
        exponential(most, MEDIAN),
        exponential(top.likelihood(), SPREAD),
        top.akaike(),
        TimesTest.of(counts.trays(), family, peak[MEDIAN], Math.exp(peak[SPREAD])).orElse(null),
        new CurveBand(family, peak, logLikelihood(family, 0.5)));
  }

  /** A parameter that is a logarithm, with its limits, undone. */
  static Estimate exponential(MaximumLikelihood likelihood, int parameter) {
    double at = likelihood.peak()[parameter];
    double low = likelihood.low(parameter, at - MOST_LOG);
    double high = likelihood.high(parameter, at + MOST_LOG);
    return new Estimate(
        Math.exp(at),
        low <= at - MOST_LOG ? 0 : Math.exp(low),
        high >= at + MOST_LOG ? Double.POSITIVE_INFINITY : Math.exp(high));
  }
}
