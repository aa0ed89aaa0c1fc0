package propcap.report;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.Labour;
import propcap.farm.Loss;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.WorkKind;
import propcap.study.RunSettings;
import propcap.study.Stats;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.Forecast.SeasonRow;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.HandsForecast;
import propcap.study.statistics.Stat;

/** Forecasts made up by formula, in the shape of real ones, to see what is written of them. */
public final class Forecasts {
  private static final int SEASONS = 50;

  private static final List<String> CROPS =
      List.of(
          "onion",
          "cabbage",
          "lettuce",
          "snapdragon",
          "tomato",
          "pepper",
          "aubergine",
          "celeriac",
          "leek",
          "basil",
          "zinnia",
          "statice",
          "cucumber",
          "squash");

  private static final Map<Loss, Double> LOST = new EnumMap<>(Loss.class);

  static {
    LOST.put(Loss.NO_SEEDLING, 0.104);
    LOST.put(Loss.TOO_LATE, 0.006);
    LOST.put(Loss.FAILED_TRAY, 0.011);
    LOST.put(Loss.STRETCHED, 0.017);
    LOST.put(Loss.GROWING_ON, 0.043);
    LOST.put(Loss.OVERHELD, 0.061);
    LOST.put(Loss.POTTING, 0.0);
    LOST.put(Loss.FROST, 0.0004);
    LOST.put(Loss.HARDENING, 0.016);
    LOST.put(Loss.DUMPED, 0.0);
    LOST.put(Loss.UNPLANTED, 0.009);
  }

  private Forecasts() {}

  /** 14 crops, 42 sowings and 6 places, two of them tables, one closed, over 175 days. */
  public static Forecast spring() {
    return spring("Base spring", CROPS);
  }

  /** The same with a name and crops of one's own, 3 sowings each. */
  public static Forecast spring(String name, List<String> crops) {
    Scenario scenario = Scenarios.spring(name, crops);
    List<SowingForecast> sowings =
        scenario.sowings().stream()
            .map(s -> Springs.sowing(s, scenario.sowings().indexOf(s)))
            .toList();
    double sown = scenario.trays() * Scenarios.CELLS;
    return new Forecast(
        scenario,
        new RunSettings(7, SEASONS, null, 2),
        SEASONS,
        release(crops),
        stat(0.71 * sown),
        stat(0.0216 * sown),
        stat(1.011 * sown),
        sowings,
        losses(sown),
        lossesByCrop(scenario, crops),
        List.of(
            Springs.place("Chamber", PlaceKind.CHAMBER, 60, 60, 0.9, 210),
            Springs.place("Mats", PlaceKind.HEAT_BENCH, 36, 75, 1.6, 0),
            Springs.place("House 1", PlaceKind.TABLE, 330, 95, 1.3, 0),
            Springs.place("House 2", PlaceKind.TABLE, 120, 100, 1.2, 0),
            Springs.place("Old shed", PlaceKind.TABLE, 0, 100, 0, 0),
            Springs.place("Yard", PlaceKind.HARDENING, 160, 118, 0.85, 190)),
        List.of(
            Springs.place("all tables", PlaceKind.TABLE, 450, 97, 1.25, 640),
            Springs.place("the chamber", PlaceKind.CHAMBER, 60, 60, 0.9, 210)),
        waiting(412, 380, 96, 41),
        Springs.waits(),
        390,
        120,
        hands(scenario, 1),
        balance(56_300),
        rows(scenario, SEASONS));
  }

  /** One sowing, one spring of ten days, and nothing that waits, is lost or ever comes out. */
  public static Forecast bare() {
    Season season = new Season(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 3, 10));
    Scenario scenario = Scenarios.bare(season);
    Stat none = Stats.always(0, 1);
    Map<Loss, Stat> losses = new EnumMap<>(Loss.class);
    for (Loss loss : Loss.values()) {
      losses.put(loss, none);
    }
    Map<RoomWait, Stat> waiting = new EnumMap<>(RoomWait.class);
    for (RoomWait step : RoomWait.values()) {
      waiting.put(step, none);
    }
    List<DayUse> days = new ArrayList<>();
    for (int day = 0; day < season.days(); day++) {
      days.add(new DayUse(0, 0, 0, 0, 0, 0));
    }
    SowingForecast sowing =
        new SowingForecast(
            scenario.sowings().get(0),
            none,
            none,
            none,
            0,
            0,
            0.79,
            null,
            null,
            null,
            null,
            null,
            Map.of(),
            Map.of(),
            null);
    return new Forecast(
        scenario,
        new RunSettings(1, 1, null, 1),
        1,
        Map.of(),
        none,
        none,
        none,
        List.of(sowing),
        losses,
        Map.of("kale", losses),
        List.of(new Occupancy("Table", PlaceKind.TABLE, 10, 0, none, none, days)),
        List.of(),
        waiting,
        List.of(),
        0,
        0,
        hands(scenario, 0),
        new Forecast.Balance(none, null),
        List.of(new SeasonRow(0, 2001, 0, 0, 0, 0, Map.of(), Map.of())));
  }

  /** The spring with eight hours a day, which run out on 20 days. */
  public static Forecast shortOfHands() {
    Forecast f = spring();
    Scenario limited = f.scenario().withLabour(new Labour(8, Labour.Minutes.DEFAULT, List.of()));
    HandsForecast hands = hands(limited, 1);
    Map<WorkKind, Stat> waiting = new EnumMap<>(hands.waiting());
    waiting.put(WorkKind.PLANT_OUT, stat(1200));
    waiting.put(WorkKind.THIN, stat(30));
    return new Forecast(
        limited,
        f.settings(),
        f.seasons(),
        f.release(),
        f.onTime(),
        f.late(),
        f.cellsSown(),
        f.sowings(),
        f.losses(),
        f.lossesByCrop(),
        f.places(),
        f.kinds(),
        f.waiting(),
        f.waits(),
        f.sowBehindOverdue(),
        f.tablesBehindReady(),
        new HandsForecast(
            hands.hours(),
            hands.hoursByWork(),
            hands.workingDays(),
            stat(20),
            waiting,
            hands.days(),
            hands.weeks()),
        f.balance(),
        f.rows());
  }

  /** The same forecast with another mean of plants on time. */
  public static Forecast withOnTime(Forecast f, double mean) {
    return new Forecast(
        f.scenario(),
        f.settings(),
        f.seasons(),
        f.release(),
        Stats.of(mean, 1, 1, 1, 1),
        f.late(),
        f.cellsSown(),
        f.sowings(),
        f.losses(),
        f.lossesByCrop(),
        f.places(),
        f.kinds(),
        f.waiting(),
        f.waits(),
        f.sowBehindOverdue(),
        f.tablesBehindReady(),
        f.hands(),
        f.balance(),
        f.rows());
  }

  private static Map<String, LocalDate> release(List<String> crops) {
    Map<String, LocalDate> release = new LinkedHashMap<>();
    for (int c = 0; c < crops.size() - 1; c++) {
      release.put(crops.get(c), LocalDate.of(2027, 3, 20).plusDays(4L * c));
    }
    return release;
  }

  private static Map<Loss, Stat> losses(double sown) {
    Map<Loss, Stat> losses = new EnumMap<>(Loss.class);
    LOST.forEach((loss, share) -> losses.put(loss, stat(share * sown)));
    return losses;
  }

  private static Map<String, Map<Loss, Stat>> lossesByCrop(Scenario scenario, List<String> crops) {
    Map<String, Map<Loss, Stat>> byCrop = new LinkedHashMap<>();
    for (String crop : crops) {
      double sown =
          scenario.sowings().stream()
              .filter(s -> s.crop().equals(crop))
              .mapToDouble(s -> s.trays() * Scenarios.CELLS)
              .sum();
      byCrop.put(crop, losses(sown * (0.7 + 0.05 * crops.indexOf(crop))));
    }
    return byCrop;
  }

  private static Map<RoomWait, Stat> waiting(double sow, double leave, double pot, double harden) {
    Map<RoomWait, Stat> waiting = new EnumMap<>(RoomWait.class);
    waiting.put(RoomWait.SOW, stat(sow));
    waiting.put(RoomWait.LEAVE, stat(leave));
    waiting.put(RoomWait.POT, stat(pot));
    waiting.put(RoomWait.HARDEN, stat(harden));
    return waiting;
  }

  /** Weeks that rise and fall about 40 hours; nothing waits. */
  private static HandsForecast hands(Scenario scenario, double times) {
    Stat none = Stats.always(0, 1);
    Map<WorkKind, Stat> waiting = new EnumMap<>(WorkKind.class);
    for (WorkKind work : WorkKind.values()) {
      waiting.put(work, none);
    }
    List<HandsForecast.Day> days = new ArrayList<>();
    List<HandsForecast.Week> weeks = new ArrayList<>();
    double sum = 0;
    double budget = scenario.labour().hoursPerDay();
    for (int d = 0; d < scenario.season().days(); d++) {
      LocalDate date = scenario.season().date(d);
      double hours = times * 6 * (1 + Math.sin(d / 20.0));
      sum += hours;
      days.add(new HandsForecast.Day(date, budget, hours, hours, hours, hours, 0, byWork(hours)));
      if (date.getDayOfWeek() == DayOfWeek.MONDAY) {
        weeks.add(new HandsForecast.Week(date, 7 * budget, stat(7 * hours), byWork(7 * hours), 0));
      }
    }
    return new HandsForecast(
        stat(sum), byWork(sum), scenario.season().days(), none, waiting, days, weeks);
  }

  private static Map<WorkKind, Double> byWork(double hours) {
    Map<WorkKind, Double> byWork = new EnumMap<>(WorkKind.class);
    for (WorkKind work : WorkKind.values()) {
      byWork.put(work, hours / WorkKind.values().length);
    }
    return byWork;
  }

  private static List<SeasonRow> rows(Scenario scenario, int seasons) {
    List<SeasonRow> rows = new ArrayList<>();
    for (int season = 0; season < seasons; season++) {
      long sown = 100L * scenario.trays() + 10L * season;
      Map<Loss, Long> losses = new EnumMap<>(Loss.class);
      LOST.forEach((loss, share) -> losses.put(loss, Math.round(share * sown)));
      rows.add(
          new SeasonRow(
              season,
              2001 + season % 10,
              sown,
              sown * 7 / 10,
              sown / 50,
              30 + season % 9,
              losses,
              Map.of(
                  RoomWait.SOW,
                  400L + season,
                  RoomWait.LEAVE,
                  380L,
                  RoomWait.POT,
                  96L,
                  RoomWait.HARDEN,
                  41L)));
    }
    return rows;
  }

  private static Forecast.Balance balance(double supplied) {
    return new Forecast.Balance(stat(supplied), null);
  }

  public static Stat stat(double mean) {
    return Stats.of(mean, 0.012 * mean, 0.88 * mean, 1.01 * mean, 1.09 * mean);
  }
}
