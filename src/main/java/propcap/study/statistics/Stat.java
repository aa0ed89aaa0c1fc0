package propcap.study.statistics;

import org.jspecify.annotations.Nullable;

/**
 * A number that differs from season to season.
 *
 * @param mean over the seasons
 * @param se standard error of that mean; 0 where all seasons are alike, whose error is not known
 * @param limits of the mean, with 95 % confidence; null: too few seasons had another number than
 *     the commonest one for limits, and it is said how many had
 * @param seasons how many there were
 * @param unlike how many had another number than the commonest one; where there are no limits, and
 *     more than one season, that one is {@code p50}
 * @param p10 a tenth of the seasons lie below
 * @param p50 the median season
 * @param p90 a tenth of the seasons lie above
 */
public record Stat(
    double mean,
    double se,
    @Nullable MeanLimits limits,
    int seasons,
    int unlike,
    double p10,
    double p50,
    double p90) {

  /** Of one number a season. */
  public static Stat of(double[] seasons, Strata strata) {
    return Samples.of(seasons, strata).stat();
  }

  /** Whether all seasons were alike but for so few that nothing is told of the mean's error. */
  public boolean isRare() {
    return limits == null && seasons > 1;
  }
}
