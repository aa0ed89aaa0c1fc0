package propcap.report.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Season;
import propcap.report.kit.Dates;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.Money;
import propcap.report.kit.SafetyWords;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.Safety;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/**
 * The answer before all else: a sentence, and at most four numbers with their errors.
 *
 * @param mark of the worst that befalls a sowing
 */
public record VerdictSection(String mark, String sentence, List<Figure> figures) {
  /**
   * A number.
   *
   * @param value such as {@code 40 of 59}
   * @param what such as {@code sowings safe}
   * @param error empty where there is none
   */
  public record Figure(String value, String what, String error) {
    String line() {
      return value + " " + what + (error.isEmpty() ? "" : " (" + error + ")");
    }
  }

  static VerdictSection of(Forecast forecast) {
    List<Figure> figures = new ArrayList<>();
    figures.add(
        new Figure(
            SafetyWords.safe(forecast),
            forecast.sowings().size() == 1 ? "sowing safe" : "sowings safe",
            SafetyWords.doubt(forecast)));
    figures.add(needed(forecast));
    figures.add(full(forecast));
    Stat margin = forecast.balance().margin();
    Optional<Money> money = Money.of(forecast.scenario());
    if (margin != null && money.isPresent()) {
      figures.add(
          new Figure(
              money.get().amount(margin.mean()),
              "margin in a mean spring",
              Words.interval(margin)));
    }
    return new VerdictSection(
        SafetyWords.mark(worst(forecast)), SafetyWords.standing(forecast) + ".", figures);
  }

  /** All figures but of the sowings that are safe and of the plants that are needed. */
  List<Figure> otherFigures() {
    return figures.subList(2, figures.size());
  }

  static Figure needed(Forecast forecast) {
    return new Figure(
        Words.count(forecast.balance().supplied().mean())
            + " of "
            + Words.count((double) forecast.scenario().plantsNeeded()),
        "plants needed on time in a mean spring",
        Words.interval(forecast.balance().supplied()));
  }

  private static Safety worst(Forecast forecast) {
    return forecast.sowings().stream()
        .map(Safety::of)
        .max(Comparator.naturalOrder())
        .orElse(Safety.SAFE);
  }

  /** The first and the last day on which a place is full in every second spring or more. */
  private static String between(Occupancy place, Season season) {
    int[] likely =
        IntStream.range(0, place.days().size())
            .filter(day -> place.days().get(day).chanceFull() >= RoomSection.LIKELY)
            .toArray();
    return likely.length < 2
        ? ""
        : ", between %s and %s"
            .formatted(
                Dates.day(season.date(likely[0]), season),
                Dates.day(season.date(likely[likely.length - 1]), season));
  }

  /** The place that is full on the most days; empty where none ever is. */
  static Optional<Occupancy> fullest(Forecast forecast) {
    return ForecastLookup.openPlaces(forecast).stream()
        .filter(p -> p.fullDays().mean() > 0)
        .max(Comparator.comparingDouble(p -> p.fullDays().mean()));
  }

  /** The same, and when it is full. */
  private static Figure full(Forecast forecast) {
    Optional<Occupancy> fullest = fullest(forecast);
    if (fullest.isEmpty()) {
      return new Figure("No place", "is ever full", "");
    }
    Occupancy place = fullest.get();
    double days = place.fullDays().mean();
    Season season = forecast.scenario().season();
    return new Figure(
        days < 1 ? "Less than a day" : Words.plural(Math.rint(days), "day"),
        "with " + place.name() + " full" + between(place, season),
        days < 1 ? Words.usual(place.fullDays()) : daysError(place.fullDays()));
  }

  /** The interval of a mean of days, which need no decimals. */
  private static String daysError(Stat days) {
    MeanLimits limits = days.limits();
    return limits != null && Words.count(limits.low()).equals(Words.count(limits.high()))
        ? "known to within a day"
        : Words.interval(days);
  }
}
