package propcap.evidence.stages;

import umontreal.ssj.probdist.NormalDist;

/** When a tray was ready, as far as is known: times that stand for all, and what each weighs. */
final class ReadyLaw {
  /** Times that stand for all between two rounds. */
  private static final int TIMES_OF_A_DAY = 4;

  /** So many standard deviations of the law below and above its middle are parted into steps. */
  private static final double REACH = 3;

  private static final int STEPS = 16;
  private static final double STEP = 2 * REACH / STEPS;
  private static final double[] LN_STEPS = lnSteps();

  /** A tray that was moved before it can have been ready is taken to have just become so. */
  private static final double MOVED_TOO_EARLY = 1e-100;

  private final double[] times;
  private final double[] lnWeights;

  private ReadyLaw(double[] times, double[] lnWeights) {
    this.times = times;
    this.lnWeights = lnWeights;
  }

  double time(int number) {
    return times[number];
  }

  double earliest() {
    double earliest = times[0];
    for (double time : times) {
      earliest = Math.min(earliest, time);
    }
    return earliest;
  }

  /** Logarithms of what the times weigh; all of them weigh 1. */
  double[] lnWeights() {
    return lnWeights.clone();
  }

  /** At any time between two rounds. */
  static ReadyLaw between(double from, double to) {
    double[] times = new double[TIMES_OF_A_DAY];
    double[] lnWeights = new double[TIMES_OF_A_DAY];
    for (int i = 0; i < TIMES_OF_A_DAY; i++) {
      times[i] = from + (i + 0.5) / TIMES_OF_A_DAY * (to - from);
      lnWeights[i] = -Math.log(TIMES_OF_A_DAY);
    }
    return new ReadyLaw(times, lnWeights);
  }

  /**
   * Of a tray of which nobody wrote that it was ready: on the very round on which it was moved, or
   * by the law of all trays, given that it was ready by then.
   *
   * @param firstMove infinite where it never was moved
   * @param onTheRound between the round before the move and that of it
   */
  static ReadyLaw unwritten(
      WarmthCourse warmth, double firstMove, ReadyLaw onTheRound, StageParameters guess) {
    boolean isMoved = Double.isFinite(firstMove);
    double byMove =
        isMoved
            ? (Math.log(warmth.at(firstMove)) - guess.mu()) / guess.sigma()
            : Double.POSITIVE_INFINITY;
    double ready = NormalDist.cdf01(byMove);
    if (ready < MOVED_TOO_EARLY) {
      return onTheRound;
    }
    int whole = (int) Math.max(0, Math.min(STEPS, Math.floor((byMove + REACH) / STEP)));
    boolean hasPart = whole < STEPS;
    int earlier = whole + (hasPart ? 1 : 0);
    int size = earlier + (isMoved ? onTheRound.times.length : 0);
    double[] times = new double[size];
    double[] lnWeights = new double[size];
    double ln = (isMoved ? guess.lnNotAtOnce() : 0) - Math.log(ready);
    for (int i = 0; i < whole; i++) {
      times[i] = time(warmth, firstMove, guess, -REACH + (i + 0.5) * STEP);
      lnWeights[i] = ln + LN_STEPS[i];
    }
    if (hasPart) {
      // All that is left of the law up to the move.
      double from = whole == 0 ? byMove - STEP : -REACH + whole * STEP;
      double part = ready - (whole == 0 ? 0 : NormalDist.cdf01(from));
      times[whole] = time(warmth, firstMove, guess, (from + byMove) / 2);
      lnWeights[whole] = ln + Math.log(part);
    }
    for (int i = earlier; i < size; i++) {
      times[i] = onTheRound.times[i - earlier];
      lnWeights[i] = guess.lnAtOnce() + onTheRound.lnWeights[i - earlier];
    }
    return new ReadyLaw(times, lnWeights);
  }

  private static double time(
      WarmthCourse warmth, double firstMove, StageParameters guess, double deviations) {
    return Math.min(firstMove, warmth.when(Math.exp(guess.mu() + guess.sigma() * deviations)));
  }

  /**
   * Of each step of the normal law its logarithm; what lies beyond the ends falls to the first and
   * last.
   */
  private static double[] lnSteps() {
    double[] lnSteps = new double[STEPS];
    double below = 0;
    for (int i = 0; i < STEPS; i++) {
      double upTo = i == STEPS - 1 ? 1 : NormalDist.cdf01(-REACH + (i + 1) * STEP);
      lnSteps[i] = Math.log(upTo - below);
      below = upTo;
    }
    return lnSteps;
  }
}
