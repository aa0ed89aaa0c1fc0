package propcap.evidence.germination;

import umontreal.ssj.probdist.NormalDist;

/**
 * A shape that the showing of a lot's seedlings may have over time: the share of those that ever
 * show that have shown, {@code F((ln t - ln median) / spread)}, with F(0) one half.
 */
public enum CurveFamily {
  /** F(z) = Phi(z): the simulator's own. */
  LOGNORMAL("lognormal") {
    @Override
    double below(double z) {
      return NormalDist.cdf01(z);
    }

    @Override
    double above(double z) {
      return NormalDist.barF01(z);
    }

    @Override
    double quantile(double share) {
      return NormalDist.inverseF01(share);
    }
  },
  /** F(z) = 1 / (1 + exp(-z)): steepness b = 1 / spread. */
  LOG_LOGISTIC("log-logistic") {
    @Override
    double below(double z) {
      return 1 / (1 + Math.exp(-z));
    }

    @Override
    double above(double z) {
      return 1 / (1 + Math.exp(z));
    }

    @Override
    double quantile(double share) {
      return Math.log(share / (1 - share));
    }
  },
  /** F(z) = 1 - 2^-exp(z): its shape is 1 / spread. */
  WEIBULL("Weibull") {
    @Override
    double below(double z) {
      return -Math.expm1(-LN_2 * Math.exp(z));
    }

    @Override
    double above(double z) {
      return Math.exp(-LN_2 * Math.exp(z));
    }

    @Override
    double quantile(double share) {
      return Math.log(-Math.log1p(-share) / LN_2);
    }
  };

  private static final double LN_2 = Math.log(2);

  private final String word;

  CurveFamily(String word) {
    this.word = word;
  }

  /** Its name, as statisticians write it. */
  public String word() {
    return word;
  }

  abstract double below(double z);

  abstract double above(double z);

  /** The z below which a share lies; 0 for one half. */
  abstract double quantile(double share);

  /** The share between two points, exact in both tails. */
  final double between(double from, double to) {
    return from > 0 ? above(from) - above(to) : below(to) - below(from);
  }
}
