package propcap.report.kit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/** Numbers as a grower reads them: thousands apart, and no more digits than they are worth. */
public final class Words {
  /** Half-width of a 95 % interval in standard errors, by the normal distribution. */
  public static final double Z_95 = 1.96;

  private static final double NEARLY = 1e-9;

  /** From this ratio of its halves on, an interval is told by its ends. */
  private static final double LOPSIDED = 1.25;

  private Words() {}

  /** The number itself; results that hold one that is not finite must not be written. */
  public static double finite(double number) {
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException("the results hold a number that is not finite");
    }
    return number;
  }

  /** A whole number, such as {@code 2,300}. */
  public static String count(double number) {
    return String.format(Locale.ENGLISH, "%,d", Math.round(finite(number)));
  }

  /** A whole number, or one decimal below 10, where rounding would hide too much. */
  public static String amount(double number) {
    double tenths = Math.round(finite(number) * 10) / 10.0;
    if (Math.abs(tenths) >= 10 || tenths == Math.rint(tenths)) {
      return number > 0 && tenths == 0 ? "<0.1" : count(number);
    }
    return String.format(Locale.ENGLISH, "%.1f", tenths);
  }

  /** A count and its noun, such as {@code 1 sowing}, {@code 12 sowings}. */
  public static String plural(double number, String noun) {
    return amount(number) + " " + noun + (amount(number).equals("1") ? "" : "s");
  }

  /** A share as a percentage, such as {@code 34 %} or {@code 3.4 %}; never rounded to 0 or 100. */
  public static String percent(double share) {
    return barePercent(share) + " %";
  }

  /** The same without its sign, where that is said once for several. */
  public static String barePercent(double share) {
    double percent = 100 * finite(share);
    if (share > 0 && percent < 0.1) {
      return "<0.1";
    }
    if (share < 1 && percent > 99.5) {
      return ">99";
    }
    return String.format(Locale.ENGLISH, percent > 0 && percent < 9.95 ? "%.1f" : "%.0f", percent);
  }

  /** A share that was given, such as {@code 6 %} or {@code 97.5 %}: not rounded to be read. */
  public static String given(double share) {
    return bareGiven(share) + " %";
  }

  /** The same without its sign. */
  public static String bareGiven(double share) {
    return toDecimals(100 * share, 2).stripTrailingZeros().toPlainString();
  }

  /**
   * A chance as a percentage without decimals, such as {@code 94 %}. It is cut, not rounded, so
   * that what is below a goal of 90 % is never told as 90 %.
   */
  public static String chance(double chance) {
    return bareChance(chance) + " %";
  }

  /** The same without its sign, where that is said once for several. */
  public static String bareChance(double chance) {
    long percent = (long) Math.floor(100 * finite(chance) + NEARLY);
    if (chance > 0 && percent == 0) {
      return "<1";
    }
    return chance < 1 && chance >= 0.995 ? ">99" : Long.toString(percent);
  }

  /** An interval of chances, such as {@code 91–96 %}, cut as each of them is. */
  public static String chances(double low, double high) {
    return bareChance(low) + "–" + bareChance(high) + " %";
  }

  /**
   * A chance in springs, such as {@code 9 springs of 10} or {@code 46 springs of 100}: of 100 where
   * tenths would hide some. It is cut as {@link #chance} is.
   */
  public static String springs(double chance) {
    if (chance <= 0) {
      return "no spring";
    }
    if (chance >= 1) {
      return "every spring";
    }
    int hundredths = (int) (chance * 100 + NEARLY);
    if (hundredths == 0) {
      return "fewer than 1 spring of 100";
    }
    return hundredths % 10 == 0 ? springsOf(hundredths / 10, 10) : springsOf(hundredths, 100);
  }

  /** A chance as too few springs; "only no spring" and "only fewer than" are not said. */
  public static String onlySprings(double chance) {
    return chance * 100 + NEARLY < 1 ? springs(chance) : "only " + springs(chance);
  }

  private static String springsOf(int springs, int of) {
    return springs + (springs == 1 ? " spring of " : " springs of ") + of;
  }

  /** Eight springs of ten lie within it, such as {@code 1,900–2,400}. */
  public static String range(Stat stat) {
    return range(stat.p10(), stat.p90());
  }

  public static String range(double low, double high) {
    return range(low, high, "–");
  }

  /** The same in a sentence, such as {@code 1,900 to 2,400}. */
  public static String fromTo(double low, double high) {
    return range(low, high, " to ");
  }

  private static String range(double low, double high, String between) {
    String from = count(low);
    String to = count(high);
    return from.equals(to) ? from : from + between + to;
  }

  /** What is usual, in a sentence: {@code 8 springs of 10: 1,900–2,400}, or how often seen. */
  public static String usual(Stat stat) {
    return isSeldom(stat) ? seen(stat) : "8 springs of 10: " + range(stat);
  }

  /** What is usual, in a column of such ranges: {@code 1,900–2,400}, or how often seen. */
  public static String spread(Stat stat) {
    return isSeldom(stat) ? seen(stat) : range(stat);
  }

  /** In how many springs something was seen, where they are few; otherwise nothing. */
  public static String seldom(Stat stat) {
    return isSeldom(stat) ? seen(stat) : "";
  }

  /** A mean, and in how many springs it was seen where they are few. */
  public static String mean(Stat stat) {
    return amount(stat.mean()) + (isSeldom(stat) ? " (" + seen(stat) + ")" : "");
  }

  /** Whether something came, but in too few springs for more to be said of its mean. */
  private static boolean isSeldom(Stat stat) {
    return stat.isRare() && stat.unlike() > 0;
  }

  /** In how many springs it was seen, or was not what it is in nearly all of them. */
  private static String seen(Stat stat) {
    String springs = plural(stat.seasons(), "spring");
    if (stat.unlike() == 0) {
      return stat.mean() == 0 ? "seen in none of " + springs : "in all " + springs;
    }
    return (stat.p50() == 0 ? "seen" : "other than " + amount(stat.p50()))
        + " in "
        + stat.unlike()
        + " of "
        + springs;
  }

  /** The 95 % interval of a mean, in words; it is not known from a single spring. */
  public static String interval(Stat stat) {
    MeanLimits limits = stat.limits();
    return limits == null
        ? "no 95 % interval"
        : "95 % interval " + count(limits.low()) + " to " + count(limits.high());
  }

  /** A number with its sign, such as {@code +1,240} or {@code -40}. */
  public static String signed(double number) {
    return signed(number, 0);
  }

  /** A number of {@link #amount} with its sign, such as {@code +15} or {@code -3.4}. */
  public static String signedAmount(double number) {
    return (number > 0 ? "+" : number < 0 ? "-" : "") + amount(Math.abs(number));
  }

  private static String signed(double number, int decimals) {
    return (toDecimals(number, decimals).signum() > 0 ? "+" : "") + decimals(number, decimals);
  }

  private static String decimals(double number, int decimals) {
    return String.format(Locale.ENGLISH, "%,." + decimals + "f", toDecimals(number, decimals));
  }

  private static BigDecimal toDecimals(double number, int decimals) {
    return BigDecimal.valueOf(finite(number)).setScale(decimals, RoundingMode.HALF_UP);
  }

  /**
   * A difference and half its interval, such as {@code -40 ± 210}; where too few springs differ for
   * that, {@code -0.3 in 6 springs}; bare where all differ by the same.
   */
  public static String difference(Difference difference) {
    if (difference.narrowing() == null) {
      return signed(difference.mean());
    }
    return difference.isTold()
        ? difference(difference.mean(), difference.halfWidth())
        : signed(difference.mean(), decimalsFor(difference.halfWidth())) + inFew(difference);
  }

  /** In how many springs a difference is seen, where they are too few for an interval. */
  public static String inFew(Difference difference) {
    return " in " + plural(difference.differing(), "spring");
  }

  /** A difference with as many decimals as the half-width is worth. */
  public static String difference(double mean, double halfWidth) {
    int decimals = decimalsFor(halfWidth);
    return signed(mean, decimals) + " ± " + decimals(halfWidth, decimals);
  }

  /** Whether a number that is shown has no other digit than 0. */
  public static boolean isNothing(String shown) {
    return shown.chars().noneMatch(c -> c >= '1' && c <= '9');
  }

  /** How much, whatever its direction, such as {@code 40 ± 210}. */
  public static String size(Difference difference) {
    int decimals = decimalsFor(difference.halfWidth());
    return decimals(Math.abs(difference.mean()), decimals)
        + " ± "
        + decimals(difference.halfWidth(), decimals);
  }

  /**
   * A mean and its error: {@code 1,240 ± 90}; {@code 3.1 (1.2 to 8.4)} where its 95 % interval is
   * lopsided; and where it has none, in how many springs it was seen.
   */
  public static String estimate(Stat stat) {
    MeanLimits limits = stat.limits();
    if (limits == null) {
      return (isSeldom(stat) ? decimals(stat.mean(), 1) : amount(stat.mean()))
          + (stat.seasons() > 1 ? " (" + seen(stat) + ")" : "");
    }
    double below = stat.mean() - limits.low();
    double above = limits.high() - stat.mean();
    double most = Math.max(below, above);
    int decimals = decimalsFor(most);
    return most <= LOPSIDED * Math.min(below, above)
        ? estimate(stat.mean(), most)
        : decimals(stat.mean(), decimals)
            + " ("
            + decimals(limits.low(), decimals)
            + " to "
            + decimals(limits.high(), decimals)
            + ")";
  }

  public static String estimate(double mean, double halfWidth) {
    if (halfWidth == 0) {
      return amount(mean);
    }
    int decimals = decimalsFor(halfWidth);
    return decimals(mean, decimals) + " ± " + decimals(halfWidth, decimals);
  }

  /** A number with as many decimals as its error, given as half a width, is worth. */
  public static String rounded(double number, double error) {
    return decimals(number, decimalsFor(error));
  }

  private static int decimalsFor(double halfWidth) {
    return halfWidth == 0 || halfWidth >= 10 ? 0 : halfWidth >= 1 ? 1 : 2;
  }

  /** A name that would leave no room for a chart, cut short; the table has it whole. */
  public static String shortened(String name, int longest) {
    return name.length() <= longest ? name : name.substring(0, longest - 1) + "…";
  }

  /** A sentence's beginning. */
  public static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ENGLISH) + text.substring(1);
  }

  /** Things in a row, such as {@code Mats, House 1 and House 2}. */
  public static String list(List<String> things) {
    int last = things.size() - 1;
    if (last < 1) {
      return String.join("", things);
    }
    return String.join(", ", things.subList(0, last)) + " and " + things.get(last);
  }
}
