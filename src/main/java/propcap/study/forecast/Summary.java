package propcap.study.forecast;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.util.ResizableDoubleArray;
import propcap.farm.Crop;
import propcap.farm.Loss;
import propcap.farm.Prices;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.season.SeasonOutcome;
import propcap.study.RunSettings;
import propcap.study.SeasonTotals;
import propcap.study.money.Accounts;
import propcap.study.statistics.ByKind;
import propcap.study.statistics.Column;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/** Turns many seasons into a forecast, counted as they come in, in the seasons' order. */
public final class Summary {
  /** A number, and room for one more. */
  private static final int BYTES_OF_A_MARGIN = 2 * Double.BYTES;

  private final Scenario scenario;
  private final RunSettings settings;
  private final List<SowingSummary> sowings;
  private final OccupancySummary occupancy;
  private final HandsSummary hands;
  private final Column years = new Column();

  /** Season by season; none where no money is asked. */
  private final ResizableDoubleArray margins = new ResizableDoubleArray();

  private int unhindered;

  /** By crop, in the order of the plan: cells lost by cause. */
  private final Map<String, Map<Loss, Column>> losses = new LinkedHashMap<>();

  private final Map<RoomWait, Column> waiting = ByKind.of(RoomWait.class, s -> new Column());
  private long sowBehindOverdue;
  private long tablesBehindReady;

  public Summary(Scenario scenario, RunSettings settings) {
    this.scenario = scenario;
    this.settings = settings;
    sowings =
        IntStream.range(0, scenario.sowings().size())
            .mapToObj(s -> new SowingSummary(scenario, s))
            .toList();
    occupancy = new OccupancySummary(scenario);
    hands = new HandsSummary(scenario);
    scenario
        .sowings()
        .forEach(
            s -> losses.computeIfAbsent(s.crop(), c -> ByKind.of(Loss.class, l -> new Column())));
  }

  /** Adds the next season. */
  public void add(SeasonOutcome season) {
    years.add(season.weatherYear());
    sowings.forEach(s -> s.add(season));
    losses.forEach(
        (crop, columns) -> {
          int[] ofCrop =
              IntStream.range(0, season.sowings())
                  .filter(s -> scenario.sowings().get(s).crop().equals(crop))
                  .toArray();
          columns.forEach(
              (cause, column) ->
                  column.add(Arrays.stream(ofCrop).map(s -> season.lost(s, cause)).sum()));
        });
    waiting.forEach((step, column) -> column.add((int) SeasonTotals.waited(season, step)));
    sowBehindOverdue += season.sowBehindOverdue();
    tablesBehindReady += season.tablesBehindReady();
    occupancy.add(season);
    hands.add(season);
    Prices prices = scenario.prices();
    if (prices != null) {
      margins.addElement(Accounts.margin(scenario, prices, season).doubleValue());
    }
  }

  /** Adds the next season of the same scenario with endless room, from the first on. */
  public void addUnhindered(SeasonOutcome season) {
    occupancy.addUnhindered(season);
    sowings.forEach(s -> s.shortfall.add(season));
    unhindered++;
  }

  int seasons() {
    return years.size();
  }

  /** What is kept of each season by itself, bytes; the rest does not grow with the seasons. */
  public long bytesASeason() {
    return Stream.of(
                Stream.of(years),
                sowings.stream().flatMap(SowingSummary::columns),
                losses.values().stream().flatMap(c -> c.values().stream()),
                waiting.values().stream(),
                occupancy.columns(),
                hands.columns())
            .flatMap(columns -> columns)
            .mapToLong(Column::bytesASeason)
            .sum()
        + (margins.getNumElements() == 0 ? 0 : BYTES_OF_A_MARGIN);
  }

  /** A sowing's plants on time, season by season. */
  public double[] onTime(int sowing) {
    return sowings.get(sowing).onTime.numbers();
  }

  /** All plants on time. */
  public Samples onTime() {
    return total(s -> s.onTime);
  }

  Strata strata() {
    return Strata.of(years, scenario.weather().size());
  }

  public Forecast forecast() {
    Strata strata = strata();
    Strata ofUnhindered = Strata.of(scenario, settings.seed(), unhindered);
    return new Forecast(
        scenario,
        settings,
        seasons(),
        release(),
        total(s -> s.onTime).stat(),
        total(s -> s.late).stat(),
        total(s -> s.cellsSown).stat(),
        sowings.stream().map(s -> s.forecast(strata, ofUnhindered)).toList(),
        losses(List.copyOf(losses.values()), strata),
        lossesByCrop(strata),
        occupancy.places(strata),
        occupancy.kinds(strata),
        Column.stats(waiting, strata),
        waits(),
        sowBehindOverdue / (double) seasons(),
        tablesBehindReady / (double) seasons(),
        hands.forecast(strata),
        balance(strata),
        new Rows());
  }

  private Forecast.Balance balance(Strata strata) {
    double[] supplied =
        IntStream.range(0, seasons())
            .mapToDouble(n -> sowings.stream().mapToLong(s -> s.supplied(n)).sum())
            .toArray();
    double[] margin = margins.getElements();
    return new Forecast.Balance(
        Stat.of(supplied, strata), margin.length == 0 ? null : Stat.of(margin, strata));
  }

  private Map<String, LocalDate> release() {
    Map<String, LocalDate> dates = new LinkedHashMap<>();
    for (Sowing sowing : scenario.sowings()) {
      Crop crop = scenario.cropOf(sowing);
      scenario.releaseDate(crop).ifPresent(date -> dates.put(crop.name(), date));
    }
    return dates;
  }

  private Samples total(Function<SowingSummary, Column> column) {
    return Samples.of(sum(sowings.stream().map(column).toList()), strata());
  }

  /** Season by season. */
  private double[] sum(List<Column> columns) {
    return IntStream.range(0, seasons()).mapToDouble(n -> sum(columns, n)).toArray();
  }

  private static long sum(List<Column> columns, int season) {
    return columns.stream().mapToLong(c -> c.get(season)).sum();
  }

  // Losses.

  private Map<Loss, Stat> losses(List<Map<Loss, Column>> crops, Strata strata) {
    return ByKind.of(Loss.class, cause -> Stat.of(sum(of(crops, cause)), strata));
  }

  private static List<Column> of(Collection<Map<Loss, Column>> crops, Loss cause) {
    return crops.stream().map(c -> c.get(cause)).map(Objects::requireNonNull).toList();
  }

  private Map<String, Map<Loss, Stat>> lossesByCrop(Strata strata) {
    Map<String, Map<Loss, Stat>> byCrop = new LinkedHashMap<>();
    losses.forEach((crop, columns) -> byCrop.put(crop, losses(List.of(columns), strata)));
    return byCrop;
  }

  // Waiting.

  private List<Forecast.Wait> waits() {
    List<Forecast.Wait> waits = new ArrayList<>();
    YearMonth first = YearMonth.from(scenario.season().start());
    for (RoomWait step : RoomWait.values()) {
      Map<String, double[]> byTarget = new TreeMap<>();
      for (int s = 0; s < sowings.size(); s++) {
        double[] months = sowings.get(s).waitedByMonth(step);
        double[] trayDays =
            byTarget.computeIfAbsent(
                Forecast.waitedFor(scenario, scenario.sowings().get(s), step),
                t -> new double[months.length]);
        Arrays.setAll(trayDays, m -> trayDays[m] + months[m]);
      }
      byTarget.forEach(
          (target, trayDays) -> {
            for (int m = 0; m < trayDays.length; m++) {
              if (trayDays[m] > 0) {
                waits.add(new Forecast.Wait(step, target, first.plusMonths(m), trayDays[m]));
              }
            }
          });
    }
    return waits;
  }

  // Seasons.

  /** The seasons one by one, each made when it is asked for. */
  private final class Rows extends AbstractList<Forecast.SeasonRow> {
    @Override
    public int size() {
      return seasons();
    }

    @Override
    public Forecast.SeasonRow get(int season) {

      return new Forecast.SeasonRow(
          season,
          scenario.weather().get(years.get(season)).year(),
          all(s -> s.cellsSown, season),
          all(s -> s.onTime, season),
          all(s -> s.late, season),
          (int) sowings.stream().filter(s -> s.isMet(season)).count(),
          ByKind.of(Loss.class, cause -> sum(of(losses.values(), cause), season)),
          ByKind.of(
              RoomWait.class,
              step -> (long) Objects.requireNonNull(waiting.get(step)).get(season)));
    }

    private long all(Function<SowingSummary, Column> column, int season) {
      return sum(sowings.stream().map(column).toList(), season);
    }
  }
}
