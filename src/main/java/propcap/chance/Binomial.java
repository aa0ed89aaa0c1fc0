package propcap.chance;

import java.util.stream.IntStream;
import umontreal.ssj.probdist.BinomialDist;

/**
 * Binomial counts by inversion of one uniform, so that a count moves little and in one direction
 * when its chance changes a little.
 */
final class Binomial {
  /** Below this the chance of no success would underflow as the search's start. */
  private static final double LEAST_LOG_START = -700;

  /** One over each count, for to divide takes several times as long as to multiply. */
  private static final double[] INVERSES =
      IntStream.range(0, 1024).mapToDouble(k -> 1.0 / k).toArray();

  private Binomial() {}

  /**
   * The least count k with P(X <= k) >= u for X ~ Binomial(n, p); at the jumps themselves, which no
   * uniform hits, it may be the next.
   *
   * <p>Searches upwards from 0 on the side on which successes are rare: a few steps where plants
   * are lost at a few percent. Exact to rounding of the sums, about 1e-13.
   *
   * @param u in (0, 1)
   */
  static int quantile(int n, double p, double u) {
    if (p <= 0 || n == 0) {
      return 0;
    }
    if (p >= 1) {
      return n;
    }
    return p <= 0.5 ? rare(n, p, u) : n - rare(n, 1 - p, 1 - u);
  }

  private static int rare(int n, double p, double u) {
    if (u <= 1 - n * p) {
      // Bernoulli's inequality: (1 - p)^n is no less.
      return 0;
    }
    // Not log1p, which costs five times as much: the error of 1e-16 n matters to no plant.
    double logStart = n * Math.log(1 - p);
    if (logStart < LEAST_LOG_START) {
      return BinomialDist.inverseF(n, p, u);
    }
    double odds = p / (1 - p);
    double chance = Math.exp(logStart);
    double below = chance;
    int k = 0;
    while (u > below && k < n) {
      k++;
      chance *= odds * (n - k + 1) * (k < INVERSES.length ? INVERSES[k] : 1.0 / k);
      double next = below + chance;
      if (next == below && k > n * p) {
        // The rest of the tail is lost in rounding: u lies within 1e-15 of 1.
        return k;
      }
      below = next;
    }
    return k;
  }
}
