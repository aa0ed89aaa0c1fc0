package propcap.evidence.stages;

/**
 * The chance of what a tray with an outbreak of damping-off lost. Of n plants x were lost: k to all
 * else and x - k of the other n - k to the outbreak, whose chance is Beta(2s, 2(1 - s)) with s its
 * severity, as the simulator has it; summed over k. The binomial coefficient of x out of n is left
 * out, as it is where there was no outbreak.
 */
final class OutbreakChance {
  /** Where a sum is put aside before it has no digits left. */
  private static final double LARGE = 1e200;

  private final double alpha;
  private final RisingFactorials ofLost;
  private final RisingFactorials ofKept;
  private final RisingFactorials ofPlants = new RisingFactorials(1);

  OutbreakChance(double severity) {
    alpha = 2 * severity;
    ofLost = new RisingFactorials(alpha);
    ofKept = new RisingFactorials(2 * (1 - severity));
  }

  /**
   * Logarithm of the chance.
   *
   * @param lnKept logarithm of the share that all else leaves, below 0
   */
  double log(int plants, int lost, double lnKept) {
    double lnFirst = ofLost.ln(lost) + ofKept.ln(plants - lost) - ofPlants.ln(plants + 1);
    double odds = Math.exp(-lnKept) - 1;
    double term = 1;
    double sum = 1;
    double aside = 0;
    for (int k = 0; k < lost; k++) {
      term *= odds * (lost - k) * (plants - k + 1) / ((k + 1) * (lost - k - 1 + alpha));
      sum += term;
      if (sum > LARGE) {
        aside += Math.log(sum);
        term /= sum;
        sum = 1;
      } else if (term < 1e-16 * sum && odds * (plants + 1) < k + 1) {
        break;
      }
    }
    return lnFirst + plants * lnKept + aside + Math.log(sum);
  }
}
