package propcap.study.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.study.statistics.Column;
import propcap.study.statistics.Counts;
import propcap.study.statistics.Strata;

/** How full the places were, over many seasons, counted as they come in. */
final class OccupancySummary {
  private final Scenario scenario;

  /** Each place by itself, in the scenario's order. */
  private final List<Together> places;

  /** The open places of each kind, where there are several. */
  private final Map<PlaceKind, Together> kinds = new EnumMap<>(PlaceKind.class);

  private int unhindered;

  OccupancySummary(Scenario scenario) {
    this.scenario = scenario;
    places =
        IntStream.range(0, scenario.places().size())
            .mapToObj(p -> new Together(List.of(p)))
            .toList();
    for (PlaceKind kind : PlaceKind.values()) {
      List<Integer> open = openOfKind(kind);
      if (open.size() > 1) {
        kinds.put(kind, new Together(open));
      }
    }
  }

  void add(SeasonOutcome season) {
    places.forEach(p -> p.add(season));
    kinds.values().forEach(k -> k.add(season));
  }

  /** Adds a season that was run with endless room. */
  void addUnhindered(SeasonOutcome season) {
    places.forEach(p -> p.addDemand(season));
    kinds.values().forEach(k -> k.addDemand(season));
    unhindered++;
  }

  /** What is kept of each season by itself. */
  Stream<Column> columns() {
    return Stream.concat(places.stream(), kinds.values().stream())
        .flatMap(p -> Stream.of(p.peak, p.fullDays));
  }

  /** Places that are counted together. */
  private final class Together {
    final int[] places;
    final int spaces;

    /** By day. */
    final Counts[] use = new Counts[scenario.season().days()];

    final long[] demand = new long[use.length];
    final Column peak = new Column();
    final Column fullDays = new Column();

    Together(List<Integer> places) {
      this.places = places.stream().mapToInt(p -> p).toArray();
      spaces = places.stream().mapToInt(p -> scenario.places().get(p).spaces()).sum();
      Arrays.setAll(use, day -> new Counts());
    }

    void add(SeasonOutcome season) {
      int most = 0;
      int full = 0;
      for (int day = 0; day < use.length; day++) {
        int used = use(season, day);
        use[day].add(used);
        most = Math.max(most, used);
        full += isFull(used) ? 1 : 0;
      }
      peak.add(most);
      fullDays.add(full);
    }

    void addDemand(SeasonOutcome season) {
      for (int day = 0; day < demand.length; day++) {
        demand[day] += use(season, day);
      }
    }

    private int use(SeasonOutcome season, int day) {
      int sum = 0;
      for (int place : places) {
        sum += season.use(place, day);
      }
      return sum;
    }

    /** A closed place is never full. */
    private boolean isFull(int used) {
      return spaces > 0 && used >= spaces;
    }

    Forecast.Occupancy occupancy(String name, PlaceKind kind, Strata strata, boolean withDemand) {
      List<Forecast.DayUse> byDay =
          IntStream.range(0, use.length).mapToObj(day -> day(day, withDemand)).toList();
      return new Forecast.Occupancy(
          name,
          kind,
          spaces,
          Arrays.stream(use).mapToDouble(Counts::mean).sum() / use.length,
          peak.stat(strata),
          fullDays.stat(strata),
          byDay);
    }

    private Forecast.DayUse day(int day, boolean withDemand) {
      Counts used = use[day];
      return new Forecast.DayUse(
          used.mean(),
          used.quantile(0.1),
          used.quantile(0.5),
          used.quantile(0.9),
          used.share(this::isFull),
          withDemand ? demand[day] / (double) unhindered : 0);
    }
  }

  List<Forecast.Occupancy> places(Strata strata) {
    List<Forecast.Occupancy> told = new ArrayList<>();
    for (int p = 0; p < scenario.places().size(); p++) {
      Place place = scenario.places().get(p);
      // Demand shifts among places of a kind: with endless room the first takes it all.
      boolean alone = openOfKind(place.kind()).size() == 1;
      told.add(places.get(p).occupancy(place.name(), place.kind(), strata, alone));
    }
    return told;
  }

  List<Forecast.Occupancy> kinds(Strata strata) {
    List<Forecast.Occupancy> told = new ArrayList<>();
    for (PlaceKind kind : PlaceKind.values()) {
      List<Integer> open = openOfKind(kind);
      if (open.size() == 1) {
        Place only = scenario.places().get(open.get(0));
        told.add(places.get(open.get(0)).occupancy(only.name(), kind, strata, true));
      }
      Together several = kinds.get(kind);
      if (several != null) {
        told.add(several.occupancy(nameOfAll(kind), kind, strata, true));
      }
    }
    return told;
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
}
