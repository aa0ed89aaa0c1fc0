package propcap.evidence;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * The share of a lot's seeds that germinate, with limits that allow for trays that differ: where
 * they differ by more than chance, the correlation of a tray's seeds is free along the profile, so
 * that few trays give wide limits.
 */
final class ShareLimits {
  private static final double MOST_LOGIT = 20;
  private static final double MOST_CORRELATION = 0.99;
  private static final double CORRELATION_STEP = 0.02;

  /** What is left outside of a 95 % interval on either side. */
  private static final double TAIL = 0.025;

  private final ShowingCounts counts;
  private final double correlation;
  private final DoubleUnaryOperator correlationTold;

  /**
   * Limits from counts.
   *
   * @param correlation of the seeds of a tray, its likeliest value; 0 where one tray is all there
   *     is, which then counts as certain
   * @param correlationTold log-likelihood of a correlation by the lot's trays at other temperatures
   */
  ShareLimits(ShowingCounts counts, double correlation, DoubleUnaryOperator correlationTold) {
    this.counts = counts;
    this.correlation = correlation;
    this.correlationTold = correlationTold;
  }

  /** Along a curve: what had not shown by the end may yet have come. */
  Estimate ofCurve(CurveFamily family, double[] peak, double[] errors) {
    return estimate(
        CurveBand.logistic(peak[0]),
        peak,
        errors,
        (point, rho) -> {
          double spread = Math.exp(point[2]);
          return counts.logLikelihoodOfTimes(family, point[1], spread)
              + counts.logLikelihoodOfTotals(
                  family, CurveBand.logistic(point[0]), point[1], spread, rho);
        });
  }

  /** Of what had shown by the end: what can be said where no curve can. */
  Estimate shownByTheEnd() {
    BetaBinomial totals = new BetaBinomial(counts.trays());
    double share = (counts.emerged() + 0.5) / (counts.seeds() + 1.0);
    double[] peak = {Math.log(share / (1 - share))};
    double[] errors = {1 / Math.sqrt(counts.seeds() * share * (1 - share))};
    return estimate(
        (double) counts.emerged() / counts.seeds(),
        peak,
        errors,
        (point, rho) -> totals.logLikelihood(CurveBand.logistic(point[0]), rho));
  }

  /** A log-likelihood whose first parameter is the logit of the share. */
  private interface WithCorrelation {
    double at(double[] point, double rho);
  }

  private Estimate estimate(
      double value, double[] peak, double[] errors, WithCorrelation logLikelihood) {
    if (counts.emerged() == 0) {
      return new Estimate(0, 0, 1 - exactEnd());
    }
    boolean isFree = counts.trays().size() > 1 && correlation > 0;
    int n = peak.length;
    ToDoubleFunction<double[]> hill =
        point -> {
          double rho = isFree ? Math.min(MOST_CORRELATION, Math.max(0, point[n])) : correlation;
          return logLikelihood.at(point, rho) + correlationTold.applyAsDouble(rho);
        };
    MaximumLikelihood likelihood =
        isFree
            ? new MaximumLikelihood(hill, with(peak, correlation), with(errors, CORRELATION_STEP))
            : new MaximumLikelihood(hill, peak, errors);
    double low = CurveBand.logistic(likelihood.low(0, -MOST_LOGIT));
    if (counts.emerged() == counts.seeds()) {
      return new Estimate(1, Math.min(low, exactEnd()), 1);
    }
    double end = likelihood.high(0, MOST_LOGIT);
    double high = end >= MOST_LOGIT ? 1 : CurveBand.logistic(end);
    return Estimate.within(value, low, high);
  }

  /**
   * The least share at which all of so many seeds come up with a chance of 2.5 % (Clopper and
   * Pearson 1934); at such an end a profile's limit is too bold.
   */
  private double exactEnd() {
    return Math.pow(TAIL, 1.0 / counts.seeds());
  }

  private static double[] with(double[] point, double last) {
    double[] longer = Arrays.copyOf(point, point.length + 1);
    longer[point.length] = last;
    return longer;
  }
}
