package propcap.chance;

import propcap.farm.Crop;
import umontreal.ssj.probdist.NormalDist;

/**
 * When the seedlings of a cell show, in thermal time: one seed is lognormal, and of the seeds of a
 * cell the first is kept.
 */
public final class EmergenceCurve {
  private static final double SCORE_OF_NINE_IN_TEN = NormalDist.inverseF01(0.9);

  private final int seeds;
  private final double logMedian;
  private final double sigma;

  public EmergenceCurve(Crop crop) {
    Crop.Emergence emergence = crop.emergence();
    seeds = crop.seedsPerCell();
    logMedian = Math.log(emergence.medianDegreeDays());
    sigma = Math.log(emergence.mostByDays() / emergence.halfByDays()) / SCORE_OF_NINE_IN_TEN;
  }

  /** Log-scale spread of a seed's thermal time. */
  public double sigma() {
    return sigma;
  }

  /** Chance that a seed that germinates shows by a thermal time, degree days. */
  public double seed(double degreeDays) {
    return degreeDays <= 0 ? 0 : StandardNormal.chance((Math.log(degreeDays) - logMedian) / sigma);
  }

  /** Chance that a cell fills, {@code 1 - (1-g)^k}, where each seed germinates with chance g. */
  public double fills(double g) {
    return 1 - power(1 - g);
  }

  /** Chance that a cell shows by a thermal time, of a cell that fills; g above 0. */
  public double cell(double degreeDays, double g) {
    double l = seed(degreeDays);
    return seeds == 1 ? l : (1 - power(1 - g * l)) / fills(g);
  }

  /**
   * The thermal time, degree days, by which a share of the cells that fill show: the inverse of
   * {@link #cell}.
   */
  public double degreeDaysAt(double share, double g) {
    double l = seeds == 1 ? share : (1 - root(1 - share * fills(g))) / g;
    return Math.exp(logMedian + sigma * StandardNormal.score(Math.min(l, 1)));
  }

  /**
   * Chance that a cell shows by a thermal time, of all cells: those that never fill do not.
   *
   * @param seed chance that a seed that germinates shows by then, see {@link #seed}
   */
  double shows(double seed, double g) {
    return 1 - power(1 - g * seed);
  }

  /**
   * The thermal time, degree days, by which a share of all cells show: the inverse of {@link
   * #shows}; infinite where fewer fill.
   */
  double timeShown(double share, double g) {
    double l = (1 - root(1 - share)) / g;
    return l >= 1
        ? Double.POSITIVE_INFINITY
        : Math.exp(logMedian + sigma * StandardNormal.score(l));
  }

  private double power(double x) {
    double product = x;
    for (int i = 1; i < seeds; i++) {
      product *= x;
    }
    return product;
  }

  private double root(double x) {
    return switch (seeds) {
      case 1 -> x;
      case 2 -> Math.sqrt(x);
      default -> Math.pow(x, 1.0 / seeds);
    };
  }
}
