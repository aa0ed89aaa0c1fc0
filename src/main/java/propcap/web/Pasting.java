package propcap.web;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.files.edit.ScenarioEditor;
import propcap.files.scenario.WrittenScenario;
import propcap.web.desk.Readings;
import propcap.web.request.RefusedException;
import propcap.web.request.RequestFields;
import propcap.web.typed.PastedDates;
import propcap.web.typed.PastedDates.Order;
import propcap.web.typed.PastedHeading;
import propcap.web.typed.PastedPlan;

/**
 * A table copied in a spreadsheet, put into the sowing plan: what it would change, what is wrong
 * with it, and the change itself.
 */
final class Pasting {
  private static final int MOST_ROWS = 5_000;
  private static final int MOST_LETTERS = 2_000;

  /** More rows than these are not shown before they are written; those with a fault come first. */
  private static final int MOST_SHOWN = 60;

  private static final Map<String, Order> ORDERS =
      Map.of("day", Order.DAY_FIRST, "month", Order.MONTH_FIRST);

  /** A name's end that counts on. */
  private static final Pattern COUNT = Pattern.compile("-\\d+$");

  /**
   * A row and where it goes.
   *
   * @param row of the plan, whose number is the next where it is added
   * @param was what stood in the cells that it changes
   */
  private record Target(
      int row,
      boolean isNew,
      Map<String, String> cells,
      Map<String, String> was,
      Map<String, String> faults) {
    boolean isChange() {
      return isNew || !was.isEmpty();
    }
  }

  private final WrittenScenario written;
  private final PastedPlan pasted;
  private final List<Target> targets = new ArrayList<>();

  /**
   * Reads what was pasted.
   *
   * @param asked the text; as {@code order} which of two numbers is the day, as {@code columns}
   *     what each column is, where the grower has said so; where it was pasted in a field the
   *     column {@code from} and the {@code rows} from there on
   */
  Pasting(WrittenScenario written, RequestFields asked) throws RefusedException {
    this.written = written;
    Order order = ORDERS.get(asked.text("order"));
    String columns = asked.text("columns");
    pasted =
        PastedPlan.of(
            asked.longText("text"),
            new PastedPlan.Manner(
                asked.text("from"),
                columns(),
                columns.isEmpty() ? List.of() : chosen(columns),
                Optional.ofNullable(order),
                Readings.season(written).orElse(null)));
    if (pasted.rows().size() > MOST_ROWS) {
      throw RefusedException.bad("more than " + MOST_ROWS + " rows at once");
    }
    aim(rows(asked));
  }

  /** What the grower takes each column for, no two for the same. */
  private List<String> chosen(String columns) throws RefusedException {
    List<String> chosen = List.of(columns.split(",", -1));
    List<String> named = chosen.stream().filter(column -> !column.isEmpty()).toList();
    if (!columns().containsAll(named) || new HashSet<>(named).size() < named.size()) {
      throw RefusedException.bad("'" + columns + "' are no columns of the plan");
    }
    return chosen;
  }

  /** Those that every plan has, and what else this one has. */
  private Set<String> columns() {
    Set<String> columns = new HashSet<>(PastedHeading.COLUMNS);
    written.sowings().forEach(sowing -> columns.addAll(sowing.cells().keySet()));
    return columns;
  }

  private static List<Integer> rows(RequestFields asked) throws RefusedException {
    List<Integer> rows = new ArrayList<>();
    for (String row :
        asked.json().has("rows") ? asked.longText("rows").split(",") : new String[0]) {
      if (!row.matches("\\d{1,6}")) {
        throw RefusedException.bad("rows must be numbers");
      }
      rows.add(Integer.valueOf(row));
    }
    return rows;
  }

  /** By its id where the table has a column of ids, else row by row from the field on. */
  private void aim(List<Integer> fieldRows) throws RefusedException {
    Map<String, Integer> known = new HashMap<>();
    for (int row = written.sowings().size() - 1; row >= 0; row--) {
      known.put(written.sowings().get(row).name(), row);
    }
    boolean isById = pasted.columns().contains("id") && (pasted.isHeaded() || fieldRows.isEmpty());
    Set<String> ids = new HashSet<>(known.keySet());
    pasted.rows().forEach(row -> ids.add(row.getOrDefault("id", "")));
    Set<Integer> done = new HashSet<>();
    int next = written.sowings().size();
    for (int i = 0; i < pasted.rows().size(); i++) {
      Map<String, String> cells = withOwnCrop(pasted.rows().get(i));
      if (cells.values().stream().anyMatch(cell -> cell.length() > MOST_LETTERS)) {
        throw RefusedException.bad("a cell of more than " + MOST_LETTERS + " letters");
      }
      Integer row =
          isById
              ? known.get(cells.getOrDefault("id", ""))
              : i < fieldRows.size() ? fieldRows.get(i) : null;
      boolean isThere = row != null && row < written.sowings().size() && done.add(row);
      targets.add(isThere && row != null ? changed(row, cells) : added(next++, cells, ids));
    }
  }

  /** A crop written with other capitals is the one of that name. */
  private Map<String, String> withOwnCrop(Map<String, String> cells) {
    String crop = cells.getOrDefault("crop", "");
    List<String> names = written.crops().stream().map(WrittenScenario.Entry::name).toList();
    if (names.contains(crop)) {
      return cells;
    }
    Map<String, String> all = new LinkedHashMap<>(cells);
    names.stream()
        .filter(name -> name.equalsIgnoreCase(crop))
        .findFirst()
        .ifPresent(name -> all.put("crop", name));
    return all;
  }

  private Target changed(int row, Map<String, String> cells) {
    WrittenScenario.Entry sowing = written.sowings().get(row);
    Map<String, String> was = new LinkedHashMap<>();
    cells.forEach(
        (column, cell) -> {
          if (!sowing.text(column).equals(cell)) {
            was.put(column, sowing.text(column));
          }
        });
    return new Target(row, false, cells, was, faults(cells));
  }

  private static Target added(int row, Map<String, String> cells, Set<String> ids) {
    Map<String, String> all = new LinkedHashMap<>();
    PastedHeading.COLUMNS.forEach(column -> all.put(column, ""));
    all.putAll(cells);
    if (all.getOrDefault("id", "").isEmpty()) {
      all.put("id", free(all.getOrDefault("crop", ""), ids));
    }
    return new Target(row, true, all, Map.of(), faults(all));
  }

  /** A name that no sowing has, after the crop. */
  private static String free(String crop, Set<String> ids) {
    String stem = crop.isEmpty() ? "sowing" : COUNT.matcher(crop).replaceFirst("");
    return Stream.iterate(1, n -> n + 1)
        .map(n -> stem + "-" + n)
        .filter(ids::add)
        .findFirst()
        .orElseThrow();
  }

  private static Map<String, String> faults(Map<String, String> cells) {
    Map<String, String> faults = new LinkedHashMap<>();
    cells.forEach((column, cell) -> PastedPlan.wrong(cell).ifPresent(w -> faults.put(column, w)));
    return faults;
  }

  /** Whether the table says all that is needed: the grower must not be asked which is the month. */
  boolean isClear() {
    return pasted.unclear().isEmpty();
  }

  /** What it does to the plan. */
  void write(ScenarioEditor editor, WrittenScenario now) throws IOException {
    Map<Integer, Map<String, String>> changes = new LinkedHashMap<>();
    List<Map<String, String>> added = new ArrayList<>();
    for (Target target : targets) {
      if (target.isNew()) {
        added.add(target.cells());
      } else if (!target.was().isEmpty()) {
        Map<String, String> cells = new LinkedHashMap<>(target.cells());
        cells.keySet().retainAll(target.was().keySet());
        changes.put(target.row(), cells);
      }
    }
    if (!changes.isEmpty()) {
      editor.setSowings(changes);
    }
    if (!added.isEmpty()) {
      editor.addSowings(added);
    }
  }

  /** Puts faults of the plan as it would be beside the cells; what belongs to none is returned. */
  List<FieldFault> blame(List<FieldFault> faults) {
    Map<Integer, Target> byRow = new HashMap<>();
    targets.forEach(target -> byRow.put(target.row(), target));
    List<FieldFault> others = new ArrayList<>();
    for (FieldFault fault : faults) {
      Target target = fault.list().equals("sowings") ? byRow.get(fault.row()) : null;
      if (target == null) {
        others.add(fault);
      } else {
        // What is about the whole row stands at its name.
        String column = fault.key().isEmpty() ? "id" : fault.key();
        target.faults().merge(column, fault.words(), (a, b) -> a + " · " + b);
      }
    }
    return others;
  }

  /** Whether the grower need not see it before it is written. */
  boolean isRight() {
    return isClear()
        && pasted.leftOut().isEmpty()
        && targets.stream().allMatch(target -> target.faults().isEmpty());
  }

  /**
   * What the page shows of it.
   *
   * @param others faults that belong to no cell
   * @param unclear a date by either order of day and month; null where it is clear
   */
  private record Shown(
      List<String> heads,
      List<String> columns,
      List<String> leftOut,
      List<String> known,
      List<String> others,
      @Nullable Map<String, String> unclear,
      long added,
      long changed,
      long same,
      int wrong,
      List<Target> rows) {}

  /** What the page shows of it, beside faults that belong to no cell. */
  JsonObject told(List<FieldFault> others) {
    return new Gson()
        .toJsonTree(
            new Shown(
                pasted.heads(),
                pasted.columns(),
                pasted.leftOut(),
                PastedHeading.COLUMNS,
                others.stream().map(FieldFault::words).distinct().toList(),
                pasted.unclear().map(this::eitherWay).orElse(null),
                targets.stream().filter(Target::isNew).count(),
                targets.stream().filter(t -> !t.isNew() && t.isChange()).count(),
                targets.stream().filter(t -> !t.isChange()).count(),
                targets.stream().mapToInt(t -> t.faults().size()).sum(),
                Stream.concat(
                        targets.stream().filter(t -> !t.faults().isEmpty()),
                        targets.stream().filter(t -> t.faults().isEmpty() && t.isChange()))
                    .limit(MOST_SHOWN)
                    .toList()))
        .getAsJsonObject();
  }

  /** A date as it stands, and what it is by each order. */
  private Map<String, String> eitherWay(String date) {
    Map<String, String> either = new LinkedHashMap<>();
    either.put("text", date);
    ORDERS.forEach(
        (word, order) ->
            either.put(
                word, new PastedDates(order, Readings.season(written).orElse(null)).read(date)));
    return either;
  }
}
