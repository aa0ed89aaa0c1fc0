package propcap.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.Variants;
import propcap.farm.Variants.Setting;
import propcap.farm.Variants.Variant;
import propcap.files.text.CsvFile;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.SourceText;

/**
 * Reads a table of changes: a scenario a row, or, as a grid, each column's values with all those of
 * the others. Its columns are {@code name}, {@code spaces of PLACE}, {@code shift of SOWINGS},
 * {@code trays of SOWINGS} and {@code hours}; an empty cell changes nothing.
 */
public final class ChangesReader {
  private static final String NAME = "name";
  private static final int MOST_SCENARIOS = 2_000;

  private final Path file;
  private final Optional<Scenario> base;
  private final boolean isGrid;
  private final Faults faults;
  private final List<Change> changes = new ArrayList<>();

  private ChangesReader(Path file, Optional<Scenario> base, boolean isGrid, Faults faults) {
    this.file = file;
    this.base = base;
    this.isGrid = isGrid;
    this.faults = faults;
  }

  /**
   * The scenarios of a table, the one that they change first.
   *
   * @param base what is changed; empty where it could not be read: then only what is wrong with the
   *     table by itself is told
   * @throws FaultsException with all faults of the table, if there is any
   */
  public static Variants read(Path changesCsv, Optional<Scenario> base, boolean isGrid)
      throws FaultsException {
    Faults faults = new Faults();
    ChangesReader reader = new ChangesReader(changesCsv, base, isGrid, faults);
    List<Variant> all =
        SourceText.read(changesCsv, FilePosition.whole(changesCsv), faults)
            .map(reader::read)
            .orElse(List.of());
    faults.check();
    return new Variants(reader.changes.stream().map(Change::head).toList(), all);
  }

  private List<Variant> read(SourceText source) {
    FilePosition header =
        new FilePosition(
            file, 1 + (int) source.text().lines().takeWhile(String::isBlank).count(), 0);
    List<String> columns = CsvFile.headerOf(source);
    Set<String> known = known(columns, header);
    if (changes.isEmpty()) {
      columns.stream()
          .filter(c -> !known.contains(c))
          .forEach(
              c ->
                  faults.add(
                      header, "unknown column " + FaultWords.shown(c), FaultWords.oneOf(c, known)));
      if (known.containsAll(columns)) {
        faults.add(header, "no column that changes anything", FaultWords.oneOf("", known));
      }
      return List.of();
    }
    CsvFile table = new CsvFile(source, List.of(), List.copyOf(known), MOST_SCENARIOS, faults);
    List<Fields> rows = table.fields();
    List<List<Optional<Change.Cell>>> cells =
        rows.stream().map(row -> changes.stream().map(c -> c.cell(row)).toList()).toList();
    if (rows.isEmpty() && !table.isOpen()) {
      faults.add(header, "no change in the table", "a row for each scenario");
    }
    return isGrid ? grid(cells, header, columns) : rows(rows, cells);
  }

  /** The columns that there may be; what a scenario lacks is reported. */
  private Set<String> known(List<String> columns, FilePosition header) {
    Set<String> known = new LinkedHashSet<>(List.of(NAME));
    base.ifPresent(
        scenario -> scenario.places().forEach(p -> known.add(Change.Kind.SPACES.words + p.name())));
    known.add(Change.Kind.HOURS.words);
    for (String column : new LinkedHashSet<>(columns)) {
      Optional<Change> change = Change.of(column);
      if (change.isPresent() && (change.get().isOfSowings() || base.isEmpty())) {
        known.add(column);
        requireSowings(change.get(), header);
      }
      change.filter(c -> known.contains(c.head())).ifPresent(changes::add);
    }
    known.add(Change.Kind.SHIFT.words + "SOWINGS");
    known.add(Change.Kind.TRAYS.words + "SOWINGS");
    return known;
  }

  private void requireSowings(Change change, FilePosition header) {
    if (change.isOfSowings()
        && base.isPresent()
        && base.get().sowings().stream().noneMatch(change::isOf)) {
      faults.add(
          header,
          "column "
              + FaultWords.shown(change.head())
              + ": no sowing matches "
              + FaultWords.shown(change.of()),
          FaultWords.nearOr(
              change.of(),
              base.get().sowings().stream().map(Sowing::id).toList(),
              "the id of a sowing, with * for any letters"));
    }
  }

  // A scenario a row.

  private List<Variant> rows(List<Fields> rows, List<List<Optional<Change.Cell>>> cells) {
    List<Variant> all = new ArrayList<>();
    base.ifPresent(scenario -> all.add(asItIs(scenario, cells)));
    Map<String, String> lines = new HashMap<>();
    base.ifPresent(scenario -> lines.put(scenario.name(), "the scenario that is changed"));
    for (int r = 0; r < rows.size(); r++) {
      Fields row = rows.get(r);
      List<Change.Cell> written = cells.get(r).stream().flatMap(Optional::stream).toList();
      if (changes.stream().allMatch(c -> row.isBlank(c.head()))) {
        row.fault(
            row.at(),
            "a row that changes nothing",
            "a change, or no such row: the scenario as it is is tried in any case");
        continue;
      }
      Optional<String> name = row.isBlank(NAME) ? Optional.of(words(written)) : row.name(NAME);
      if (name.isEmpty() || !row.sound()) {
        continue;
      }
      String before = lines.putIfAbsent(name.get(), "line " + row.at().line());
      if (before != null) {
        row.fault(
            row.at(),
            FaultWords.shown(name.get()) + " again, first " + before,
            row.isBlank(NAME) ? "each change once" : "a name of its own");
        continue;
      }
      variant(name.get(), cells.get(r), all).ifPresent(all::add);
    }
    return all;
  }

  static String words(List<Change.Cell> cells) {
    return String.join(", ", cells.stream().map(Change.Cell::words).toList());
  }

  /** Whether all that a column changes is written as shares. */
  private static boolean inShares(List<List<Optional<Change.Cell>>> rows, int column) {
    return rows.stream().flatMap(r -> r.get(column).stream()).allMatch(Change.Cell::isShare);
  }

  private Variant asItIs(Scenario scenario, List<List<Optional<Change.Cell>>> rows) {
    return new Variant(
        scenario.name(),
        scenario,
        IntStream.range(0, changes.size())
            .mapToObj(c -> changes.get(c).asItIs(scenario, inShares(rows, c)))
            .toList());
  }

  // Each value with all others.

  private List<Variant> grid(
      List<List<Optional<Change.Cell>>> rows, FilePosition header, List<String> columns) {
    if (columns.contains(NAME)) {
      faults.add(
          header,
          "column name in a grid",
          "no such column: the scenarios of a grid are named by what they change");
    }
    List<List<Change.Cell>> values = new ArrayList<>();
    long size = 1;
    for (int c = 0; c < changes.size(); c++) {
      Map<String, Change.Cell> once = new LinkedHashMap<>();
      for (List<Optional<Change.Cell>> row : rows) {
        row.get(c).ifPresent(cell -> once.putIfAbsent(cell.words(), cell));
      }
      values.add(List.copyOf(once.values()));
      size = Math.min(size * once.size(), Integer.MAX_VALUE);
    }
    if (size > MOST_SCENARIOS) {
      faults.add(
          FilePosition.whole(file),
          "a grid of " + size + " scenarios",
          "at most " + MOST_SCENARIOS + ": fewer columns or fewer values");
      return List.of();
    }
    for (int c = 0; c < changes.size(); c++) {
      if (values.get(c).isEmpty() && !rows.isEmpty() && !faults.any()) {
        faults.add(
            header,
            "nothing in column " + FaultWords.shown(changes.get(c).head()),
            "a value or more, or no such column");
      }
    }
    List<Variant> all = new ArrayList<>();
    if (base.isPresent()) {
      all.add(asItIs(base.get(), rows));
      crossed(values, List.of(), all);
    }
    return all;
  }

  /** Adds what begins with some cells, the last column's values changing fastest. */
  private void crossed(
      List<List<Change.Cell>> values, List<Change.Cell> chosen, List<Variant> all) {
    if (chosen.size() < values.size()) {
      for (Change.Cell cell : values.get(chosen.size())) {
        List<Change.Cell> more = new ArrayList<>(chosen);
        more.add(cell);
        crossed(values, more, all);
      }
      return;
    }
    variant(words(chosen), chosen.stream().map(Optional::of).toList(), all)
        // What is as it is already stands first.
        .filter(v -> !v.scenario().named("").equals(all.get(0).scenario().named("")))
        .ifPresent(all::add);
  }

  // A scenario with its changes.

  private Optional<Variant> variant(
      String name, List<Optional<Change.Cell>> cells, List<Variant> all) {
    List<Change.Cell> written = cells.stream().flatMap(Optional::stream).toList();
    return base.flatMap(scenario -> new ChangedScenario(scenario, written, faults).made())
        .map(
            scenario ->
                new Variant(name, scenario.named(name), settings(cells, all.get(0).settings())));
  }

  private static List<Setting> settings(
      List<Optional<Change.Cell>> cells, List<Setting> otherwise) {
    return IntStream.range(0, cells.size())
        .mapToObj(c -> cells.get(c).map(Change.Cell::setting).orElse(otherwise.get(c)))
        .toList();
  }
}
