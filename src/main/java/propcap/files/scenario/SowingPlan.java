package propcap.files.scenario;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.farm.SowingNeed;
import propcap.files.text.CsvFile;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.Quantity;
import propcap.files.text.SourceText;

/** The sowing plan of a scenario, with the changes of those that extend it. */
public final class SowingPlan {
  public static final List<String> COLUMNS =
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

  /** Those, and the ones that may be left out: what a better plan may change, and must reach. */
  static final List<String> OPTIONAL = List.of("germinate-in", "sow-from", "sow-to", "goal");

  /** All columns. */
  public static final List<String> KNOWN =
      Stream.concat(COLUMNS.stream(), OPTIONAL.stream()).toList();

  /** With at most this many rows of so many trays the sum of trays stays within an int. */
  static final int MOST_ROWS = 20_000;

  /**
   * A row, right or wrong.
   *
   * @param crop empty where it could not be read
   * @param sow null where it could not be read
   * @param sowing empty where anything of it could not be read; what is to be found stands in it as
   *     the season's first day or one tray
   * @param need what of it is to be found
   * @param isDropped whether it has no trays: it is sown no more than it has been
   */
  record Line(
      Fields fields,
      String crop,
      @Nullable LocalDate sow,
      Optional<Sowing> sowing,
      Optional<SowingNeed> need,
      boolean isDropped) {}

  private final Faults faults;
  private final Optional<Season> season;
  private final List<Line> lines = new ArrayList<>();

  /**
   * Reads a plan.
   *
   * @param season empty where it could not be read; a sowing whose day is to be found is then none
   */
  SowingPlan(Layers layers, Optional<Season> season, Faults faults) {
    this.faults = faults;
    this.season = season;
    Map<String, FilePosition> ids = new HashMap<>();
    for (Node.Keyed row : rows(layers)) {
      lines.add(line(row, ids));
    }
  }

  /** In the plan's order. */
  List<Line> lines() {
    return lines;
  }

  /** All that could be read, what is dropped with a tray that it hasn't. */
  List<Sowing> sowings() {
    return lines.stream().flatMap(l -> l.sowing().stream()).toList();
  }

  /** Ids of those that are dropped. */
  Set<String> dropped() {
    return lines.stream()
        .filter(Line::isDropped)
        .flatMap(l -> l.sowing().stream())
        .map(Sowing::id)
        .collect(Collectors.toSet());
  }

  private List<Node.Keyed> rows(Layers layers) {
    List<Node.Entry> written = layers.written("sowings");
    List<Node.Keyed> rows = new ArrayList<>();
    boolean open = true;
    for (int i = 0; i < written.size(); i++) {
      Node value = written.get(i).value();
      if (value instanceof Node.Items changes && (i > 0 || !layers.whole())) {
        new SowingChanges(rows, open, faults).apply(changes);
        continue;
      }
      Optional<CsvFile> table =
          SourceText.named("sowings", value, faults)
              .flatMap(file -> SourceText.read(file, value.spot(), layers.unsaved(), faults))
              .map(source -> new CsvFile(source, COLUMNS, OPTIONAL, MOST_ROWS, faults));
      if (table.isPresent()) {
        rows = new ArrayList<>(table.get().rows());
        open = table.get().isOpen();
        if (rows.isEmpty() && !open) {
          faults.add(
              FilePosition.whole(table.get().file()), "no sowing in the plan", "at least one row");
        }
      }
    }
    return rows;
  }

  private Line line(Node.Keyed row, Map<String, FilePosition> ids) {
    String written = row.word("id");
    Fields fields =
        new Fields(FaultWords.isName(written) ? written : "", row.spot(), row, KNOWN, faults);
    Optional<String> id = fields.name("id");
    id.ifPresent(
        name -> {
          FilePosition before = ids.putIfAbsent(name, fields.spot("id"));
          if (before != null) {
            fields.fault(
                fields.spot("id"),
                "id " + FaultWords.shown(name) + " again, first on line " + before.line(),
                "each sowing with an id of its own");
          }
        });
    Optional<String> crop = fields.name("crop");
    Optional<String> lot = fields.isBlank("lot") ? crop : fields.name("lot");
    boolean isDateOpen = isOpen(fields, "sow", "a date such as 2027-03-28");
    boolean areTraysOpen = isOpen(fields, "trays", "a whole number from 1 to " + Sowing.MOST_TRAYS);
    LocalDate sow = isDateOpen ? null : fields.date("sow");
    LocalDate stands = isDateOpen ? season.map(Season::start).orElse(null) : sow;
    int trays = areTraysOpen ? 1 : fields.count("trays", 0, Sowing.MOST_TRAYS);
    int plants = fields.count("plants-needed", 0, Sowing.MOST_PLANTS);
    LocalDate bedFrom = fields.date("bed-from");
    LocalDate bedBy = fields.date("bed-by");
    LocalDate bedUntil = fields.dateOrNone("bed-until");
    LocalDate resowUntil = fields.dateOrNone("resow-until");
    if (bedFrom != null && bedBy != null && bedBy.isBefore(bedFrom)) {
      fields.wrongPair("bed-by", "bed-from", "before", "bed-by on or after bed-from");
    }
    if (bedBy != null && bedUntil != null && bedUntil.isBefore(bedBy)) {
      fields.wrongPair("bed-until", "bed-by", "before", "bed-until on or after bed-by, or empty");
    }
    String place = fields.isBlank("germinate-in") ? null : fields.name("germinate-in").orElse(null);
    Sowing.Leeway leeway = leeway(fields);
    Optional<Sowing> sowing = Optional.empty();
    if (id.isPresent()
        && crop.isPresent()
        && lot.isPresent()
        && stands != null
        && bedFrom != null
        && bedBy != null) {
      sowing =
          fields.made(
              () ->
                  new Sowing(
                      id.get(),
                      crop.get(),
                      lot.get(),
                      stands,
                      Math.max(1, trays),
                      plants,
                      bedFrom,
                      bedBy,
                      bedUntil,
                      resowUntil,
                      place,
                      leeway));
    }
    Optional<SowingNeed> need =
        isDateOpen || areTraysOpen
            ? id.map(name -> new SowingNeed(name, isDateOpen, areTraysOpen))
            : Optional.empty();
    return new Line(fields, crop.orElse(""), sow, sowing, need, trays == 0);
  }

  /** Whether a cell is there and left empty, so that it is to be found. */
  private static boolean isOpen(Fields fields, String key, String right) {
    boolean isOpen = fields.has(key) && fields.isBlank(key);
    if (isOpen) {
      fields.toFind(key, right);
    }
    return isOpen;
  }

  private static Sowing.Leeway leeway(Fields fields) {
    LocalDate from = fields.dateOrNone("sow-from");
    LocalDate to = fields.dateOrNone("sow-to");
    Double goal = fields.isBlank("goal") ? null : fields.positive("goal", Quantity.PERCENT);
    if (from != null && to != null && to.isBefore(from)) {
      fields.wrongPair("sow-to", "sow-from", "before", "sow-to on or after sow-from");
    }
    return fields.sound() ? new Sowing.Leeway(from, to, goal) : Sowing.Leeway.NOT_SAID;
  }
}
