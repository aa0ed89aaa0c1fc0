package propcap.report.frost;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import propcap.evidence.weather.GapFilling.Filled;
import propcap.evidence.weather.GapFilling.Gap;
import propcap.farm.Normals;
import propcap.farm.Season;
import propcap.farm.WeatherRecord;
import propcap.farm.WeatherRecord.Day;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;

/** What a terminal shows of a station's record that was read, or of one that was made. */
public final class StationLines {
  /** So many of a kind are shown one by one, unless all are wanted. */
  private static final int MOST_SHOWN = 10;

  private StationLines() {}

  /**
   * Of a record that was read.
   *
   * @param station empty where the files have no name for it
   * @param flagged values that the service doubts, by its flag
   * @param leftOut what cannot be, a line each
   * @param all whether each gap is shown, however many there are
   */
  public static List<String> of(
      String station,
      Filled filled,
      Map<String, Integer> flagged,
      List<String> leftOut,
      boolean all) {
    List<String> lines = new ArrayList<>();
    lines.add((station.isEmpty() ? "" : "Station " + station + ": ") + span(filled.days()));
    int doubted = flagged.values().stream().mapToInt(Integer::intValue).sum();
    if (doubted > 0) {
      List<String> kinds =
          flagged.entrySet().stream().map(e -> e.getKey() + " " + e.getValue()).toList();
      lines.add(
          "%s left out that the service itself flags (%s)"
              .formatted(Words.plural(doubted, "value"), String.join(", ", kinds)));
    }
    section(lines, "value", "left out that cannot be", leftOut, all);
    section(lines, "gap", "filled by straight lines", gaps(filled.filled()), all);
    section(lines, "gap", "left", gaps(filled.left()), all);
    return lines;
  }

  /** Of a record that was made. */
  public static List<String> made(List<Day> days, Normals normals, long seed) {
    List<String> lines = new ArrayList<>();
    lines.add("Made, not measured: " + span(days) + ", from twelve monthly means, seed " + seed);
    if (normals.hasDefaults()) {
      lines.add(
          "Where sd or persistence is not given: "
              + Words.amount(Normals.DEFAULT_WINTER_SPREAD_C)
              + " °C in the coldest month to "
              + Words.amount(Normals.DEFAULT_SUMMER_SPREAD_C)
              + " °C in the warmest, and "
              + Normals.DEFAULT_PERSISTENCE
              + ", planning defaults, not measured");
    }
    return lines;
  }

  private static String span(List<Day> days) {
    if (days.isEmpty()) {
      return "no day with both temperatures";
    }
    LocalDate first = days.get(0).date();
    LocalDate last = days.get(days.size() - 1).date();
    return "%s %s, %s to %s; whole years: %s, whole from January to July: %s"
        .formatted(
            Words.count(days.size()),
            days.size() == 1 ? "day" : "days",
            Dates.dayAndYear(first),
            Dates.dayAndYear(last),
            covered(days, LocalDate.of(2027, 12, 31)),
            covered(days, LocalDate.of(2027, 7, 31)));
  }

  /** In any year without a 29 February; which one has no part in it. */
  private static int covered(List<Day> days, LocalDate end) {
    return new WeatherRecord(days).yearsCovering(new Season(LocalDate.of(2027, 1, 1), end)).size();
  }

  private static List<String> gaps(List<Gap> gaps) {
    return gaps.stream()
        .map(
            g ->
                g.from()
                    + (g.days() == 1 ? "" : " to " + g.to() + ", " + g.days() + " days")
                    + ": "
                    + g.missing().words())
        .toList();
  }

  private static void section(
      List<String> lines, String noun, String what, List<String> each, boolean all) {
    if (each.isEmpty()) {
      return;
    }
    lines.add(Words.plural(each.size(), noun) + " " + what + ":");
    int shown = all ? each.size() : Math.min(each.size(), MOST_SHOWN);
    each.subList(0, shown).forEach(line -> lines.add("  " + line));
    if (shown < each.size()) {
      lines.add("  … and " + (each.size() - shown) + " more; --all shows them");
    }
  }
}
