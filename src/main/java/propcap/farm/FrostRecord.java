package propcap.farm;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The frosts of a weather record, counted: in how many of its years there was one on or after a day
 * of the season. A frost is a day whose minimum is at or below a threshold.
 */
public final class FrostRecord {
  /** Keeps 3 years of 10 within a risk of 30 %. */
  private static final double ALLOWANCE = 1e-9;

  private final Season season;
  private final double frostAtC;

  /** For each year the first day with no frost on it or after it; sorted. */
  private final int[] frostFreeFrom;

  /**
   * Counts the frosts.
   *
   * @param frostAtC a day is a frost when its minimum is at or below this, degrees C
   * @param years cut to the season, at least one
   */
  public FrostRecord(Season season, double frostAtC, List<WeatherYear> years) {
    Checks.require(!years.isEmpty(), "frosts are counted over 1 year or more, was 0");
    this.season = season;
    this.frostAtC = Checks.finite("frost-at", frostAtC);
    this.frostFreeFrom = years.stream().mapToInt(this::frostFreeFrom).sorted().toArray();
  }

  private int frostFreeFrom(WeatherYear year) {
    int day = season.days();
    while (day > 0 && year.minC(day - 1) > frostAtC) {
      day--;
    }
    return day;
  }

  public Season season() {
    return season;
  }

  public double frostAtC() {
    return frostAtC;
  }

  public int years() {
    return frostFreeFrom.length;
  }

  /**
   * The first day of each year from which it had no frost any more, the earliest year first: 0 for
   * a year without frost, the number of days for one with a frost on the season's last day.
   */
  public int[] frostFreeFrom() {
    return frostFreeFrom.clone();
  }

  /** The last frosts of the years that had one, as days of the season, the earliest first. */
  public int[] lastFrosts() {
    return Arrays.stream(frostFreeFrom).filter(from -> from > 0).map(from -> from - 1).toArray();
  }

  /** How many of the years had a frost on or after a day. */
  public int yearsWithFrostFrom(int day) {
    return (int) Arrays.stream(frostFreeFrom).filter(from -> from > day).count();
  }

  /** How many years with a frost are no more than a share of all. */
  public int yearsWithin(double share) {
    return (int) Math.min(years(), Math.floor(share * years() + ALLOWANCE));
  }

  /**
   * The first day such that the share of years with a frost on or after it is no more than the
   * risk; the number of the season's days where frosts go on to its end.
   */
  public int firstDayWithin(double risk) {
    int allowed = yearsWithin(risk);
    return allowed == years() ? 0 : frostFreeFrom[years() - 1 - allowed];
  }

  /**
   * The day on which a crop may go out to harden: the first within its risk, plus its offset.
   *
   * @return empty where the frosts go on to the season's end
   */
  public Optional<LocalDate> releaseDate(Crop crop) {
    int day = firstDayWithin(crop.hardening().frostRisk());
    return day == season.days()
        ? Optional.empty()
        : Optional.of(season.date(day).plusDays(crop.hardening().offsetDays()));
  }
}
