package propcap.report.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.farm.Place;
import propcap.farm.Season;
import propcap.report.kit.Dates;
import propcap.report.kit.TradeWords;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;

/** What is full, and when. */
public record RoomSection(List<Row> rows, List<Figure> figures, String closed) {
  static final double LIKELY = 0.5;

  /** A place in numbers, in text. */
  public record Row(
      String name,
      String kind,
      String spaces,
      String meanUse,
      String peak,
      String fullDays,
      String fullRange) {}

  /**
   * A place's spring: a sentence and a chart.
   *
   * @param id name by which the picture of the whole house finds it
   */
  public record Figure(String id, String name, String sentence, String svg) {}

  static RoomSection of(Forecast forecast) {
    Season season = forecast.scenario().season();
    List<Row> rows = new ArrayList<>();
    List<Figure> figures = new ArrayList<>();
    for (Occupancy place : HouseWeeks.shown(forecast)) {
      rows.add(row(place));
      figures.add(
          new Figure(
              HouseSection.link(figures.size() + 1),
              place.name(),
              sentence(season, place, subject(forecast, place)),
              OccupancyChart.of(season, place, "room" + (figures.size() + 1))));
    }
    List<String> closed =
        forecast.scenario().places().stream().filter(p -> !p.isOpen()).map(Place::name).toList();
    return new RoomSection(
        rows, figures, closed.isEmpty() ? "" : "Closed: " + Words.list(closed) + ".");
  }

  private static String subject(Forecast forecast, Occupancy place) {
    return forecast.places().contains(place) ? place.name() + " is" : "Together they are";
  }

  private static Row row(Occupancy place) {
    return new Row(
        place.name(),
        TradeWords.kind(place.kind()),
        Words.count(place.spaces()),
        Words.percent(place.meanUse() / place.spaces()),
        Words.range(place.peak()),
        Words.amount(place.fullDays().mean()),
        Words.spread(place.fullDays()));
  }

  /** How full a place is, in a sentence that starts with such as {@code House 1 is}. */
  static String sentence(Season season, Occupancy place, String subject) {
    if (place.fullDays().mean() == 0) {
      return subject + " never full" + fullest(season, place);
    }
    String days =
        subject
            + (place.fullDays().mean() < 1
                ? " full on less than a day of a spring"
                : " full on "
                    + Words.plural(Math.rint(place.fullDays().mean()), "day")
                    + " of a spring")
            + " ("
            + Words.usual(place.fullDays())
            + ")";
    return longestRun(place.days())
        .map(run -> days + ", mostly " + inWords(season, run) + ".")
        .orElse(days + ", but on no one date in half of the springs.");
  }

  private static String fullest(Season season, Occupancy place) {
    int fullest = 0;
    for (int day = 1; day < place.days().size(); day++) {
      if (place.days().get(day).p50() > place.days().get(fullest).p50()) {
        fullest = day;
      }
    }
    if (place.days().isEmpty() || place.days().get(fullest).p50() == 0) {
      return ".";
    }
    return ": at its fullest, on %s, it holds %s of %s in a median spring."
        .formatted(
            Dates.day(season.date(fullest), season),
            Words.count(place.days().get(fullest).p50()),
            Words.count(place.spaces()));
  }

  /** Days of the season, both ends included. */
  record Run(int first, int last) {
    int length() {
      return last - first + 1;
    }
  }

  private static String inWords(Season season, Run run) {
    return run.length() == 1
        ? "on " + Dates.day(season.date(run.first()), season)
        : "from "
            + Dates.day(season.date(run.first()), season)
            + " to "
            + Dates.day(season.date(run.last()), season);
  }

  /** The longest run of days on which the place is full in every second spring or more. */
  static Optional<Run> longestRun(List<DayUse> days) {
    Optional<Run> longest = Optional.empty();
    int first = 0;
    for (int day = 0; day < days.size(); day++) {
      if (days.get(day).chanceFull() < LIKELY) {
        first = day + 1;
      } else {
        Run run = new Run(first, day);
        if (longest.isEmpty() || run.length() > longest.get().length()) {
          longest = Optional.of(run);
        }
      }
    }
    return longest;
  }
}
