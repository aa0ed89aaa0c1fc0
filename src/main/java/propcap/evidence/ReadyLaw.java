package propcap.evidence;

import umontreal.ssj.probdist.NormalDist;

/** When a tray was ready, as far as is known: times that stand for all, and what each weighs. */
final class ReadyLaw {
  /** Equally likely times of a law over days. */
  private static final int TIMES = 16;

  /** The same between two rounds. */
  private static final int TIMES_OF_A_DAY = 4;

  /** A tray that was moved before it can have been ready is taken to have just become so. */
  private static final double MOVED_TOO_EARLY = 1e-100;

  private final double[] times;
  private final double[] lnWeights;

  private ReadyLaw(int size) {
    times = new double[size];
    lnWeights = new double[size];
  }

  int size() {
    return times.length;
  }

  double time(int number) {
    return times[number];
  }

  /** Logarithms of what the times weigh, in all 1. */
  double[] lnWeights() {
    return lnWeights.clone();
  }

  /** At any time between two rounds. */
  static ReadyLaw between(double from, double to) {
    ReadyLaw law = new ReadyLaw(TIMES_OF_A_DAY);
    for (int i = 0; i < TIMES_OF_A_DAY; i++) {
      law.times[i] = from + (i + 0.5) / TIMES_OF_A_DAY * (to - from);
      law.lnWeights[i] = -Math.log(TIMES_OF_A_DAY);
    }
    return law;
  }

  /**
   * Of a tray of which nobody wrote that it was ready: on the very round on which it was moved, or
   * by the law of all trays, given that it was ready by then.
   *
   * @param onTheRound between the round before the move and that of it
   */
  static ReadyLaw unwritten(
      WarmthCourse warmth, double firstMove, ReadyLaw onTheRound, StageGuess guess) {
    boolean isMoved = Double.isFinite(firstMove);
    double by =
        isMoved
            ? NormalDist.cdf01((Math.log(warmth.at(firstMove)) - guess.mu()) / guess.sigma())
            : 1;
    if (by < MOVED_TOO_EARLY) {
      return onTheRound;
    }
    int atOnce = isMoved ? onTheRound.size() : 0;
    ReadyLaw law = new ReadyLaw(TIMES + atOnce);
    double lnEarlier = isMoved ? Math.log1p(-guess.atOnce()) : 0;
    for (int i = 0; i < TIMES; i++) {
      double share = by * (i + 0.5) / TIMES;
      double degreeDays = Math.exp(guess.mu() + guess.sigma() * NormalDist.inverseF01(share));
      law.times[i] = Math.min(warmth.when(degreeDays), firstMove);
      law.lnWeights[i] = lnEarlier - Math.log(TIMES);
    }
    for (int i = 0; i < atOnce; i++) {
      law.times[TIMES + i] = onTheRound.times[i];
      law.lnWeights[TIMES + i] = Math.log(guess.atOnce()) + onTheRound.lnWeights[i];
    }
    return law;
  }
}
