package propcap.season;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Whether what came in the end lies in its forecasts as a draw from them would: the share of the
 * forecast below it is then uniform (Dawid 1984, J. R. Statist. Soc. A 147, 278-292; ties are
 * broken by lot), and its mean is the forecasts' mean. So would be that of a forecast which takes
 * no note of the log; but what comes beyond such a forecast hangs on what the log has.
 *
 * @param chiSquare of that share, in tenths, 9 degrees of freedom
 * @param errors standard errors, of the differences, between what came and the forecasts' means
 * @param hangingOnLog standard errors, the larger of two, of the covariance between these
 *     differences and what the log has, rows and plants counted: none is left where all that the
 *     log tells has been taken account of
 */
record Calibration(
    double came, double forecast, double errors, double chiSquare, double hangingOnLog) {
  /** A chi-square of 9 degrees of freedom is above it once in ten thousand. */
  static final double MOST_CHI_SQUARE = 33.7;

  /** A mean is farther off once in sixteen thousand. */
  static final double MOST_ERRORS = 4;

  /** Of a sowing, by its place in the plan; the number of sowings means all. */
  static Calibration of(List<FromADayOn.Case> cases, int sowing, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] differences = new double[cases.size()];
    double[] tenths = new double[10];
    double came = 0;
    double forecast = 0;
    for (int i = 0; i < differences.length; i++) {
      int truth = cases.get(i).came[sowing];
      int[] springs = Arrays.stream(cases.get(i).forecast).mapToInt(f -> f[sowing]).toArray();
      double mean = Arrays.stream(springs).average().orElseThrow();
      differences[i] = truth - mean;
      came += truth;
      forecast += mean;
      double below = Arrays.stream(springs).filter(f -> f < truth).count();
      double same = Arrays.stream(springs).filter(f -> f == truth).count();
      tenths[(int) (10 * (below + random.nextDouble() * (same + 1)) / (springs.length + 1))]++;
    }
    double expected = differences.length / 10.0;
    double chiSquare = Arrays.stream(tenths).map(t -> (t - expected) * (t - expected)).sum();
    Mean mean = Mean.of(differences);
    return new Calibration(
        came / differences.length,
        forecast / differences.length,
        errors(mean),
        chiSquare / expected,
        Math.max(
            hanging(differences, cases.stream().mapToInt(c -> c.rows).toArray()),
            hanging(differences, cases.stream().mapToInt(c -> c.counted).toArray())));
  }

  private static double errors(Mean mean) {
    return mean.mean() == 0 ? 0 : mean.mean() / mean.standardError();
  }

  private static double hanging(double[] differences, int[] log) {
    double mean = Arrays.stream(log).average().orElseThrow();
    double[] products = new double[log.length];
    Arrays.setAll(products, i -> differences[i] * (log[i] - mean));
    return Math.abs(errors(Mean.of(products)));
  }

  boolean holds() {
    return chiSquare < MOST_CHI_SQUARE
        && Math.abs(errors) < MOST_ERRORS
        && hangingOnLog < MOST_ERRORS;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "came %.1f, forecast %.1f, %.1f errors apart, chi-square %.1f, hanging on the log %.1f",
        came,
        forecast,
        errors,
        chiSquare,
        hangingOnLog);
  }
}
