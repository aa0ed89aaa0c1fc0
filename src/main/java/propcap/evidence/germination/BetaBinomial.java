package propcap.evidence.germination;

import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.CountedTray;

/**
 * The law of the counts of trays whose seeds share a chance, where that chance is drawn anew for
 * each tray around the lot's (docs/model.md, section 4): two seeds of one tray are correlated by
 * rho.
 *
 * <p>In the form of Griffiths (1973, Biometrics 29), a sum of logarithms, which is exact down to
 * the binomial at a correlation of 0. Equal terms of several trays are counted once.
 */
final class BetaBinomial {
  private final int[] emergedAbove;
  private final int[] failedAbove;
  private final int[] seedsAbove;
  private final Tally tally;

  BetaBinomial(List<CountedTray> trays) {
    emergedAbove = above(trays.stream().mapToInt(CountedTray::emerged).toArray());
    failedAbove = above(trays.stream().mapToInt(t -> t.seeds() - t.emerged()).toArray());
    seedsAbove = above(trays.stream().mapToInt(CountedTray::seeds).toArray());
    tally = Tally.of(trays);
  }

  /** How many of the counts are more than 0, 1, 2 and so on. */
  private static int[] above(int[] counts) {
    int[] above = new int[IntStream.of(counts).max().orElse(0)];
    for (int count : counts) {
      for (int j = 0; j < count; j++) {
        above[j]++;
      }
    }
    return above;
  }

  /** The share that came up, of all trays together. */
  double share() {
    return tally.share();
  }

  /** Log-likelihood of a chance and a correlation, less the binomial coefficients. */
  double logLikelihood(double chance, double correlation) {
    if (correlation <= 0) {
      return term(tally.up(), chance) + term(tally.seeds() - tally.up(), 1 - chance);
    }
    double rest = 1 - correlation;
    return sum(emergedAbove, chance * rest, correlation)
        + sum(failedAbove, (1 - chance) * rest, correlation)
        - sum(seedsAbove, rest, correlation);
  }

  private static double sum(int[] above, double from, double step) {
    double sum = 0;
    for (int j = 0; j < above.length; j++) {
      sum += above[j] * Math.log(Math.max(from + j * step, Double.MIN_NORMAL));
    }
    return sum;
  }

  private static double term(int count, double chance) {
    return count == 0 ? 0 : count * Math.log(Math.max(chance, Double.MIN_NORMAL));
  }
}
