package propcap.report.now;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Season;
import propcap.farm.SoFar;
import propcap.farm.TrayPast;
import propcap.report.kit.Dates;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.now.SeasonNow;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/**
 * A place from today on.
 *
 * @param stands spaces that are taken on the morning of today
 * @param fullDays days from today on, mean of a season, on which it is full
 * @param full the same with its error; null where that is not known
 * @param fullest the day of its highest mean use
 */
record PlaceNow(
    Place place, int stands, double fullDays, @Nullable Stat full, LocalDate fullest, DayUse most) {
  static List<PlaceNow> of(SeasonNow now) {
    SoFar soFar = now.now().scenario().soFar();
    int today = now.now().scenario().firstDay();
    Season season = now.now().scenario().season();
    return now.now().places().stream()
        .map(
            o -> {
              int stands =
                  soFar == null
                      ? 0
                      : soFar.trays().stream()
                          .filter(t -> t.standsIn().filter(o.name()::equals).isPresent())
                          .mapToInt(TrayPast::spaces)
                          .sum();
              int from = Math.min(today, o.days().size() - 1);
              int fullest = from;
              double full = 0;
              for (int d = from; d < o.days().size(); d++) {
                full += o.days().get(d).chanceFull();
                fullest = o.days().get(d).mean() > o.days().get(fullest).mean() ? d : fullest;
              }
              return new PlaceNow(
                  place(now, o),
                  stands,
                  full,
                  fullFrom(from, o.days(), o.fullDays()),
                  season.date(fullest),
                  o.days().get(fullest));
            })
        .toList();
  }

  /**
   * Days from one on, on which a place is full, where all springs are alike until then: all of the
   * season's, less those known. Null where they differ, as what is known is not all.
   */
  static @Nullable Stat fullFrom(int from, List<DayUse> days, Stat ofSeason) {
    double known = 0;
    for (DayUse past : days.subList(0, from)) {
      double share = past.chanceFull();
      if (share > 0 && share < 1) {
        return null;
      }
      known += share;
    }
    MeanLimits limits = ofSeason.limits();
    return new Stat(
        ofSeason.mean() - known,
        ofSeason.se(),
        limits == null ? null : new MeanLimits(limits.low() - known, limits.high() - known),
        ofSeason.seasons(),
        ofSeason.unlike(),
        ofSeason.p10() - known,
        ofSeason.p50() - known,
        ofSeason.p90() - known);
  }

  private static Place place(SeasonNow now, Occupancy occupancy) {
    return now.now().scenario().places().stream()
        .filter(p -> p.name().equals(occupancy.name()))
        .findFirst()
        .orElseThrow();
  }

  private static Cell shownFull(PlaceNow place) {
    Stat full = place.full();
    return full == null || full.unlike() == 0
        ? Cell.of(Words.count(place.fullDays()))
        : Cell.of(Words.estimate(full), Words.range(full));
  }

  /** The table of them. */
  static Table<PlaceNow> table(Season season) {
    return new Table<PlaceNow>("Place", p -> p.place().name())
        .file("place", p -> p.place().name())
        .file("spaces", p -> p.place().spaces())
        .file("stands-now", PlaceNow::stands)
        .file("full-days", PlaceNow::fullDays)
        .file("fullest-day", PlaceNow::fullest)
        .file("spaces-taken-then", p -> p.most().mean())
        .number("Taken now", "spaces", p -> p.stands() + " of " + p.place().spaces())
        .cell("Full from today on", "days, mean", PlaceNow::shownFull)
        .number("Fullest", "on", p -> Dates.day(p.fullest(), season))
        .cell(
            "Taken then",
            "spaces, mean",
            p ->
                Cell.of(Words.count(p.most().mean()), Words.range(p.most().p10(), p.most().p90())));
  }
}
