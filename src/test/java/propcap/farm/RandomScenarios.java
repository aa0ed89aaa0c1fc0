package propcap.farm;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Farms made up from a number: valid, but seldom sensible. Among them are closed and tiny places,
 * rest days, frosts in summer, crops that never develop where they stand, and seasons that end too
 * soon.
 */
public final class RandomScenarios {
  private final SplittableRandom random;
  private final LocalDate start;
  private final int days;
  private final List<Place> places = new ArrayList<>();
  private final List<Crop> crops = new ArrayList<>();

  private RandomScenarios(long seed) {
    random = new SplittableRandom(seed);
    start = LocalDate.of(2027, 1, 1).plusDays(random.nextInt(60));
    days = chance(0.1) ? random.nextInt(1, 30) : random.nextInt(70, 150);
  }

  /** The same farm for the same number. */
  public static Scenario from(long seed) {
    return new RandomScenarios(seed).make();
  }

  private Scenario make() {
    double coldC = pick(List.of(-10, 0, 4, 8));
    List<WeatherYear> weather = new ArrayList<>();
    int years = random.nextInt(1, 6);
    for (int y = 0; y < years; y++) {
      weather.add(weatherYear(2001 + y, coldC));
    }
    makePlaces();
    int kinds = fewer(8);
    for (int c = 0; c < kinds; c++) {
      crops.add(crop("crop " + c));
    }
    TreeMap<String, Crop> byName = new TreeMap<>();
    crops.forEach(crop -> byName.put(crop.name(), crop));
    List<Sowing> sowings = new ArrayList<>();
    int lines = fewer(12);
    for (int s = 0; s < lines; s++) {
      sowings.add(sowing("sowing " + s));
    }
    return new Scenario(
        "random",
        new Season(start, start.plusDays(days - 1L)),
        0,
        new Rounds(LocalTime.of(random.nextInt(24), random.nextInt(60)), restDays()),
        places,
        byName,
        sowings,
        weather,
        null,
        Labour.NOT_LIMITED);
  }

  private Set<DayOfWeek> restDays() {
    Set<DayOfWeek> rest = EnumSet.noneOf(DayOfWeek.class);
    int number = chance(0.3) ? random.nextInt(1, 5) : 0;
    for (int i = 0; i < number; i++) {
      rest.add(DayOfWeek.of(random.nextInt(1, 8)));
    }
    return rest;
  }

  private WeatherYear weatherYear(int year, double coldC) {
    double[] minC = new double[days];
    double[] maxC = new double[days];
    for (int d = 0; d < days; d++) {
      minC[d] = coldC + 0.1 * d + random.nextDouble(-6, 6);
      maxC[d] = minC[d] + random.nextDouble(0, 12);
    }
    return new WeatherYear(year, minC, maxC);
  }

  // Places.

  private void makePlaces() {
    for (PlaceKind kind : PlaceKind.values()) {
      boolean needed = kind == PlaceKind.TABLE || kind == PlaceKind.HARDENING;
      int number = random.nextInt(needed ? 1 : 0, 4);
      for (int i = 0; i < number; i++) {
        int spaces = needed && i == 0 ? openSpaces() : spaces();
        double stretchLoss = chance(0.5) ? random.nextDouble(0, 0.3) : 0;
        places.add(
            new Place(kind.word() + " " + i, kind, spaces, climate(kind), stretchLoss, null));
      }
    }
  }

  private int spaces() {
    return chance(0.2) ? 0 : openSpaces();
  }

  private int openSpaces() {
    return switch (random.nextInt(4)) {
      case 0, 1 -> random.nextInt(1, 5);
      case 2 -> random.nextInt(4, 20);
      default -> 1000;
    };
  }

  private Climate climate(PlaceKind kind) {
    if (kind == PlaceKind.HARDENING || chance(0.1)) {
      return new Climate.Outdoor();
    }
    if (chance(0.5)) {
      return new Climate.Constant(chance(0.1) ? 5 : random.nextDouble(15, 27));
    }
    double heatToC = random.nextDouble(8, 20);
    return new Climate.Heated(heatToC, random.nextDouble(0, 8), heatToC + random.nextDouble(0, 20));
  }

  // Crops.

  private Crop crop(String name) {
    Crop.Germination germination =
        new Crop.Germination(
            pick(List.of(0.1, 0.8, 0.95, 1.0, 1.0)),
            chance(0.15) ? 100 : 0,
            chance(0.07) ? random.nextDouble(0.005, 0.3) : 0);
    double baseC = chance(0.06) ? 36 : random.nextDouble(0, 8);
    double optimumC = baseC + random.nextDouble(10, 25);
    double ceilingC = optimumC + random.nextDouble(1, 12);
    double halfByDays = random.nextDouble(1, 9);
    Crop.Emergence emergence =
        new Crop.Emergence(
            baseC,
            optimumC,
            ceilingC,
            random.nextDouble(baseC + 8, optimumC),
            halfByDays,
            halfByDays * random.nextDouble(1.01, 2));
    return new Crop(
        name,
        random.nextInt(1, 9),
        random.nextInt(1, 5),
        germination,
        emergence,
        germinateIn(),
        pick(List.of(0.01, 0.25, 0.5, 0.5, 0.9, 1.0)),
        chance(0.1) ? random.nextDouble(0.5, 5) : random.nextDouble(8, 25),
        pick(List.of(0, 1, 5, 5, 200)),
        pick(List.of(0.0, 0.25, 0.25, 0.25, 0.9)),
        growingOn(),
        pottingOn(),
        hardening(),
        Materials.NOT_KNOWN);
  }

  private List<String> germinateIn() {
    List<Place> left = new ArrayList<>(places);
    left.removeIf(place -> !place.kind().canGerminate());
    List<String> names = new ArrayList<>();
    boolean open = false;
    int wanted = random.nextInt(1, 4);
    // Goes on until one that is open is among them: the first table always is.
    while (!left.isEmpty() && (names.size() < wanted || !open)) {
      Place place = left.remove(random.nextInt(left.size()));
      names.add(place.name());
      open |= place.isOpen();
    }
    return names;
  }

  private Crop.GrowingOn growingOn() {
    double baseC = chance(0.06) ? 28 : random.nextDouble(0, 8);
    return new Crop.GrowingOn(
        baseC,
        baseC + random.nextDouble(5, 20),
        baseC + random.nextDouble(4, 12),
        random.nextDouble(0.5, 25),
        pick(List.of(0.0, 0.1, 0.4)),
        loss(),
        chance(0.2) ? dampingOff() : Crop.DampingOff.NONE,
        random.nextDouble(0, 10),
        loss());
  }

  private Crop.DampingOff dampingOff() {
    return new Crop.DampingOff(loss(), pick(List.of(0.0, 0.3, 0.5, 0.7, 1.0)));
  }

  private Crop.PottingOn pottingOn() {
    return new Crop.PottingOn(
        pick(List.of(Crop.PottingOn.When.values())),
        random.nextInt(1, 6),
        random.nextDouble(0, 20),
        random.nextDouble(0, 10),
        loss());
  }

  private Crop.Hardening hardening() {
    return new Crop.Hardening(
        random.nextDouble(0, 10),
        random.nextDouble(-6, 4),
        random.nextDouble(-6, 2),
        loss(),
        loss(),
        pick(List.of(0.0, 0.1, 0.5, 1.0)),
        random.nextInt(-40, 5));
  }

  /** Mostly small, now and then nothing or everything. */
  private double loss() {
    return switch (random.nextInt(8)) {
      case 0 -> 0;
      case 1 -> chance(0.1) ? 1 : 0;
      default -> random.nextDouble(0, 0.2);
    };
  }

  // Sowings.

  private Sowing sowing(String id) {
    Crop crop = pick(crops);
    int sow = random.nextInt(chance(0.8) ? (days + 1) / 2 : days);
    int bedFrom = sow + random.nextInt(-5, 60);
    int bedBy = bedFrom + random.nextInt(0, 40);
    return new Sowing(
        id,
        crop.name(),
        pick(List.of("lot 1", "lot 2")),
        day(sow),
        random.nextInt(1, 7),
        random.nextInt(0, 3 * crop.cells()),
        day(bedFrom),
        day(bedBy),
        perhaps(bedBy + random.nextInt(0, 30)),
        perhaps(sow + random.nextInt(0, 40)),
        null,
        Sowing.Leeway.NOT_SAID);
  }

  private @Nullable LocalDate perhaps(int day) {
    return chance(0.4) ? day(day) : null;
  }

  private LocalDate day(int number) {
    return start.plusDays(number);
  }

  /** From 1 to a number, mostly in the lower half: beta tables take their time. */
  private int fewer(int most) {
    return Math.min(random.nextInt(most), random.nextInt(most)) + 1;
  }

  private boolean chance(double p) {
    return random.nextDouble() < p;
  }

  private <T> T pick(List<T> from) {
    return from.get(random.nextInt(from.size()));
  }
}
