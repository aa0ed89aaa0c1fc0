package propcap.report.kit;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;

/**
 * Days as a grower says them. A day of another year than the one in which the season ends has its
 * year beside it: in a season from November to July, those of November.
 */
public final class Dates {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_DAY =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_DAY_AND_YEAR =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_OF_WEEK =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_OF_WEEK_AND_YEAR =
      DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_AND_YEAR =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_MONTH =
      DateTimeFormatter.ofPattern("MMM", Locale.ENGLISH);
  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("MMMM", Locale.ENGLISH);

  private Dates() {}

  /** Such as {@code 7 days earlier}, {@code 1 day later} or {@code on its day}. */
  public static String shift(int days) {
    return days == 0
        ? "on its day"
        : Words.plural(Math.abs(days), "day") + (days < 0 ? " earlier" : " later");
  }

  /** Such as {@code 20 April}. */
  public static String day(LocalDate date, Season season) {
    return (isOfItsYear(date, season) ? DAY : DAY_AND_YEAR).format(date);
  }

  /** A day of any year, such as {@code 20 April}. */
  public static String dayOfAnyYear(LocalDate date) {
    return DAY.format(date);
  }

  /** Such as {@code 20 Apr}; a dash where there is none. */
  public static String shortDay(@Nullable LocalDate date, Season season) {
    if (date == null) {
      return "–";
    }
    return (isOfItsYear(date, season) ? SHORT_DAY : SHORT_DAY_AND_YEAR).format(date);
  }

  /** The same, kept on one line. */
  public static String onOneLine(LocalDate date, Season season) {
    return shortDay(date, season).replace(' ', '\u00a0');
  }

  /** A day of any year, such as {@code 20 Apr}. */
  public static String shortDayOfAnyYear(LocalDate date) {
    return SHORT_DAY.format(date);
  }

  /** The day of the season that holds a mean day number, such as {@code 20 Apr}. */
  public static String shortDay(Season season, double day) {
    return shortDay(season.date((int) Math.floor(Words.finite(day))), season);
  }

  /** Such as {@code Tue 23 Mar}. */
  public static String dayOfWeek(LocalDate date, Season season) {
    return (isOfItsYear(date, season) ? DAY_OF_WEEK : DAY_OF_WEEK_AND_YEAR).format(date);
  }

  /** Such as {@code 23–26 Mar} or {@code 29 Mar – 2 Apr}. */
  public static String range(LocalDate from, LocalDate to, Season season) {
    if (from.equals(to)) {
      return shortDay(from, season);
    }
    return YearMonth.from(from).equals(YearMonth.from(to))
        ? from.getDayOfMonth() + "–" + shortDay(to, season)
        : shortDay(from, season) + " – " + shortDay(to, season);
  }

  /** A range that stands alone, such as {@code 29 Mar – 2 Apr 2027}. */
  public static String rangeAndYear(LocalDate from, LocalDate to) {
    String last = SHORT_DAY_AND_YEAR.format(to);
    if (from.getYear() != to.getYear()) {
      return SHORT_DAY_AND_YEAR.format(from) + " – " + last;
    }
    return from.getMonth() == to.getMonth()
        ? from.getDayOfMonth() + "–" + last
        : SHORT_DAY.format(from) + " – " + last;
  }

  private static boolean isOfItsYear(LocalDate date, Season season) {
    return date.getYear() == season.end().getYear();
  }

  /** Such as {@code 20 April 2027}. */
  public static String dayAndYear(LocalDate date) {
    return DAY_AND_YEAR.format(date);
  }

  /** Such as {@code April}. */
  public static String month(YearMonth month, Season season) {
    return MONTH.format(month) + yearOf(month, season);
  }

  private static String yearOf(YearMonth month, Season season) {
    return month.getYear() == season.end().getYear() ? "" : " " + month.getYear();
  }

  /** Such as {@code Apr}. */
  public static String shortMonth(YearMonth month, Season season) {
    return SHORT_MONTH.format(month) + yearOf(month, season);
  }

  /** Such as {@code April 2027}. */
  public static String monthAndYear(YearMonth month) {
    return MONTH.format(month) + " " + month.getYear();
  }

  /** Every month that the season touches, in order. */
  public static List<YearMonth> monthsOf(Season season) {
    YearMonth last = YearMonth.from(season.end());
    return Stream.iterate(
            YearMonth.from(season.start()), m -> !m.isAfter(last), m -> m.plusMonths(1))
        .toList();
  }
}
