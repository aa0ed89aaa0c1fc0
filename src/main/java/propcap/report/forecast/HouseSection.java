package propcap.report.forecast;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import propcap.farm.PlaceKind;
import propcap.farm.Season;
import propcap.report.forecast.HouseWeeks.PlaceWeeks;
import propcap.report.forecast.HouseWeeks.Week;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;

/**
 * The house at a glance: the places one under the other over one axis of weeks, each with its room
 * as a line, and above it what would not fit. Heights are in pixels and what lies along the axis in
 * per cent of the width, so that the picture fits a telephone with its type as large as elsewhere.
 *
 * @param height of the whole picture, pixels
 * @param foot where the places end, pixels
 */
public record HouseSection(
    HouseWeeks weeks, String words, List<Mark> months, List<Row> rows, int height, int foot) {
  /** Per cent of the width that the season takes; the rest is for the labels of the lines. */
  private static final double ACROSS = 90;

  private static final int HEAD = 20;
  private static final int NAME = 24;
  private static final int ROOM = 30;
  private static final int TALLEST = 64;
  private static final int GAP = 14;
  private static final int KEY = 2;
  private static final int LONGEST_NAME = 24;

  /** The first of a month: where it stands, per cent of the width. */
  public record Mark(String x, String name) {}

  /**
   * A place. Its own measures are pixels from the top.
   *
   * @param link name of its own chart
   * @param words what is to be seen, for those who do not see it
   * @param line the height at which it is full
   */
  public record Row(
      String name,
      String link,
      String words,
      String full,
      String spaces,
      String colour,
      int text,
      int line,
      int foot,
      List<Bar> used,
      List<Bar> tooMany,
      List<Bar> fullWeeks) {}

  /** A week's part of the picture: per cent of the width, and pixels. */
  public record Bar(String x, String width, String y, String height) {}

  static HouseSection of(Forecast forecast) {
    Season season = forecast.scenario().season();
    HouseWeeks weeks = HouseWeeks.of(forecast);
    List<Row> rows = new ArrayList<>();
    int top = HEAD;
    for (PlaceWeeks place : weeks.places()) {
      Row row = row(season, place, rows.size() + 1, top);
      rows.add(row);
      top = row.foot() + GAP;
    }
    return new HouseSection(
        weeks,
        "How full each place is, week by week. "
            + String.join(" ", rows.stream().map(Row::words).toList()),
        months(season),
        rows,
        top + KEY,
        top - GAP);
  }

  /** The name of a place's own chart, by its number from 1. */
  static String link(int number) {
    return "place-" + number;
  }

  private static Row row(Season season, PlaceWeeks place, int number, int top) {
    double most =
        Math.max(
            place.spaces(),
            place.weeks().stream()
                .mapToDouble(w -> Math.max(w.used(), w.wanted()))
                .max()
                .orElse(0));
    double scale = Math.min(ROOM / (double) place.spaces(), TALLEST / most);
    int foot = top + NAME + (int) Math.ceil(scale * most);
    double line = foot - scale * place.spaces();
    List<Bar> used = new ArrayList<>();
    List<Bar> tooMany = new ArrayList<>();
    List<Bar> full = new ArrayList<>();
    for (Week week : place.weeks()) {
      if (week.used() > 0) {
        used.add(bar(season, week, foot - scale * week.used(), foot));
      }
      if (week.wanted() > place.spaces()) {
        tooMany.add(bar(season, week, foot - scale * week.wanted(), line));
      }
      if (place.isFull(week)) {
        full.add(bar(season, week, line - 1.5, line + 1.5));
      }
    }
    return new Row(
        Words.shortened(place.name(), LONGEST_NAME),
        link(number),
        words(place),
        fullDays(place),
        Words.count(place.spaces()),
        colour(place.kind()),
        top + NAME - 12,
        (int) Math.round(line),
        foot,
        used,
        tooMany,
        full);
  }

  /** The colour of the stage that its trays are in, as in the picture of the moves. */
  private static String colour(PlaceKind kind) {
    Stage stage =
        switch (kind) {
          case HEAT_BENCH, CHAMBER -> Stage.HEAT;
          case TABLE -> Stage.TABLE;
          case HARDENING -> Stage.HARDENING;
        };
    return stage.hex();
  }

  private static String fullDays(PlaceWeeks place) {
    double days = place.fullDays().mean();
    return days == 0
        ? "never full"
        : days < 1 ? "full on less than a day" : Words.plural(Math.rint(days), "day") + " full";
  }

  private static String words(PlaceWeeks place) {
    String words =
        place.name() + ", room for " + Words.count(place.spaces()) + ": " + fullDays(place);
    return place.mostWanted() > place.spaces()
        ? words + "; with endless room " + Words.count(place.mostWanted()) + " would stand there."
        : words + ".";
  }

  private static Bar bar(Season season, Week week, double top, double foot) {
    return new Bar(
        across(season, week.first()),
        across(season, week.days()),
        pixels(top),
        pixels(Math.max(0, foot - top)));
  }

  private static List<Mark> months(Season season) {
    return IntStream.range(0, season.days())
        .filter(d -> season.date(d).getDayOfMonth() == 1)
        .mapToObj(d -> new Mark(across(season, d), month(season.date(d))))
        .toList();
  }

  private static String month(LocalDate first) {
    return first.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
  }

  private static String across(Season season, int days) {
    return String.format(Locale.ROOT, "%.3f%%", ACROSS * days / season.days());
  }

  private static String pixels(double length) {
    return String.format(Locale.ROOT, "%.1f", Words.finite(length));
  }
}
