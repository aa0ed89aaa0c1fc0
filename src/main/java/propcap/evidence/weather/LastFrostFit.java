package propcap.evidence.weather;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import propcap.farm.FrostRecord;

/**
 * The day of the last frost taken as normal over the years that had one; a year without frost
 * counts as one whose frosts ended before the season. So the chance of a frost on or after day d is
 * {@code share * (1 - Phi((d - 1/2 - mean) / sd))}, the half day because last frosts are whole
 * days.
 *
 * @param meanDay mean day of the season
 * @param sdDays standard deviation, more than 0
 * @param yearsWithFrost at least 2
 * @param years all years
 * @param misfit Kolmogorov's greatest distance between counted and fitted share, scaled for a mean
 *     and deviation that were fitted (Stephens 1974, Journal of the American Statistical
 *     Association 69; the formula and the limit are given from memory): {@code D (sqrt(n) - 0.01 +
 *     0.85 / sqrt(n))}
 */
public record LastFrostFit(
    double meanDay, double sdDays, int yearsWithFrost, int years, double misfit) {
  /** A misfit above this comes to one record in twenty that is normal (Stephens, from memory). */
  private static final double DOUBTFUL_FROM = 0.895;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** The fit; none where fewer than two years had a frost, or all of them on one day. */
  static Optional<LastFrostFit> of(FrostRecord record) {
    double[] days = Arrays.stream(record.lastFrosts()).asDoubleStream().toArray();
    double sd = days.length < 2 ? 0 : new StandardDeviation().evaluate(days);
    if (sd == 0) {
      return Optional.empty();
    }
    double mean = new Mean().evaluate(days);
    return Optional.of(
        new LastFrostFit(mean, sd, days.length, record.years(), misfit(days, mean, sd)));
  }

  private static double misfit(double[] sortedDays, double mean, double sd) {
    int n = sortedDays.length;
    double greatest = 0;
    for (int i = 0; i < n; i++) {
      double day = sortedDays[i];
      long before = Arrays.stream(sortedDays).filter(d -> d < day).count();
      long until = Arrays.stream(sortedDays).filter(d -> d <= day).count();
      double fittedBefore = NORMAL.cumulativeProbability((day - 0.5 - mean) / sd);
      double fittedUntil = NORMAL.cumulativeProbability((day + 0.5 - mean) / sd);
      greatest = Math.max(greatest, Math.abs(before / (double) n - fittedBefore));
      greatest = Math.max(greatest, Math.abs(until / (double) n - fittedUntil));
    }
    return greatest * (Math.sqrt(n) - 0.01 + 0.85 / Math.sqrt(n));
  }

  /** Whether the record is one that a normal would give in fewer than one case of twenty. */
  public boolean isDoubtful() {
    return misfit > DOUBTFUL_FROM;
  }

  /** The fitted chance of a frost on or after a day of the season. */
  double chanceFrom(int day) {
    return shareWithFrost() * (1 - NORMAL.cumulativeProbability((day - 0.5 - meanDay) / sdDays));
  }

  private double shareWithFrost() {
    return yearsWithFrost / (double) years;
  }

  /** The limits of samples of so many years. */
  NormalLimits limits() {
    return new NormalLimits(yearsWithFrost);
  }

  /**
   * The first day with no more than this chance of a frost on or after it, and its 95 % limits from
   * so many years with frost; none where fewer years had any frost.
   */
  Optional<DayEstimate> firstDayWithin(double chance, NormalLimits limits) {
    double among = chance / shareWithFrost();
    if (among >= 1) {
      return Optional.empty();
    }
    double z = NORMAL.inverseCumulativeProbability(1 - among);
    return Optional.of(
        new DayEstimate(
            firstWhole(z),
            firstWhole(limits.quantile(z, 0.025)),
            firstWhole(limits.quantile(z, 0.975))));
  }

  private int firstWhole(double deviations) {
    return (int) Math.ceil(meanDay + deviations * sdDays + 0.5);
  }
}
