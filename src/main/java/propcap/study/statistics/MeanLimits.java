package propcap.study.statistics;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.stat.descriptive.moment.Mean;

/**
 * Limits between which a mean lies with a stated confidence, told from one number a season. They
 * hold as well for what comes in few springs, or in few springs much: on each side they are the
 * farther of Student's limit and that of Hall, who takes the numbers' skewness into account (Hall
 * 1992, "On the removal of skewness by transformation", Journal of the Royal Statistical Society B
 * 54; quoted from memory, and its coverage measured, see {@code RareOutcomesCoverageTest}).
 */
public record MeanLimits(double low, double high) {
  /** Common practice: so sure is what is told as known. */
  public static final double CONFIDENCE = 0.95;

  /**
   * In fewer seasons than this must a number differ from the commonest one for nothing to be told
   * of its mean but how often it was seen.
   */
  static final int FEWEST = 5;

  /** Less skewness than this, by the root of the seasons, bends nothing that could be seen. */
  private static final double STRAIGHT = 1e-6;

  /**
   * Limits of the mean; none where the numbers are all alike but for fewer than {@link #FEWEST}.
   */
  static Optional<MeanLimits> of(double[] numbers, Strata strata, double confidence) {
    return isTooAlike(numbers.length, Commonest.of(numbers).others())
        ? Optional.empty()
        : Optional.of(ofUnlike(numbers, strata, confidence));
  }

  private static boolean isTooAlike(int seasons, int others) {
    return others < FEWEST && 2 * others < seasons;
  }

  /** Limits of the mean of numbers that are not all alike, however few of them are others. */
  public static MeanLimits ofUnlike(double[] numbers, Strata strata, double confidence) {
    double mean = new Mean().evaluate(numbers);
    Strata.MeanError error = strata.error(numbers);
    double t =
        new TDistribution(null, error.freedom()).inverseCumulativeProbability((1 + confidence) / 2);
    double skew = error.skewness() / Math.sqrt(numbers.length);
    return new MeanLimits(
        mean - error.se() * Math.max(t, untransformed(t, skew)),
        mean - error.se() * Math.min(-t, untransformed(-t, skew)));
  }

  /**
   * The deviation of a mean, in standard errors, that Hall's transformation takes to a normal one:
   * with a the skewness by the root of the seasons it takes T to T + a T^2 / 3 + a^2 T^3 / 27 + a /
   * 6.
   */
  static double untransformed(double normal, double skew) {
    return Math.abs(skew) < STRAIGHT
        ? normal
        : 3 * (Math.cbrt(1 + skew * (normal - skew / 6)) - 1) / skew;
  }

  /**
   * Limits of the mean of numbers that cannot lie outside of two ends. Where they are too alike for
   * other limits, those of the chance of another number than the commonest, at one end or the
   * other, take their place.
   */
  public static MeanLimits within(
      double[] numbers, Strata strata, double least, double most, double confidence) {
    Commonest usual = Commonest.of(numbers);
    int n = numbers.length;
    if (!isTooAlike(n, usual.others())) {
      MeanLimits limits = ofUnlike(numbers, strata, confidence);
      return new MeanLimits(Math.max(least, limits.low), Math.min(most, limits.high));
    }
    double other = ofChance(usual.others(), n, confidence).high;
    double mean = Arrays.stream(numbers).average().orElseThrow();
    return new MeanLimits(
        Math.min(mean, usual.number() - other * (usual.number() - least)),
        Math.max(mean, usual.number() + other * (most - usual.number())));
  }

  /**
   * Limits of a chance (Clopper and Pearson 1934, "The use of confidence or fiducial limits
   * illustrated in the case of the binomial", Biometrika 26). They hold for years dealt evenly too:
   * a count whose chances differ leaves them no oftener (Hoeffding 1956, "On the distribution of
   * the number of successes in independent trials", Annals of Mathematical Statistics 27; quoted
   * from memory).
   */
  public static MeanLimits ofChance(int seen, int of, double confidence) {
    double error = (1 - confidence) / 2;
    return new MeanLimits(
        seen == 0 ? 0 : beta(seen, of - seen + 1.0).inverseCumulativeProbability(error),
        seen == of ? 1 : beta(seen + 1.0, of - seen).inverseCumulativeProbability(1 - error));
  }

  /**
   * Limits with {@link #CONFIDENCE} of a chance from whether it came true, season by season: those
   * of Clopper and Pearson with half of the probability of what was seen (mid-P: Lancaster 1961,
   * "Significance tests in discrete distributions", Journal of the American Statistical Association
   * 56), for as many seasons as these are worth (Korn and Graubard 1998, "Confidence intervals for
   * proportions with small expected number of positive counts estimated from survey data", Survey
   * Methodology 24; both quoted from memory, and their coverage measured, see {@code
   * ChanceCoverageTest}).
   *
   * @param met 0 or 1 each
   */
  public static MeanLimits ofChance(double[] met, Strata strata) {
    double of = strata.worth(met);
    double seen = Samples.mean(met) * of;
    double error = (1 - CONFIDENCE) / 2;
    return new MeanLimits(
        seen == 0 ? 0 : chance(p -> midP(seen, of, p) - error),
        seen == of ? 1 : chance(p -> 1 - midP(seen, of, p) - error));
  }

  /** The probability of more than so many, and half of that of just so many. */
  private static double midP(double seen, double of, double chance) {
    return (more(seen, of, chance) + more(seen + 1, of, chance)) / 2;
  }

  /** The probability of so many or more. */
  private static double more(double seen, double of, double chance) {
    return seen <= 0 ? 1 : seen > of ? 0 : Beta.regularizedBeta(chance, seen, of - seen + 1);
  }

  private static double chance(UnivariateFunction root) {
    return new BrentSolver(1e-9).solve(200, root, 0, 1);
  }

  private static BetaDistribution beta(double alpha, double beta) {
    return new BetaDistribution(null, alpha, beta);
  }
}
