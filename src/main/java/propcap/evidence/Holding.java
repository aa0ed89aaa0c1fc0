package propcap.evidence;

import java.util.List;
import propcap.evidence.TrayEvidence.Held;

/**
 * How long ready plugs keep, and what each day beyond that costs: over D such days a plant is lost
 * with a chance 1 - (1 - o)^D, and again by whatever else cost plants between the same counts.
 *
 * <p>Both are found together, summed over a grid that draws in on where the weight lies. Trays that
 * were all held for the same time cannot tell the two apart: then mostly the list does.
 *
 * @param holdsDays days that a ready plug keeps
 * @param lossPerDay share of the plants lost on each day after them
 */
record Holding(Learned holdsDays, Learned lossPerDay) {
  private static final int NODES = 61;
  private static final int PASSES = 4;
  private static final double REACH = 6;

  /** A plug that keeps for no time at all is listed as keeping half a day. */
  private static final double LEAST_DAYS = 0.5;

  /** What else costs plants, besides being held. */
  record Besides(double tablePerDay, double potting, double hardening) {
    /** Nothing is taken as quite impossible: a plant may always die. */
    private double of(Held held) {
      double share =
          switch (held.besides()) {
            case POTTING -> potting;
            case HARDENING -> hardening;
            default -> 1 - Math.pow(1 - tablePerDay, held.toDay() - held.fromDay());
          };
      return Math.max(BetaBelief.NEARLY_IMPOSSIBLE, share);
    }
  }

  /**
   * Fits.
   *
   * @param listedDays that plugs keep by the crop list; taken as if so many trays had shown it,
   *     each to within a factor e either way (a planning default, not measured)
   * @param listedLoss of a day
   * @param trays that the list weighs
   * @param plants that the list weighs
   */
  static Holding fit(
      List<Held> all,
      double listedDays,
      double listedLoss,
      double trays,
      double plants,
      Besides besides) {
    double mu = Math.log(Math.max(LEAST_DAYS, listedDays));
    double sd = 1 / Math.sqrt(trays);
    double reach = REACH / 3 * sd;
    Estimate days = Estimate.within(listedDays, Math.exp(mu - reach), Math.exp(mu + reach));
    BetaBelief belief = BetaBelief.of(listedLoss, plants);
    Estimate loss = belief.around(listedLoss);
    List<Held> telling = all.stream().filter(h -> h.toDay() > days.low()).toList();
    if (telling.isEmpty()) {
      return new Holding(Learned.nothing(days), Learned.nothing(loss));
    }
    Grid both = new Grid(telling, besides, mu, sd, belief);
    Grid alone = new Grid(telling, besides, mu, sd, BetaBelief.NONE);
    return new Holding(
        new Learned(days, null, both.days(), telling.size()),
        new Learned(loss, alone.loss(), both.loss(), telling.size()));
  }

  /** Logarithm of the chance of all counts. */
  private static double logLikelihood(
      List<Held> all, double[] lnBesides, double days, double loss) {
    double sum = 0;
    double lnKeptADay = Math.log1p(-loss);
    for (int i = 0; i < lnBesides.length; i++) {
      Held held = all.get(i);
      double lnKept = held.daysBeyond(days) * lnKeptADay + lnBesides[i];
      int lost = held.count().lost();
      sum += (held.count().plants() - lost) * lnKept;
      sum += lost == 0 ? 0 : lost * Math.log(-Math.expm1(lnKept));
    }
    return sum;
  }

  /** What list and log say, over the logarithm of the days and the log odds of the loss. */
  private static final class Grid {
    private final WeightedPoints lnDays;
    private final WeightedPoints lnOdds;

    Grid(List<Held> all, Besides besides, double mu, double sd, BetaBelief belief) {
      double[] lnBesides = all.stream().mapToDouble(h -> Math.log1p(-besides.of(h))).toArray();
      double[] days = nodes(mu - REACH * sd, mu + REACH * sd);
      double[] odds = nodes(odds(BetaBelief.NEARLY_IMPOSSIBLE) - 3, odds(0.9));
      for (int pass = 1; ; pass++) {
        double[] logs = new double[NODES * NODES];
        for (int i = 0; i < logs.length; i++) {
          double off = (days[i / NODES] - mu) / sd;
          double loss = 1 / (1 + Math.exp(-odds[i % NODES]));
          logs[i] =
              belief.logDensity(loss)
                  + Math.log(loss)
                  + Math.log1p(-loss)
                  - off * off / 2
                  + logLikelihood(all, lnBesides, Math.exp(days[i / NODES]), loss);
        }
        double[] weights = WeightedPoints.exp(logs);
        double[] overDays = new double[NODES];
        double[] overOdds = new double[NODES];
        for (int i = 0; i < weights.length; i++) {
          overDays[i / NODES] += weights[i];
          overOdds[i % NODES] += weights[i];
        }
        WeightedPoints dayPoints = new WeightedPoints(days, overDays);
        WeightedPoints oddsPoints = new WeightedPoints(odds, overOdds);
        if (pass == PASSES) {
          lnDays = dayPoints;
          lnOdds = oddsPoints;
          return;
        }
        days = closer(days, dayPoints);
        odds = closer(odds, oddsPoints);
      }
    }

    private static double odds(double share) {
      return Math.log(share / (1 - share));
    }

    private static double[] closer(double[] nodes, WeightedPoints points) {
      double step = nodes[1] - nodes[0];
      double reach = REACH * Math.sqrt(points.variance() + step * step / 4);
      return nodes(
          Math.max(nodes[0], points.mean() - reach),
          Math.min(nodes[NODES - 1], points.mean() + reach));
    }

    private static double[] nodes(double from, double to) {
      double[] nodes = new double[NODES];
      for (int i = 0; i < NODES; i++) {
        nodes[i] = from + (to - from) * i / (NODES - 1);
      }
      return nodes;
    }

    Estimate days() {
      return new Estimate(
          Math.exp(lnDays.quantile(0.5)),
          Math.exp(lnDays.quantile(Estimate.TAIL)),
          Math.exp(lnDays.quantile(1 - Estimate.TAIL)));
    }

    Estimate loss() {
      return new Estimate(
          share(lnOdds.quantile(0.5)),
          share(lnOdds.quantile(Estimate.TAIL)),
          share(lnOdds.quantile(1 - Estimate.TAIL)));
    }

    private static double share(double lnOdds) {
      return 1 / (1 + Math.exp(-lnOdds));
    }
  }
}
