package propcap.farm;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A small farm for tests: mats and a house at 20 C, a yard, a mild spring, a round each day at
 * 08:00, 60 days from 1 March 2027.
 */
public final class Farms {
  public static final LocalDate START = LocalDate.of(2027, 3, 1);

  public Season season = new Season(START, START.plusDays(59));
  public Rounds rounds = Rounds.everyDay();
  public int mats = 10;
  public Labour labour = Labour.NOT_LIMITED;
  public int house = 10;
  public int yard = 10;
  public double stretchLossPerDay = 0;
  public List<Place> morePlaces = new ArrayList<>();
  public List<Crop> crops = new ArrayList<>(List.of(new Crops().make()));
  public List<Sowing> sowings = new ArrayList<>();
  public double[] minC = filled(8);
  public double[] maxC = filled(18);

  private double[] filled(double value) {
    double[] days = new double[season.days()];
    Arrays.fill(days, value);
    return days;
  }

  /** A sowing of "cosmos" due on a day of the season, whose bed is free all season. */
  public static Sowing sowing(String id, int sowDay, int trays) {
    return sowing(id, sowDay, trays, 0, 59);
  }

  public static Sowing sowing(String id, int sowDay, int trays, int bedFrom, int bedBy) {
    return new Sowing(
        id,
        "cosmos",
        "lot",
        day(sowDay),
        trays,
        10,
        day(bedFrom),
        day(bedBy),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  /** A sowing whose bed is free from the first day to one, after which it is thrown out. */
  public static Sowing sowingUntil(String id, int sowDay, int trays, int until) {
    return new Sowing(
        id,
        "cosmos",
        "lot",
        day(sowDay),
        trays,
        10,
        START,
        day(until),
        day(until),
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  public static LocalDate day(int number) {
    return START.plusDays(number);
  }

  public Scenario make() {
    List<Place> places = new ArrayList<>();
    places.add(
        new Place(
            "Mats", PlaceKind.HEAT_BENCH, mats, new Climate.Constant(20), stretchLossPerDay, null));
    places.add(new Place("House", PlaceKind.TABLE, house, new Climate.Constant(20), 0, null));
    places.addAll(morePlaces);
    places.add(new Place("Yard", PlaceKind.HARDENING, yard, new Climate.Outdoor(), 0, null));
    return new Scenario(
        "test",
        season,
        0,
        rounds,
        places,
        crops.stream().collect(Collectors.toMap(Crop::name, c -> c)),
        sowings,
        List.of(new WeatherYear(2001, minC, maxC)),
        null,
        labour);
  }
}
