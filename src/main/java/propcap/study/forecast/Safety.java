package propcap.study.forecast;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import propcap.farm.Sowing;
import propcap.farm.Worded;
import propcap.study.forecast.Forecast.SowingForecast;

/**
 * How a sowing stands by the chance that its plants are on time: the one definition that every
 * answer counts by.
 */
public enum Safety implements Worded {
  /** Its plants are on time in the share of springs that is its goal, or more. */
  SAFE,
  /** They are in fewer springs, but in some. */
  AT_RISK,
  /** In no spring of those tried are they. */
  LOST;

  /** Common practice: nine springs of ten. */
  public static final double DEFAULT_GOAL = 0.9;

  /**
   * By a chance and the goal.
   *
   * @param chance share of springs in which its plants are on time, 0 to 1
   */
  public static Safety of(double chance, double goal) {
    return chance >= goal ? SAFE : chance > 0 ? AT_RISK : LOST;
  }

  /** By a sowing's own goal, or else the usual one. */
  public static Safety of(SowingForecast forecast) {
    return of(forecast.chanceMet(), goal(forecast.sowing()));
  }

  /** The chance with which a sowing's plants must be on time where nothing else is asked. */
  public static double goal(Sowing sowing) {
    return sowing.leeway().goalOr(DEFAULT_GOAL);
  }

  /**
   * How many of some sowings are safe, each by its own goal or else the usual one.
   *
   * @param chance of each by its place in the list
   */
  public static int count(List<Sowing> sowings, IntToDoubleFunction chance) {
    return (int)
        IntStream.range(0, sowings.size())
            .filter(s -> isSafe(chance.applyAsDouble(s), sowings.get(s)))
            .count();
  }

  /** Whether a sowing is safe with a chance, by its own goal or else the usual one. */
  public static boolean isSafe(double chance, Sowing sowing) {
    return of(chance, goal(sowing)) == SAFE;
  }

  /** How many of some sowings stand so, each by its own goal or else the usual one. */
  public int among(List<SowingForecast> sowings) {
    return (int) sowings.stream().filter(s -> of(s) == this).count();
  }
}
