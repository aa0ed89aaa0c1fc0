package propcap.report.kit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Sheet.Column;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/**
 * A table that is told once, column by column, and shown as a file for a spreadsheet, as objects
 * for other programs and as a sheet of the page. A name in files is written such as {@code
 * on-time}, and so is {@code onTime} for other programs.
 *
 * @param <T> what a row is about
 */
public final class Table<T> {
  private static final Pattern NEXT_WORD = Pattern.compile("-(.)");

  /** What is told beside a mean: where it was seen too seldom for limits, no error either. */
  public static final Table<Stat> STAT_LIMITS =
      new Table<Stat>()
          .file("se", s -> s.limits() == null ? null : s.se())
          .file("low", s -> s.limits() == null ? null : s.limits().low())
          .file("high", s -> s.limits() == null ? null : s.limits().high())
          .file("unlike", Stat::unlike)
          .file("p10", Stat::p10)
          .file("p50", Stat::p50)
          .file("p90", Stat::p90);

  public static final Table<Stat> STAT =
      new Table<Stat>()
          .csv("", Stat::mean)
          .json("mean", Stat::mean)
          .csv("", STAT_LIMITS, s -> s)
          .json(STAT_LIMITS, s -> s);

  /** A difference that is the same in all seasons has no error that could be told. */
  public static final Table<Difference> DIFFERENCE =
      new Table<Difference>()
          .csv("", Difference::mean)
          .json("mean", Difference::mean)
          .file("half-width", d -> d.narrowing() == null ? null : d.halfWidth())
          .file("se", d -> d.narrowing() == null ? null : d.se())
          .file("share-ahead", Difference::shareAhead)
          .file("narrowing", Difference::narrowing)
          .file("differing", Difference::differing);

  /** A limit that there is not is left empty. */
  public static final Table<Estimate> ESTIMATE =
      new Table<Estimate>()
          .csv("", Estimate::value)
          .json("value", Estimate::value)
          .file("low", e -> e.hasLow() ? e.low() : null)
          .file("high", e -> e.hasHigh() ? e.high() : null);

  /** A column of files. */
  private record Field<T>(String name, Function<T, @Nullable Object> value) {}

  /** A column of the page. */
  private record Seen<T>(Column column, Function<T, Cell> cell) {}

  private final List<Field<T>> csv = new ArrayList<>();
  private final List<Field<T>> json = new ArrayList<>();
  private final List<Seen<T>> page = new ArrayList<>();
  private final String head;
  private final Function<T, String> name;
  private final Function<T, String> below;

  /** A table that is not shown on a page. */
  public Table() {
    this("", row -> "");
  }

  public Table(String head, Function<T, String> name) {
    this(head, name, row -> "");
  }

  /** Each row of the page begins with its name, and has below it what is said of it. */
  public Table(String head, Function<T, String> name, Function<T, String> below) {
    this.head = head;
    this.name = name;
    this.below = below;
  }

  /** A column of both files. */
  public Table<T> file(String column, Function<T, @Nullable Object> value) {
    return csv(column, value).json(camel(column), value);
  }

  public Table<T> csv(String column, Function<T, @Nullable Object> value) {
    csv.add(new Field<>(column, value));
    return this;
  }

  public Table<T> json(String member, Function<T, @Nullable Object> value) {
    json.add(new Field<>(member, value));
    return this;
  }

  /** Columns of another table, all empty where there is nothing; for other programs an object. */
  public <U> Table<T> file(String column, Table<U> of, Function<T, @Nullable U> value) {
    return csv(column, of, value).json(camel(column), row -> of.object(value.apply(row)));
  }

  public <U> Table<T> csv(String column, Table<U> of, Function<T, @Nullable U> value) {
    for (Field<U> field : of.csv) {
      String hyphen = column.isEmpty() || field.name().isEmpty() ? "" : "-";
      csv(
          column + hyphen + field.name(),
          row -> {
            U inner = value.apply(row);
            return inner == null ? null : field.value().apply(inner);
          });
    }
    return this;
  }

  /** The members of another table, among those of this one. */
  public <U> Table<T> json(Table<U> of, Function<T, U> value) {
    of.json.forEach(field -> json(field.name(), row -> field.value().apply(value.apply(row))));
    return this;
  }

  /** A column for each of some things. */
  public <E> Table<T> csv(
      E[] things, Function<E, String> column, BiFunction<T, E, @Nullable Object> value) {
    Stream.of(things).forEach(e -> csv(column.apply(e), row -> value.apply(row, e)));
    return this;
  }

  public Table<T> stat(String column, Function<T, @Nullable Stat> value) {
    return file(column, STAT, value);
  }

  public Table<T> difference(String column, Function<T, @Nullable Difference> value) {
    return file(column, DIFFERENCE, value);
  }

  /** A column of the page. */
  public Table<T> words(String title, Function<T, String> text) {
    return cell(Column.words(title), row -> Cell.of(text.apply(row)));
  }

  public Table<T> number(String title, String unit, Function<T, String> text) {
    return cell(title, unit, row -> Cell.of(text.apply(row)));
  }

  public Table<T> cell(String title, String unit, Function<T, Cell> cell) {
    return cell(Column.number(title, unit), cell);
  }

  public Table<T> cell(Column column, Function<T, Cell> cell) {
    page.add(new Seen<>(column, cell));
    return this;
  }

  /** Further columns, where something is so. */
  public Table<T> when(boolean isSo, UnaryOperator<Table<T>> columns) {
    return isSo ? columns.apply(this) : this;
  }

  /** The file for a spreadsheet. */
  public String csv(List<T> rows) {
    List<List<@Nullable Object>> all = new ArrayList<>();
    all.add(new ArrayList<>(csv.stream().map(Field::name).toList()));
    for (T row : rows) {
      List<@Nullable Object> values = new ArrayList<>();
      csv.forEach(field -> values.add(field.value().apply(row)));
      all.add(values);
    }
    return Csv.text(all);
  }

  /** A row for other programs, by the names of its members; null where there is none. */
  public @Nullable Map<String, @Nullable Object> object(@Nullable T row) {
    return row == null ? null : members(row);
  }

  public Map<String, @Nullable Object> members(T row) {
    Map<String, @Nullable Object> members = new LinkedHashMap<>();
    json.forEach(field -> members.put(field.name(), field.value().apply(row)));
    return members;
  }

  public List<?> objects(List<T> rows) {
    return rows.stream().map(this::members).toList();
  }

  public Sheet sheet(String title, String caption, List<T> rows) {
    List<Column> columns = new ArrayList<>(List.of(Column.words(head)));
    page.forEach(seen -> columns.add(seen.column()));
    return new Sheet(title, caption, columns, rows.stream().map(this::row).toList());
  }

  private Sheet.Row row(T row) {
    return new Sheet.Row(
        name.apply(row), below.apply(row), page.stream().map(s -> s.cell().apply(row)).toList());
  }

  /** Such as {@code onTime} for {@code on-time}. */
  public static String camel(String column) {
    return NEXT_WORD.matcher(column).replaceAll(m -> m.group(1).toUpperCase(Locale.ROOT));
  }
}
