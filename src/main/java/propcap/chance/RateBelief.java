package propcap.chance;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * What is believed of a germination rate once something is known of its seedlings: a beta
 * distribution times how likely that is, on a grid of logits that is made finer until it spans
 * little more than what is believed at all. Mean and quantiles are right to 0.001.
 */
final class RateBelief {
  /** Beyond this a rate is 0 or 1 to the last bit. */
  private static final double WIDEST = 34;

  private static final int CELLS = 300;

  /** What is less likely than the likeliest by this, in logs, is not believed: e^-25. */
  private static final double LEAST = 25;

  private static final int MOST_ROUNDS = 12;

  private final double[] logits = new double[CELLS + 1];

  /** Chance to lie below each point. */
  private final double[] below = new double[CELLS + 1];

  /**
   * A belief.
   *
   * @param alpha seeds that came up before, so to say, above 0
   * @param beta seeds that did not, above 0
   * @param logLikelihood of what is known, by rate
   */
  RateBelief(double alpha, double beta, DoubleUnaryOperator logLikelihood) {
    double from = -WIDEST;
    double to = WIDEST;
    double[] logs = new double[CELLS + 1];
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double step = (to - from) / CELLS;
      for (int i = 0; i <= CELLS; i++) {
        logits[i] = from + i * step;
        double g = QuantileTable.logistic(logits[i]);
        double lacking = QuantileTable.logistic(-logits[i]);
        logs[i] = alpha * Math.log(g) + beta * Math.log(lacking) + logLikelihood.applyAsDouble(g);
      }
      double most = Arrays.stream(logs).max().orElseThrow();
      int first = 0;
      while (logs[first] < most - LEAST) {
        first++;
      }
      int last = CELLS;
      while (logs[last] < most - LEAST) {
        last--;
      }
      from = logits[Math.max(0, first - 1)];
      to = logits[Math.min(CELLS, last + 1)];
      if (last - first > CELLS / 2) {
        break;
      }
    }
    accumulate(logs);
  }

  private void accumulate(double[] logs) {
    double most = Arrays.stream(logs).max().orElseThrow();
    for (int i = 1; i <= CELLS; i++) {
      double cell = (Math.exp(logs[i - 1] - most) + Math.exp(logs[i] - most)) / 2;
      below[i] = below[i - 1] + cell;
    }
    for (int i = 1; i <= CELLS; i++) {
      below[i] /= below[CELLS];
    }
    below[CELLS] = 1;
  }

  /** The rate, 0 to 1, below which it lies with chance u. */
  double at(double u) {
    int found = Arrays.binarySearch(below, u);
    int cell = Math.max(0, Math.min(CELLS - 1, found < 0 ? -found - 2 : found));
    double width = below[cell + 1] - below[cell];
    double inside = width > 0 ? (u - below[cell]) / width : 0;
    return QuantileTable.logistic(logits[cell] + inside * (logits[cell + 1] - logits[cell]));
  }
}
