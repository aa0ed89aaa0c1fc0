package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;

/** How full the places were, over many seasons. */
final class OccupancySummary {
  private final Scenario scenario;
  private final List<SeasonOutcome> seasons;
  private final Strata strata;
  private final List<SeasonOutcome> unhindered;

  OccupancySummary(
      Scenario scenario,
      List<SeasonOutcome> seasons,
      Strata strata,
      List<SeasonOutcome> unhindered) {
    this.scenario = scenario;
    this.seasons = seasons;
    this.strata = strata;
    this.unhindered = unhindered;
  }

  List<Forecast.Occupancy> places() {
    List<Forecast.Occupancy> places = new ArrayList<>();
    for (int p = 0; p < scenario.places().size(); p++) {
      Place place = scenario.places().get(p);
      // Demand shifts among places of a kind: with endless room the first takes it all.
      boolean alone = openOfKind(place.kind()).size() == 1;
      places.add(occupancy(place.name(), place.kind(), List.of(p), alone));
    }
    return places;
  }

  List<Forecast.Occupancy> kinds() {
    List<Forecast.Occupancy> kinds = new ArrayList<>();
    for (PlaceKind kind : PlaceKind.values()) {
      List<Integer> open = openOfKind(kind);
      if (open.size() == 1) {
        Place only = scenario.places().get(open.get(0));
        kinds.add(occupancy(only.name(), kind, open, true));
      } else if (!open.isEmpty()) {
        kinds.add(occupancy(nameOfAll(kind), kind, open, true));
      }
    }
    return kinds;
  }

  private static String nameOfAll(PlaceKind kind) {
    return switch (kind) {
      case HEAT_BENCH -> "all heat benches";
      case CHAMBER -> "all chambers";
      case TABLE -> "all tables";
      case HARDENING -> "all hardening areas";
    };
  }

  private List<Integer> openOfKind(PlaceKind kind) {
    return IntStream.range(0, scenario.places().size())
        .filter(p -> scenario.places().get(p).kind() == kind && scenario.places().get(p).isOpen())
        .boxed()
        .toList();
  }

  private Forecast.Occupancy occupancy(
      String name, PlaceKind kind, List<Integer> places, boolean withDemand) {
    int spaces = places.stream().mapToInt(p -> scenario.places().get(p).spaces()).sum();
    int days = scenario.season().days();
    List<Forecast.DayUse> byDay = new ArrayList<>();
    double[] peak = new double[seasons.size()];
    double[] fullDays = new double[seasons.size()];
    double sumOfMeans = 0;
    for (int day = 0; day < days; day++) {
      double[] use = new double[seasons.size()];
      for (int n = 0; n < use.length; n++) {
        use[n] = use(seasons.get(n), places, day);
        peak[n] = Math.max(peak[n], use[n]);
        fullDays[n] += isFull(use[n], spaces) ? 1 : 0;
      }
      Stat stat = Samples.of(use, strata).stat();
      sumOfMeans += stat.mean();
      double full = Samples.of(use, strata).share(u -> isFull(u, spaces));
      byDay.add(
          new Forecast.DayUse(
              stat.mean(),
              stat.p10(),
              stat.p50(),
              stat.p90(),
              full,
              withDemand ? demand(places, day) : 0));
    }
    return new Forecast.Occupancy(
        name,
        kind,
        spaces,
        sumOfMeans / days,
        Samples.of(peak, strata).stat(),
        Samples.of(fullDays, strata).stat(),
        List.copyOf(byDay));
  }

  /** A closed place is never full. */
  private static boolean isFull(double use, int spaces) {
    return spaces > 0 && use >= spaces;
  }

  private double demand(List<Integer> places, int day) {
    return Samples.mean(unhindered, o -> use(o, places, day));
  }

  private static int use(SeasonOutcome season, List<Integer> places, int day) {
    int sum = 0;
    for (int place : places) {
      sum += season.use(place, day);
    }
    return sum;
  }
}
