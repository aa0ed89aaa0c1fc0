package propcap.chance;

import umontreal.ssj.probdist.NormalDist;

/**
 * The standard normal where trays are drawn: tabulated, a cubic through four nodes, scores within
 * 2e-7 and chances within 2e-10; in the tails SSJ's. Of random numbers a score takes a third of the
 * time of SSJ's, a chance a ninth.
 */
final class StandardNormal {
  private static final int INTERVALS = 1024;

  /** The scores' table ends where their curve bends too much for a cubic. */
  private static final double TAIL = 1 / 32.0;

  private static final double[] SCORES = new double[INTERVALS + 1];

  /** Chances are tabulated for scores less than this from 0. */
  private static final int WIDEST = 4;

  private static final int OF_ONE = 128;
  private static final double[] CHANCES = new double[2 * WIDEST * OF_ONE + 1];

  static {
    for (int i = 1; i < INTERVALS; i++) {
      SCORES[i] = NormalDist.inverseF01((double) i / INTERVALS);
    }
    for (int i = 0; i < CHANCES.length; i++) {
      CHANCES[i] = NormalDist.cdf01((double) i / OF_ONE - WIDEST);
    }
  }

  private StandardNormal() {}

  /** The score that it stays below with chance u, 0 to 1. */
  static double score(double u) {
    return u < TAIL || u > 1 - TAIL ? NormalDist.inverseF01(u) : at(SCORES, u * INTERVALS);
  }

  /** Chance that it stays below a score. */
  static double chance(double score) {
    double position = (score + WIDEST) * OF_ONE;
    return position < 1 || position >= CHANCES.length - 2
        ? NormalDist.cdf01(score)
        : at(CHANCES, position);
  }

  private static double at(double[] nodes, double position) {
    int i = (int) position;
    return QuantileTable.cubic(nodes[i - 1], nodes[i], nodes[i + 1], nodes[i + 2], position - i);
  }
}
