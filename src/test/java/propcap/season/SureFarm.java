package propcap.season;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.farm.WeatherYear;

/**
 * A farm on which nothing is lost, made up from a number: little room, rest days and luck in time,
 * but all seeds come up and the season is so long that each tray makes each move.
 */
final class SureFarm {
  static final int DAYS = 1000;

  private final SplittableRandom random;
  private final List<Place> places = new ArrayList<>();
  private final TreeMap<String, Crop> crops = new TreeMap<>();
  private final List<Sowing> sowings = new ArrayList<>();

  /**
   * Where there are pots, one table has room for all plugs (24 at most) and for the pots of one
   * tray (10 spaces at most): plugs may else wait for each other for ever.
   */
  private final boolean withPots;

  SureFarm(long seed) {
    random = new SplittableRandom(seed);
    withPots = random.nextBoolean();
  }

  Scenario make() {
    makePlaces();
    int kinds = random.nextInt(1, 5);
    for (int c = 0; c < kinds; c++) {
      crops.put("crop " + c, crop("crop " + c));
    }
    int lines = random.nextInt(1, 9);
    for (int s = 0; s < lines; s++) {
      sowings.add(sowing("sowing " + s));
    }
    double[] minC = new double[DAYS];
    double[] maxC = new double[DAYS];
    for (int d = 0; d < DAYS; d++) {
      minC[d] = random.nextDouble(1, 12);
      maxC[d] = minC[d] + 8;
    }
    return new Scenario(
        "sure",
        new Season(Farms.START, Farms.day(DAYS - 1)),
        0,
        random.nextBoolean()
            ? Rounds.everyDay()
            : new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SUNDAY, DayOfWeek.THURSDAY)),
        places,
        crops,
        sowings,
        List.of(new WeatherYear(2001, minC, maxC)),
        null,
        Labour.NOT_LIMITED);
  }

  private void makePlaces() {
    int chambers = random.nextInt(1, 3);
    for (int i = 0; i < chambers; i++) {
      places.add(place("chamber " + i, PlaceKind.CHAMBER, random.nextInt(1, 8)));
    }
    int tables = random.nextInt(1, 4);
    for (int i = 0; i < tables; i++) {
      places.add(place("table " + i, PlaceKind.TABLE, random.nextInt(1, 6)));
    }
    if (withPots) {
      places.add(place("table of pots", PlaceKind.TABLE, 34));
    }
    places.add(place("yard 0", PlaceKind.HARDENING, random.nextInt(1, 4)));
    places.add(place("yard 1", PlaceKind.HARDENING, withPots ? 10 : 2));
  }

  private Place place(String name, PlaceKind kind, int spaces) {
    return new Place(name, kind, spaces, new Climate.Constant(random.nextDouble(15, 25)), 0, null);
  }

  private Crop crop(String name) {
    Crops crop = new Crops();
    crop.name = name;
    crop.cells = random.nextInt(1, 11);
    double halfByDays = random.nextDouble(2, 8);
    crop.emergence = new Crop.Emergence(0, 30, 40, 20, halfByDays, halfByDays * 1.2);
    crop.germinateIn =
        random.nextInt(3) == 0
            ? List.of("table 0")
            : places.stream()
                .filter(place -> place.kind() == PlaceKind.CHAMBER)
                .map(Place::name)
                .toList();
    // So long a window that no seedling is too late.
    crop.standWindowDays = 500;
    crop.takesDays = random.nextDouble(1, 12);
    crop.spread = 0.2;
    crop.hardening =
        new Crop.Hardening(random.nextInt(0, 6), 2, -20, 0, 0, 1, random.nextInt(0, 60));
    if (withPots) {
      crop.pottingOn =
          new Crop.PottingOn(
              List.of(Crop.PottingOn.When.values()).get(random.nextInt(3)),
              random.nextInt(1, 12),
              random.nextDouble(0, 8),
              5,
              0);
    }
    return crop.make();
  }

  private Sowing sowing(String id) {
    String crop = "crop " + random.nextInt(crops.size());
    boolean ifHeld = farmCrop(crop).pottingOn().when() == Crop.PottingOn.When.IF_HELD;
    int bedFrom = random.nextInt(100);
    // One tray where some may be potted on and some not: their days would be summed together.
    int trays = ifHeld ? 1 : random.nextInt(1, 4);
    return new Sowing(
        id,
        crop,
        "lot",
        Farms.day(random.nextInt(60)),
        trays,
        1,
        Farms.day(bedFrom),
        Farms.day(bedFrom + random.nextInt(30)),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  private Crop farmCrop(String name) {
    return crops.values().stream().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
  }
}
