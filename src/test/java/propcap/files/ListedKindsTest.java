package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;

/** What can't be meant, or hardly, is never taken without a word: wherever it stands. */
class ListedKindsTest {
  private static final int SHORT = 2;
  private static final int LONG = 150;

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

  @TempDir Path path;
  private GrowersFolder folder;
  private SplittableRandom random;

  @BeforeEach
  void aWholeSet() {
    folder = new GrowersFolder(path);
    random = new SplittableRandom(1);
    folder.write(
        "weather.csv", GrowersFolder.weather(LocalDate.of(2001, 1, 1), LocalDate.of(2006, 12, 31)));
  }

  /** Writes something wrong, and says what. */
  @FunctionalInterface
  private interface Slip {
    String make();
  }

  private Map<String, Slip> slips() {
    Map<String, Slip> slips = new LinkedHashMap<>();
    slips.put("a record in degrees F under columns of C", this::fahrenheit);
    slips.put("a year of it in degrees F", this::yearInFahrenheit);
    slips.put("a night above 35 C", () -> night(35.5 + random.nextInt(9)));
    slips.put("30 degrees colder from one day to the next", () -> night(-35 - random.nextInt(9)));
    slips.put("a record of the same days", this::sameDays);
    slips.put("a place at 41 to 300 C", this::hotPlace);
    slips.put("bed dates of last year's plan", () -> bedsMoved(-1));
    slips.put("bed dates of next year's plan", () -> bedsMoved(1));
    slips.put("bed-from after bed-by", () -> dated("bed-from", "bed-by", 1));
    slips.put("bed-until before sow", () -> dated("bed-until", "sow", -1));
    slips.put("resow-until before sow", () -> dated("resow-until", "sow", -1));
    slips.put("a bed before its crop can be ready", this::tooSoon);
    slips.put("more plants needed than cells are sown", this::tooMany);
    return slips;
  }

  @Test
  void aFewOfEach() throws Exception {
    attack(SHORT);
  }

  @Tag("attack")
  @Test
  void manyOfEach() throws Exception {
    Map<String, int[]> told = attack(LONG);
    told.forEach(
        (kind, counts) ->
            Tried.row(
                "attack",
                kind + ": never taken without a word",
                LONG + " times, at a place and by an amount drawn anew",
                counts[0] + " times refused, " + counts[1] + " times worth another look"));
  }

  /** How often each was a fault, and how often a warning. */
  private Map<String, int[]> attack(int times) throws Exception {
    List<String> files = List.of("scenario.yaml", "sowings.csv", "weather.csv");
    Map<String, String> sound = files.stream().collect(Collectors.toMap(f -> f, folder::text));
    assertThat(ScenarioReader.readDoubting(folder.path("scenario.yaml"), Drafts.NONE).warnings())
        .isEmpty();
    Map<String, int[]> told = new LinkedHashMap<>();
    for (Map.Entry<String, Slip> slip : slips().entrySet()) {
      int[] counts = told.computeIfAbsent(slip.getKey(), k -> new int[2]);
      for (int n = 0; n < times; n++) {
        String what = slip.getValue().make();
        try {
          assertThat(
                  ScenarioReader.readDoubting(folder.path("scenario.yaml"), Drafts.NONE).warnings())
              .as("%s: %s", slip.getKey(), what)
              .isNotEmpty();
          counts[1]++;
        } catch (FaultsException e) {
          counts[0]++;
        }
        sound.forEach(folder::write);
      }
    }
    return told;
  }

  private void rewrite(UnaryOperator<String[]> row) {
    folder.write(
        "weather.csv",
        folder
            .text("weather.csv")
            .lines()
            .skip(1)
            .map(r -> String.join(",", row.apply(r.split(",", -1))))
            .collect(Collectors.joining("\n", "date,tmin,tmax\n", "\n")));
  }

  private static String[] turned(String[] row, double times, double plus) {
    return new String[] {row[0], turned(row[1], times, plus), turned(row[2], times, plus)};
  }

  private static String turned(String number, double times, double plus) {
    return String.format(Locale.ROOT, "%.1f", times * Double.parseDouble(number) + plus);
  }

  /** A place that is 2 degrees C warmer or colder, or between. */
  private String fahrenheit() {
    double warmer = 4 * random.nextDouble() - 2;
    rewrite(row -> turned(turned(row, 1, warmer), 1.8, 32));
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

  private String sameDays() {
    int minC = random.nextInt(-5, 20);
    rewrite(row -> new String[] {row[0], "" + minC, "" + (minC + 6)});
    return minC + " C";
  }

  private String hotPlace() {
    String place = random.nextBoolean() ? "{constant: 22 C}" : "{constant: 21 C}";
    String climate = "{constant: " + (41 + random.nextInt(260)) + " C}";
    folder.write("scenario.yaml", folder.text("scenario.yaml").replace(place, climate));
    return climate;
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

  private String bedsMoved(int years) {
    return plan(
        row -> {
          for (String column : List.of("bed-from", "bed-by", "bed-until")) {
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
