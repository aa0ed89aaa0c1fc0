package propcap.files.scenario;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import propcap.files.log.LogRow;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.SourceText;
import propcap.files.text.UnsavedTexts;

/**
 * A scenario as it is written, right or wrong, with the changes of a scenario that extends another:
 * text by key, each where it stands. A key within a key is written as {@code climate.constant}, one
 * of a map in a list as {@code labour.extra.0.from}.
 *
 * @param head the scenario's own keys, such as {@code season.start}
 * @param sowings in the plan's order
 * @param logFile the log of this season that the scenario names, whether it is there or not
 * @param log the rows of it that can be read, each named by its sowing
 */
public record WrittenScenario(
    Entry head,
    List<Entry> places,
    List<Entry> crops,
    List<Entry> sowings,
    Optional<Path> logFile,
    List<Entry> log) {

  /**
   * What stands under a key.
   *
   * @param spot where it stands
   * @param key where the key itself is written
   * @param words where each word of a list of words is written; none for anything else
   */
  public record Cell(String text, FilePosition spot, FilePosition key, List<FilePosition> words) {
    private boolean holds(Fault fault) {
      return Stream.concat(Stream.of(spot, key), words.stream()).anyMatch(fault.spot()::equals);
    }
  }

  /**
   * A place, a crop, a sowing, or the scenario itself.
   *
   * @param spot where it is named
   */
  public record Entry(String name, FilePosition spot, Map<String, Cell> cells) {
    /** The text under a key; empty where there is none. */
    public String text(String key) {
      Cell cell = cells.get(key);
      return cell == null ? "" : cell.text();
    }

    private boolean holds(Fault fault) {
      return fault.spot().equals(spot) || cells.values().stream().anyMatch(c -> c.holds(fault));
    }

    /** Whether a value of its is at fault: one change may be written for many sowings at once. */
    private boolean isOwnerOf(Fault fault) {
      return !name.isEmpty() && fault.about().owner().equals(name);
    }

    /** The key whose value is wrong, as the fault or its place tells; empty where neither does. */
    private String keyOf(Fault fault) {
      String word = fault.about().key();
      if (fault.about().isMissing()) {
        // It stands nowhere, so the fault lies with the row's name.
        return word;
      }
      Predicate<String> isMeant =
          key -> !word.isEmpty() && (key.equals(word) || key.endsWith("." + word));
      List<String> there =
          cells.entrySet().stream()
              .filter(e -> e.getValue().spot().column() > 0 && e.getValue().holds(fault))
              .map(Map.Entry::getKey)
              .toList();
      return Stream.of(
              there.stream().filter(isMeant),
              there.stream(),
              cells.keySet().stream().filter(isMeant))
          .flatMap(keys -> keys)
          .findFirst()
          .orElse(word);
    }
  }

  /**
   * The field that a fault is about.
   *
   * @param list such as {@code places}; empty for the scenario's own keys
   * @param row which of the list; -1: none of them
   * @param key empty where it is about the whole row
   */
  public record Field(String list, int row, String key) {}

  /** Reads what is written; what is wrong with it, {@link ScenarioReader} tells. */
  public static WrittenScenario of(Path scenario, UnsavedTexts unsaved) {
    Faults unheard = new Faults();
    Layers layers = Layers.read(scenario, unsaved, unheard);
    PlaceList places = new PlaceList(layers, unheard);
    CropList crops = new CropList(layers, places, unheard);
    SowingPlan plan = new SowingPlan(layers, Optional.empty(), unheard);
    return of(scenario, layers, places, crops, plan, unsaved);
  }

  static WrittenScenario of(
      Path scenario,
      Layers layers,
      PlaceList places,
      CropList list,
      SowingPlan plan,
      UnsavedTexts unsaved) {
    List<Entry> crops = new ArrayList<>();
    list.byName().forEach((name, c) -> crops.add(entry(name, c.fields().at(), c.fields().known())));
    Node.Keyed head = layers.merged(scenario);
    for (String key : List.of("extends", "crops", "sowings")) {
      List<Node.Entry> last = layers.written(key);
      if (!last.isEmpty()) {
        head = head.with(key, last.get(last.size() - 1));
      }
    }
    Faults unheard = new Faults();
    Optional<Path> logFile =
        head.entry("so-far").flatMap(named -> SourceText.named("so-far", named.value(), unheard));
    Optional<SourceText> log =
        logFile.flatMap(file -> SourceText.read(file, FilePosition.whole(file), unsaved, unheard));
    return new WrittenScenario(
        entry(head.word("name"), FilePosition.whole(scenario), head),
        places.places().entrySet().stream()
            .map(p -> entry(p.getKey(), nameSpot(p.getValue()), p.getValue()))
            .toList(),
        crops,
        plan.lines().stream()
            .map(l -> l.fields().known())
            .map(row -> entry(row.word("id"), row.spot(), row))
            .toList(),
        logFile,
        log.map(source -> LogRow.table(source, unheard).rows()).orElse(List.of()).stream()
            .map(row -> entry(row.word("sowing"), row.spot(), row))
            .toList());
  }

  private static FilePosition nameSpot(Node.Keyed place) {
    return place.entry("name").map(Node.Entry::spot).orElse(place.spot());
  }

  private static Entry entry(String name, FilePosition spot, Node.Keyed map) {
    Map<String, Cell> cells = new LinkedHashMap<>();
    addCells("", map, cells);
    return new Entry(name, spot, cells);
  }

  /** What stands under each key of a map and of those within it, such as {@code emergence.at}. */
  static Map<String, String> texts(Node.Keyed map) {
    Map<String, Cell> cells = new LinkedHashMap<>();
    addCells("", map, cells);
    Map<String, String> texts = new LinkedHashMap<>();
    cells.forEach((key, cell) -> texts.put(key, cell.text()));
    return texts;
  }

  private static void addCells(String prefix, Node.Keyed map, Map<String, Cell> cells) {
    map.entries()
        .forEach(
            (key, entry) -> {
              if (entry.value() instanceof Node.Keyed inner) {
                addCells(prefix + key + ".", inner, cells);
              } else if (isOfMaps(entry.value())) {
                List<Node> items = ((Node.Items) entry.value()).items();
                for (int row = 0; row < items.size(); row++) {
                  addCells(prefix + key + "." + row + ".", (Node.Keyed) items.get(row), cells);
                }
              } else {
                text(entry.value())
                    .ifPresent(
                        text ->
                            cells.put(
                                prefix + key,
                                new Cell(
                                    text,
                                    entry.value().spot(),
                                    entry.spot(),
                                    words(entry.value()))));
              }
            });
  }

  private static List<FilePosition> words(Node value) {
    return value instanceof Node.Items list
        ? list.items().stream().map(Node::spot).toList()
        : List.of();
  }

  /** Such a list has the fields of each of its maps, numbered from 0. */
  private static boolean isOfMaps(Node value) {
    return value instanceof Node.Items list
        && list.items().stream().allMatch(item -> item instanceof Node.Keyed);
  }

  /** Words, and lists of words; a list of anything else is no field. */
  private static Optional<String> text(Node value) {
    if (value instanceof Node.Items list
        && list.items().stream().allMatch(i -> i instanceof Node.Text)) {
      return Optional.of(
          list.items().stream()
              .flatMap(i -> Node.text(i).stream())
              .map(t -> t.text().strip())
              .collect(Collectors.joining(", ")));
    }
    return Node.text(value).map(t -> t.text().strip());
  }

  /** Which field a fault belongs to. */
  public Field fieldOf(Fault fault) {
    Map<String, List<Entry>> lists = new LinkedHashMap<>();
    lists.put("places", places);
    lists.put("crops", crops);
    lists.put("sowings", sowings);
    lists.put("log", log);
    return missingPrice(fault.about())
        .or(() -> held(fault, lists, e -> e.isOwnerOf(fault)))
        .or(() -> held(fault, lists, e -> true))
        .orElseGet(
            () ->
                head.holds(fault)
                    ? new Field("", -1, head.keyOf(fault))
                    : around(fault, lists, head));
  }

  /** What money lacks stands nowhere; it is told with the place of all of money. */
  private static Optional<Field> missingPrice(Fault.About about) {
    boolean isOfMoney =
        (about.path().equals("money") && MoneyFields.KEYS.contains(about.key()))
            || about.path().startsWith("money.");
    return about.isMissing() && isOfMoney
        ? Optional.of(new Field("", -1, about.path() + "." + about.key()))
        : Optional.empty();
  }

  /** The first of these entries that has the fault. */
  private static Optional<Field> held(
      Fault fault, Map<String, List<Entry>> lists, Predicate<Entry> of) {
    for (Map.Entry<String, List<Entry>> list : lists.entrySet()) {
      for (int row = 0; row < list.getValue().size(); row++) {
        Entry entry = list.getValue().get(row);
        if (of.test(entry) && entry.holds(fault)) {
          return Optional.of(new Field(list.getKey(), row, entry.keyOf(fault)));
        }
      }
    }
    return Optional.empty();
  }

  /** The field's row, where a fault is of something within it: the last row that begins before. */
  private static Field around(Fault fault, Map<String, List<Entry>> lists, Entry head) {
    Field around = new Field("", -1, "");
    int last = 0;
    for (Map.Entry<String, List<Entry>> list : lists.entrySet()) {
      for (int row = 0; row < list.getValue().size(); row++) {
        Entry entry = list.getValue().get(row);
        if (isBetween(last, entry.spot(), fault.spot())) {
          last = entry.spot().line();
          around = new Field(list.getKey(), row, entry.keyOf(fault));
        }
      }
    }
    for (Map.Entry<String, Cell> key : head.cells().entrySet()) {
      FilePosition spot = key.getValue().spot();
      if (isBetween(last, spot, fault.spot())) {
        last = spot.line();
        around = new Field("", -1, key.getKey().split("\\.", 2)[0]);
      }
    }
    return around;
  }

  /** Whether something that begins below a line may hold a place further down. */
  private static boolean isBetween(int last, FilePosition spot, FilePosition of) {
    return spot.line() > last
        && spot.line() <= of.line()
        && spot.file().equals(of.file())
        && of.column() > 0;
  }
}
