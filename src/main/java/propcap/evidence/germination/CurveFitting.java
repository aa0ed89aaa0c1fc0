package propcap.evidence.germination;

import java.util.function.ToDoubleFunction;
import propcap.evidence.Estimate;
import propcap.evidence.MaximumLikelihood;

/**
 * Fits a curve to the counts of one lot at one temperature, by maximum likelihood over intervals.
 * The parameters are the logarithm of the median time and the logarithm of the spread; with each
 * curve goes the share of the seeds to which the counts then point. Limits are those of the profile
 * likelihood.
 */
final class CurveFitting {
  private static final int TIME = 0;
  private static final int SPREAD = 1;

  /** Those two, and the share that germinates. */
  private static final int PARAMETERS = 3;

  private static final double MOST_LOG = 15;

  /** Of a lot at one temperature in common tests: only where to start. */
  private static final double ROUGH_SPREAD = 0.2;

  /** Seedlings that come within a thousandth of their time, or over a million times it. */
  private static final double LEAST_LOG_SPREAD = Math.log(1e-3);

  private static final double MOST_LOG_SPREAD = Math.log(10);

  private final ShowingCounts counts;
  private final double weight;
  private final ShareLimits share;

  /**
   * Fits to counts.
   *
   * @param weight of a seed, see {@link Heterogeneity}
   */
  CurveFitting(ShowingCounts counts, double weight) {
    this.counts = counts;
    this.weight = weight;
    this.share = new ShareLimits(counts, weight);
  }

  /** A curve of one shape, before its limits are worked out. */
  record Peak(CurveFamily family, MaximumLikelihood likelihood) {
    double akaike() {
      return 2 * PARAMETERS - 2 * likelihood.height();
    }

    double logMedian() {
      return likelihood.peak()[TIME];
    }

    double logSpread() {
      return likelihood.peak()[SPREAD];
    }
  }

  static double spread(double log) {
    return Math.exp(Math.max(LEAST_LOG_SPREAD, Math.min(MOST_LOG_SPREAD, log)));
  }

  Peak peak(CurveFamily family) {
    double[] start = {Math.log(counts.roughMedianDays()), Math.log(ROUGH_SPREAD)};
    return new Peak(
        family, new MaximumLikelihood(logLikelihood(family, 0.5), start, roughErrors()));
  }

  /** The errors to be expected, as first steps of the search. */
  private double[] roughErrors() {
    double root = Math.sqrt(counts.emerged());
    return new double[] {2 * ROUGH_SPREAD / root, 2 / root};
  }

  /** With the logarithm of the time by which a part of the seedlings has shown as a parameter. */
  private ToDoubleFunction<double[]> logLikelihood(CurveFamily family, double part) {
    double z = family.quantile(part);
    return point -> {
      double spread = spread(point[SPREAD]);
      double logMedian = point[TIME] - z * spread;
      double germinating = counts.likeliestShare(family, logMedian, spread);
      return counts.logLikelihoodOfTimes(family, logMedian, spread)
          + weight * counts.logLikelihoodOfTotals(family, germinating, logMedian, spread);
    };
  }

  /** The share that germinates where seedlings were found too seldom to tell a curve. */
  GerminatingShare germinating() {
    if (counts.emerged() == 0 || counts.countedOnce()) {
      return share.shownByTheEnd();
    }
    double shown = (double) counts.emerged() / counts.seeds();
    return share.along(shown, withShare(peak(CurveFamily.LOGNORMAL)));
  }

  /**
   * The curve with its limits. Where the test ended early the likeliest curve is one of many that
   * are nearly as likely; the one that is told goes with the share that is.
   */
  CurveFit fit(Peak top) {
    CurveFamily family = top.family();
    MaximumLikelihood withShare = withShare(top);
    GerminatingShare germinating = share.along(share(top), withShare);
    double[] curve =
        germinating.endedEarly()
            ? withShare.highestWith(0, ShareLimits.logit(germinating.share().value()))
            : withShare.peak();
    double logMedian = curve[1 + TIME];
    double spread = spread(curve[1 + SPREAD]);
    double z = family.quantile(0.9);
    MaximumLikelihood most =
        MaximumLikelihood.knownAt(
            new double[] {top.logMedian() + z * spread(top.logSpread()), top.logSpread()},
            logLikelihood(family, 0.9),
            roughErrors());
    return new CurveFit(
        family,
        germinating,
        exponential(logMedian, top.likelihood(), TIME),
        exponential(logMedian + z * spread, most, TIME),
        exponential(Math.log(spread), top.likelihood(), SPREAD),
        top.akaike(),
        EmergenceTimesChiSquare.of(counts.trays(), family, logMedian, spread).orElse(null),
        new CurveBand(family, curve, withShare.peak(), withShare(family)));
  }

  private double share(Peak top) {
    return counts.likeliestShare(top.family(), top.logMedian(), spread(top.logSpread()));
  }

  /** The likelihood with the logit of the share as a parameter of its own, before the others. */
  private MaximumLikelihood withShare(Peak top) {
    double[] errors = roughErrors();
    return MaximumLikelihood.knownAt(
        new double[] {ShareLimits.logit(share(top)), top.logMedian(), top.logSpread()},
        withShare(top.family()),
        new double[] {share.logitError(), errors[TIME], errors[SPREAD]});
  }

  private ToDoubleFunction<double[]> withShare(CurveFamily family) {
    return point -> {
      double spread = spread(point[1 + SPREAD]);
      return counts.logLikelihoodOfTimes(family, point[1 + TIME], spread)
          + weight
              * counts.logLikelihoodOfTotals(
                  family, CurveBand.logistic(point[0]), point[1 + TIME], spread);
    };
  }

  /** A parameter that is a logarithm, with its limits, undone. */
  static Estimate exponential(double at, MaximumLikelihood likelihood, int parameter) {
    double low = likelihood.low(parameter, at - MOST_LOG);
    double high = likelihood.high(parameter, at + MOST_LOG);
    return Estimate.within(
        Math.exp(at),
        low <= at - MOST_LOG ? 0 : Math.exp(low),
        high >= at + MOST_LOG ? Double.POSITIVE_INFINITY : Math.exp(high));
  }
}
