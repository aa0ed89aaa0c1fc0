package propcap.study;

import static java.util.stream.Collectors.joining;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Loss;
import propcap.farm.Milestone;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.Step;
import propcap.season.SeasonOutcome;

/** Turns the outcomes of many seasons into a forecast. Sums run in the seasons' order. */
final class Summary {
  private final Scenario scenario;
  private final RunSettings settings;
  private final List<SeasonOutcome> seasons;
  private final Strata strata;
  private final OccupancySummary occupancy;

  Summary(
      Scenario scenario,
      RunSettings settings,
      List<SeasonOutcome> seasons,
      List<SeasonOutcome> unhindered) {
    this.scenario = scenario;
    this.settings = settings;
    this.seasons = seasons;
    strata = Strata.of(scenario, seasons);
    occupancy = new OccupancySummary(scenario, seasons, strata, unhindered);
  }

  Forecast forecast() {
    return new Forecast(
        scenario,
        settings,
        seasons.size(),
        release(),
        total(SeasonOutcome::onTime).stat(),
        total(SeasonOutcome::late).stat(),
        total(SeasonOutcome::cellsSown).stat(),
        IntStream.range(0, scenario.sowings().size()).mapToObj(this::sowing).toList(),
        losses(s -> true),
        lossesByCrop(),
        occupancy.places(),
        occupancy.kinds(),
        waiting(),
        waits(),
        Samples.mean(seasons, SeasonOutcome::sowBehindOverdue),
        Samples.mean(seasons, SeasonOutcome::tablesBehindReady),
        new HandsSummary(scenario, seasons, strata).forecast(),
        IntStream.range(0, seasons.size()).mapToObj(this::row).toList());
  }

  private Map<String, LocalDate> release() {
    Map<String, LocalDate> dates = new LinkedHashMap<>();
    for (Sowing sowing : scenario.sowings()) {
      Crop crop = scenario.cropOf(sowing);
      scenario.releaseDate(crop).ifPresent(date -> dates.put(crop.name(), date));
    }
    return dates;
  }

  /** A count of a sowing in a season. */
  @FunctionalInterface
  private interface Count {
    int of(SeasonOutcome season, int sowing);
  }

  private Samples total(Count count) {
    return total(count, s -> true);
  }

  private Samples total(Count count, IntPredicate sowings) {
    return Samples.of(seasons, strata, season -> sum(season, count, sowings));
  }

  private static long sum(SeasonOutcome season, Count count, IntPredicate sowings) {
    return IntStream.range(0, season.sowings())
        .filter(sowings)
        .mapToLong(s -> count.of(season, s))
        .sum();
  }

  // Sowings.

  private Forecast.SowingForecast sowing(int s) {
    Sowing sowing = scenario.sowings().get(s);
    double[] met =
        seasons.stream().mapToDouble(o -> o.onTime(s) >= sowing.plantsNeeded() ? 1 : 0).toArray();
    MeanLimits chance = MeanLimits.ofChance(met, strata, 0.95);
    return new Forecast.SowingForecast(
        sowing,
        Samples.of(seasons, strata, o -> o.cellsSown(s)).stat(),
        Samples.of(seasons, strata, o -> o.onTime(s)).stat(),
        Samples.of(seasons, strata, o -> o.late(s)).stat(),
        Arrays.stream(met).sum() / met.length,
        chance.low(),
        chance.high(),
        medianDate(o -> o.firstDay(s, Milestone.PLANTED_OUT)),
        medianDate(o -> o.medianOutDay(s)),
        medianDate(o -> o.lastDay(s, Milestone.PLANTED_OUT)),
        readyBy(s),
        milestones(s),
        sowingWaits(s));
  }

  /** The median of a day over the seasons that have one. */
  private @Nullable LocalDate medianDate(ToIntFunction<SeasonOutcome> day) {
    int[] days = seasons.stream().mapToInt(day).filter(d -> d >= 0).sorted().toArray();
    return days.length == 0 ? null : scenario.season().date(days[(days.length - 1) / 2]);
  }

  /** The least day by which a sowing's need was out in nine seasons of ten. */
  private @Nullable LocalDate readyBy(int s) {
    int[] days = seasons.stream().mapToInt(o -> o.metDay(s)).filter(d -> d >= 0).sorted().toArray();
    int nine = (int) Math.ceil(0.9 * seasons.size() - 1e-9);
    return days.length < nine ? null : scenario.season().date(days[nine - 1]);
  }

  private Map<Milestone, Forecast.Span> milestones(int s) {
    Map<Milestone, Forecast.Span> spans = new EnumMap<>(Milestone.class);
    for (Milestone move : Milestone.values()) {
      List<SeasonOutcome> made = seasons.stream().filter(o -> o.trays(s, move) > 0).toList();
      if (!made.isEmpty()) {
        double trays = Samples.mean(made, o -> o.trays(s, move));
        spans.put(
            move,
            new Forecast.Span(
                Samples.mean(made, o -> o.firstDay(s, move)),
                Samples.mean(made, o -> o.daySum(s, move)) / trays,
                Samples.mean(made, o -> o.lastDay(s, move)),
                trays * made.size() / seasons.size()));
      }
    }
    return spans;
  }

  private Map<Step, Double> sowingWaits(int s) {
    Map<Step, Double> waits = new EnumMap<>(Step.class);
    for (Step step : Step.values()) {
      waits.put(step, Samples.mean(seasons, o -> waited(o, step, s)));
    }
    return waits;
  }

  // Losses.

  private Map<Loss, Stat> losses(IntPredicate sowings) {
    Map<Loss, Stat> losses = new EnumMap<>(Loss.class);
    for (Loss cause : Loss.values()) {
      losses.put(cause, total((o, s) -> o.lost(s, cause), sowings).stat());
    }
    return losses;
  }

  private Map<String, Map<Loss, Stat>> lossesByCrop() {
    Map<String, Map<Loss, Stat>> byCrop = new LinkedHashMap<>();
    for (Sowing sowing : scenario.sowings()) {
      byCrop.computeIfAbsent(
          sowing.crop(), crop -> losses(s -> scenario.sowings().get(s).crop().equals(crop)));
    }
    return byCrop;
  }

  // Waiting.

  private static int waited(SeasonOutcome season, Step step, int sowing) {
    return IntStream.range(0, season.months()).map(m -> season.waited(step, sowing, m)).sum();
  }

  private Map<Step, Stat> waiting() {
    Map<Step, Stat> waiting = new EnumMap<>(Step.class);
    for (Step step : Step.values()) {
      waiting.put(step, total((o, s) -> waited(o, step, s)).stat());
    }
    return waiting;
  }

  private List<Forecast.Wait> waits() {
    List<Forecast.Wait> waits = new ArrayList<>();
    YearMonth first = YearMonth.from(scenario.season().start());
    int months = seasons.get(0).months();
    for (Step step : Step.values()) {
      Map<String, double[]> byTarget = new TreeMap<>();
      for (int s = 0; s < scenario.sowings().size(); s++) {
        double[] trayDays = byTarget.computeIfAbsent(waitedFor(step, s), t -> new double[months]);
        for (int m = 0; m < months; m++) {
          trayDays[m] += meanWait(step, s, m);
        }
      }
      byTarget.forEach(
          (target, trayDays) -> {
            for (int m = 0; m < months; m++) {
              if (trayDays[m] > 0) {
                waits.add(new Forecast.Wait(step, target, first.plusMonths(m), trayDays[m]));
              }
            }
          });
    }
    return waits;
  }

  private double meanWait(Step step, int sowing, int month) {
    return Samples.mean(seasons, o -> o.waited(step, sowing, month));
  }

  private String waitedFor(Step step, int sowing) {
    return switch (step) {
      case SOW ->
          either(
              scenario.cropOf(scenario.sowings().get(sowing)).germinateIn().stream()
                  .filter(
                      name ->
                          scenario.places().stream()
                              .anyMatch(p -> p.name().equals(name) && p.isOpen()))
                  .toList());
      case LEAVE, POT -> either(open(PlaceKind.TABLE));
      case HARDEN -> either(open(PlaceKind.HARDENING));
    };
  }

  private List<String> open(PlaceKind kind) {
    return scenario.places().stream()
        .filter(p -> p.kind() == kind && p.isOpen())
        .map(Place::name)
        .toList();
  }

  private static String either(List<String> names) {
    return names.stream().collect(joining(" or "));
  }

  // Seasons.

  private Forecast.SeasonRow row(int number) {
    SeasonOutcome season = seasons.get(number);
    Map<Loss, Long> losses = new EnumMap<>(Loss.class);
    for (Loss cause : Loss.values()) {
      losses.put(cause, sum(season, (o, s) -> o.lost(s, cause), s -> true));
    }
    Map<Step, Long> waiting = new EnumMap<>(Step.class);
    for (Step step : Step.values()) {
      waiting.put(step, sum(season, (o, s) -> waited(o, step, s), s -> true));
    }
    int met =
        (int)
            IntStream.range(0, season.sowings())
                .filter(s -> season.onTime(s) >= scenario.sowings().get(s).plantsNeeded())
                .count();
    return new Forecast.SeasonRow(
        number,
        scenario.weather().get(season.weatherYear()).year(),
        sum(season, SeasonOutcome::cellsSown, s -> true),
        sum(season, SeasonOutcome::onTime, s -> true),
        sum(season, SeasonOutcome::late, s -> true),
        met,
        losses,
        waiting);
  }
}
