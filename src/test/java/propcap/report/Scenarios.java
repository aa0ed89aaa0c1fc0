package propcap.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Labour;
import propcap.farm.Materials;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.farm.WeatherYear;

/** Farms and plans made up by formula, for the forecasts of {@link Forecasts}. */
public final class Scenarios {
  public static final Season SEASON =
      new Season(LocalDate.of(2027, 1, 11), LocalDate.of(2027, 7, 4));
  public static final int CELLS = 100;

  private Scenarios() {}

  /** 6 places, two of them open tables and one closed, and 3 sowings of each crop. */
  public static Scenario spring(String name, List<String> crops) {
    List<Place> places =
        List.of(
            new Place("Chamber", PlaceKind.CHAMBER, 60, new Climate.Constant(22), 0.08, null),
            new Place("Mats", PlaceKind.HEAT_BENCH, 36, new Climate.Constant(21), 0.02, null),
            new Place("House 1", PlaceKind.TABLE, 330, new Climate.Heated(14, 5, 26), 0, null),
            new Place("House 2", PlaceKind.TABLE, 120, new Climate.Heated(8, 5, 26), 0, null),
            new Place("Old shed", PlaceKind.TABLE, 0, new Climate.Outdoor(), 0, null),
            new Place("Yard", PlaceKind.HARDENING, 160, new Climate.Outdoor(), 0, null));
    return scenario(name, SEASON, places, crops, 3);
  }

  /** A table, a yard and one sowing. */
  public static Scenario bare(Season season) {
    List<Place> places =
        List.of(
            new Place("Table", PlaceKind.TABLE, 10, new Climate.Constant(20), 0, null),
            new Place("Yard", PlaceKind.HARDENING, 10, new Climate.Outdoor(), 0, null));
    return scenario("bare", season, places, List.of("kale"), 1);
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
                null,
                null,
                Sowing.Leeway.NOT_SAID));
      }
    }
    List<WeatherYear> weather = new ArrayList<>();
    for (int year = 2001; year <= 2010; year++) {
      weather.add(new WeatherYear(year, new double[season.days()], new double[season.days()]));
    }
    return new Scenario(
        name,
        season,
        0,
        Rounds.everyDay(),
        places,
        byName,
        sowings,
        weather,
        null,
        Labour.NOT_LIMITED);
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
        new Crop.Hardening(7, 2, -2, 0.1, 0.02, 0.1, 0),
        Materials.NOT_KNOWN);
  }
}
