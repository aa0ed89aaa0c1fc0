package propcap.farm;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A spring to be tried: what is grown, what is sown when, where there is room, and which weather
 * may come.
 *
 * @param frostAtC a day is a frost when its minimum is at or below this, degrees C
 * @param crops the crop list, by name
 * @param sowings the plan; none has fewer trays than have been sown of it
 * @param weather the record's years, each cut to the season; one is drawn for each simulated season
 * @param prices null: no money is asked
 * @param labour people's hours and what each piece of work takes
 * @param soFar what is known of the season on the morning of a day within it; null: nothing has
 *     been sown
 */
public record Scenario(
    String name,
    Season season,
    double frostAtC,
    Rounds rounds,
    List<Place> places,
    Map<String, Crop> crops,
    List<Sowing> sowings,
    List<WeatherYear> weather,
    @Nullable Prices prices,
    Labour labour,
    @Nullable SoFar soFar)
    implements Serializable {
  public static final double DEFAULT_FROST_AT_C = 0;

  /** As good as endless: no place fills, and sums of places stay within an int. */
  private static final int ENDLESS = 10_000_000;

  /** A scenario before anything has been sown. */
  public Scenario(
      String name,
      Season season,
      double frostAtC,
      Rounds rounds,
      List<Place> places,
      Map<String, Crop> crops,
      List<Sowing> sowings,
      List<WeatherYear> weather,
      @Nullable Prices prices,
      Labour labour) {
    this(name, season, frostAtC, rounds, places, crops, sowings, weather, prices, labour, null);
  }

  public Scenario {
    Checks.finite("frost-at", frostAtC);
    places = List.copyOf(places);
    crops = Map.copyOf(crops);
    sowings = soFar == null ? List.copyOf(sowings) : soFar.within(sowings);
    weather = List.copyOf(weather);
    Checks.require(!weather.isEmpty(), "no year of the weather record covers the whole season");
    for (WeatherYear year : weather) {
      Checks.require(
          year.days() == season.days(),
          "a weather year must have a row for each day of the season");
    }
    Map<String, Place> byName =
        places.stream().collect(Collectors.toMap(Place::name, Function.identity()));
    for (PlaceKind kind : List.of(PlaceKind.TABLE, PlaceKind.HARDENING)) {
      Checks.require(
          places.stream().anyMatch(p -> p.kind() == kind && p.isOpen()),
          "a season needs a place of kind " + kind.word());
    }
    Checks.require(
        sowings.stream().map(Sowing::id).distinct().count() == sowings.size(),
        "each sowing needs an id of its own");
    for (Sowing sowing : sowings) {
      Checks.require(
          season.contains(sowing.sow()),
          sowing.id() + " is sown outside the season: " + sowing.sow());
      if (prices != null) {
        var unused = prices.of(sowing.crop());
      }
      String first = sowing.germinateIn();
      Checks.require(
          first == null || crop(crops, sowing).germinateIn().contains(first),
          sowing.id() + " cannot germinate in " + first + ": " + sowing.crop() + " does not");
      List<Place> germinateIn = named(crop(crops, sowing).germinateIn(), byName);
      Checks.require(
          germinateIn.stream().allMatch(p -> p.kind().canGerminate()),
          "nothing germinates in a hardening area, " + sowing.crop() + " included");
      Checks.require(
          germinateIn.stream().anyMatch(Place::isOpen),
          "no open place can germinate " + sowing.crop());
    }
  }

  private static List<Place> named(List<String> names, Map<String, Place> byName) {
    names.forEach(n -> Checks.require(byName.containsKey(n), "no place is named " + n));
    return byName.values().stream().filter(p -> names.contains(p.name())).toList();
  }

  private static Crop crop(Map<String, Crop> crops, Sowing sowing) {
    Crop crop = crops.get(sowing.crop());
    if (crop == null) {
      throw new IllegalArgumentException("the crop list lacks " + sowing.crop());
    }
    return crop;
  }

  /** The crop of a sowing of this scenario. */
  public Crop cropOf(Sowing sowing) {
    return crop(crops, sowing);
  }

  /** Trays of the first sowing of every line of the plan. */
  public int trays() {
    return sowings.stream().mapToInt(Sowing::trays).sum();
  }

  /** Plants that all sowings of the plan need together. */
  public long plantsNeeded() {
    return sowings.stream().mapToLong(Sowing::plantsNeeded).sum();
  }

  /**
   * The day on which a crop may go out to harden: the first day of the season such that the share
   * of record years with a frost on or after it, within the season, is no more than the crop's
   * risk, plus its offset. The same in every simulated season.
   *
   * @return empty where the frosts go on to the season's end
   */
  public Optional<LocalDate> releaseDate(Crop crop) {
    return new FrostRecord(season, frostAtC, weather).releaseDate(crop);
  }

  /** This scenario with room for everything in every open place. */
  public Scenario withEndlessRoom() {
    return withPlaces(places.stream().map(p -> p.isOpen() ? p.withSpaces(ENDLESS) : p).toList());
  }

  /** This scenario with hours for all the work. */
  public Scenario withEndlessHands() {
    return withLabour(labour.withHoursPerDay(Double.POSITIVE_INFINITY));
  }

  /** This scenario with no money asked. */
  public Scenario withoutMoney() {
    return new Scenario(
        name, season, frostAtC, rounds, places, crops, sowings, weather, null, labour);
  }

  public Scenario withPlaces(List<Place> newPlaces) {
    return new Scenario(
        name, season, frostAtC, rounds, newPlaces, crops, sowings, weather, prices, labour, soFar);
  }

  public Scenario withSowings(List<Sowing> newSowings) {
    return new Scenario(
        name, season, frostAtC, rounds, places, crops, newSowings, weather, prices, labour, soFar);
  }

  public Scenario named(String newName) {
    return new Scenario(
        newName, season, frostAtC, rounds, places, crops, sowings, weather, prices, labour, soFar);
  }

  public Scenario withLabour(Labour newLabour) {
    return new Scenario(
        name, season, frostAtC, rounds, places, crops, sowings, weather, prices, newLabour, soFar);
  }

  /** This scenario on the morning of a day within its season. */
  public Scenario withSoFar(SoFar newSoFar) {
    return new Scenario(
        name, season, frostAtC, rounds, places, crops, sowings, weather, prices, labour, newSoFar);
  }

  /** This scenario before anything has been sown. */
  public Scenario asPlanned() {
    return new Scenario(
        name, season, frostAtC, rounds, places, crops, sowings, weather, prices, labour);
  }

  public Scenario withCrops(Map<String, Crop> newCrops) {
    return new Scenario(
        name, season, frostAtC, rounds, places, newCrops, sowings, weather, prices, labour, soFar);
  }

  /**
   * The fewest trays that a sowing can have: as many as have been sown, and those with a lower
   * number, which are still due; 0 where none has been sown.
   */
  public int leastTrays(Sowing sowing) {
    return soFar == null ? 0 : soFar.leastTrays(sowing);
  }

  /** The first day that is still to come: the season's first where nothing is known of it. */
  public LocalDate today() {
    return soFar == null ? season.start() : soFar.today();
  }

  /** The first day, by its number in the season, that is simulated; those before it have been. */
  public int firstDay() {
    return soFar == null ? 0 : season.dayOf(soFar.today());
  }

  /**
   * The weather that may come, a year of the record each: on the days before today it is this
   * season's own, as far as it was recorded.
   */
  public List<WeatherYear> weatherFromToday() {
    SoFar known = soFar;
    return known == null || known.weather().isEmpty()
        ? weather
        : weather.stream().map(year -> year.after(known.weather())).toList();
  }
}
