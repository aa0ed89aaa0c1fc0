package propcap.evidence.stages;

import java.util.function.DoubleBinaryOperator;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import propcap.evidence.Estimate;

/**
 * How much warmth growing on takes, and how trays differ in it: a lognormal distribution over
 * trays.
 *
 * <p>The crop list's median and spread are taken as if so many trays had shown them (the
 * normal-inverse-gamma prior of log requirements); trays of the log then count one by one, each by
 * the chance to be ready within the degree days between the last round at which it was not and the
 * one at which it was, or not to be ready yet ({@link ReadyTimes}). Sums over a grid take the place
 * of integrals.
 *
 * @param degreeDays the median over trays, above the base
 * @param spread standard deviation over trays of the logarithm
 */
record WarmthRequirement(Learned degreeDays, Learned spread) {
  /** A spread of nothing would leave no room for a tray that differs. */
  static final double LEAST_SPREAD = 0.01;

  private static final int NODES = 41;
  private static final int PASSES = 4;
  private static final double REACH = 5;

  /** Fewer trays of which it is known when they were ready say nothing by themselves. */
  private static final int FEWEST_ALONE = 3;

  /** Fits trays to what is listed. */
  static WarmthRequirement fit(ReadyTimes times, Prior prior) {
    Estimate median = prior.median();
    Estimate spread = prior.spread();
    int telling = times.telling(prior.mu(), prior.sigma());
    if (telling == 0) {
      return new WarmthRequirement(Learned.nothing(median), Learned.nothing(spread));
    }
    Grid both = new Grid(times, prior, prior::logDensity);
    Grid alone = times.timed() < FEWEST_ALONE ? null : new Grid(times, prior, (mu, lnSigma) -> 0);
    return new WarmthRequirement(
        new Learned(median, alone == null ? null : estimate(alone.mu), estimate(both.mu), telling),
        new Learned(
            spread,
            alone == null ? null : estimate(alone.lnSigma),
            estimate(both.lnSigma),
            telling));
  }

  /** The median and the middle 95 %, off the log scale. */
  private static Estimate estimate(WeightedPoints logs) {
    return new Estimate(
        Math.exp(logs.quantile(0.5)),
        Math.exp(logs.quantile(Estimate.TAIL)),
        Math.exp(logs.quantile(1 - Estimate.TAIL)));
  }

  /** The listed figures as trays: their mean of logs, their spread, and how many they weigh. */
  record Prior(double degreeDays, double listedSpread, double trays) {
    double mu() {
      return Math.log(degreeDays);
    }

    double sigma() {
      return Math.max(LEAST_SPREAD, listedSpread);
    }

    Estimate median() {
      double factor = Math.exp(t(trays) * sigma() / Math.sqrt(trays));
      return new Estimate(degreeDays, degreeDays / factor, degreeDays * factor);
    }

    Estimate spread() {
      ChiSquaredDistribution chi = new ChiSquaredDistribution(trays);
      double low = sigma() * Math.sqrt(trays / chi.inverseCumulativeProbability(1 - Estimate.TAIL));
      double high = sigma() * Math.sqrt(trays / chi.inverseCumulativeProbability(Estimate.TAIL));
      return Estimate.within(listedSpread, low, high);
    }

    /** Logarithm of the density of the mean and the logarithm of the spread. */
    double logDensity(double someMu, double lnSigma) {
      double variance = Math.exp(2 * lnSigma);
      double off = someMu - mu();
      return -trays * lnSigma
          - trays * sigma() * sigma() / (2 * variance)
          - lnSigma
          - trays * off * off / (2 * variance);
    }
  }

  private static double t(double degreesOfFreedom) {
    return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(1 - Estimate.TAIL);
  }

  /** What both say, on a grid that draws in on where the weight lies. */
  private static final class Grid {
    private final WeightedPoints mu;
    private final WeightedPoints lnSigma;

    Grid(ReadyTimes times, Prior prior, DoubleBinaryOperator logPrior) {
      double[] mus =
          nodes(
              times.logs().reduce(prior.mu(), Math::min) - 1,
              times.logs().reduce(prior.mu(), Math::max) + 1);
      double[] lnSigmas = nodes(Math.log(0.2 * LEAST_SPREAD), Math.log(2));
      for (int pass = 1; ; pass++) {
        double[] muLogs = new double[NODES * NODES];
        for (int m = 0; m < NODES; m++) {
          for (int s = 0; s < NODES; s++) {
            muLogs[m * NODES + s] =
                logPrior.applyAsDouble(mus[m], lnSigmas[s])
                    + times.logLikelihood(mus[m], Math.exp(lnSigmas[s]));
          }
        }
        double[] weights = WeightedPoints.exp(muLogs);
        double[] overMu = new double[NODES];
        double[] overSigma = new double[NODES];
        for (int i = 0; i < weights.length; i++) {
          overMu[i / NODES] += weights[i];
          overSigma[i % NODES] += weights[i];
        }
        WeightedPoints muPoints = new WeightedPoints(mus, overMu);
        WeightedPoints sigmaPoints = new WeightedPoints(lnSigmas, overSigma);
        if (pass == PASSES) {
          mu = muPoints;
          lnSigma = sigmaPoints;
          return;
        }
        mus = closer(mus, muPoints);
        lnSigmas = closer(lnSigmas, sigmaPoints);
      }
    }

    private static double[] closer(double[] nodes, WeightedPoints points) {
      double step = nodes[1] - nodes[0];
      double reach = REACH * Math.sqrt(points.variance() + step * step / 4);
      return nodes(points.mean() - reach, points.mean() + reach);
    }

    private static double[] nodes(double from, double to) {
      double[] nodes = new double[NODES];
      for (int i = 0; i < NODES; i++) {
        nodes[i] = from + (to - from) * i / (NODES - 1);
      }
      return nodes;
    }
  }
}
