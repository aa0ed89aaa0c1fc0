package propcap.study.size;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.farm.Worded;
import propcap.study.BadQuestionException;
import propcap.study.size.Sizing.Found;
import propcap.study.statistics.MeanLimits;

/**
 * What a size must achieve.
 *
 * @param measure what is looked at
 * @param least the value that its mean must reach: a share, more than 0 and at most 1, or plants; 0
 *     for the largest margin
 */
public record Goal(Measure measure, double least) {
  /** What a goal is about. */
  public enum Measure implements Worded {
    /** The chance that every sowing asked about has its plants on time. */
    MET,
    /**
     * Plants on time, as a share of those needed by the sowings asked about. What one sowing has
     * above its need does not make up for another.
     */
    ON_TIME_SHARE,
    /** Plants on time of the sowings asked about. */
    ON_TIME,
    /** The largest mean margin of a season. */
    MARGIN
  }

  private static final Pattern FORM =
      Pattern.compile("\\s*(met|on-time)\\s*>=\\s*([0-9]+(?:\\.[0-9]+)?)\\s*(%?)\\s*");

  /**
   * A number from 1 on in what looks like a goal, its sign or its percent not as they should be.
   */
  private static final Pattern ALMOST =
      Pattern.compile(
          "\\s*(met|on-time)\\s*(>=|>|=>|=)\\s*([1-9][0-9]*(?:\\.[0-9]+)?)\\s*(%?)\\s*");

  /**
   * Reads {@code met>=90%}, {@code on-time>=95%}, {@code on-time>=80000} or {@code margin}.
   *
   * @throws BadQuestionException saying what a goal looks like
   */
  public static Goal parse(String text) throws BadQuestionException {
    if (text.trim().equals("margin")) {
      return new Goal(Measure.MARGIN, 0);
    }
    Goal goal = read(text);
    if (goal == null) {
      throw new BadQuestionException(
          "'"
              + text
              + "' is no goal"
              + meant(text)
              + "; a goal is met>=90% (between 0 and 100 %), on-time>=95% (up to 100 %),"
              + " on-time>=80000 (plants) or margin");
    }
    return goal;
  }

  /** Whether it is a chance or a share, and not plants or money. */
  public boolean isShare() {
    return measure == Measure.MET || measure == Measure.ON_TIME_SHARE;
  }

  /**
   * Whether a measure reaches it, as far as is told: an estimate that reaches it holds once its
   * limit below is within the indifference of the goal, one that does not fails once its limit
   * above is. A share is never nearer to none or to all than half of what the goal leaves there.
   *
   * @param limits of the measure's mean
   * @param indifference how near the goal an answer may be wrong
   */
  Found found(double mean, MeanLimits limits, double indifference) {
    if (mean >= least) {
      double down = isShare() ? Math.min(indifference, least / 2) : indifference;
      return limits.low() > least - down ? Found.HOLDS : Found.NEAR;
    }
    double up = isShare() ? Math.min(indifference, (1 - least) / 2) : indifference;
    return limits.high() < least + up ? Found.FAILS : Found.NEAR;
  }

  /** A goal with a number; null where it is none. */
  private static @Nullable Goal read(String text) {
    Matcher matcher = FORM.matcher(text);
    if (matcher.matches()) {
      boolean share = !matcher.group(3).isEmpty();
      double number = Double.parseDouble(matcher.group(2)) / (share ? 100 : 1);
      if (matcher.group(1).equals("on-time") && number > 0 && (!share || number <= 1)) {
        return new Goal(share ? Measure.ON_TIME_SHARE : Measure.ON_TIME, number);
      }
      if (share && number > 0 && number < 1) {
        return new Goal(Measure.MET, number);
      }
    }
    return null;
  }

  /** What was probably meant, where it is plain; otherwise nothing. */
  private static String meant(String text) {
    Matcher almost = ALMOST.matcher(text);
    if (!almost.matches()) {
      return "";
    }
    String measure = almost.group(1);
    boolean lacksPercent = measure.equals("met") && almost.group(4).isEmpty();
    String right = measure + ">=" + almost.group(3) + (lacksPercent ? "%" : almost.group(4));
    if (read(right) == null) {
      return "";
    }
    if (!almost.group(2).equals(">=")) {
      return ": write >=, such as " + right;
    }
    return lacksPercent ? ": a % is missing, write " + right : "";
  }
}
