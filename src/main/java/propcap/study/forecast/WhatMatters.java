package propcap.study.forecast;

import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.study.statistics.Difference;

/** Whether a difference in plants on time is worth a grower's thought. */
public enum WhatMatters {
  /** It lies beyond its error, and is {@link #SHARE} of the plants needed or more. */
  MATTERS,
  /** The springs tell that it is less than that, one way or the other. */
  NONE,
  /** The springs do not tell. */
  NOT_TOLD;

  /** Less than this share of the plants needed is not worth a change. Default, not measured. */
  public static final double SHARE = 0.005;

  /** By the plants that the first of two scenarios needs. */
  public static WhatMatters of(Difference plants, Scenario first) {
    double least = SHARE * first.plantsNeeded();
    if (!plants.isTold()) {
      return NOT_TOLD;
    }
    if (plants.isClear()) {
      return Math.abs(plants.mean()) >= least ? MATTERS : NONE;
    }
    return Math.max(-plants.low(), plants.high()) < least ? NONE : NOT_TOLD;
  }

  /** Whether a margin rises by that share of what the plants needed are worth, beyond its error. */
  public static boolean isGain(Difference margin, Scenario first) {
    Prices prices = first.prices();
    if (prices == null || !margin.isMore()) {
      return false;
    }
    double needed =
        first.sowings().stream()
            .mapToDouble(s -> s.plantsNeeded() * prices.of(s.crop()).worth().doubleValue())
            .sum();
    return margin.mean() >= SHARE * needed;
  }
}
