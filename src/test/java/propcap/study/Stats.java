package propcap.study;

import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/** Numbers over the seasons made up by hand, to see what is written of them. */
public final class Stats {
  private static final int SEASONS = 1000;

  private Stats() {}

  /** With even 95 % limits by the normal distribution, where there is any error. */
  public static Stat of(double mean, double se, double p10, double p50, double p90) {
    MeanLimits limits = se == 0 ? null : new MeanLimits(mean - 1.96 * se, mean + 1.96 * se);
    return new Stat(mean, se, limits, SEASONS, se == 0 ? 0 : SEASONS, p10, p50, p90);
  }

  /** The same in all of so many seasons. */
  public static Stat always(double number, int seasons) {
    return new Stat(number, 0, null, seasons, 0, number, number, number);
  }

  /** Not 0 in so many of 100 seasons, too few for limits. */
  public static Stat seldom(double mean, int seen) {
    return new Stat(mean, mean, null, 100, seen, 0, 0, 0);
  }
}
