package propcap.files.text;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A kind of number as growers write it: {@code 21 C}, {@code 8 days}, {@code 85 %}. The bounds are
 * wide: what lies outside can't be meant where plants are raised.
 */
public enum Quantity {
  /** Read as degrees C. */
  TEMPERATURE("a temperature in C or F, such as 21 C or 70 F", "-60 to 60 C", -60, 60, "C|F"),
  /** 36,500 days are a hundred years. */
  DAYS("a number of days, such as 8 days", "0 to 36500 days", 0, 36_500, "days?"),
  /** How long a thing lasts. */
  YEARS("a number of years, such as 12 years", "0 to 1000 years", 0, 1_000, "years?"),
  /** Whole days, back or forward. */
  SHIFT(
      "a whole number of days, such as -7 days", "-36500 to 36500 days", -36_500, 36_500, "days?"),
  /** Read as a share, 0 to 1. */
  PERCENT("a share in %, such as 85 %", "0 to 100 %", 0, 1, "%"),
  /** Read as a share, of what a plan has. */
  PERCENT_OF_PLAN("a share of the plan's in %, such as 120 %", "1 to 1000 %", 0.01, 10, "%"),
  /** Read as a share a day, 0 to 1. */
  PERCENT_PER_DAY("a share a day in %/day, such as 3 %/day", "0 to 100 %/day", 0, 1, "%/day"),
  /** Of all people together; a hundred thousand are the hands of a town. */
  HOURS_PER_DAY(
      "a number of hours a day, such as 12/day", "0 to 100000/day", 0, 100_000, "(h|hours)?/day"),
  MINUTES_PER_TRAY("minutes a tray, such as 4/tray", "0 to 1000/tray", 0, 1_000, "(min)?/tray"),
  MINUTES_PER_PLANT(
      "minutes a plant, such as 0.25/plant", "0 to 1000/plant", 0, 1_000, "(min)?/plant"),
  /** Thousand-seed weight, in grams. */
  GRAMS_PER_1000(
      "grams a thousand seeds, such as 2.9 g/1000", "0 to 100000 g/1000", 0, 100_000, "g/1000"),
  LITRES_PER_TRAY("litres a tray, such as 3.2 l/tray", "0 to 1000 l/tray", 0, 1_000, "l/tray"),
  LITRES_PER_POT("litres a pot, such as 0.35 l/pot", "0 to 1000 l/pot", 0, 1_000, "l/pot"),
  /** How much warmer, degrees C without a unit. */
  LIFT("a plain number of degrees C, such as 5", "-60 to 60", -60, 60, ""),
  /** Of the air, in the unit that the header says; what the air can have is for the reader. */
  AIR("a plain number of degrees, such as 5", "-1000 to 1000", -1_000, 1_000, ""),
  /** Written without a unit; less than 1, at which all seeds of a tray would share one fate. */
  CORRELATION(
      "a plain number from 0 up to 1, such as 0.02", "0 up to 1", 0, Math.nextDown(1.0), "");

  /**
   * What a text says.
   *
   * @param value NaN where it says no such quantity
   * @param right what would be right then
   */
  public record Reading(double value, @Nullable String right) {}

  private static final Pattern WRITTEN =
      Pattern.compile(
          "([-+\u2212]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][-+]?[0-9]+)?)([^0-9.].*)?");

  /** The narrow and the unbreakable spaces of word processors too. */
  private static final Pattern SPACES = Pattern.compile("\\s+", Pattern.UNICODE_CHARACTER_CLASS);

  /** Warmer than any ceiling of germination in the crop list; common practice. */
  private static final double HOT_C = 48;

  private static final double COLD_C = -35;

  /** No number that a grower means is longer. */
  private static final int MOST_CHARACTERS = 60;

  private final String what;
  private final String range;
  private final double least;
  private final double most;

  /** Those that fit, without spaces. */
  private final Pattern units;

  Quantity(String what, String range, double least, double most, String units) {
    this.what = what;
    this.range = range;
    this.least = least;
    this.most = most;
    this.units = Pattern.compile(units);
  }

  /** What would be right, in the words of a fault. */
  String what() {
    return what;
  }

  public Reading read(String text) {
    Matcher written = WRITTEN.matcher(text.strip());
    if (text.length() > MOST_CHARACTERS || !written.matches()) {
      return wrong(what);
    }
    String after = written.group(2);
    String unit = after == null ? "" : SPACES.matcher(after).replaceAll("").replace("°", "");
    if (!units.matcher(unit).matches()) {
      return wrong(unit.isEmpty() ? "a unit is missing: " + what : what);
    }
    double value = ours(Double.parseDouble(written.group(1).replace('\u2212', '-')), unit);
    if (!Double.isFinite(value)) {
      return wrong("a finite number: " + what);
    }
    if (value < least || value > most) {
      return wrong(range);
    }
    return this == SHIFT && value != Math.rint(value) ? wrong(what) : new Reading(value, null);
  }

  /** What is more likely meant than a value that is right; empty where nothing is. */
  Optional<String> unlikely(double value) {
    boolean isHot = this == TEMPERATURE && value > HOT_C;
    boolean isCold = this == TEMPERATURE && value < COLD_C;
    return isHot || isCold
        ? Optional.of(
            isHot
                ? String.format(Locale.ROOT, "%.0f F is %.1f C", value, (value - 32) * 5 / 9)
                : "is it the unit?")
        : Optional.empty();
  }

  /** Degrees C, shares, or the number as it stands. */
  private double ours(double number, String unit) {
    return switch (this) {
      case TEMPERATURE -> unit.equals("F") ? (number - 32) * 5 / 9 : number;
      case PERCENT, PERCENT_OF_PLAN, PERCENT_PER_DAY -> number / 100;
      default -> number;
    };
  }

  /** A number without needless digits. */
  public static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  private static Reading wrong(String right) {
    return new Reading(Double.NaN, right);
  }
}
