package propcap.study.forecast;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.season.SeasonOutcome;
import propcap.study.statistics.ByKind;
import propcap.study.statistics.Column;
import propcap.study.statistics.Counts;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Strata;

/** One sowing over many seasons, counted as they come in. */
final class SowingSummary {
  final Column cellsSown = new Column();
  final Column onTime = new Column();
  final Column late = new Column();
  final ShortfallSummary shortfall;
  private final Scenario scenario;
  private final Sowing sowing;
  private final int number;

  /** Days of the seasons that have one. */
  private final Counts firstOut = new Counts();

  private final Counts medianOut = new Counts();
  private final Counts lastOut = new Counts();
  private final Counts met = new Counts();
  private final Map<TrayMove, Moves> moves = ByKind.of(TrayMove.class, move -> new Moves());

  /** By step and month, sums of all seasons. */
  private long[][] waits = {};

  SowingSummary(Scenario scenario, int number) {
    this.scenario = scenario;
    this.number = number;
    sowing = scenario.sowings().get(number);
    shortfall = new ShortfallSummary(number, sowing.plantsNeeded());
  }

  /** Sums of the seasons in which a tray made a move. */
  private static final class Moves {
    int seasons;
    long trays;
    long first;
    long all;
    long last;

    Forecast.Span span(int ofSeasons) {
      return new Forecast.Span(
          first / (double) seasons,
          all / (double) trays,
          last / (double) seasons,
          trays / (double) ofSeasons);
    }
  }

  void add(SeasonOutcome season) {
    cellsSown.add(season.cellsSown(number));
    onTime.add(season.onTime(number));
    late.add(season.late(number));
    count(firstOut, season.firstDay(number, TrayMove.PLANTED_OUT));
    count(medianOut, season.medianOutDay(number));
    count(lastOut, season.lastDay(number, TrayMove.PLANTED_OUT));
    count(met, season.metDay(number));
    moves.forEach((move, sums) -> add(season, move, sums));
    if (waits.length == 0) {
      waits = new long[RoomWait.values().length][season.months()];
    }
    for (RoomWait step : RoomWait.values()) {
      for (int month = 0; month < season.months(); month++) {
        waits[step.ordinal()][month] += season.waited(step, number, month);
      }
    }
  }

  private static void count(Counts days, int day) {
    if (day >= 0) {
      days.add(day);
    }
  }

  private void add(SeasonOutcome season, TrayMove move, Moves sums) {
    int trays = season.trays(number, move);
    if (trays > 0) {
      sums.seasons++;
      sums.trays += trays;
      sums.first += season.firstDay(number, move);
      sums.all += season.daySum(number, move);
      sums.last += season.lastDay(number, move);
    }
  }

  /** Whether its need was met on time in a season. */
  boolean isMet(int season) {
    return onTime.get(season) >= sowing.plantsNeeded();
  }

  /** Its plants on time of those needed, in a season. */
  int supplied(int season) {
    return Math.min(onTime.get(season), sowing.plantsNeeded());
  }

  /**
   * The forecast.
   *
   * @param unhindered strata of the seasons that were run with endless room
   */
  Forecast.SowingForecast forecast(Strata strata, Strata unhindered) {
    int seasons = onTime.size();
    double[] isMet = new double[seasons];
    Arrays.setAll(isMet, n -> isMet(n) ? 1 : 0);
    MeanLimits chance = MeanLimits.ofChance(isMet, strata);
    return new Forecast.SowingForecast(
        sowing,
        cellsSown.stat(strata),
        onTime.stat(strata),
        late.stat(strata),
        Arrays.stream(isMet).sum() / seasons,
        chance.low(),
        chance.high(),
        medianDate(firstOut),
        medianDate(medianOut),
        medianDate(lastOut),
        readyIn(0.1),
        readyIn(0.9),
        milestones(),
        waiting(),
        shortfall.of(onTime, unhindered));
  }

  /** The median over the seasons that have such a day. */
  private @Nullable LocalDate medianDate(Counts days) {
    return days.size() == 0 ? null : date(days.inOrder((days.size() - 1) / 2));
  }

  /** The least day by which its need was out in a share of the seasons; null where it never was. */
  private @Nullable LocalDate readyIn(double share) {
    int seasons = Math.max(1, (int) Math.ceil(share * onTime.size() - 1e-9));
    return met.size() < seasons ? null : date(met.inOrder(seasons - 1));
  }

  private LocalDate date(int day) {
    return scenario.season().date(day);
  }

  private Map<TrayMove, Forecast.Span> milestones() {
    Map<TrayMove, Forecast.Span> spans = new EnumMap<>(TrayMove.class);
    moves.forEach(
        (move, sums) -> {
          if (sums.seasons > 0) {
            spans.put(move, sums.span(onTime.size()));
          }
        });
    return spans;
  }

  private Map<RoomWait, Double> waiting() {
    return ByKind.of(
        RoomWait.class,
        step -> Arrays.stream(waits[step.ordinal()]).sum() / (double) onTime.size());
  }

  /** Tray-days that it waited at a step, mean of a season, by month. */
  double[] waitedByMonth(RoomWait step) {
    return Arrays.stream(waits[step.ordinal()])
        .mapToDouble(w -> w / (double) onTime.size())
        .toArray();
  }

  /** What is kept of each season by itself. */
  Stream<Column> columns() {
    return Stream.of(cellsSown, onTime, late);
  }
}
