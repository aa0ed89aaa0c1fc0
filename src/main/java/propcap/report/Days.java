package propcap.report;

import java.time.LocalDate;
import propcap.farm.Season;
import propcap.report.kit.Dates;

/** Days as every answer writes them. */
public final class Days {
  private Days() {}

  /** A day of a season, such as {@code 10 April}. */
  public static String day(LocalDate date, Season season) {
    return Dates.day(date, season);
  }
}
