package propcap.report;

import java.time.LocalDate;
import java.util.List;
import propcap.farm.Season;
import propcap.farm.UnlikelyTray;
import propcap.report.kit.Dates;
import propcap.report.kit.LogDoubts;
import propcap.report.kit.Words;

/** Days and numbers as every answer writes them. */
public final class PageWords {
  private PageWords() {}

  /** A day of a season, such as {@code 10 April}. */
  public static String day(LocalDate date, Season season) {
    return Dates.day(date, season);
  }

  /** Which rows of a log may be missing or wrong, a sentence each; the first few of many. */
  public static List<String> doubts(List<UnlikelyTray> unlikely) {
    return LogDoubts.told(unlikely);
  }

  /** A number of things, such as {@code 1 tray} or {@code 2 trays}. */
  public static String plural(int number, String noun) {
    return Words.plural(number, noun);
  }
}
