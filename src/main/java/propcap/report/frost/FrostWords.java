package propcap.report.frost;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import propcap.evidence.weather.DayEstimate;
import propcap.evidence.weather.FrostDates;
import propcap.evidence.weather.FrostDates.FrostDate;
import propcap.evidence.weather.FrostTable;
import propcap.evidence.weather.LastFrostFit;
import propcap.farm.Season;
import propcap.report.kit.Csv;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;

/** The frosts of a record in words. */
record FrostWords(FrostTable table) {
  private static final DateTimeFormatter MONTH_DAY =
      DateTimeFormatter.ofPattern("MM-dd", Locale.ROOT);

  private Season season() {
    return table.season();
  }

  /** Such as {@code -2.2 °C (28 °F)}. */
  static String degrees(double tempC) {
    return String.format(Locale.ENGLISH, "%s °C (%.0f °F)", bare(tempC), tempC * 9 / 5 + 32);
  }

  private static String bare(double tempC) {
    return Csv.number(tempC).replace('-', '−');
  }

  /** A day without its year, such as {@code 9 May}; the season's ends in words. */
  String day(@Nullable Integer day) {
    return day == null
        ? "not before the season ends"
        : day <= 0 ? "all season" : Dates.shortDayOfAnyYear(season().date(day));
  }

  /** The limits of a day, such as {@code 2 May – 14 May}. */
  String limits(DayEstimate estimate) {
    Integer low = estimate.low();
    Integer high = estimate.high();
    if (low == null) {
      return high == null ? "too few years for limits" : "up to " + limit(high);
    }
    return high == null ? limit(low) + " or later" : limit(low) + " – " + limit(high);
  }

  private String limit(int day) {
    return Dates.shortDayOfAnyYear(season().date(Math.max(0, day)));
  }

  /** A day for other programs, such as {@code 05-09}; null where there is none. */
  @Nullable String monthDay(@Nullable Integer day) {
    return day == null ? null : MONTH_DAY.format(season().date(day));
  }

  String years() {
    List<Integer> years = table.years();
    int first = years.get(0);
    int last = years.get(years.size() - 1);
    return Words.plural(years.size(), "year")
        + (years.size() == 1 ? ", " + first : " of " + first + " to " + last);
  }

  String span() {
    return Dates.dayOfAnyYear(season().start()) + " to " + Dates.dayOfAnyYear(season().end());
  }

  /** What a threshold's frosts come to, in a sentence. */
  String verdict(FrostDates frosts) {
    String at = degrees(frosts.record().frostAtC());
    if (frosts.record().lastFrosts().length == 0) {
      return at + ": no year of the record had such a frost between " + season(" and ") + ".";
    }
    FrostDate tenth = date(frosts, 0.10);
    FrostDate half = date(frosts, 0.50);
    return at + ": " + upper(tenth, "1 year of 10") + "; " + upper(half, "half of the years") + ".";
  }

  private String season(String between) {
    return Dates.dayOfAnyYear(season().start()) + between + Dates.dayOfAnyYear(season().end());
  }

  private String upper(FrostDate date, String share) {
    Integer day = date.counted().day();
    if (day == null) {
      return "frosts go on to the season’s end in more than " + share;
    }
    return day == 0
        ? "in no more than " + share + " is there such a frost at all"
        : "from %s on it is that cold in no more than %s"
            .formatted(Dates.dayOfAnyYear(season().date(day)), share);
  }

  private static FrostDate date(FrostDates frosts, double chance) {
    return frosts.dates().stream()
        .filter(d -> d.chance() == chance)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no frost date for " + chance));
  }

  /** What should make a reader careful. */
  List<String> warnings() {
    List<String> warnings = new ArrayList<>();
    if (table.years().size() < FrostTable.FEW_YEARS) {
      warnings.add(
          "Only %s %s the season: a chance of 10 %% is hardly known from fewer than %s."
              .formatted(
                  Words.plural(table.years().size(), "year"),
                  table.years().size() == 1 ? "covers" : "cover",
                  FrostTable.FEW_YEARS));
    }
    for (FrostDates frosts : table.thresholds()) {
      if (frosts.yearsToTheEnd() > 0) {
        warnings.add(
            degrees(frosts.record().frostAtC())
                + ": in "
                + Words.plural(frosts.yearsToTheEnd(), "year")
                + " there was a frost on the season’s last day; what came after it is not counted.");
      }
    }
    return warnings;
  }

  /** What the normal says of a threshold. */
  String fit(FrostDates frosts) {
    String at = degrees(frosts.record().frostAtC());
    if (frosts.fit().isEmpty()) {
      return at
          + ": no normal can be fitted, for the last frosts of two years at least must differ.";
    }
    LastFrostFit fit = frosts.fit().get();
    String with =
        fit.yearsWithFrost() == fit.years()
            ? ""
            : " over the " + fit.yearsWithFrost() + " of " + fit.years() + " years that had one";
    return String.format(
        Locale.ENGLISH,
        "%s: last frost on %s on average%s, with a standard deviation of %.1f days; %s.",
        at,
        Dates.dayOfAnyYear(season().date((int) Math.round(fit.meanDay()))),
        with,
        fit.sdDays(),
        fit.isDoubtful()
            ? "the record does not look like a normal, so go by the counted days"
            : "the record may well be normal");
  }
}
