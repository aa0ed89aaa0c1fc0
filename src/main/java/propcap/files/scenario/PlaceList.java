package propcap.files.scenario;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import propcap.farm.PlaceKind;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.KnownKeys;
import propcap.files.text.Node;

/** The places of a scenario and of those that it extends, put together by name. */
final class PlaceList {
  private final Faults faults;
  private final List<String> order = new ArrayList<>();
  private final Map<String, Node.Keyed> byName = new HashMap<>();
  private final Map<String, List<String>> alike = new HashMap<>();
  private boolean open;

  PlaceList(Layers layers, Faults faults) {
    this.faults = faults;
    this.open = !layers.whole();
    boolean first = layers.whole();
    for (Node.Keyed file : layers.files()) {
      Optional<Node.Entry> written = file.entry("places");
      if (written.isPresent()) {
        add(written.get().value(), first);
        first = false;
      }
    }
  }

  /** Whether there may be places that could not be read. */
  boolean isOpen() {
    return open;
  }

  /** The places as written, in their order. */
  Map<String, Node.Keyed> places() {
    Map<String, Node.Keyed> places = new LinkedHashMap<>();
    for (String name : order) {
      Node.Keyed place = byName.get(name);
      if (place != null) {
        places.put(name, place);
      }
    }
    return places;
  }

  /**
   * A list of names in which each place is followed by those that were added like it. A list that
   * names such a place itself has given it its rank already.
   */
  List<String> withAlike(List<String> names) {
    Set<String> named = new HashSet<>(names);
    List<String> all = new ArrayList<>();
    Deque<String> next = new ArrayDeque<>(names);
    while (!next.isEmpty()) {
      String name = next.removeFirst();
      all.add(name);
      List<String> others = new ArrayList<>(alike.getOrDefault(name, List.of()));
      others.removeIf(other -> !germinates(other) || !named.add(other));
      Collections.reverse(others);
      others.forEach(next::addFirst);
    }
    return all;
  }

  private boolean germinates(String name) {
    Node.Keyed place = byName.get(name);
    return place == null || !place.word("kind").equals(PlaceKind.HARDENING.word());
  }

  private void add(Node places, boolean first) {
    if (!(places instanceof Node.Items list)) {
      open = true;
      faults.wrong(places, "places is " + places.kind(), "a list of places");
      return;
    }
    Map<String, FilePosition> named = new HashMap<>();
    for (Node item : list.items()) {
      if (!(item instanceof Node.Keyed place)) {
        open = true;
        faults.wrong(item, item.kind() + " as a place", "a map such as {name: House 1, ...}");
        continue;
      }
      Node.Keyed known = KnownKeys.of(place, PlaceFields.KEYS, faults);
      Optional<String> name =
          new Fields("a place", place.spot(), known, PlaceFields.KEYS, faults).name("name");
      if (name.isEmpty()) {
        open = true;
        continue;
      }
      FilePosition spot = known.entry("name").map(e -> e.value().spot()).orElse(place.spot());
      FilePosition before = named.putIfAbsent(name.get(), spot);
      if (before != null) {
        faults.add(
            spot,
            "place " + FaultWords.shown(name.get()) + " again, first on line " + before.line(),
            "each place once");
      } else if (byName.containsKey(name.get())) {
        change(name.get(), known);
      } else {
        addNew(name.get(), spot, known, first);
      }
    }
  }

  private void change(String name, Node.Keyed change) {
    for (String key : List.of("like", "after")) {
      change
          .entry(key)
          .ifPresent(
              e ->
                  faults.add(
                      e.spot(),
                      key + " for a place that is there already",
                      "a new name, or no " + key));
    }
    byName.computeIfPresent(name, (n, old) -> changed(old, change.without("like", "after")));
  }

  /** A climate is another as a whole, for its keys shut each other out; a cost is not. */
  private static Node.Keyed changed(Node.Keyed old, Node.Keyed change) {
    return old.overlay(change).replacing(change.without("cost"));
  }

  private void addNew(String name, FilePosition spot, Node.Keyed written, boolean first) {
    Node.Keyed place = written.without("like", "after");
    Optional<String> like = standing("like", written);
    Node.Keyed model = like.map(byName::get).orElse(null);
    if (like.isPresent() && model != null) {
      alike.computeIfAbsent(like.get(), l -> new ArrayList<>()).add(name);
      place = model.replacing(place);
    } else if (written.has("like") || (open && !first)) {
      place = changed(Node.Keyed.unread(place.spot()), place);
    } else if (!first && !place.has("kind")) {
      open = true;
      faults.add(
          spot,
          "no place is named " + FaultWords.shown(name),
          FaultWords.nearOr(name, order, "kind, spaces and climate, or like, for a new place"));
      return;
    }
    byName.put(name, place);
    int rank = standing("after", written).map(a -> order.indexOf(a) + 1).orElse(order.size());
    order.add(rank, name);
  }

  /** The place, already there, that a new one refers to. */
  private Optional<String> standing(String key, Node.Keyed written) {
    Optional<Node> value = written.entry(key).map(Node.Entry::value);
    if (value.isEmpty() || value.get() instanceof Node.Unread) {
      return Optional.empty();
    }
    String name = written.word(key);
    if (byName.containsKey(name)) {
      return Optional.of(name);
    }
    if (!open || name.isEmpty()) {
      faults.add(
          value.get().spot(),
          key + " is " + value.get().kind(),
          FaultWords.oneOf(name, order).after("a place: "));
    }
    return Optional.empty();
  }
}
