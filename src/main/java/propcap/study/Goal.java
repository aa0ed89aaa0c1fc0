package propcap.study;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a size must achieve.
 *
 * @param measure what is looked at
 * @param least the value that its mean must reach: a share, more than 0 and at most 1, or plants; 0
 *     for the largest margin
 */
public record Goal(Measure measure, double least) {
  /** What a goal is about. */
  public enum Measure {
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
   * Reads {@code met>=90%}, {@code on-time>=95%}, {@code on-time>=80000} or {@code margin}.
   *
   * @throws BadQuestionException saying what a goal looks like
   */
  public static Goal parse(String text) throws BadQuestionException {
    if (text.trim().equals("margin")) {
      return new Goal(Measure.MARGIN, 0);
    }
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
    throw new BadQuestionException(
        "'"
            + text
            + "' is no goal; a goal is met>=90% (between 0 and 100 %), on-time>=95% (up to 100 %),"
            + " on-time>=80000 (plants) or margin");
  }
}
