package propcap.report;

import java.util.List;
import java.util.Locale;
import propcap.study.Stat;

/** Numbers as a grower reads them: thousands apart, and no more digits than they are worth. */
final class Words {
  /** Half-width of a 95 % interval in standard errors, by the normal distribution. */
  private static final double Z_95 = 1.96;

  private static final double NEARLY = 1e-9;

  private Words() {}

  /** The number itself; a forecast that holds one that is not finite must not be written. */
  static double finite(double number) {
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException("the forecast holds a number that is not finite");
    }
    return number;
  }

  /** A whole number, such as {@code 2,300}. */
  static String count(double number) {
    return String.format(Locale.ENGLISH, "%,d", Math.round(finite(number)));
  }

  /** A whole number, or one decimal below 10, where rounding would hide too much. */
  static String amount(double number) {
    double tenths = Math.round(finite(number) * 10) / 10.0;
    if (Math.abs(tenths) >= 10 || tenths == Math.rint(tenths)) {
      return number > 0 && tenths == 0 ? "<0.1" : count(number);
    }
    return String.format(Locale.ENGLISH, "%.1f", tenths);
  }

  /** A count and its noun, such as {@code 1 sowing}, {@code 12 sowings}. */
  static String plural(double number, String noun) {
    return amount(number) + " " + noun + (amount(number).equals("1") ? "" : "s");
  }

  /** A share as a percentage, such as {@code 34 %} or {@code 3.4 %}; never rounded to 0 or 100. */
  static String percent(double share) {
    double percent = 100 * finite(share);
    if (share > 0 && percent < 0.1) {
      return "<0.1 %";
    }
    if (share < 1 && percent > 99.5) {
      return ">99 %";
    }
    String digits = percent > 0 && percent < 9.95 ? "%.1f %%" : "%.0f %%";
    return String.format(Locale.ENGLISH, digits, percent);
  }

  /** A chance as a percentage without decimals, such as {@code 94 %}. */
  static String chance(double chance) {
    if (chance > 0 && chance < 0.005) {
      return "<1 %";
    }
    if (chance < 1 && chance >= 0.995) {
      return ">99 %";
    }
    return Math.round(100 * finite(chance)) + " %";
  }

  /** An interval of chances, such as {@code 91-96 %}. */
  static String chances(double low, double high) {
    return Math.round(100 * low) + "–" + Math.round(100 * high) + " %";
  }

  /**
   * A chance in springs, such as {@code 9 springs of 10}. It is rounded down, so that 9 of 10 is
   * never less than that, but says {@code nearly} where the next is close.
   */
  static String springs(double chance) {
    if (chance <= 0) {
      return "no spring";
    }
    if (chance >= 1) {
      return "every spring";
    }
    double tenths = chance * 10 + NEARLY;
    int whole = (int) tenths;
    if (tenths - whole >= 0.75) {
      return whole == 9 ? "nearly every spring" : "nearly " + springsOfTen(whole + 1);
    }
    return whole == 0 ? "fewer than 1 spring of 10" : springsOfTen(whole);
  }

  private static String springsOfTen(int springs) {
    return springs + (springs == 1 ? " spring of 10" : " springs of 10");
  }

  /** Eight springs of ten lie within it, such as {@code 1,900–2,400}. */
  static String range(Stat stat) {
    return range(stat.p10(), stat.p90());
  }

  static String range(double low, double high) {
    String from = count(low);
    String to = count(high);
    return from.equals(to) ? from : from + "–" + to;
  }

  /** The 95 % interval of a mean, in words; it is not known from a single spring. */
  static String interval(Stat stat) {
    if (stat.se() == 0) {
      return "no 95 % interval";
    }
    double halfWidth = Z_95 * stat.se();
    return "95 % interval "
        + count(Math.max(0, stat.mean() - halfWidth))
        + " to "
        + count(stat.mean() + halfWidth);
  }

  /** Things in a row, such as {@code Mats, House 1 and House 2}. */
  static String list(List<String> things) {
    int last = things.size() - 1;
    if (last < 1) {
      return String.join("", things);
    }
    return String.join(", ", things.subList(0, last)) + " and " + things.get(last);
  }
}
