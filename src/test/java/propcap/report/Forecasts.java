package propcap.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Loss;
import propcap.farm.Milestone;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.farm.Step;
import propcap.farm.WeatherYear;
import propcap.study.Forecast;
import propcap.study.Forecast.DayUse;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SeasonRow;
import propcap.study.Forecast.SowingForecast;
import propcap.study.Forecast.Span;
import propcap.study.Forecast.Wait;
import propcap.study.RunSettings;
import propcap.study.Stat;

/** Forecasts made up by formula, in the shape of real ones, to see what is written of them. */
final class Forecasts {
  static final Season SEASON = new Season(LocalDate.of(2027, 1, 11), LocalDate.of(2027, 7, 4));
  private static final int SEASONS = 50;
  private static final int CELLS = 100;

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
  static Forecast spring() {
    return spring("Base spring", CROPS);
  }

  /** The same with a name and crops of one's own, 3 sowings each. */
  static Forecast spring(String name, List<String> crops) {
    List<Place> places =
        List.of(
            new Place("Chamber", PlaceKind.CHAMBER, 60, new Climate.Constant(22), 0.08),
            new Place("Mats", PlaceKind.HEAT_BENCH, 36, new Climate.Constant(21), 0.02),
            new Place("House 1", PlaceKind.TABLE, 330, new Climate.Heated(14, 5, 26), 0),
            new Place("House 2", PlaceKind.TABLE, 120, new Climate.Heated(8, 5, 26), 0),
            new Place("Old shed", PlaceKind.TABLE, 0, new Climate.Outdoor(), 0),
            new Place("Yard", PlaceKind.HARDENING, 160, new Climate.Outdoor(), 0));
    Scenario scenario = scenario(name, SEASON, places, crops, 3);
    List<SowingForecast> sowings =
        scenario.sowings().stream().map(s -> sowing(s, scenario.sowings().indexOf(s))).toList();
    double sown = scenario.trays() * CELLS;
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
            place("Chamber", PlaceKind.CHAMBER, 60, 60, 0.9, 210),
            place("Mats", PlaceKind.HEAT_BENCH, 36, 75, 1.6, 0),
            place("House 1", PlaceKind.TABLE, 330, 95, 1.3, 0),
            place("House 2", PlaceKind.TABLE, 120, 100, 1.2, 0),
            place("Old shed", PlaceKind.TABLE, 0, 100, 0, 0),
            place("Yard", PlaceKind.HARDENING, 160, 118, 0.85, 190)),
        List.of(
            place("all tables", PlaceKind.TABLE, 450, 97, 1.25, 640),
            place("the chamber", PlaceKind.CHAMBER, 60, 60, 0.9, 210)),
        waiting(412, 380, 96, 41),
        waits(),
        390,
        120,
        rows(scenario, SEASONS));
  }

  /** One sowing, one spring of ten days, and nothing that waits, is lost or ever comes out. */
  static Forecast bare() {
    Season season = new Season(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 3, 10));
    List<Place> places =
        List.of(
            new Place("Table", PlaceKind.TABLE, 10, new Climate.Constant(20), 0),
            new Place("Yard", PlaceKind.HARDENING, 10, new Climate.Outdoor(), 0));
    Scenario scenario = scenario("bare", season, places, List.of("kale"), 1);
    Stat none = new Stat(0, 0, 0, 0, 0);
    Map<Loss, Stat> losses = new EnumMap<>(Loss.class);
    for (Loss loss : Loss.values()) {
      losses.put(loss, none);
    }
    Map<Step, Stat> waiting = new EnumMap<>(Step.class);
    for (Step step : Step.values()) {
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
            Map.of(),
            Map.of());
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
        List.of(new SeasonRow(0, 2001, 0, 0, 0, 0, Map.of(), Map.of())));
  }

  /** The same forecast with another mean of plants on time. */
  static Forecast withOnTime(Forecast f, double mean) {
    return new Forecast(
        f.scenario(),
        f.settings(),
        f.seasons(),
        f.release(),
        new Stat(mean, 1, 1, 1, 1),
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
        f.rows());
  }

  private static Scenario scenario(
      String name, Season season, List<Place> places, List<String> crops, int sowingsEach) {
    Map<String, Crop> byName = new LinkedHashMap<>();
    List<Sowing> sowings = new ArrayList<>();
    for (int batch = 0; batch < sowingsEach; batch++) {
      for (int c = 0; c < crops.size(); c++) {
        String crop = crops.get(c);
        byName.put(crop, crop(crop, places.get(0).name()));
        int sow = Math.min(season.days() - 1, 4 * c + 21 * batch);
        LocalDate bedFrom = season.date(sow).plusDays(64);
        int trays = 8 + (c * 7 + batch * 5) % 31;
        sowings.add(
            new Sowing(
                crop + "-" + (batch + 1),
                crop,
                crop + " 2026",
                season.date(sow),
                trays,
                trays * CELLS * 2 / 3,
                bedFrom,
                bedFrom.plusDays(14),
                null,
                null));
      }
    }
    List<WeatherYear> weather = new ArrayList<>();
    for (int year = 2001; year <= 2010; year++) {
      weather.add(new WeatherYear(year, new double[season.days()], new double[season.days()]));
    }
    return new Scenario(name, season, 0, Rounds.everyDay(), places, byName, sowings, weather);
  }

  private static Crop crop(String name, String place) {
    return new Crop(
        name,
        CELLS,
        1,
        new Crop.Germination(0.9, 100, 0.02),
        new Crop.Emergence(5, 25, 35, 20, 5, 8),
        List.of(place),
        0.5,
        21,
        5,
        0.25,
        new Crop.GrowingOn(5, 22, 18, 25, 0.1, 0.03, Crop.DampingOff.NONE, 10, 0.03),
        Crop.PottingOn.NEVER,
        new Crop.Hardening(7, 2, -2, 0.1, 0.02, 0.1, 0));
  }

  private static SowingForecast sowing(Sowing sowing, int n) {
    double sown = sowing.trays() * CELLS;
    double chance = n % 9 == 4 ? 0.3 + 0.01 * n : n % 7 == 3 ? 0.88 : 1 - 0.003 * (n % 25);
    double wait = (n % 5) * 1.3;
    double day = SEASON.dayOf(sowing.sow()) + 0.33 + wait;
    boolean potted = n % 4 == 0;
    Map<Milestone, Span> milestones = new EnumMap<>(Milestone.class);
    milestones.put(Milestone.SOWN, span(day, sowing.trays()));
    milestones.put(Milestone.OFF_HEAT, span(day + 7, sowing.trays()));
    if (potted) {
      milestones.put(Milestone.POTTED_ON, span(day + 28, sowing.trays()));
    }
    double out = day + (potted ? 68 : 58) + n % 3 * 3;
    milestones.put(Milestone.MOVED_OUT, span(out - 10, sowing.trays()));
    milestones.put(Milestone.PLANTED_OUT, span(out, sowing.trays()));
    LocalDate median = SEASON.date((int) out);
    @Nullable LocalDate readyBy =
        chance >= 0.9 ? median.plusDays(2) : n % 2 == 0 ? sowing.bedBy().plusDays(6) : null;
    return new SowingForecast(
        sowing,
        stat(sown),
        stat((0.55 + 0.2 * chance) * sown),
        stat(0.05 * (1 - chance) * sown),
        chance,
        Math.max(0, chance - 0.09),
        Math.min(1, chance + 0.06),
        median.minusDays(2),
        median,
        median.plusDays(4),
        readyBy,
        milestones,
        Map.of(Step.SOW, wait * sowing.trays(), Step.HARDEN, 1.25));
  }

  private static Span span(double mean, double trays) {
    return new Span(mean - 2, mean, mean + 3, trays);
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
              .mapToDouble(s -> s.trays() * CELLS)
              .sum();
      byCrop.put(crop, losses(sown * (0.7 + 0.05 * crops.indexOf(crop))));
    }
    return byCrop;
  }

  /** A hill of use around a day, cut off at the room. */
  private static Occupancy place(
      String name, PlaceKind kind, int spaces, int peakDay, double height, double demand) {
    List<DayUse> days = new ArrayList<>();
    double fullDays = 0;
    double sum = 0;
    for (int day = 0; day < SEASON.days(); day++) {
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
        sum / SEASON.days(),
        new Stat(peak, 0.1, 0.9 * peak, peak, Math.min(spaces, 1.05 * peak)),
        new Stat(
            fullDays,
            0.4,
            Math.rint(0.7 * fullDays),
            Math.rint(fullDays),
            Math.rint(1.3 * fullDays)),
        days);
  }

  private static Map<Step, Stat> waiting(double sow, double leave, double pot, double harden) {
    Map<Step, Stat> waiting = new EnumMap<>(Step.class);
    waiting.put(Step.SOW, stat(sow));
    waiting.put(Step.LEAVE, stat(leave));
    waiting.put(Step.POT, stat(pot));
    waiting.put(Step.HARDEN, stat(harden));
    return waiting;
  }

  private static List<Wait> waits() {
    List<Wait> waits = new ArrayList<>();
    double[] months = {0.02, 0.18, 0.5, 0.25, 0.05, 0};
    for (int m = 0; m < 6; m++) {
      var month = java.time.YearMonth.of(2027, m + 1);
      if (months[m] > 0) {
        waits.add(new Wait(Step.SOW, "Chamber or Mats", month, 280 * months[m]));
        waits.add(new Wait(Step.SOW, "Mats", month, 132 * months[m]));
        waits.add(new Wait(Step.LEAVE, "House 1 or House 2", month, 380 * months[m]));
        waits.add(new Wait(Step.POT, "House 1 or House 2", month, 96 * months[m]));
        waits.add(new Wait(Step.HARDEN, "Yard", month, 41 * months[m]));
      }
    }
    return waits;
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
              Map.of(Step.SOW, 400L + season, Step.LEAVE, 380L, Step.POT, 96L, Step.HARDEN, 41L)));
    }
    return rows;
  }

  private static Stat stat(double mean) {
    return new Stat(mean, 0.012 * mean, 0.88 * mean, 1.01 * mean, 1.09 * mean);
  }
}
