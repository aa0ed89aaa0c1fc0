package propcap.web.typed;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.files.text.Fields;
import propcap.web.request.RefusedException;
import propcap.web.request.RequestFields;
import propcap.web.typed.PastedDates.Order;

/**
 * What is typed into a field, as the files write it: dates and numbers may be typed as they may be
 * pasted. What is neither stays as it is, and the reader of the files says so.
 *
 * @param season a date without a year is in it, or as near as can be; null where it is not known
 */
public record TypedCells(@Nullable Season season) {
  /** Keys whose value is a day, those of the sowing plan besides. */
  private static final Set<String> DATES =
      Set.of("season.start", "season.end", "from", "until", "date");

  /** Keys whose value is a whole number, in which a sign before three digits parts thousands. */
  private static final Set<String> WHOLE =
      Set.of(
          "trays",
          "plants-needed",
          "spaces",
          "cells",
          "seeds-per-cell",
          "germination.tested-seeds",
          "potting-on.pots-per-tray");

  /** Keys whose value is no number, whatever it begins with. */
  private static final Set<String> WORDS =
      Set.of(
          "name",
          "id",
          "add",
          "crop",
          "lot",
          "sowing",
          "tray",
          "place",
          "weather",
          "so-far",
          "weather-so-far",
          "rounds.at",
          "rounds.rest",
          "germinate-in",
          "like",
          "after");

  /** A number, with thousands apart by spaces or apostrophes or not, and what stands behind it. */
  private static final Pattern AMOUNT =
      Pattern.compile(
          "(-?)(\\d{1,3}(?:[ '’]\\d{3})+(?:[.,]\\d+)?|\\d(?:[\\d.,]*\\d)?)((?: ?[^\\d.,'’ ].*)?)");

  private static final DateTimeFormatter IN_WORDS =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  /** Values by key. */
  public Map<String, String> read(Map<String, String> typed) throws RefusedException {
    Map<String, String> read = new LinkedHashMap<>();
    for (Map.Entry<String, String> each : typed.entrySet()) {
      read.put(each.getKey(), read(each.getKey(), each.getValue()));
    }
    return read;
  }

  /**
   * The value of a key.
   *
   * @throws RefusedException where it may be one or another, with both
   */
  public String read(String key, String typed) throws RefusedException {
    if (DATES.contains(key) || PastedPlan.DATES.contains(key)) {
      return date(typed);
    }
    return WORDS.contains(key) ? typed : amount(typed, WHOLE.contains(key));
  }

  /** A day that a request asks for. */
  public LocalDate date(RequestFields asked, String key) throws RefusedException {
    String text = read("date", asked.text(key).strip());
    try {
      LocalDate day = LocalDate.parse(text.strip());
      if (Fields.isOfOurTimes(day)) {
        return day;
      }
    } catch (DateTimeParseException e) {
      // Refused below, as any other text that is no day.
    }
    throw RefusedException.field(key, "must be a day such as 2027-07-01" + RequestFields.was(text));
  }

  private String date(String typed) throws RefusedException {
    List<String> cell = List.of(typed);
    String dayFirst = new PastedDates(Order.DAY_FIRST, season).read(typed);
    String monthFirst = new PastedDates(Order.MONTH_FIRST, season).read(typed);
    if (PastedDates.unclear(cell).isPresent() && !dayFirst.equals(monthFirst)) {
      throw RefusedException.unclear(
          typed,
          "may be %s or %s; write %s or %s"
              .formatted(
                  IN_WORDS.format(LocalDate.parse(dayFirst)),
                  IN_WORDS.format(LocalDate.parse(monthFirst)),
                  dayFirst,
                  monthFirst),
          List.of(dayFirst, monthFirst));
    }
    return PastedDates.orderOf(cell).orElse(Order.DAY_FIRST) == Order.DAY_FIRST
        ? dayFirst
        : monthFirst;
  }

  private static String amount(String typed, boolean isWhole) throws RefusedException {
    Matcher amount = AMOUNT.matcher(typed);
    if (!amount.matches()) {
      return typed;
    }
    String digits = PastedNumbers.ungrouped(amount.group(2));
    Optional<Character> decimal =
        isWhole && PastedNumbers.decimalOf(digits).isEmpty()
            ? Optional.of(digits.indexOf(',') < 0 ? ',' : '.')
            : PastedNumbers.decimalOf(digits);
    if (decimal.isEmpty() && digits.indexOf(',') >= 0) {
      String thousands = PastedNumbers.plain(digits, '.').orElse(digits);
      String parts = PastedNumbers.plain(digits, ',').orElse(digits);
      String unit = amount.group(3);
      throw RefusedException.unclear(
          typed,
          "may be " + thousands + " or " + parts + "; write the one that is meant",
          List.of(amount.group(1) + thousands + unit, amount.group(1) + parts + unit));
    }
    return PastedNumbers.plain(digits, decimal.orElse('.'))
        .map(plain -> amount.group(1) + plain + amount.group(3))
        .orElse(typed);
  }
}
