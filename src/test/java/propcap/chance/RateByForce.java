package propcap.chance;

import java.util.Arrays;
import java.util.Collection;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.BinomialDistribution;
import propcap.chance.KnownShowing.Count;
import propcap.chance.KnownShowing.Stand;
import propcap.farm.Crop;
import umontreal.ssj.probdist.NormalDist;

/**
 * What is believed of a lot's germination rate by force: sums over a fine grid of the lot's rates
 * and, within each, of a tray's, straight from the model's text.
 */
final class RateByForce {
  private static final int LOTS = 500;
  private static final double WIDEST = 30;

  private final Crop crop;

  /** Of the grid of a tray's rates, logits. */
  private final double step;

  /** Chance to lie below the upper end of each cell of the grid. */
  private final double[] below = new double[LOTS];

  private double mean;

  RateByForce(Crop crop, Collection<KnownShowing> trays, double step) {
    this.crop = crop;
    this.step = step;
    double rate = crop.germination().rate();
    double tested = crop.germination().testedSeeds();
    double[] logs = new double[LOTS];
    double[][] byRate = trays.stream().map(t -> onGrid(p -> chance(t, p))).toArray(double[][]::new);
    for (int i = 0; i < LOTS; i++) {
      double g = (i + 0.5) / LOTS;
      logs[i] = (rate * tested - 1) * Math.log(g) + ((1 - rate) * tested - 1) * Math.log(1 - g);
      if (crop.germination().trayCorrelation() == 0) {
        for (KnownShowing tray : trays) {
          logs[i] += Math.log(chance(tray, g));
        }
      } else {
        double[] weights = weights(g);
        for (double[] one : byRate) {
          logs[i] += Math.log(sum(weights, one));
        }
      }
    }
    double most = Arrays.stream(logs).max().orElseThrow();
    double sum = 0;
    for (int i = 0; i < LOTS; i++) {
      sum += Math.exp(logs[i] - most);
      below[i] = sum;
      mean += (i + 0.5) / LOTS * Math.exp(logs[i] - most);
    }
    for (int i = 0; i < LOTS; i++) {
      below[i] /= sum;
    }
    mean /= sum;
  }

  double mean() {
    return mean;
  }

  double at(double u) {
    int i = 0;
    while (below[i] < u) {
      i++;
    }
    double before = i == 0 ? 0 : below[i - 1];
    return (i + (u - before) / (below[i] - before)) / LOTS;
  }

  /** The rates below which a tray's own lies with some chances, rising, in a lot of rate g. */
  double[] tray(double g, KnownShowing known, double... chances) {
    double[] weights = weights(g);
    double[] likely = onGrid(p -> chance(known, p));
    double whole = sum(weights, likely);
    double[] rates = new double[chances.length];
    double sum = 0;
    int i = 0;
    for (int c = 0; c < chances.length; c++) {
      while (sum + weights[i] * likely[i] < chances[c] * whole) {
        sum += weights[i] * likely[i];
        i++;
      }
      rates[c] = rate(i + (chances[c] * whole - sum) / (weights[i] * likely[i]) - 0.5);
    }
    return rates;
  }

  private double rate(double i) {
    return 1 / (1 + Math.exp(WIDEST - i * step));
  }

  private double[] onGrid(DoubleUnaryOperator function) {
    double[] values = new double[(int) (2 * WIDEST / step) + 1];
    for (int i = 0; i < values.length; i++) {
      values[i] = function.applyAsDouble(rate(i));
    }
    return values;
  }

  /** Of trays' rates, Beta(g(1-rho)/rho, (1-g)(1-rho)/rho), on a grid of logits. */
  private double[] weights(double g) {
    double rho = crop.germination().trayCorrelation();
    double a = g * (1 - rho) / rho;
    double b = (1 - g) * (1 - rho) / rho;
    double[] weights =
        onGrid(p -> Math.exp(a * Math.log(p / g) + b * Math.log1p(-p) - b * Math.log1p(-g)));
    double sum = 0;
    for (double w : weights) {
      sum += w;
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
    return weights;
  }

  private static double sum(double[] weights, double[] values) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] * values[i];
    }
    return sum;
  }

  private double cell(double degreeDays, double g) {
    Crop.Emergence e = crop.emergence();
    double sigma = Math.log(e.mostByDays() / e.halfByDays()) / NormalDist.inverseF01(0.9);
    double seed =
        degreeDays == 0 ? 0 : NormalDist.cdf01(Math.log(degreeDays / e.medianDegreeDays()) / sigma);
    return 1 - Math.pow(1 - g * seed, crop.seedsPerCell());
  }

  private BinomialDistribution shown(double degreeDays, double g) {
    return new BinomialDistribution(null, crop.cells(), cell(degreeDays, g));
  }

  /** The chance of what is known of a tray: at most one count, or a stand, or when it left. */
  private double chance(KnownShowing known, double g) {
    if (!known.counts().isEmpty()) {
      Count count = known.counts().get(0);
      return shown(count.degreeDays(), g).probability(count.seedlings());
    }
    if (known.below() != KnownShowing.NOT_FAILED) {
      return shown(known.by(), g).cumulativeProbability(known.below() - 1);
    }
    int least = crop.cellsToLeave() - 1;
    double notYet = shown(known.notBy(), g).cumulativeProbability(least);
    Stand stand = known.stand();
    if (stand != null) {
      return stood(known.notBy(), known.by(), stand, g);
    }
    return known.isOver() ? notYet - shown(known.by(), g).cumulativeProbability(least) : notYet;
  }

  /** Fewer than enough at one time, enough by the next, and so many in the end. */
  private double stood(double notBy, double by, Stand stand, double g) {
    double before = cell(notBy, g);
    double left = cell(by, g);
    double end = cell(stand.degreeDays(), g);
    double sum = 0;
    for (int j = crop.cellsToLeave(); j <= stand.plants(); j++) {
      sum +=
          new BinomialDistribution(null, stand.plants(), left / end).probability(j)
              * new BinomialDistribution(null, j, before / left)
                  .cumulativeProbability(crop.cellsToLeave() - 1);
    }
    return sum * new BinomialDistribution(null, crop.cells(), end).probability(stand.plants());
  }
}
