package propcap.files.scenario;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.farm.Sowing;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.Node;
import propcap.files.text.Quantity;

/** The changes that an extending scenario makes to the rows of a plan. */
final class SowingChanges {
  private static final List<String> SHIFTED = List.of("sow", "resow-until");
  private static final List<String> SETTABLE = SowingPlan.KNOWN.subList(1, SowingPlan.KNOWN.size());
  private static final List<String> KEYS = keys("match", "shift");
  private static final List<String> ADDED = keys("add");

  private final List<Node.Keyed> rows;
  private final boolean open;
  private final Faults faults;

  /**
   * Changes these rows in place.
   *
   * @param open whether there may be rows that could not be read
   */
  SowingChanges(List<Node.Keyed> rows, boolean open, Faults faults) {
    this.rows = rows;
    this.open = open;
    this.faults = faults;
  }

  private static List<String> keys(String... first) {
    List<String> keys = new ArrayList<>(List.of(first));
    keys.addAll(SETTABLE);
    return List.copyOf(keys);
  }

  void apply(Node.Items changes) {
    for (Node item : changes.items()) {
      if (item instanceof Node.Keyed change) {
        if (change.has("add")) {
          add(change);
        } else if (change.has("remove")) {
          remove(change);
        } else {
          apply(change);
        }
      } else {
        faults.wrong(
            item,
            item.kind() + " as a change",
            "a map such as {match: \"tomato*\", shift: -7 days}");
      }
    }
  }

  /** A sowing more, at the plan's end. */
  private void add(Node.Keyed written) {
    Fields fields = new Fields("a new sowing", written.spot(), written, ADDED, faults);
    Optional<Node.Entry> id = fields.known().entry("add");
    if (id.isEmpty()) {
      return;
    }
    if (rows.size() >= SowingPlan.MOST_ROWS) {
      fields.wrong("add", "the plan's row " + (rows.size() + 1), "a shorter plan");
      return;
    }
    rows.add(fields.known().without("add").with("id", id.get()));
  }

  private void remove(Node.Keyed written) {
    Fields fields = new Fields("a change", written.spot(), written, List.of("remove"), faults);
    Optional<String> match = fields.name("remove");
    if (match.isPresent()
        && !rows.removeIf(row -> Sowing.matches(match.get(), row.word("id")))
        && !open) {
      matchesNone(match.get(), fields.known(), "remove");
    }
  }

  private void matchesNone(String match, Node.Keyed change, String key) {
    faults.add(
        change.entry(key).map(e -> e.value().spot()).orElse(change.spot()),
        "no sowing matches " + FaultWords.shown(match),
        FaultWords.nearOr(
            match,
            rows.stream().map(row -> row.word("id")).toList(),
            "the id of a sowing, with * for any letters"));
  }

  private void apply(Node.Keyed written) {
    Fields fields = new Fields("a change", written.spot(), written, KEYS, faults);
    Node.Keyed change = fields.known();
    Node.Keyed settings = change.without("match", "shift");
    double shift = fields.number("shift", Quantity.SHIFT, 0);
    Optional<String> match = fields.name("match");
    if (settings.entries().isEmpty() && !fields.has("shift") && fields.sound()) {
      fields.fault(
          written.spot(), "a change that changes nothing", "a shift or a column's new value");
    }
    for (String key : SHIFTED) {
      if (fields.has(key) && fields.has("shift")) {
        fields.fault(fields.spot(key), key + " beside shift, which moves it", "one of the two");
      }
    }
    boolean any = false;
    for (int i = 0; i < rows.size() && match.isPresent(); i++) {
      if (Sowing.matches(match.get(), rows.get(i).word("id"))) {
        any = true;
        Node.Keyed row = rows.get(i).replacing(settings);
        rows.set(i, shift == 0 ? row : shifted(row, shift, change));
      }
    }
    if (match.isPresent() && !any && !open && !faults.isFull(written.spot().file())) {
      matchesNone(match.get(), change, "match");
    }
  }

  private static Node.Keyed shifted(Node.Keyed row, double shift, Node.Keyed change) {
    Node.Keyed moved = row;
    Optional<Node.Entry> by = change.entry("shift");
    if (Double.isNaN(shift) || by.isEmpty()) {
      return moved;
    }
    for (String key : SHIFTED) {
      Optional<LocalDate> date =
          row.entry(key).flatMap(e -> Node.text(e.value())).flatMap(Node.Text::date);
      if (date.isPresent()) {
        String day = date.get().plusDays((long) shift).toString();
        Node value = new Node.Text(by.get().value().spot(), day);
        moved = moved.with(key, new Node.Entry(by.get().spot(), value));
      }
    }
    return moved;
  }
}
