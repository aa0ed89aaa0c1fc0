package propcap.evidence;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import propcap.evidence.TrayEvidence.Ripening;

/**
 * How much warmth growing on takes, and how trays differ in it: a lognormal distribution over
 * trays.
 *
 * <p>The crop list's median and spread are taken as if so many trays had shown them (the
 * normal-inverse-gamma prior of log requirements); trays of the log then count one by one, each by
 * the chance to be ready within the degree days between the last round at which it was not and the
 * one at which it was. Sums over a grid take the place of integrals.
 *
 * @param degreeDays the median over trays, above the base
 * @param spread standard deviation over trays of the logarithm
 */
public record Requirement(Learned degreeDays, Learned spread) {
  /** A spread of nothing would leave no room for a tray that differs. */
  static final double LEAST_SPREAD = 0.01;

  private static final int NODES = 41;
  private static final int PASSES = 4;
  private static final double REACH = 5;

  /**
   * Fits.
   *
   * @param weight of the listed figures, in trays, above 0
   */
  static Requirement fit(
      List<Ripening> trays, double listedDegreeDays, double listedSpread, double weight) {
    Prior prior =
        new Prior(Math.log(listedDegreeDays), Math.max(LEAST_SPREAD, listedSpread), weight);
    Estimate median = prior.median(listedDegreeDays);
    Estimate spread = prior.spread(listedSpread);
    if (trays.isEmpty()) {
      return new Requirement(Learned.nothing(median), Learned.nothing(spread));
    }
    Grid grid = new Grid(trays, prior);
    double[] alone =
        trays.stream().filter(Ripening::isTimed).mapToDouble(r -> Math.log(r.middle())).toArray();
    Optional<Alone> log = Alone.of(alone, rounding(trays));
    return new Requirement(
        new Learned(
            median, log.map(Alone::median).orElse(null), grid.estimate(grid.mu), trays.size()),
        new Learned(
            spread,
            log.map(Alone::spread).orElse(null),
            grid.estimate(grid.lnSigma),
            trays.size()));
  }

  /** The standard deviation that whole days alone bring in, on the log scale. */
  private static double rounding(List<Ripening> trays) {
    double width =
        trays.stream()
            .filter(Ripening::isTimed)
            .mapToDouble(r -> Math.log(r.upTo() / r.above()))
            .average()
            .orElse(0);
    return width / Math.sqrt(12);
  }

  /** The listed figures as trays: their mean of logs, their spread, and how many they weigh. */
  private record Prior(double mu, double sigma, double trays) {
    Estimate median(double listed) {
      double halfWidth = t(trays) * sigma / Math.sqrt(trays);
      return Estimate.within(listed, Math.exp(mu - halfWidth), Math.exp(mu + halfWidth));
    }

    Estimate spread(double listed) {
      ChiSquaredDistribution chi = new ChiSquaredDistribution(trays);
      double low = sigma * Math.sqrt(trays / chi.inverseCumulativeProbability(1 - Estimate.TAIL));
      double high = sigma * Math.sqrt(trays / chi.inverseCumulativeProbability(Estimate.TAIL));
      return Estimate.within(listed, low, high);
    }

    /** Logarithm of the density of the mean and the logarithm of the spread. */
    double logDensity(double someMu, double lnSigma) {
      double variance = Math.exp(2 * lnSigma);
      double off = someMu - mu;
      return -trays * lnSigma
          - trays * sigma * sigma / (2 * variance)
          - lnSigma
          - trays * off * off / (2 * variance);
    }
  }

  /** What two or more timed trays say by themselves, by Student's t and the chi-squared. */
  private record Alone(Estimate median, Estimate spread) {
    static Optional<Alone> of(double[] logs, double rounding) {
      int n = logs.length;
      if (n < 2) {
        return Optional.empty();
      }
      double mean = 0;
      for (double log : logs) {
        mean += log / n;
      }
      double squares = 0;
      for (double log : logs) {
        squares += (log - mean) * (log - mean);
      }
      // Trays that agree to the day differ by less than a day, not by nothing.
      double sd = Math.max(Math.sqrt(squares / (n - 1)), Math.max(rounding, 1e-6));
      double halfWidth = t(n - 1) * sd / Math.sqrt(n);
      ChiSquaredDistribution chi = new ChiSquaredDistribution(n - 1);
      return Optional.of(
          new Alone(
              new Estimate(Math.exp(mean), Math.exp(mean - halfWidth), Math.exp(mean + halfWidth)),
              new Estimate(
                  sd,
                  sd * Math.sqrt((n - 1) / chi.inverseCumulativeProbability(1 - Estimate.TAIL)),
                  sd * Math.sqrt((n - 1) / chi.inverseCumulativeProbability(Estimate.TAIL)))));
    }
  }

  private static double t(double degreesOfFreedom) {
    return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(1 - Estimate.TAIL);
  }

  /** What both say, on a grid that draws in on where the weight lies. */
  private static final class Grid {
    private final WeightedPoints mu;
    private final WeightedPoints lnSigma;

    Grid(List<Ripening> trays, Prior prior) {
      ReadyTimes times = new ReadyTimes(trays);
      double[] mus =
          nodes(Math.min(times.least(), prior.mu()) - 1, Math.max(times.most(), prior.mu()) + 1);
      double[] lnSigmas = nodes(Math.log(0.2 * LEAST_SPREAD), Math.log(2));
      for (int pass = 1; ; pass++) {
        double[] muLogs = new double[NODES * NODES];
        for (int m = 0; m < NODES; m++) {
          for (int s = 0; s < NODES; s++) {
            muLogs[m * NODES + s] =
                prior.logDensity(mus[m], lnSigmas[s])
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

    /** The median and the middle 95 %, off the log scale. */
    Estimate estimate(WeightedPoints logs) {
      return new Estimate(
          Math.exp(logs.quantile(0.5)),
          Math.exp(logs.quantile(Estimate.TAIL)),
          Math.exp(logs.quantile(1 - Estimate.TAIL)));
    }
  }
}
