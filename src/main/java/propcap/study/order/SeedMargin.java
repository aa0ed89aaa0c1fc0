package propcap.study.order;

import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.BinomialDistribution;
import propcap.farm.Crop.Germination;

/**
 * How many cells to sow so that enough of them fill, by germination alone. Given the lot's rate g,
 * a cell with k seeds fills with chance {@code 1 - (1 - g)^k}, and the cells that fill are
 * binomial; the rate is beta about the tested one, as in the model. That trays differ beyond that
 * is not in it: it is in the simulation.
 */
final class SeedMargin {
  /** Midpoints of equal chance in place of the lot's rate: their error is below a cell. */
  private static final int NODES = 200;

  private static final int MOST_CELLS = 100_000_000;

  private final double[] fills;

  SeedMargin(Germination germination, int seedsPerCell) {
    double rate = germination.rate();
    double tested = germination.testedSeeds();
    boolean isSure = tested == 0 || rate == 0 || rate == 1;
    fills =
        IntStream.range(0, isSure ? 1 : NODES)
            .mapToDouble(
                i ->
                    isSure
                        ? rate
                        : new BetaDistribution(null, rate * tested, (1 - rate) * tested)
                            .inverseCumulativeProbability((i + 0.5) / NODES))
            .map(g -> 1 - Math.pow(1 - g, seedsPerCell))
            .toArray();
  }

  /** Chance, 0 to 1, that at least so many of some cells fill. */
  double chance(int cells, int needed) {
    if (needed <= 0) {
      return 1;
    }
    double sum = 0;
    for (double fill : fills) {
      sum += 1 - new BinomialDistribution(null, cells, fill).cumulativeProbability(needed - 1);
    }
    return sum / fills.length;
  }

  /**
   * The least number of cells with which at least so many fill with a chance; empty where no number
   * does that a farm could sow.
   */
  OptionalInt cells(int needed, double chance) {
    if (needed <= 0) {
      return OptionalInt.of(0);
    }
    int enough = needed;
    while (chance(enough, needed) < chance) {
      if (enough > MOST_CELLS / 2) {
        return OptionalInt.empty();
      }
      enough *= 2;
    }
    int tooFew = needed - 1;
    while (enough - tooFew > 1) {
      int middle = (enough + tooFew) >>> 1;
      if (chance(middle, needed) >= chance) {
        enough = middle;
      } else {
        tooFew = middle;
      }
    }
    return OptionalInt.of(enough);
  }
}
