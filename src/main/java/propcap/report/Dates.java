package propcap.report;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;

/** Days as a grower says them. */
final class Dates {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_DAY =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_AND_YEAR =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("MMMM", Locale.ENGLISH);

  private Dates() {}

  /** Such as {@code 20 April}. */
  static String day(LocalDate date) {
    return DAY.format(date);
  }

  /** Such as {@code 20 Apr}; a dash where there is none. */
  static String shortDay(@Nullable LocalDate date) {
    return date == null ? "–" : SHORT_DAY.format(date);
  }

  /** The day of the season that holds a mean day number, such as {@code 20 Apr}. */
  static String shortDay(Season season, double day) {
    return shortDay(season.date((int) Math.floor(Words.finite(day))));
  }

  /** Such as {@code 20 April 2027}. */
  static String dayAndYear(LocalDate date) {
    return DAY_AND_YEAR.format(date);
  }

  /** Such as {@code April}. */
  static String month(YearMonth month) {
    return MONTH.format(month);
  }

  /** Every month that the season touches, in order. */
  static List<YearMonth> monthsOf(Season season) {
    YearMonth last = YearMonth.from(season.end());
    return Stream.iterate(
            YearMonth.from(season.start()), m -> !m.isAfter(last), m -> m.plusMonths(1))
        .toList();
  }
}
