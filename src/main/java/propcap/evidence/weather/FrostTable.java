package propcap.evidence.weather;

import java.util.List;
import java.util.Map;
import propcap.farm.Crop;
import propcap.farm.FrostRecord;
import propcap.farm.Season;
import propcap.farm.WeatherYear;

/**
 * When is it safe to go out? The chances of frost through the season for several thresholds, and
 * the day on which each crop of a list may go out.
 *
 * @param years of the record, each covering the season
 * @param thresholds the warmest first
 * @param releases in the crop list's order
 */
public record FrostTable(
    Season season,
    List<Integer> years,
    List<FrostDates> thresholds,
    double frostAtC,
    List<Release> releases) {
  /** The chances that a grower asks for. */
  public static final List<Double> CHANCES = List.of(0.10, 0.20, 0.33, 0.50, 0.67, 0.80, 0.90);

  /**
   * 32, 28 and 24 F as records in tenths of a degree C hold them: a light freeze, and what hardened
   * and hardy plants are counted by. Common practice.
   */
  public static final List<Double> THRESHOLDS_C = List.of(0.0, -2.2, -4.4);

  /** Fewer years than this tell little of a chance of 10 %. Common practice. */
  public static final int FEW_YEARS = 20;

  /**
   * A crop's day.
   *
   * @param date the model's release date, offset included, with the limits of so many years
   */
  public record Release(String crop, double frostRisk, int offsetDays, DayEstimate date) {}

  /**
   * Counts and fits.
   *
   * @param years at least one, each cut to the season
   * @param thresholdsC degrees C, in any order
   * @param frostAtC the threshold that release dates go by, degrees C
   */
  public static FrostTable of(
      Season season,
      List<WeatherYear> years,
      List<Double> thresholdsC,
      double frostAtC,
      Map<String, Crop> crops) {
    FrostRecord released = new FrostRecord(season, frostAtC, years);
    return new FrostTable(
        season,
        years.stream().map(WeatherYear::year).toList(),
        thresholdsC.stream()
            .distinct()
            .sorted((a, b) -> Double.compare(b, a))
            .map(atC -> FrostDates.of(new FrostRecord(season, atC, years), CHANCES))
            .toList(),
        frostAtC,
        crops.entrySet().stream()
            .map(e -> release(e.getKey(), e.getValue().hardening(), released))
            .toList());
  }

  private static Release release(String crop, Crop.Hardening hardening, FrostRecord record) {
    return new Release(
        crop,
        hardening.frostRisk(),
        hardening.offsetDays(),
        FrostDates.counted(record, hardening.frostRisk()).plus(hardening.offsetDays()));
  }
}
