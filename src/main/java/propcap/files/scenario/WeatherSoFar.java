package propcap.files.scenario;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import propcap.farm.Season;
import propcap.farm.StationRecord;
import propcap.farm.WeatherRecord;
import propcap.files.text.Faults;
import propcap.files.text.FilePosition;
import propcap.files.text.SourceText;
import propcap.files.weather.StationFile;
import propcap.files.weather.StationUnit;

/**
 * This season's days as they were recorded, in any form in which a station's file may be.
 *
 * @param mayLackLast whether the day before today may not have been recorded yet
 */
record WeatherSoFar(Season season, LocalDate today, boolean mayLackLast, Faults faults) {
  private static final int MOST_NAMED = 5;

  /**
   * The days from the season's start up to the one before today; others in the file are left aside.
   *
   * @param named where the file is named
   * @return none where there is a fault
   */
  List<WeatherRecord.Day> read(Path file, FilePosition named) {
    if (!SourceText.isThere(file, named, faults)) {
      return List.of();
    }
    Faults its = new Faults();
    StationFile station = StationFile.read(List.of(file), StationUnit.OF_THE_FILES, its);
    faults.addAll(its);
    station.leftOut().forEach(faults::warn);
    if (its.any()) {
      return List.of();
    }
    List<WeatherRecord.Day> days = new ArrayList<>();
    List<LocalDate> gaps = new ArrayList<>();
    StationRecord record = station.record();
    for (LocalDate date = season.start(); date.isBefore(today); date = date.plusDays(1)) {
      Double min = record.minC().get(date);
      Double max = record.maxC().get(date);
      if (min == null || max == null) {
        gaps.add(date);
      } else {
        days.add(new WeatherRecord.Day(date, min, max));
      }
    }
    if (mayLackLast && gaps.equals(List.of(today.minusDays(1)))) {
      faults.warn(
          FilePosition.whole(file),
          "no temperatures of " + spans(gaps) + " yet",
          "each simulated year’s own stand in for that day");
    } else if (!gaps.isEmpty()) {
      faults.add(
          FilePosition.whole(file),
          "no temperatures of " + spans(gaps),
          "both of each day from %s to %s%s"
              .formatted(season.start(), today.minusDays(1), whereItEnds(days, gaps, today)));
      return List.of();
    }
    return days;
  }

  /** What to do about a file that has all days up to one and none after it. */
  private static String whereItEnds(
      List<WeatherRecord.Day> days, List<LocalDate> gaps, LocalDate today) {
    LocalDate first = gaps.get(0);
    boolean isEnd = !days.isEmpty() && days.get(days.size() - 1).date().isBefore(first);
    return isEnd
        ? ", or --on "
            + first
            + ", the day after its last; a spring to practise on is written up to "
            + today
            + " by propcap pretend with --on "
            + today
            + " --replace"
        : "";
  }

  /** Days that follow each other told together: {@code 2027-02-03 and 2027-03-05 to 2027-03-09}. */
  private static String spans(List<LocalDate> days) {
    List<String> spans = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < days.size(); i++) {
      boolean isLast = i + 1 == days.size() || !days.get(i + 1).equals(days.get(i).plusDays(1));
      if (isLast) {
        spans.add(days.get(from) + (from == i ? "" : " to " + days.get(i)));
        from = i + 1;
      }
    }
    String told = String.join(", ", spans.subList(0, Math.min(MOST_NAMED, spans.size())));
    int more = spans.size() - MOST_NAMED;
    return told
        + (more > 0 ? " and " + more + " more times" : "")
        + (days.size() > 1 ? ", " + days.size() + " days in all" : "");
  }
}
