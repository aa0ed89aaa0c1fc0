package propcap.evidence;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Fits base, thermal time and spread to the times at which seedlings showed at several temperatures
 * together. How many showed is left to each temperature, so that a temperature at which fewer seeds
 * germinate does not pass for a slow one.
 */
final class ThermalFitting {
  private static final int BASE = 0;
  private static final int TIME = 1;
  private static final int SPREAD = 2;

  /** No crop's base lies so far below: the counts then tell of no base at all. */
  private static final double MOST_BELOW_C = 50;

  private static final double LEAST_BELOW_C = 1e-3;

  /**
   * The counts at one temperature.
   *
   * @param alone the lognormal curve's peak through these counts alone
   */
  record Counted(double tempC, ShowingCounts counts, CurveFitting.Peak alone) {}

  private final List<Counted> counted;
  private final double coldestC;
  private final double warmestC;

  /**
   * Fits.
   *
   * @param counted by rising temperature, at least two
   */
  ThermalFitting(List<Counted> counted) {
    this.counted = List.copyOf(counted);
    this.coldestC = counted.get(0).tempC();
    this.warmestC = counted.get(counted.size() - 1).tempC();
  }

  /** Empty where cold does not slow the seedlings down enough to tell a base. */
  Optional<ThermalFit> fit() {
    double[] start = start();
    double[] errors = {0.2, 0.05, 0.1};
    MaximumLikelihood time = new MaximumLikelihood(this::byTime, start, errors);
    double[] peak = time.peak();
    double below = Math.exp(peak[BASE]);
    if (below >= MOST_BELOW_C || below <= LEAST_BELOW_C) {
      return Optional.empty();
    }
    double base = coldestC - below;
    double[] byTheta = peak.clone();
    byTheta[TIME] += Math.log(warmestC - base);
    MaximumLikelihood theta = MaximumLikelihood.knownAt(byTheta, this::byTheta, errors);
    double mostBelow = Math.log(MOST_BELOW_C);
    double leastBelow = Math.log(LEAST_BELOW_C);
    double coldEnd = time.high(BASE, mostBelow);
    double warmEnd = time.low(BASE, leastBelow);
    return Optional.of(
        new ThermalFit(
            counted.stream().map(Counted::tempC).toList(),
            new Estimate(
                base,
                coldEnd >= mostBelow ? Double.NEGATIVE_INFINITY : coldestC - Math.exp(coldEnd),
                Math.max(base, coldestC - Math.exp(warmEnd))),
            CurveFitting.exponential(theta, TIME),
            CurveFitting.exponential(time, SPREAD),
            test(time).orElse(null)));
  }

  /** The straight line of 1/days on temperature through the coldest and the warmest. */
  private double[] start() {
    double slow = 1 / counted.get(0).alone().halfByDays();
    double fast = 1 / counted.get(counted.size() - 1).alone().halfByDays();
    double slope = (fast - slow) / (warmestC - coldestC);
    double below = slope > 0 ? Math.min(20, slow / slope) : 20;
    double spread =
        counted.stream()
            .mapToDouble(c -> c.alone().likelihood().peak()[SPREAD])
            .average()
            .orElse(-1.6);
    return new double[] {Math.log(Math.max(0.1, below)), -Math.log(fast), spread};
  }

  /**
   * With the median time at the warmest temperature as a parameter, which the base hardly moves.
   */
  private double byTime(double[] point) {
    double base = coldestC - Math.exp(point[BASE]);
    return logLikelihood(base, point[TIME] + Math.log(warmestC - base), Math.exp(point[SPREAD]));
  }

  private double byTheta(double[] point) {
    double base = coldestC - Math.exp(point[BASE]);
    return logLikelihood(base, point[TIME], Math.exp(point[SPREAD]));
  }

  private double logLikelihood(double base, double logTheta, double spread) {
    double sum = 0;
    for (Counted c : counted) {
      sum +=
          c.counts()
              .logLikelihoodOfTimes(
                  CurveFamily.LOGNORMAL, logTheta - Math.log(c.tempC() - base), spread);
    }
    return sum;
  }

  /** Likelihood ratio against a median and a spread for each temperature. */
  private Optional<FitTest> test(MaximumLikelihood together) {
    int degrees = 2 * counted.size() - 3;
    double apart = counted.stream().mapToDouble(ThermalFitting::alone).sum();
    return degrees > 0
        ? Optional.of(FitTest.of(2 * (apart - together.height()), degrees))
        : Optional.empty();
  }

  private static double alone(Counted c) {
    ToDoubleFunction<double[]> times =
        point ->
            c.counts().logLikelihoodOfTimes(CurveFamily.LOGNORMAL, point[0], Math.exp(point[1]));
    double[] peak = c.alone().likelihood().peak();
    return new MaximumLikelihood(
            times,
            IntStream.of(TIME, SPREAD).mapToDouble(i -> peak[i]).toArray(),
            new double[] {0.05, 0.1})
        .height();
  }
}
