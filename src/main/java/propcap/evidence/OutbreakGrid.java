package propcap.evidence;

/**
 * What is known after a log of the three chances of {@link TableLosses}, summed over a grid. The
 * nodes of each chance are quantiles of a beta distribution that roughly has its weight where the
 * answer has, closer together at both ends; what is rough in it is weighed out.
 */
final class OutbreakGrid {
  private static final int NODES = 31;

  /** The rough distribution is spread out, so that its tails reach beyond those of the answer. */
  private static final double SPREAD_OUT = 0.6;

  private static final double LEAST = 1e-12;

  /** Where a product of chances is put aside before it has no digits left. */
  private static final double SMALL = 1e-200;

  private final WeightedPoints loss;
  private final WeightedPoints chance;
  private final WeightedPoints severity;

  OutbreakGrid(OutbreakLikelihood likelihood, TableLosses.Belief belief, TableLosses.Belief rough) {
    Axis losses = new Axis(belief.loss(), rough.loss());
    Axis chances = new Axis(belief.chance(), rough.chance());
    Axis severities = new Axis(belief.severity(), rough.severity());
    double[] logs = new double[NODES * NODES * NODES];
    double[][] without = new double[likelihood.size()][NODES];
    for (int t = 0; t < without.length; t++) {
      for (int g = 0; g < NODES; g++) {
        without[t][g] = likelihood.logWithout(t, losses.nodes[g]);
      }
    }
    double[][] with = new double[likelihood.size()][];
    for (int s = 0; s < NODES; s++) {
      for (int t = 0; t < with.length; t++) {
        with[t] = likelihood.logWith(t, losses.nodes, severities.nodes[s]);
      }
      for (int g = 0; g < NODES; g++) {
        double[] row = row(likelihood, without, with, g, chances.nodes);
        for (int c = 0; c < NODES; c++) {
          logs[(s * NODES + g) * NODES + c] =
              row[c] + losses.logWeights[g] + chances.logWeights[c] + severities.logWeights[s];
        }
      }
    }
    double[] weights = WeightedPoints.exp(logs);
    double[] bySeverity = new double[NODES];
    double[] byLoss = new double[NODES];
    double[] byChance = new double[NODES];
    for (int i = 0; i < weights.length; i++) {
      bySeverity[i / (NODES * NODES)] += weights[i];
      byLoss[i / NODES % NODES] += weights[i];
      byChance[i % NODES] += weights[i];
    }
    loss = new WeightedPoints(losses.nodes, byLoss);
    chance = new WeightedPoints(chances.nodes, byChance);
    severity = new WeightedPoints(severities.nodes, bySeverity);
  }

  /**
   * Logarithm of the chance of all trays at one background loss, for each chance of an outbreak.
   */
  private static double[] row(
      OutbreakLikelihood likelihood, double[][] without, double[][] with, int g, double[] chances) {
    double[] logs = new double[NODES];
    double common = 0;
    double[] plain = new double[with.length];
    double[] hit = new double[with.length];
    for (int t = 0; t < with.length; t++) {
      boolean isSeen = likelihood.outbreakSeen(t);
      double most = isSeen ? with[t][g] : Math.max(without[t][g], with[t][g]);
      common += most;
      plain[t] = isSeen ? 0 : Math.exp(without[t][g] - most);
      hit[t] = Math.exp(with[t][g] - most);
    }
    for (int c = 0; c < NODES; c++) {
      double sum = common;
      double product = 1;
      for (int t = 0; t < with.length; t++) {
        product *= (1 - chances[c]) * plain[t] + chances[c] * hit[t];
        if (product < SMALL) {
          sum += Math.log(product);
          product = 1;
        }
      }
      logs[c] = sum + Math.log(product);
    }
    return logs;
  }

  Estimate loss() {
    return loss.around(loss.mean());
  }

  Estimate chance() {
    return chance.around(chance.mean());
  }

  Estimate severity() {
    return severity.around(severity.mean());
  }

  /** The beta distributions that have the same means and variances. */
  TableLosses.Belief asBelief() {
    return new TableLosses.Belief(beta(loss), beta(chance), beta(severity));
  }

  private static BetaBelief beta(WeightedPoints points) {
    double mean = points.mean();
    double sum = mean * (1 - mean) / Math.max(points.variance(), 1e-12) - 1;
    double held = Math.max(0.1, sum);
    return new BetaBelief(mean * held, (1 - mean) * held);
  }

  /** The nodes of one chance, and what each weighs before any tray is looked at. */
  private static final class Axis {
    private final double[] nodes = new double[NODES];
    private final double[] logWeights = new double[NODES];

    Axis(BetaBelief belief, BetaBelief rough) {
      BetaBelief wide = new BetaBelief(SPREAD_OUT * rough.lost(), SPREAD_OUT * rough.kept());
      for (int i = 0; i < NODES; i++) {
        double t = (i + 0.5) / NODES;
        double share = t * t * (3 - 2 * t);
        double node = Math.max(LEAST, Math.min(1 - LEAST, wide.quantile(share)));
        nodes[i] = node;
        logWeights[i] = belief.logDensity(node) - wide.logDensity(node) + Math.log(6 * t * (1 - t));
      }
    }
  }
}
