package propcap.season;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * The chances of one tray of {@link OccupancyLawTest}, which finds room everywhere, worked out from
 * the model's text without order statistics and without the engine's code: given the tray's rate g,
 * which is beta, the cells that show by a thermal time x are binomial with chance {@code 1 - (1 - g
 * L(x))^k}. People work each day but Sunday.
 *
 * @param halfByDays at 20 C, where the mats stand at 22 C and the base is 5 C
 * @param mostByDays at 20 C
 * @param takesDays median growing on in the house, which stands at the reference temperature
 */
record OneTray(double halfByDays, double mostByDays, double takesDays) {
  private static final int DAYS = 80;
  private static final int CELLS = 20;
  private static final int TO_LEAVE = 10;
  private static final int NOT_TO_FAIL = 6;
  private static final double PULL_AFTER_DAYS = 9.5;
  private static final double SPREAD = 0.15;
  private static final int HARDENING_DAYS = 4;

  /** Beta with mean 0.55 in which two seeds are correlated by 0.1. */
  private static final BetaDistribution RATE =
      new BetaDistribution(null, 0.55 * 0.9 / 0.1, 0.45 * 0.9 / 0.1);

  /** Midpoints of equal chances: the error, about 1e-5, is a thousandth of the tolerance. */
  private static final int NODES = 400;

  private static final double[] RATES = new double[NODES];

  static {
    for (int i = 0; i < NODES; i++) {
      RATES[i] = RATE.inverseCumulativeProbability((i + 0.5) / NODES);
    }
  }

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Chances to be in the heat, on the table and outside (0, 1, 2) after each day's round. */
  static final class Stay {
    private final double[][] chances;

    private Stay(double[]... chances) {
      this.chances = chances;
    }

    double chance(int place, int day) {
      return chances[place][day];
    }
  }

  private static boolean works(int day) {
    return day % 7 != 6;
  }

  private static int nextRound(int day) {
    return works(day) ? day : day + 1;
  }

  private static int lastRoundBefore(int day) {
    return works(day - 1) ? day - 1 : day - 2;
  }

  /** The tray's chances when it is due to be sown on a day. */
  Stay sownOn(int due) {
    int sown = nextRound(due);
    int pulled = nextRound(sown + (int) Math.ceil(PULL_AFTER_DAYS));
    double[] leaves = leaves(sown, pulled);
    return new Stay(inHeat(sown, pulled, leaves), onTable(leaves), outside(movesOut(leaves)));
  }

  /** Chances to leave the heat for the table on each day; the rest of 1 fails. */
  private double[] leaves(int sown, int pulled) {
    double[] leaves = new double[DAYS];
    double showedBefore = 0;
    for (int day = nextRound(sown + 1); day < pulled; day = nextRound(day + 1)) {
      double shows = atLeast(TO_LEAVE, day - sown);
      leaves[day] = shows - showedBefore;
      showedBefore = shows;
    }
    leaves[pulled] = atLeast(NOT_TO_FAIL, pulled - sown) - showedBefore;
    return leaves;
  }

  private static double[] inHeat(int sown, int pulled, double[] leaves) {
    double[] inHeat = new double[DAYS];
    double stays = 1;
    for (int day = sown; day < pulled; day++) {
      stays -= leaves[day];
      inHeat[day] = stays;
    }
    return inHeat;
  }

  private double[] onTable(double[] leaves) {
    double[] onTable = new double[DAYS];
    for (int left = 0; left < DAYS; left++) {
      for (int day = left; day < DAYS; day++) {
        int round = works(day) ? day : day - 1;
        onTable[day] += leaves[left] * (1 - grown(round - left));
      }
    }
    return onTable;
  }

  private double[] movesOut(double[] leaves) {
    double[] movesOut = new double[DAYS];
    for (int left = 0; left < DAYS; left++) {
      for (int day = nextRound(left + 1); day < DAYS; day = nextRound(day + 1)) {
        movesOut[day] += leaves[left] * (grown(day - left) - grown(lastRoundBefore(day) - left));
      }
    }
    return movesOut;
  }

  /** All days are fit; the first whole one is the day after the move. */
  private static double[] outside(double[] movesOut) {
    double[] outside = new double[DAYS];
    for (int out = 0; out < DAYS; out++) {
      int planted = nextRound(out + 1 + HARDENING_DAYS);
      for (int day = out; day < Math.min(planted, DAYS); day++) {
        outside[day] += movesOut[out];
      }
    }
    return outside;
  }

  /** Chance that at least so many cells show within some days of sowing. */
  private double atLeast(int cells, int days) {
    double degreeDays = (22 - 5) * days;
    double sigma = Math.log(mostByDays / halfByDays) / NORMAL.inverseCumulativeProbability(0.9);
    double seed =
        NORMAL.cumulativeProbability(Math.log(degreeDays / ((20 - 5) * halfByDays)) / sigma);
    double sum = 0;
    for (double g : RATES) {
      double cell = 1 - Math.pow(1 - g * seed, 2);
      sum += 1 - new BinomialDistribution(null, CELLS, cell).cumulativeProbability(cells - 1);
    }
    return sum / NODES;
  }

  /** Chance that a tray is ready within some days of leaving the heat. */
  private double grown(int days) {
    return days <= 0 ? 0 : NORMAL.cumulativeProbability(Math.log(days / takesDays) / SPREAD);
  }
}
