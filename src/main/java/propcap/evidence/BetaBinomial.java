package propcap.evidence;

/**
 * The law of a tray's count where the chance of its seeds is drawn anew for each tray around the
 * lot's (docs/model.md, section 4): two seeds of one tray are correlated by rho.
 */
final class BetaBinomial {
  private BetaBinomial() {}

  /**
   * Log-likelihood of a chance and a correlation, less the binomial coefficient.
   *
   * <p>In the form of Griffiths (1973, Biometrics 29), a sum of logarithms, which is exact down to
   * the binomial at a correlation of 0.
   */
  static double logLikelihood(int seeds, int emerged, double chance, double correlation) {
    int failed = seeds - emerged;
    if (correlation <= 0) {
      return term(emerged, chance) + term(failed, 1 - chance);
    }
    double rest = 1 - correlation;
    double sum = 0;
    for (int j = 0; j < emerged; j++) {
      sum += safeLog(chance * rest + j * correlation);
    }
    for (int j = 0; j < failed; j++) {
      sum += safeLog((1 - chance) * rest + j * correlation);
    }
    for (int j = 0; j < seeds; j++) {
      sum -= Math.log(rest + j * correlation);
    }
    return sum;
  }

  private static double term(int count, double chance) {
    return count == 0 ? 0 : count * safeLog(chance);
  }

  private static double safeLog(double x) {
    return Math.log(Math.max(x, Double.MIN_NORMAL));
  }
}
