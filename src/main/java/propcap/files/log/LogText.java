package propcap.files.log;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.disk.TableCell;
import propcap.farm.LoggedEvent;
import propcap.past.WrittenTray;

/**
 * A log as a grower writes it: one row for all trays of a sowing to which the same was done on one
 * day, as far as their numbers follow each other and as many plants were counted in each.
 */
public final class LogText {
  /** What the trays of one row have in common. */
  private record Row(
      int sowing,
      String id,
      LoggedEvent event,
      LocalDate date,
      @Nullable Integer plants,
      @Nullable String place) {}

  /** A row and its trays. */
  private record Written(Row row, int first, String trays) {
    String text() {
      return Stream.of(
              row.id,
              trays,
              row.event.word(),
              row.date.toString(),
              Objects.toString(row.plants, ""),
              Objects.toString(row.place, ""),
              "")
          .map(LogText::cell)
          .collect(Collectors.joining(","));
    }
  }

  private LogText() {}

  /**
   * The text of a log.
   *
   * @param trays in the plan's order, each with a number for a name
   * @param notes lines at its head that are no rows
   */
  public static String of(List<WrittenTray> trays, List<String> notes) {
    List<String> ids = trays.stream().map(WrittenTray::sowing).distinct().toList();
    Map<Row, List<Integer>> numbers = new LinkedHashMap<>();
    for (WrittenTray tray : trays) {
      for (WrittenTray.Entry e : tray.entries()) {
        Row row =
            new Row(
                ids.indexOf(tray.sowing()),
                tray.sowing(),
                e.event(),
                e.date(),
                e.plants(),
                e.place());
        numbers.computeIfAbsent(row, r -> new ArrayList<>()).add(Integer.parseInt(tray.name()));
      }
    }
    StringBuilder text = new StringBuilder(String.join(",", LogRow.WRITTEN)).append('\n');
    notes.forEach(note -> text.append("# ").append(note).append('\n'));
    numbers.entrySet().stream()
        .flatMap(e -> rows(e.getKey(), e.getValue()))
        .sorted(
            Comparator.comparing((Written w) -> w.row.date)
                .thenComparingInt(w -> w.row.sowing)
                .thenComparing(w -> w.row.event)
                .thenComparingInt(Written::first))
        .forEach(w -> text.append(w.text()).append('\n'));
    return text.toString();
  }

  /** A row for each run of numbers: 5 to 16, since a spreadsheet takes 5-16 for a day in May. */
  private static Stream<Written> rows(Row row, List<Integer> numbers) {
    List<Integer> sorted = numbers.stream().sorted().toList();
    List<Written> rows = new ArrayList<>();
    int first = sorted.get(0);
    for (int i = 0; i < sorted.size(); i++) {
      int number = sorted.get(i);
      if (i + 1 == sorted.size() || sorted.get(i + 1) != number + 1) {
        rows.add(new Written(row, first, first == number ? "" + first : first + " to " + number));
        first = i + 1 < sorted.size() ? sorted.get(i + 1) : first;
      }
    }
    return rows.stream();
  }

  private static String cell(String text) {
    String harmless = TableCell.harmless(text);
    return harmless.matches(".*[,\"\n#].*") ? '"' + harmless.replace("\"", "\"\"") + '"' : harmless;
  }
}
