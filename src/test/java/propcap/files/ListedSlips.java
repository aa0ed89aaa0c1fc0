package propcap.files;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** What can't be meant, or hardly, put into a scenario, its plan or its weather; drawn anew. */
final class ListedSlips {
  private static final List<String> COLUMNS =
      List.of(
          "id",
          "crop",
          "lot",
          "sow",
          "trays",
          "plants-needed",
          "bed-from",
          "bed-by",
          "bed-until",
          "resow-until");

  private final GrowersFolder folder;
  private final SplittableRandom random;

  ListedSlips(GrowersFolder folder, SplittableRandom random) {
    this.folder = folder;
    this.random = random;
  }

  /** Writes something wrong, and says what. */
  @FunctionalInterface
  interface Slip {
    String make();
  }

  /**
   * A kind of thing that can't be meant, or hardly.
   *
   * @param told what a fault or a warning then says, a pattern: any other is about something else
   */
  record Kind(String name, String told, Slip slip) {}

  List<Kind> all() {
    List<Kind> kinds = new ArrayList<>(weather());
    kinds.addAll(places());
    kinds.addAll(dates());
    return kinds;
  }

  private List<Kind> weather() {
    return List.of(
        new Kind(
            "a record in degrees F under columns of C", "which no air ever had", this::fahrenheit),
        new Kind(
            "a record in degrees C under columns of F",
            "no day of the year is warmer than",
            this::celsius),
        new Kind(
            "a year of it in degrees F",
            "which no air ever had|warmer on average than the middle",
            this::yearInFahrenheit),
        new Kind("a night above 35 C", "a night above 35 C", () -> night(35.5 + random.nextInt(9))),
        new Kind(
            "30 degrees colder from one day to the next",
            "a change of 30 degrees C or more from one day",
            () -> night(-35 - random.nextInt(9))),
        new Kind(
            "a summer 47 to 78 degrees warmer than its winter",
            "the warmest month is \\d+ degrees C warmer",
            this::wideYear),
        new Kind("a record of the same days", "all days have the same", this::sameDays),
        new Kind(
            "a record whose days are as cold as their nights",
            "tmin and tmax are the same",
            this::flatDays));
  }

  private List<Kind> places() {
    return List.of(
        new Kind("a place at 41 to 300 C", "constant of .* is", () -> climate("constant", 41, 300)),
        new Kind(
            "a house heated to -60 to -1 C",
            "heat-to of .* (colder than ice|where no plant)",
            () -> climate("heat-to", -60, -1)),
        new Kind(
            "a house vented at 49 to 300 C",
            "vent-at of .* is",
            () -> climate("vent-at", 49, 300)));
  }

  private List<Kind> dates() {
    return List.of(
        new Kind(
            "dates of last year's plan",
            "sow of .* outside the season",
            () -> moved(-1, "sow", "bed-from", "bed-by", "bed-until", "resow-until")),
        new Kind(
            "bed dates of last year's plan",
            "bed-by of .* before the season",
            () -> moved(-1, "bed-from", "bed-by", "bed-until")),
        new Kind(
            "bed dates of next year's plan",
            "bed-from of .* after the season",
            () -> moved(1, "bed-from", "bed-by", "bed-until")),
        new Kind(
            "bed-from after bed-by",
            "bed-(from|by) .*(before|after)",
            () -> dated("bed-from", "bed-by", 1)),
        new Kind(
            "bed-until before sow", "bed-until .* before", () -> dated("bed-until", "sow", -1)),
        new Kind(
            "resow-until before sow",
            "resow-until .* before",
            () -> dated("resow-until", "sow", -1)),
        new Kind("sow-from after sow", "sow-from .* after", this::lateLeeway),
        new Kind("a bed before its crop can be ready", "days after sow", this::tooSoon),
        new Kind(
            "more plants needed than cells are sown", "more than the \\d+ cells", this::tooMany));
  }

  private void rewrite(String header, UnaryOperator<String[]> row) {
    folder.write(
        "weather.csv",
        folder
            .text("weather.csv")
            .lines()
            .skip(1)
            .map(r -> String.join(",", row.apply(r.split(",", -1))))
            .collect(Collectors.joining("\n", header + "\n", "\n")));
  }

  private void rewrite(UnaryOperator<String[]> row) {
    rewrite("date,tmin,tmax", row);
  }

  /** A row whose two temperatures, after its first column, are turned to another unit. */
  static String[] turned(String[] row, double times, double plus) {
    String[] turned = row.clone();
    for (int i = 1; i < 3; i++) {
      turned[i] = String.format(Locale.ROOT, "%.1f", times * Double.parseDouble(row[i]) + plus);
    }
    return turned;
  }

  /** A place that is 2 degrees C warmer or colder, or between. */
  private double warmer() {
    return 4 * random.nextDouble() - 2;
  }

  private String fahrenheit() {
    double warmer = warmer();
    rewrite(row -> turned(turned(row, 1, warmer), 1.8, 32));
    return warmer + " C warmer";
  }

  private String celsius() {
    double warmer = warmer();
    rewrite("date,tmin-f,tmax-f", row -> turned(row, 1, warmer));
    return warmer + " C warmer";
  }

  private String yearInFahrenheit() {
    String year = String.valueOf(2001 + random.nextInt(6));
    rewrite(row -> row[0].startsWith(year) ? turned(row, 1.8, 32) : row);
    return year;
  }

  private String night(double minC) {
    String day = LocalDate.of(2001, 1, 20).plusDays(random.nextInt(2000)).toString();
    rewrite(row -> row[0].equals(day) ? new String[] {day, "" + minC, "" + (minC + 9)} : row);
    return day + " " + minC;
  }

  /** The record's months are 24 degrees apart. */
  private String wideYear() {
    double times = 2 + 1.3 * random.nextDouble();
    rewrite(
        row -> {
          String[] wide = turned(row, times, 2 - 8 * times);
          double min = Double.parseDouble(wide[1]);
          return new String[] {row[0], "" + min, "" + (min + 9)};
        });
    return times + " times as wide";
  }

  private String sameDays() {
    int minC = random.nextInt(-5, 20);
    rewrite(row -> new String[] {row[0], "" + minC, "" + (minC + 6)});
    return minC + " C";
  }

  private String flatDays() {
    double warmer = 4 + warmer();
    rewrite(
        row -> {
          String mean = turned(row, 1, warmer)[1];
          return new String[] {row[0], mean, mean};
        });
    return warmer + " C warmer";
  }

  private String climate(String key, int from, int to) {
    String found = key.equals("constant") ? "constant: 2[12] C" : key + ": \\d+ C";
    String written = key + ": " + random.nextInt(from, to + 1) + " C";
    folder.write("scenario.yaml", folder.text("scenario.yaml").replaceFirst(found, written));
    return written;
  }

  /** Changes one row of the plan, drawn anew. */
  private String plan(UnaryOperator<String[]> change) {
    List<String> rows = new ArrayList<>(folder.text("sowings.csv").lines().toList());
    int at = 1 + random.nextInt(rows.size() - 1);
    rows.set(at, String.join(",", change.apply(rows.get(at).split(",", -1))));
    folder.write("sowings.csv", String.join("\n", rows) + "\n");
    return rows.get(at);
  }

  private static LocalDate date(String[] row, String column) {
    return LocalDate.parse(row[COLUMNS.indexOf(column)]);
  }

  private static void put(String[] row, String column, Object value) {
    row[COLUMNS.indexOf(column)] = value.toString();
  }

  private String moved(int years, String... columns) {
    return plan(
        row -> {
          for (String column : columns) {
            put(row, column, date(row, column).plusYears(years));
          }
          return row;
        });
  }

  /** One date is put on the wrong side of another, by 1 to 40 days. */
  private String dated(String column, String other, int direction) {
    return plan(
        row -> {
          put(row, column, date(row, other).plusDays(direction * (1L + random.nextInt(40))));
          return row;
        });
  }

  private String lateLeeway() {
    String row =
        plan(
            cells -> {
              String[] more = Arrays.copyOf(cells, cells.length + 1);
              more[cells.length] = date(cells, "sow").plusDays(1 + random.nextInt(40)).toString();
              return more;
            });
    folder.write(
        "sowings.csv",
        folder
            .text("sowings.csv")
            .lines()
            .map(r -> r.startsWith("id,") ? r + ",sow-from" : r.equals(row) ? r : r + ",")
            .collect(Collectors.joining("\n", "", "\n")));
    return row;
  }

  private String tooSoon() {
    return plan(
        row -> {
          LocalDate sow = date(row, "sow");
          put(row, "bed-from", sow.plusDays(1));
          put(row, "bed-by", sow.plusDays(2 + random.nextInt(12)));
          return row;
        });
  }

  private String tooMany() {
    return plan(
        row -> {
          put(row, "plants-needed", 40_000 + random.nextInt(900_000));
          return row;
        });
  }
}
