package propcap.study.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.moment.Kurtosis;
import org.apache.commons.math3.stat.descriptive.moment.Skewness;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import propcap.chance.WeatherYears;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;

/**
 * Which numbers of a sample are of the same weather year. Years are dealt evenly, so that what
 * differs between years adds nothing to the error of a mean, but for the years of a last block that
 * is not whole (stratified sampling: Cochran, Sampling Techniques, chapter 5; quoted from memory).
 * Where years came too seldom to tell them from luck, or the numbers of a year do not differ, all
 * count as of one year: that error is never too small.
 */
public final class Strata {
  /** How often each year must have come; fewer numbers do not show how they are skewed. */
  private static final int FEWEST = 3;

  /** Numbers that differ by less are alike. */
  private static final double ALIKE = 1e-6;

  private final int[] of;
  private final int years;

  /** How many of the sample are of each year. */
  private final int[] sizes;

  private Strata(int[] of, int years) {
    this.of = of;
    this.years = years;
    sizes = new int[years];
    Arrays.stream(of).forEach(year -> sizes[year]++);
  }

  /** So many numbers that nothing tells apart: a simple random sample. */
  public static Strata one(int numbers) {
    return new Strata(new int[numbers], 1);
  }

  /**
   * The years of numbered seasons, dealt from the first on.
   *
   * @param of the year of each season, by its place in the record
   * @param years in the record
   */
  public static Strata of(int[] of, int years) {
    return of.length < FEWEST * years ? one(of.length) : new Strata(of, years);
  }

  public static Strata of(Column ofSeasons, int years) {
    return of(IntStream.range(0, ofSeasons.size()).map(ofSeasons::get).toArray(), years);
  }

  /** The years of the first so many seasons of a scenario under a seed. */
  public static Strata of(Scenario scenario, long seed, int seasons) {
    return of(scenario, seed, 0, seasons);
  }

  /** The years of the seasons from one up to another. */
  public static Strata of(Scenario scenario, long seed, int from, int to) {
    int years = scenario.weather().size();
    WeatherYears dealt = new WeatherYears(seed, years);
    return of(IntStream.range(from, to).map(dealt::of).toArray(), years);
  }

  /** The years of seasons that several scenarios share; of records that differ, none are told. */
  public static Strata of(List<Scenario> scenarios, long seed, int seasons) {
    Scenario first = scenarios.get(0);
    return scenarios.stream().allMatch(s -> s.weather().size() == first.weather().size())
        ? of(first, seed, seasons)
        : one(seasons);
  }

  /** The years that the seasons of a scenario lived in, from its first on. */
  public static Strata of(Scenario scenario, List<SeasonOutcome> seasons) {
    return of(
        seasons.stream().mapToInt(SeasonOutcome::weatherYear).toArray(), scenario.weather().size());
  }

  /** What is left of the numbers once the mean of its year is taken from each. */
  private double[] residuals(double[] numbers) {
    double[] means = means(numbers);
    return IntStream.range(0, numbers.length).mapToDouble(i -> numbers[i] - means[of[i]]).toArray();
  }

  /** The mean of each year's numbers, by year. */
  double[] means(double[] numbers) {
    double[] means = sums(numbers);
    for (int year = 0; year < years; year++) {
      means[year] /= sizes[year];
    }
    return means;
  }

  private double[] sums(double[] numbers) {
    if (numbers.length != of.length) {
      throw new IllegalArgumentException(numbers.length + " numbers of " + of.length + " seasons");
    }
    double[] sums = new double[years];
    for (int i = 0; i < numbers.length; i++) {
      sums[of[i]] += numbers[i];
    }
    return sums;
  }

  /**
   * How a sample's mean may err.
   *
   * @param se standard error
   * @param freedom its degrees of freedom
   * @param variance of the numbers of one year, mean of the years
   * @param skewness of the same; 0 for fewer than three numbers
   */
  record MeanError(double se, double freedom, double variance, double skewness) {
    private static MeanError none(int numbers) {
      return new MeanError(0, numbers - 1.0, 0, 0);
    }
  }

  /**
   * How the mean of two numbers or more may err. Each year's share of the error is its own
   * variance, with the degrees of freedom of Welch (1947, "The generalization of Student's problem
   * when several different population variances are involved", Biometrika 34; quoted from memory).
   * Of the years of a last block that is not whole the mean is that of a sample without
   * replacement.
   */
  MeanError error(double[] numbers) {
    double[] residuals = residuals(numbers);
    if (areAlike(residuals)) {
      return years == 1 ? MeanError.none(of.length) : one(of.length).error(numbers);
    }
    double[] squares = sums(Arrays.stream(residuals).map(d -> d * d).toArray());
    int n = of.length;
    double sum = 0;
    double fourth = 0;
    for (int year = 0; year < years; year++) {
      double share = squares[year] / (sizes[year] - 1.0) * sizes[year] / n / n;
      sum += share;
      fourth += share * share / (sizes[year] + 1.0);
    }
    double freedom =
        years == 1 ? n - 1.0 : Math.max(1, Math.min(n - years, sum * sum / fourth - 2));
    return new MeanError(
        Math.sqrt(sum + ofLastBlock(numbers)), freedom, sum * n, skewness(residuals));
  }

  /** What the years of a last block that is not whole add to the variance of a mean. */
  private double ofLastBlock(double[] numbers) {
    int n = of.length;
    int rest = n % years;
    return rest == 0
        ? 0
        : new Variance().evaluate(means(numbers)) * rest * (1 - rest / (double) years) / n / n;
  }

  /**
   * How many numbers, drawn at random, would tell a share as well as these do, at least as many as
   * they are. A year's own share counts as if the mean of all had been seen once more, for none of
   * few is not never.
   *
   * @param met 0 or 1 each
   */
  double worth(double[] met) {
    int n = of.length;
    double all = Samples.mean(met);
    double[] means = means(met);
    double sum = 0;
    for (int year = 0; year < years; year++) {
      double m = sizes[year];
      double share = (m * means[year] + all) / (m + 1);
      sum += m * share * (1 - share) / (1 - m / (m + 1) / (m + 1));
    }
    double variance = sum / n / n + ofLastBlock(met);
    return variance == 0 ? n : Math.max(n, all * (1 - all) / variance);
  }

  /** Each year's mean follows its own numbers, so that their residuals look less skewed. */
  private double skewness(double[] residuals) {
    double m = residuals.length / (double) years;
    double hidden = years == 1 ? 1 : Math.sqrt(1 - 1 / m) / (1 - 2 / m);
    return residuals.length < 3 ? 0 : hidden * new Skewness().evaluate(residuals);
  }

  private static boolean areAlike(double[] residuals) {
    return Arrays.stream(residuals).allMatch(d -> Math.abs(d) < ALIKE);
  }

  /** Of the numbers of one year, above that of the normal law; 0 for fewer than four numbers. */
  double kurtosis(double[] numbers) {
    double[] residuals = residuals(numbers);
    if (years > 1 && areAlike(residuals)) {
      return one(of.length).kurtosis(numbers);
    }
    return residuals.length < 4 ? 0 : new Kurtosis().evaluate(residuals);
  }
}
