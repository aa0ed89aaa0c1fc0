package propcap.study;

import propcap.study.Sizing.Found;

/**
 * Whether a chance reaches a goal, one yes or no after the other: the sequential probability ratio
 * test of Wald (1945), "Sequential Tests of Statistical Hypotheses", Annals of Mathematical
 * Statistics 16. It tells goal - indifference from goal + indifference, with at most the stated
 * chance of error either way; in between either answer may come.
 */
final class WaldTest {
  private final double forYes;
  private final double forNo;
  private final double bound;
  private double evidence;

  /**
   * A test that has seen nothing.
   *
   * @param error chance of a wrong answer, either way
   */
  WaldTest(double goal, double indifference, double error) {
    double high = Math.min(goal + indifference, (1 + goal) / 2);
    double low = Math.max(goal - indifference, goal / 2);
    forYes = Math.log(high / low);
    forNo = Math.log((1 - high) / (1 - low));
    bound = Math.log((1 - error) / error);
  }

  /** Takes the next observation, unless the answer is there already. */
  void add(boolean yes) {
    if (found() == Found.NEAR) {
      evidence += yes ? forYes : forNo;
    }
  }

  /** NEAR as long as it is not told. */
  Found found() {
    if (evidence >= bound) {
      return Found.HOLDS;
    }
    return evidence <= -bound ? Found.FAILS : Found.NEAR;
  }
}
