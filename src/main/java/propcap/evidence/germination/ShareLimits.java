package propcap.evidence.germination;

import propcap.evidence.Estimate;
import propcap.evidence.MaximumLikelihood;

/**
 * Limits of the share of a lot's seeds that germinate, at one temperature. Where trays differ by
 * more than chance, a seed counts for less than one of trays that are alike.
 */
final class ShareLimits {
  private static final double MOST_LOGIT = 20;

  /**
   * A tenth of the width of an interval: an early end that adds no more to it is none to speak of.
   */
  private static final double TENTH = 0.1;

  /** Where less of the likeliest curve was seen by the end, the rest is a guess. */
  private static final double NEARLY_ALL = 0.95;

  private final ShowingCounts counts;
  private final double weight;

  /**
   * Limits from counts.
   *
   * @param weight of a seed, see {@link Heterogeneity}
   */
  ShareLimits(ShowingCounts counts, double weight) {
    this.counts = counts;
    this.weight = weight;
  }

  /**
   * Along a curve, so that what had not shown by the end may yet have come.
   *
   * @param share where it is likeliest
   * @param hill whose first parameter is the logit of the share
   */
  GerminatingShare along(double share, MaximumLikelihood hill) {
    Estimate counted = limits(share, hill);
    boolean endedEarly =
        counts.emerged() > 0
            && counts.emerged() < counts.seeds()
            && (shown() < NEARLY_ALL * share
                || counted.high() - limits(shown(), overByTheEnd()).high()
                    > TENTH * (counted.high() - counted.low()));
    return GerminatingShare.of(counted, counts.seeds(), endedEarly);
  }

  /** Of what had shown by the end, as if nothing had come after it. */
  GerminatingShare shownByTheEnd() {
    return GerminatingShare.of(limits(shown(), overByTheEnd()), counts.seeds(), false);
  }

  private MaximumLikelihood overByTheEnd() {
    return new MaximumLikelihood(
        point -> weight * counts.logLikelihoodOfShown(CurveBand.logistic(point[0])),
        new double[] {logit(shown())},
        new double[] {logitError()});
  }

  private double shown() {
    return (double) counts.emerged() / counts.seeds();
  }

  private Estimate limits(double share, MaximumLikelihood hill) {
    if (counts.emerged() == 0) {
      return new Estimate(0, 0, 1 - exactEnd());
    }
    double low = CurveBand.logistic(hill.low(0, -MOST_LOGIT));
    if (counts.emerged() == counts.seeds()) {
      return new Estimate(1, Math.min(low, exactEnd()), 1);
    }
    double end = hill.high(0, MOST_LOGIT);
    return Estimate.within(share, low, end >= MOST_LOGIT ? 1 : CurveBand.logistic(end));
  }

  /**
   * The least share at which all of so many seeds come up with a chance of 2.5 % (Clopper and
   * Pearson 1934); at such an end a profile's limit is too bold.
   */
  private double exactEnd() {
    return Math.pow(Estimate.TAIL, 1.0 / counts.seeds());
  }

  /** Of a share from 0 to 1, at both ends far beyond what counts could tell. */
  static double logit(double share) {
    return Math.max(-MOST_LOGIT, Math.min(MOST_LOGIT, Math.log(share / (1 - share))));
  }

  /** The likely error of the logit. */
  double logitError() {
    double share = (counts.emerged() + 0.5) / (counts.seeds() + 1.0);
    return 1 / Math.sqrt(counts.seeds() * share * (1 - share));
  }
}
