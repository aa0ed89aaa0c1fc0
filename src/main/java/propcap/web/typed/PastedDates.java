package propcap.web.typed;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.Year;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;

/**
 * Dates as spreadsheets show them. What is no date stays as it is, and the reader of plans says so.
 *
 * @param order of the day and the month where both are numbers
 * @param season a date without a year is in it, or as near as can be; null where it is not known
 */
public record PastedDates(Order order, @Nullable Season season) {
  /** Which of two numbers is the day. */
  public enum Order {
    DAY_FIRST,
    MONTH_FIRST
  }

  private static final int MONTHS = 12;
  private static final int CENTURY = 2000;

  private static final Pattern TIME =
      Pattern.compile("(?i)[ T]\\d{1,2}:\\d{2}(?::\\d{2}(?:\\.\\d+)?)?(?: ?[ap]\\.?m\\.?)?Z?$");
  private static final Pattern WEEKDAY =
      Pattern.compile("^(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?[., ]+");
  private static final Pattern YEAR_FIRST =
      Pattern.compile("(\\d{4})([-/.])(\\d{1,2})\\2(\\d{1,2})\\.?");
  private static final Pattern NUMBERS =
      Pattern.compile("(\\d{1,2}) ?([-/.]) ?(\\d{1,2})(?: ?\\2 ?(\\d{4}|\\d{2})?)?");
  private static final Pattern DAY_THEN_NAME =
      Pattern.compile(
          "(\\d{1,2})(?:st|nd|rd|th)?(?: of)?[-/. ]*([a-z]{3,9})\\.?(?:[-/., ]*(\\d{4}|\\d{2}))?");

  /** Not by a hyphen: Mar-27 is a month of a year. */
  private static final Pattern NAME_THEN_DAY =
      Pattern.compile(
          "([a-z]{3,9})\\.? ?(\\d{1,2})(?:st|nd|rd|th)?(?:(?:,? |, ?)(\\d{4}|\\d{2}))?");

  /**
   * The order by which dates of a column are written: one day over 12 settles it.
   *
   * @return empty where none does, or where they settle it both ways
   */
  static Optional<Order> orderOf(Collection<String> cells) {
    Set<Order> settled = EnumSet.noneOf(Order.class);
    for (String cell : cells) {
      Matcher numbers = NUMBERS.matcher(bare(cell));
      if (numbers.matches()) {
        int first = number(numbers, 1);
        int second = number(numbers, 3);
        if (first > MONTHS && second <= MONTHS) {
          settled.add(Order.DAY_FIRST);
        } else if (second > MONTHS && first <= MONTHS) {
          settled.add(Order.MONTH_FIRST);
        }
      }
    }
    return settled.size() == 1 ? settled.stream().findFirst() : Optional.empty();
  }

  /**
   * The first date that is another one by the other order. With dots between, the day comes first
   * by common practice.
   */
  static Optional<String> unclear(Collection<String> cells) {
    return cells.stream()
        .filter(
            cell -> {
              Matcher numbers = NUMBERS.matcher(bare(cell));
              return numbers.matches()
                  && !".".equals(numbers.group(2))
                  && number(numbers, 1) <= MONTHS
                  && number(numbers, 3) <= MONTHS
                  && number(numbers, 1) != number(numbers, 3);
            })
        .findFirst();
  }

  /** The date as the files write it; a text that is none as it is. */
  public String read(String cell) {
    try {
      return date(bare(cell)).map(LocalDate::toString).orElse(cell);
    } catch (DateTimeException e) {
      return cell;
    }
  }

  private static String bare(String cell) {
    String lower = TIME.matcher(cell).replaceFirst("").toLowerCase(Locale.ROOT);
    return WEEKDAY.matcher(lower).replaceFirst("").strip();
  }

  private Optional<LocalDate> date(String bare) {
    Matcher yearFirst = YEAR_FIRST.matcher(bare);
    if (yearFirst.matches()) {
      return Optional.of(
          LocalDate.of(number(yearFirst, 1), number(yearFirst, 3), number(yearFirst, 4)));
    }
    Matcher numbers = NUMBERS.matcher(bare);
    if (numbers.matches()) {
      boolean isDayFirst = order == Order.DAY_FIRST;
      int day = number(numbers, isDayFirst ? 1 : 3);
      int month = number(numbers, isDayFirst ? 3 : 1);
      return dated(numbers.group(4), month, day);
    }
    Matcher dayThenName = DAY_THEN_NAME.matcher(bare);
    if (dayThenName.matches()) {
      return named(dayThenName.group(3), dayThenName.group(2), number(dayThenName, 1));
    }
    Matcher nameThenDay = NAME_THEN_DAY.matcher(bare);
    return nameThenDay.matches()
        ? named(nameThenDay.group(3), nameThenDay.group(1), number(nameThenDay, 2))
        : Optional.empty();
  }

  private static int number(Matcher matched, int group) {
    return Integer.parseInt(Objects.requireNonNull(matched.group(group)));
  }

  private Optional<LocalDate> named(@Nullable String year, String name, int day) {
    String begin = name.equals("sept") ? "sep" : name;
    return Stream.of(Month.values())
        .filter(month -> month.name().toLowerCase(Locale.ROOT).startsWith(begin))
        .findFirst()
        .flatMap(month -> dated(year, month.getValue(), day));
  }

  private Optional<LocalDate> dated(@Nullable String year, int month, int day) {
    if (year == null) {
      return ofSeason(month, day);
    }
    int written = Integer.parseInt(year);
    return Optional.of(LocalDate.of(year.length() == 2 ? CENTURY + written : written, month, day));
  }

  private Optional<LocalDate> ofSeason(int month, int day) {
    Season in = season;
    return in == null
        ? Optional.empty()
        : IntStream.rangeClosed(in.start().getYear() - 1, in.end().getYear() + 1)
            .filter(year -> Year.isLeap(year) || month != 2 || day <= 28)
            .mapToObj(year -> LocalDate.of(year, month, day))
            .min(Comparator.comparingLong(date -> daysOutside(in, date)));
  }

  private static long daysOutside(Season season, LocalDate date) {
    return Math.max(
        0,
        Math.max(
            ChronoUnit.DAYS.between(date, season.start()),
            ChronoUnit.DAYS.between(season.end(), date)));
  }
}
