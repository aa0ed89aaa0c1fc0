package propcap.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.study.Stats;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Forecast.Span;
import propcap.study.forecast.Forecast.Wait;
import propcap.study.forecast.Shortfall;
import propcap.study.statistics.Difference;

/** What happens in a made-up spring to a sowing, in a place and in a queue. */
public final class Springs {
  private Springs() {}

  public static SowingForecast sowing(Sowing sowing, int n) {
    double sown = sowing.trays() * Scenarios.CELLS;
    double chance = n % 9 == 4 ? 0.3 + 0.01 * n : n % 7 == 3 ? 0.88 : 1 - 0.003 * (n % 25);
    double wait = (n % 5) * 1.3;
    double day = Scenarios.SEASON.dayOf(sowing.sow()) + 0.33 + wait;
    boolean potted = n % 4 == 0;
    Map<TrayMove, Span> milestones = new EnumMap<>(TrayMove.class);
    milestones.put(TrayMove.SOWN, span(day, sowing.trays()));
    milestones.put(TrayMove.OFF_HEAT, span(day + 7, sowing.trays()));
    if (potted) {
      milestones.put(TrayMove.POTTED_ON, span(day + 28, sowing.trays()));
    }
    double out = day + (potted ? 68 : 58) + n % 3 * 3;
    milestones.put(TrayMove.MOVED_OUT, span(out - 10, sowing.trays()));
    milestones.put(TrayMove.PLANTED_OUT, span(out, sowing.trays()));
    LocalDate median = Scenarios.SEASON.date((int) out);
    @Nullable LocalDate readyBy =
        chance >= 0.9 ? median.plusDays(2) : n % 2 == 0 ? sowing.bedBy().plusDays(6) : null;
    return new SowingForecast(
        sowing,
        Forecasts.stat(sown),
        Forecasts.stat((0.55 + 0.2 * chance) * sown),
        Forecasts.stat(0.05 * (1 - chance) * sown),
        chance,
        Math.max(0, chance - 0.09),
        Math.min(1, chance + 0.06),
        median.minusDays(2),
        median,
        median.plusDays(4),
        median.minusDays(3),
        readyBy,
        milestones,
        Map.of(RoomWait.SOW, wait * sowing.trays(), RoomWait.HARDEN, 1.25),
        shortfall(sowing, chance));
  }

  /** A tenth of the need where it is at risk, the most of it for want of room. */
  private static @Nullable Shortfall shortfall(Sowing sowing, double chance) {
    if (chance >= 0.9) {
      return null;
    }
    double lacking = 0.1 * sowing.plantsNeeded();
    Map<Loss, Double> lost = new EnumMap<>(Loss.class);
    for (Loss cause : Loss.values()) {
      lost.put(cause, 0.0);
    }
    lost.put(Loss.NO_SEEDLING, 0.1 * lacking);
    lost.put(Loss.FROST, 0.2 * lacking);
    double room = 0.6 * lacking;
    return new Shortfall(
        100,
        lacking,
        new Difference(room, 0.1 * room, 0.05 * room, 0.5, 1.0, 60),
        sowing.plantsNeeded(),
        0,
        0.1 * lacking,
        lost,
        chance,
        0.97);
  }

  private static Span span(double mean, double trays) {
    return new Span(mean - 2, mean, mean + 3, trays);
  }

  /** A hill of use around a day, cut off at the room. */
  public static Occupancy place(
      String name, PlaceKind kind, int spaces, int peakDay, double height, double demand) {
    List<DayUse> days = new ArrayList<>();
    double fullDays = 0;
    double sum = 0;
    for (int day = 0; day < Scenarios.SEASON.days(); day++) {
      double hill = Math.exp(-Math.pow((day - peakDay) / 34.0, 2));
      double use = spaces * height * hill;
      double chanceFull = spaces == 0 ? 0 : Math.min(1, Math.max(0, (use / spaces - 0.8) / 0.3));
      double p50 = Math.rint(Math.min(spaces, use));
      days.add(
          new DayUse(
              Math.min(spaces, use),
              Math.rint(Math.min(spaces, 0.82 * use)),
              p50,
              Math.rint(Math.min(spaces, 1.15 * use)),
              chanceFull,
              demand * hill));
      fullDays += chanceFull;
      sum += p50;
    }
    double peak = Math.min(spaces, spaces * height);
    return new Occupancy(
        name,
        kind,
        spaces,
        sum / Scenarios.SEASON.days(),
        Stats.of(peak, 0.1, 0.9 * peak, peak, Math.min(spaces, 1.05 * peak)),
        Stats.of(
            fullDays,
            0.4,
            Math.rint(0.7 * fullDays),
            Math.rint(fullDays),
            Math.rint(1.3 * fullDays)),
        days);
  }

  public static List<Wait> waits() {
    List<Wait> waits = new ArrayList<>();
    double[] months = {0.02, 0.18, 0.5, 0.25, 0.05, 0};
    for (int m = 0; m < 6; m++) {
      var month = java.time.YearMonth.of(2027, m + 1);
      if (months[m] > 0) {
        waits.add(new Wait(RoomWait.SOW, "Chamber or Mats", month, 280 * months[m]));
        waits.add(new Wait(RoomWait.SOW, "Mats", month, 132 * months[m]));
        waits.add(new Wait(RoomWait.LEAVE, "House 1 or House 2", month, 380 * months[m]));
        waits.add(new Wait(RoomWait.POT, "House 1 or House 2", month, 96 * months[m]));
        waits.add(new Wait(RoomWait.HARDEN, "Yard", month, 41 * months[m]));
      }
    }
    return waits;
  }
}
