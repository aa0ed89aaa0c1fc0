package propcap.report.forecast;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.PlaceKind;
import propcap.farm.Season;
import propcap.report.kit.ForecastLookup;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.statistics.Stat;

/**
 * How full each place is, week by week.
 *
 * @param places the open places, and after the last of a kind that has several, those together
 */
public record HouseWeeks(List<PlaceWeeks> places) {
  public HouseWeeks {
    places = List.copyOf(places);
  }

  /**
   * One place's season.
   *
   * @param spaces room there is, trays
   * @param fullDays days of a season with no space left
   * @param weeks of the season, in order, the first and last of them shorter perhaps
   */
  public record PlaceWeeks(
      String name, PlaceKind kind, int spaces, Stat fullDays, List<Week> weeks) {
    /** The most that would stand here in a week if every place had endless room; 0: not known. */
    public double mostWanted() {
      return weeks.stream().mapToDouble(Week::wanted).max().orElse(0);
    }

    public boolean isFull(Week week) {
      return week.used() >= spaces;
    }
  }

  /**
   * A week, or the part of it that is in the season.
   *
   * @param first its first day, by number
   * @param days how many, 1 to 7
   * @param used spaces in use on its fullest day, in the median spring
   * @param wanted mean spaces that would be used on its fullest day if every place had endless
   *     room; 0 for a place that shares its work with another of its kind
   */
  public record Week(int first, int days, double used, double wanted) {}

  static HouseWeeks of(Forecast forecast) {
    Season season = forecast.scenario().season();
    return new HouseWeeks(
        shown(forecast).stream()
            .map(
                p ->
                    new PlaceWeeks(
                        p.name(), p.kind(), p.spaces(), p.fullDays(), weeks(season, p.days())))
            .toList());
  }

  /** The open places, and after the last of a kind that has several, those of the kind together. */
  static List<Occupancy> shown(Forecast forecast) {
    List<Occupancy> open = ForecastLookup.openPlaces(forecast);
    List<Occupancy> shown = new ArrayList<>();
    for (PlaceKind kind : PlaceKind.values()) {
      List<Occupancy> alike = open.stream().filter(p -> p.kind() == kind).toList();
      shown.addAll(alike);
      if (alike.size() > 1) {
        forecast.kinds().stream().filter(k -> k.kind() == kind).forEach(shown::add);
      }
    }
    return shown;
  }

  private static List<Week> weeks(Season season, List<DayUse> days) {
    List<Integer> starts =
        IntStream.range(0, days.size())
            .filter(d -> d == 0 || isMonday(season.date(d)))
            .boxed()
            .toList();
    List<Week> weeks = new ArrayList<>();
    for (int w = 0; w < starts.size(); w++) {
      int from = starts.get(w);
      int to = w + 1 < starts.size() ? starts.get(w + 1) : days.size();
      List<DayUse> week = days.subList(from, to);
      weeks.add(
          new Week(
              from,
              to - from,
              week.stream().mapToDouble(DayUse::p50).max().orElse(0),
              week.stream().mapToDouble(DayUse::demand).max().orElse(0)));
    }
    return weeks;
  }

  private static boolean isMonday(LocalDate date) {
    return date.getDayOfWeek() == DayOfWeek.MONDAY;
  }
}
