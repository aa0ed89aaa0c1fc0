package propcap.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import propcap.study.Sizing.Found;

/**
 * The fully sequential procedure of Kim and Nelson (2001), "A fully sequential procedure for
 * indifference-zone selection in simulation", ACM Transactions on Modeling and Computer Simulation
 * 11(3), with c = 1: systems run on common seasons drop out as soon as they are clearly beaten. The
 * best is kept with the promised chance if it is better than every other by the indifference or
 * more, for normal numbers; means of a season's many plants are nearly so.
 *
 * <p>Against a known standard (Kim 2005, "Comparison with a standard via fully sequential
 * procedures", ACM TOMACS 15(2)) one system takes the place of each pair.
 */
final class KimNelson {
  /** Seasons of the first stage, from which variances are estimated. */
  static final int FIRST_STAGE = 50;

  private KimNelson() {}

  /** The constant eta for so many comparisons that may err, in all, with chance alpha. */
  static double eta(double alpha, int comparisons, int firstStage) {
    return (Math.pow(2 * alpha / comparisons, -2.0 / (firstStage - 1)) - 1) / 2;
  }

  /** h squared, 2 c eta (n0 - 1) with c = 1. */
  static double hSquared(double alpha, int comparisons, int firstStage) {
    return 2 * eta(alpha, comparisons, firstStage) * (firstStage - 1);
  }

  /**
   * How far behind a sum of differences may lie after r observations: max(0, (h^2 S^2 / delta -
   * delta r) / 2).
   */
  static double slack(double hSquared, double variance, double indifference, int r) {
    return Math.max(0, (hSquared * variance / indifference - indifference * r) / 2);
  }

  /**
   * Whether a system's mean reaches a standard, after all that was seen of it.
   *
   * @param seen its numbers, the first stage at least
   * @param error chance of a wrong answer, either way, where the mean is off by the indifference
   */
  static Found againstStandard(double[] seen, double standard, double indifference, double error) {
    double hSquared = hSquared(error, 1, FIRST_STAGE);
    double variance = new Variance().evaluate(seen, 0, FIRST_STAGE);
    double sum = 0;
    for (int r = 1; r <= seen.length; r++) {
      sum += seen[r - 1] - standard;
      double slack = slack(hSquared, variance, indifference, r);
      if (r >= FIRST_STAGE && Math.abs(sum) >= slack) {
        return sum >= 0 ? Found.HOLDS : Found.FAILS;
      }
    }
    return Found.NEAR;
  }

  /**
   * The systems that are still in, of those that were: all have as many numbers, of the same
   * seasons.
   *
   * @param seen numbers by system
   * @param systems how many there were at the start
   * @param alpha chance that the best is lost
   */
  static List<Integer> stillIn(
      List<double[]> seen, List<Integer> in, int systems, double indifference, double alpha) {
    double hSquared = hSquared(alpha, systems - 1, FIRST_STAGE);
    List<Integer> left = new ArrayList<>();
    for (int i : in) {
      boolean beaten = false;
      for (int l : in) {
        // Of two that never differ the first, the smaller size, stays.
        beaten =
            beaten
                || (i != l && isBeaten(seen.get(i), seen.get(l), indifference, hSquared))
                || (l < i && Arrays.equals(seen.get(i), seen.get(l)));
      }
      if (!beaten) {
        left.add(i);
      }
    }
    return left;
  }

  private static boolean isBeaten(
      double[] mine, double[] other, double indifference, double hSquared) {
    int r = mine.length;
    double[] differences = new double[r];
    double sum = 0;
    for (int j = 0; j < r; j++) {
      differences[j] = mine[j] - other[j];
      sum += differences[j];
    }
    double variance = new Variance().evaluate(differences, 0, FIRST_STAGE);
    double slack = slack(hSquared, variance, indifference, r);
    return slack > 0 ? sum < -slack : sum < 0;
  }
}
