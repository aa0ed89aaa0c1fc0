package propcap.study;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;

/** Days in a row, both ends included. */
public record Period(LocalDate from, LocalDate to) {
  public Period {
    if (to.isBefore(from)) {
      throw new IllegalArgumentException("a period must not end before it begins");
    }
  }

  /** All days of a season. */
  public static Period of(Season season) {
    return new Period(season.start(), season.end());
  }

  /**
   * The days that were asked for: a week, or from a day to a day, or the whole season.
   *
   * @param week such as {@code 2027-W12}, by ISO 8601; null: not asked
   * @param from null: from the season's first day
   * @param to null: to its last
   * @throws BadQuestionException where that is no week, or no day of it lies in the season
   */
  public static Period asked(
      Season season, @Nullable String week, @Nullable LocalDate from, @Nullable LocalDate to)
      throws BadQuestionException {
    if (week != null && (from != null || to != null)) {
      throw new BadQuestionException("ask for a week, or for days from and to, not for both");
    }
    if (week != null) {
      return week(season, week);
    }
    // A day before the season, or after it, is told as such below.
    LocalDate first = from == null ? earlier(season.start(), to) : from;
    LocalDate last = to == null ? later(season.end(), from) : to;
    if (last.isBefore(first)) {
      throw new BadQuestionException(
          "the days must not end, " + last + ", before they begin, " + first);
    }
    return within(season, first, last, first + " to " + last);
  }

  /** The earlier of two days, where there are two. */
  public static LocalDate earlier(LocalDate day, @Nullable LocalDate other) {
    return other != null && other.isBefore(day) ? other : day;
  }

  /** The later of two days, where there are two. */
  public static LocalDate later(LocalDate day, @Nullable LocalDate other) {
    return other != null && other.isAfter(day) ? other : day;
  }

  private static Period week(Season season, String week) throws BadQuestionException {
    try {
      LocalDate monday = LocalDate.parse(week.strip() + "-1", DateTimeFormatter.ISO_WEEK_DATE);
      return within(season, monday, monday.plusDays(6), "week " + week.strip());
    } catch (DateTimeException e) {
      // No such week, or one at the end of all time.
      throw new BadQuestionException("'" + week + "' is no week; a week is such as 2027-W12");
    }
  }

  private static Period within(Season season, LocalDate first, LocalDate last, String asked)
      throws BadQuestionException {
    if (last.isBefore(season.start()) || first.isAfter(season.end())) {
      throw new BadQuestionException(
          "%s lies outside the season, which is from %s to %s"
              .formatted(asked, season.start(), season.end()));
    }
    return new Period(later(first, season.start()), earlier(last, season.end()));
  }

  public boolean contains(LocalDate date) {
    return !date.isBefore(from) && !date.isAfter(to);
  }

  /** Whether any day lies in both. */
  public boolean meets(LocalDate first, LocalDate last) {
    return !last.isBefore(from) && !first.isAfter(to);
  }

  public List<LocalDate> days() {
    return from.datesUntil(to.plusDays(1)).toList();
  }

  /** The Monday of each week that it touches. */
  public List<LocalDate> weeks() {
    LocalDate monday = from.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    return Stream.iterate(monday, m -> !m.isAfter(to), m -> m.plusWeeks(1)).toList();
  }

  /** The first day of each month that it touches. */
  public List<LocalDate> months() {
    LocalDate first = from.withDayOfMonth(1);
    return Stream.iterate(first, m -> !m.isAfter(to), m -> m.plusMonths(1)).toList();
  }
}
