package propcap.evidence.germination;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import propcap.evidence.Estimate;
import propcap.evidence.MaximumLikelihood;
import propcap.evidence.UnimodalMaximum;

/**
 * Fits base, thermal time and spread to the times at which seedlings showed at several temperatures
 * together. How many showed is left to each temperature, so that a temperature at which fewer seeds
 * germinate does not pass for a slow one.
 */
final class ThermalFitting {
  private static final int BASE = 0;
  private static final int TIME = 1;
  private static final int SPREAD = 2;

  /** Of a temperature by itself. */
  private static final int MEDIAN = 0;

  /** No crop's base lies so far below: the counts then tell of no base at all. */
  private static final double MOST_BELOW_C = 50;

  private static final double LEAST_BELOW_C = 1e-3;

  /** Twice the fall of the log-likelihood that chance has in one of twenty, to one side. */
  private static final double LATER =
      new ChiSquaredDistribution(null, 1).inverseCumulativeProbability(0.9);

  private static final double[] ERRORS = {0.2, 0.05, 0.1};

  /**
   * The counts at one temperature.
   *
   * @param alone the lognormal curve's peak through these counts alone
   */
  record Counted(double tempC, ShowingCounts counts, CurveFitting.Peak alone) {
    /** Log-likelihood of the times that a median and a spread, as logarithms, give. */
    private double times(double logMedian, double logSpread) {
      return counts.logLikelihoodOfTimes(
          CurveFamily.LOGNORMAL, logMedian, CurveFitting.spread(logSpread));
    }

    /** The likeliest median and spread of the times, whatever number showed. */
    private MaximumLikelihood times() {
      return new MaximumLikelihood(
          point -> times(point[MEDIAN], point[1]),
          new double[] {alone.logMedian(), alone.logSpread()},
          new double[] {ERRORS[TIME], ERRORS[SPREAD]});
    }
  }

  private final List<Counted> counted;
  private final double coldestC;
  private final double atC;
  private final MaximumLikelihood line;

  /**
   * Fits.
   *
   * @param counted by rising temperature, at least two
   */
  ThermalFitting(List<Counted> counted) {
    this(counted, counted.get(counted.size() - 1).tempC());
  }

  /**
   * Fits with the time at a temperature as a parameter, which the base hardly moves where it is
   * that of the warmest.
   */
  private ThermalFitting(List<Counted> counted, double atC) {
    this.counted = List.copyOf(counted);
    this.coldestC = counted.get(0).tempC();
    this.atC = atC;
    this.line = new MaximumLikelihood(point -> byTime(point, false), start(), ERRORS);
  }

  /**
   * Fits up to the optimum: the warmest temperature is left out as long as half of the seedlings
   * came later there than the line through the cooler ones has it, by more than chance.
   *
   * @param counted by rising temperature, at least two
   */
  static ThermalFitting upToOptimum(List<Counted> counted) {
    int n = counted.size();
    while (n > 2 && isSlow(counted.get(n - 1), counted.subList(0, n - 1))) {
      n--;
    }
    return new ThermalFitting(counted.subList(0, n));
  }

  private static boolean isSlow(Counted warmest, List<Counted> cooler) {
    return isLater(warmest.times(), MEDIAN, new ThermalFitting(cooler, warmest.tempC()).line, TIME);
  }

  /**
   * Whether its warmest temperature surely lies below the optimum: a line through two of them
   * cannot show it, but a still warmer one at which seedlings came sooner does.
   */
  boolean isBelowOptimum(Counted warmer) {
    return counted.size() > 2
        || isLater(counted.get(counted.size() - 1).times(), MEDIAN, warmer.times(), MEDIAN);
  }

  /**
   * Whether one time, a logarithm, is later than another by more than chance: a likelihood ratio
   * against both being the same, to one side, 5 %.
   */
  private static boolean isLater(
      MaximumLikelihood one, int time, MaximumLikelihood other, int otherTime) {
    double seen = one.peak()[time];
    double[] together = {Double.NEGATIVE_INFINITY};
    UnimodalMaximum.along(
        same -> {
          double height = one.heightWith(time, same) + other.heightWith(otherTime, same);
          together[0] = Math.max(together[0], height);
          return height;
        },
        seen,
        ERRORS[TIME]);
    return seen > other.peak()[otherTime]
        && 2 * (one.height() + other.height() - together[0]) > LATER;
  }

  double warmestC() {
    return counted.get(counted.size() - 1).tempC();
  }

  /**
   * The line, or empty where no temperature can be told at which it would not slow the seedlings.
   * Its limits allow for the warmest of three and more to lie at or beyond the optimum, unseen.
   */
  Optional<ThermalFit> fit() {
    double[] peak = line.peak();
    boolean mayBeLate = counted.size() > 2;
    MaximumLikelihood bent =
        mayBeLate ? new MaximumLikelihood(point -> byTime(point, true), peak, ERRORS) : line;
    double mostBelow = Math.log(MOST_BELOW_C);
    double coldEnd = bent.high(BASE, mostBelow);
    double below = Math.exp(peak[BASE]);
    if (below <= LEAST_BELOW_C || below >= MOST_BELOW_C || coldEnd >= mostBelow) {
      return Optional.empty();
    }
    double[] byTheta = bent.peak();
    byTheta[TIME] += Math.log(atC - coldestC + Math.exp(byTheta[BASE]));
    MaximumLikelihood theta =
        MaximumLikelihood.knownAt(byTheta, point -> byTheta(point, mayBeLate), ERRORS);
    return Optional.of(
        new ThermalFit(
            counted.stream().map(Counted::tempC).toList(),
            Estimate.within(
                coldestC - below,
                coldestC - Math.exp(coldEnd),
                coldestC - Math.exp(bent.low(BASE, Math.log(LEAST_BELOW_C)))),
            CurveFitting.exponential(peak[TIME] + Math.log(atC - coldestC + below), theta, TIME),
            CurveFitting.exponential(peak[SPREAD], line, SPREAD),
            test()));
  }

  /** The straight line of 1/days on temperature through the coldest and the warmest. */
  private double[] start() {
    Counted last = counted.get(counted.size() - 1);
    double slow = Math.exp(-counted.get(0).alone().logMedian());
    double fast = Math.exp(-last.alone().logMedian());
    double slope = (fast - slow) / (last.tempC() - coldestC);
    double below = Math.max(0.1, slope > 0 ? Math.min(20, slow / slope) : 20);
    double spread = counted.stream().mapToDouble(c -> c.alone().logSpread()).average().orElse(-1.6);
    double base = coldestC - below;
    return new double[] {
      Math.log(below),
      last.alone().logMedian() + Math.log((last.tempC() - base) / (atC - base)),
      spread
    };
  }

  private double byTime(double[] point, boolean mayBeLate) {
    double base = coldestC - Math.exp(point[BASE]);
    return logLikelihood(base, point[TIME] + Math.log(atC - base), point[SPREAD], mayBeLate);
  }

  private double byTheta(double[] point, boolean mayBeLate) {
    double base = coldestC - Math.exp(point[BASE]);
    return logLikelihood(base, point[TIME], point[SPREAD], mayBeLate);
  }

  private double logLikelihood(double base, double logTheta, double logSpread, boolean mayBeLate) {
    double sum = 0;
    for (int i = 0; i < counted.size(); i++) {
      Counted c = counted.get(i);
      double byLine = logTheta - Math.log(c.tempC() - base);
      boolean isLate = mayBeLate && i == counted.size() - 1 && c.alone().logMedian() > byLine;
      sum += c.times(isLate ? c.alone().logMedian() : byLine, logSpread);
    }
    return sum;
  }

  /** Likelihood ratio against a median and a spread for each temperature. */
  private GoodnessOfFit test() {
    int degrees = 2 * counted.size() - 3;
    double apart = counted.stream().mapToDouble(c -> c.times().height()).sum();
    return GoodnessOfFit.of(2 * (apart - line.height()), degrees);
  }
}
