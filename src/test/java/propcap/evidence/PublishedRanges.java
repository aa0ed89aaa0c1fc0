package propcap.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import propcap.evidence.stages.StageDays;
import propcap.farm.Crop;

/**
 * What the sources of the crop list print, held against the list: each range that the entry does
 * not lie in is a difference. Days are those of the model's emergence curve at the source's
 * temperature.
 */
final class PublishedRanges {
  /** Whole days are what sources print. */
  private static final double HALF_A_DAY = 0.5;

  private static final double HALF_A_DAY_IN_WEEKS = HALF_A_DAY / 7;

  /** Lowest, best and highest temperatures are printed in steps of 5 F, and differ by as much. */
  private static final double DEGREE_C = 1;

  /** Emergence where this share or more of the seedlings were normal is no accident. */
  private static final double HALF_PERCENT = 50;

  private final UnaryOperator<Crop> change;
  private final List<PublishedDifference> differences = new ArrayList<>();
  private int held;

  private PublishedRanges(UnaryOperator<Crop> change) {
    this.change = change;
  }

  /** The list as it is. */
  static PublishedRanges ofTheList() {
    return of(UnaryOperator.identity());
  }

  /** The list with every crop changed. */
  static PublishedRanges of(UnaryOperator<Crop> change) {
    PublishedRanges ranges = new PublishedRanges(change);
    PublishedRow.of("published-times.csv").forEach(ranges::times);
    PublishedRow.of("hardiness.csv").forEach(ranges::hardiness);
    PublishedRow.of("soil-temperatures.csv").forEach(ranges::soilTemperatures);
    PublishedRow.of("cardinal-temperatures.csv").forEach(ranges::cardinalTemperatures);
    PublishedRow.of("normal-seedlings.csv").forEach(ranges::normalSeedlings);
    return ranges;
  }

  List<PublishedDifference> differences() {
    return List.copyOf(differences);
  }

  /** How many ranges were held against the list. */
  int held() {
    return held;
  }

  private void times(PublishedRow row) {
    Crop crop = change.apply(row.crop());
    if (row.has("days from")) {
      double atC = crop.emergence().atC();
      double one = row.has("F from") ? celsius(row.number("F from")) : atC;
      double other = row.has("F from") ? celsius(row.number("F to")) : atC;
      // The curve rises to its optimum and falls: its extremes lie at the ends, or there.
      double optimum = Math.max(one, Math.min(other, crop.emergence().optimumC()));
      double[] days = {shows(crop, one), shows(crop, other), shows(crop, optimum)};
      double least = Math.min(days[0], Math.min(days[1], days[2]));
      double most = Math.max(days[0], Math.max(days[1], days[2]));
      hold(
          row,
          "days",
          range(row, "days", "") + (row.has("F from") ? " at " + range(row, "F", " F") : ""),
          least == most ? shown(least) : shown(least) + "-" + shown(most),
          most >= row.number("days from") - HALF_A_DAY
              && least <= row.number("days to") + HALF_A_DAY);
    }
    if (row.has("weeks from")) {
      StageDays days = StageDays.asGiven(crop);
      boolean fromShowing = row.text("weeks of").equals("showing");
      double weeks = days.weeksToBed() - (fromShowing ? days.halfShow() / 7 : 0);
      hold(
          row,
          "weeks",
          range(row, "weeks", fromShowing ? " from showing" : ""),
          shown(weeks),
          weeks >= row.number("weeks from") - HALF_A_DAY_IN_WEEKS
              && weeks <= row.number("weeks to") + HALF_A_DAY_IN_WEEKS);
    }
  }

  private static double shows(Crop crop, double tempC) {
    return StageDays.at(crop, tempC).halfShow();
  }

  private void hardiness(PublishedRow row) {
    HardinessClass listed = HardinessClass.of(change.apply(row.crop()));
    String word = row.text("class");
    hold(row, "hardiness", word, listed.words(), HardinessClass.meantBy(word).contains(listed));
  }

  /** It must come up at the lowest, be fastest within the best, and come up below the highest. */
  private void soilTemperatures(PublishedRow row) {
    Crop.Emergence emergence = change.apply(row.crop()).emergence();
    double lowest = celsius(row.number("lowest"));
    hold(
        row,
        "lowest",
        row.text("lowest") + " F",
        shown(emergence.baseC()) + " C",
        emergence.baseC() <= lowest + DEGREE_C);
    if (row.has("best from")) {
      hold(
          row,
          "best",
          range(row, "best", " F"),
          shown(emergence.optimumC()) + " C",
          emergence.optimumC() >= celsius(row.number("best from")) - DEGREE_C
              && emergence.optimumC() <= celsius(row.number("best to")) + DEGREE_C);
      hold(
          row,
          "highest",
          row.text("highest") + " F",
          shown(emergence.ceilingC()) + " C",
          emergence.ceilingC() >= celsius(row.number("highest")) - DEGREE_C);
    }
  }

  private void cardinalTemperatures(PublishedRow row) {
    Crop.Emergence emergence = change.apply(row.crop()).emergence();
    cardinal(row, "base", emergence.baseC());
    cardinal(row, "optimum", emergence.optimumC());
    cardinal(row, "ceiling", emergence.ceilingC());
  }

  private void cardinal(PublishedRow row, String what, double listed) {
    if (row.has(what + " to")) {
      hold(
          row,
          what,
          range(row, what, " C"),
          shown(listed) + " C",
          listed <= row.number(what + " to") + DEGREE_C
              && (!row.has(what + " from") || listed >= row.number(what + " from") - DEGREE_C));
    }
  }

  /** Where half of the seedlings or more were normal, the model lets them come up. */
  private void normalSeedlings(PublishedRow row) {
    row.cells()
        .forEach(
            (column, cell) -> {
              boolean many =
                  !column.equals("crop")
                      && !cell.isEmpty()
                      && Double.parseDouble(cell) >= HALF_PERCENT;
              if (many) {
                Crop crop = change.apply(row.crop());
                boolean comesUp = StageDays.at(crop, Double.parseDouble(column)).comesUp();
                String published = cell + " % normal at " + column + " C";
                hold(row.name(), "HM54", "share", published, "none", comesUp);
              }
            });
  }

  private void hold(
      PublishedRow row, String what, String published, String listed, boolean within) {
    hold(row.name(), row.text("source"), what, published, listed, within);
  }

  private void hold(
      String crop, String source, String what, String published, String listed, boolean within) {
    held++;
    if (!within) {
      differences.add(new PublishedDifference(crop, source, what, published, listed));
    }
  }

  /** "7-10 F", "14", "at most 5 C". */
  private static String range(PublishedRow row, String what, String unit) {
    String from = row.text(what + " from");
    String to = row.text(what + " to");
    String both = from.equals(to) ? from : from + "-" + to;
    return (from.isEmpty() ? "at most " + to : both) + unit;
  }

  private static String shown(double number) {
    return Double.isFinite(number)
        ? String.format(Locale.ENGLISH, "%.1f", number).replaceFirst("\\.0$", "")
        : "never";
  }

  static double celsius(double fahrenheit) {
    return (fahrenheit - 32) * 5 / 9;
  }
}
