package propcap.web.typed;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;

/**
 * A table copied in a spreadsheet, as rows of the sowing plan.
 *
 * @param isHeaded whether its first row says what the columns are
 * @param heads what stands above each column
 * @param columns the column of the plan that each is, empty for one that is left out
 * @param rows by column of the plan, as the files write it; what cannot be read as it was
 * @param leftOut what of it is left out, in words
 * @param unclear a date of which the table does not tell which number is the month
 */
public record PastedPlan(
    boolean isHeaded,
    List<String> heads,
    List<String> columns,
    List<Map<String, String>> rows,
    List<String> leftOut,
    Optional<String> unclear) {

  /** Columns of days. */
  static final Set<String> DATES =
      Set.of("sow", "bed-from", "bed-by", "bed-until", "resow-until", "sow-from", "sow-to");

  /** So many lines may stand above the heading, as a title. */
  private static final int MOST_ABOVE = 5;

  /** What spreadsheets show of a formula that has no value, and a formula itself. */
  private static final Pattern NO_VALUE =
      Pattern.compile("#(?:REF!|N/A|NAME\\?|VALUE!|DIV/0!|NUM!|NULL!)|=.*");

  /**
   * How a table is to be read.
   *
   * @param first the column in which it was pasted, where it has no heading
   * @param has the columns of the plan
   * @param chosen the columns that the grower has said; empty where none
   * @param order of day and month, where the grower has said it
   * @param season null where it cannot be read
   */
  public record Manner(
      String first,
      Set<String> has,
      List<String> chosen,
      Optional<PastedDates.Order> order,
      @Nullable Season season) {}

  public static PastedPlan of(String text, Manner manner) {
    List<List<String>> table = PastedCells.of(text);
    int heading = heading(table);
    List<String> leftOut = new ArrayList<>();
    if (heading > 0) {
      leftOut.add("what stands above the headings, “" + String.join(" ", table.get(0)) + "”");
    }
    List<List<String>> rows = table.subList(heading + 1, table.size());
    List<String> heads = heads(heading < 0 ? List.of() : table.get(heading), rows);
    List<String> columns = columns(heading >= 0, heads, manner);
    for (int i = 0; i < heads.size(); i++) {
      if (columns.get(i).isEmpty() && (!cells(rows, i).isEmpty() || !isNumbered(heads.get(i)))) {
        leftOut.add(isNumbered(heads.get(i)) ? heads.get(i) : "column “" + heads.get(i) + "”");
      }
    }
    return read(heading >= 0, heads, columns, rows, leftOut, manner);
  }

  /** The row of the headings: two words of them, below a title if there is one, or one at once. */
  private static int heading(List<List<String>> table) {
    for (int i = 0; i < Math.min(MOST_ABOVE, table.size()); i++) {
      if (PastedHeading.isOne(table.get(i), i == 0 && table.get(0).size() == 1 ? 1 : 2)) {
        return i;
      }
    }
    return !table.isEmpty() && PastedHeading.isOne(table.get(0), 1) ? 0 : -1;
  }

  private static List<String> heads(List<String> heading, List<List<String>> rows) {
    int wide = rows.stream().mapToInt(List::size).max().orElse(0);
    List<String> heads = new ArrayList<>(heading);
    for (int i = 0; i < Math.max(wide, heading.size()); i++) {
      String numbered = "column " + (i + 1);
      if (i >= heads.size()) {
        heads.add(numbered);
      } else if (heads.get(i).isEmpty()) {
        heads.set(i, numbered);
      }
    }
    return heads;
  }

  private static boolean isNumbered(String head) {
    return head.matches("column \\d+");
  }

  private static List<String> columns(boolean isHeaded, List<String> heads, Manner manner) {
    if (manner.chosen().size() == heads.size()) {
      return manner.chosen();
    }
    if (isHeaded) {
      return PastedHeading.columns(heads, manner.has());
    }
    int first = Math.max(0, PastedHeading.COLUMNS.indexOf(manner.first()));
    List<String> columns = new ArrayList<>();
    for (int i = 0; i < heads.size(); i++) {
      int at = first + i;
      columns.add(at < PastedHeading.COLUMNS.size() ? PastedHeading.COLUMNS.get(at) : "");
    }
    return columns;
  }

  /** What stands in a column, without the empty cells. */
  private static List<String> cells(Collection<List<String>> rows, int column) {
    return rows.stream()
        .filter(row -> row.size() > column && !row.get(column).isEmpty())
        .map(row -> row.get(column))
        .toList();
  }

  private static PastedPlan read(
      boolean isHeaded,
      List<String> heads,
      List<String> columns,
      List<List<String>> rows,
      List<String> leftOut,
      Manner manner) {
    List<String> dates = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      if (DATES.contains(columns.get(i))) {
        dates.addAll(cells(rows, i));
      }
    }
    // What a spreadsheet shows in one column it mostly shows in the others.
    Optional<PastedDates.Order> ofAll = PastedDates.orderOf(dates).or(manner::order);
    Optional<String> unclear = Optional.empty();
    Map<Integer, PastedDates> datesIn = new HashMap<>();
    Map<Integer, PastedNumbers> numbersIn = new HashMap<>();
    for (int i = 0; i < columns.size(); i++) {
      List<String> cells = cells(rows, i);
      if (DATES.contains(columns.get(i))) {
        Optional<PastedDates.Order> order = PastedDates.orderOf(cells).or(() -> ofAll);
        if (order.isEmpty()) {
          unclear = unclear.or(() -> PastedDates.unclear(cells));
        }
        datesIn.put(i, new PastedDates(order.orElse(PastedDates.Order.DAY_FIRST), manner.season()));
      } else if (PastedNumbers.areIn(columns.get(i))) {
        numbersIn.put(i, PastedNumbers.of(columns.get(i), cells));
      }
    }
    List<Map<String, String>> read = new ArrayList<>();
    for (List<String> row : rows) {
      Map<String, String> cells = new LinkedHashMap<>();
      for (int i = 0; i < columns.size(); i++) {
        if (!columns.get(i).isEmpty()) {
          String cell = i < row.size() ? row.get(i) : "";
          PastedDates date = datesIn.get(i);
          PastedNumbers number = numbersIn.get(i);
          String plain = date == null ? cell : date.read(cell);
          cells.put(columns.get(i), number == null ? plain : number.read(cell));
        }
      }
      if (cells.values().stream().anyMatch(cell -> !cell.isEmpty())) {
        read.add(cells);
      }
    }
    return new PastedPlan(isHeaded, heads, columns, read, leftOut, unclear);
  }

  /** What is wrong with a cell before anything is known of the plan; empty where nothing. */
  public static Optional<String> wrong(String cell) {
    return NO_VALUE.matcher(cell).matches()
        ? Optional.of("'" + cell + "' is no value; what the spreadsheet works out for this cell")
        : Optional.empty();
  }
}
