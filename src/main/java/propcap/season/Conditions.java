package propcap.season;

import java.util.List;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.WeatherYear;

/** How warm it is for every crop in every place, and how its nights are, in every weather year. */
final class Conditions {
  private final List<Crop> crops;
  private final List<Climate> climates;
  private final List<WeatherYear> weather;
  private final Clocks[] clocks;
  private final Nights[][] nights;

  Conditions(List<Crop> crops, List<Place> places, List<WeatherYear> weather) {
    this.crops = crops;
    this.weather = weather;
    climates = climates(places);
    clocks = weather.stream().map(year -> new Clocks(crops, places, year)).toArray(Clocks[]::new);
    nights =
        weather.stream()
            .map(
                year ->
                    crops.stream()
                        .map(crop -> new Nights(crop.hardening(), year))
                        .toArray(Nights[]::new))
            .toArray(Nights[][]::new);
  }

  private static List<Climate> climates(List<Place> places) {
    return places.stream().map(Place::climate).toList();
  }

  /** Whether these are the conditions of such a scenario as well. */
  boolean fit(List<Crop> otherCrops, List<Place> places, List<WeatherYear> otherWeather) {
    return crops.equals(otherCrops)
        && climates.equals(climates(places))
        && weather.equals(otherWeather);
  }

  Clocks clocks(int year) {
    return clocks[year];
  }

  Nights nights(int year, int crop) {
    return nights[year][crop];
  }
}
