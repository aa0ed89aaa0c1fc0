package propcap.files.scenario;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import propcap.farm.Crop;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.Right;
import propcap.files.text.SourceText;
import propcap.files.text.UnsavedTexts;
import propcap.files.text.YamlFile;

/** The crop list of a scenario, with the changes of those that extend it. */
final class CropList {
  private final PlaceList places;
  private final UnsavedTexts unsaved;
  private final Faults faults;
  private final Map<String, CropFields> byName = new LinkedHashMap<>();
  private final Map<String, Crop> crops = new HashMap<>();
  private boolean open;

  CropList(Layers layers, PlaceList places, Faults faults) {
    this.places = places;
    this.unsaved = layers.unsaved();
    this.faults = faults;
    Node.Keyed written = written(layers);
    this.open = written.open();
    written
        .entries()
        .forEach(
            (name, entry) -> {
              Optional<CropFields> fields = fields(name, entry, faults);
              open |= fields.isEmpty();
              fields.ifPresent(
                  f -> {
                    byName.put(name, f);
                    f.read(places::withAlike).ifPresent(crop -> crops.put(name, crop));
                  });
            });
  }

  /** A crop's fields as they are written; none where it is no crop, which is reported. */
  static Optional<CropFields> fields(String name, Node.Entry entry, Faults faults) {
    if (!(entry.value() instanceof Node.Keyed map)) {
      faults.wrong(
          entry.value(),
          "crop " + FaultWords.shown(name) + " is " + entry.value().kind(),
          "a map such as {cells: 72, ...}");
      return Optional.empty();
    }
    if (!FaultWords.isName(name)) {
      faults.add(
          entry.spot(), FaultWords.shown(name) + " as a crop's name", "one line, 60 letters");
      return Optional.empty();
    }
    return Optional.of(new CropFields(name, entry, map, faults));
  }

  /** Whether there may be crops that could not be read. */
  boolean isOpen() {
    return open;
  }

  /** All crops by name, right or wrong. */
  Map<String, CropFields> byName() {
    return byName;
  }

  /** The places that a crop may germinate in, those added beside them included. */
  List<String> placesOf(String name) {
    CropFields crop = byName.get(name);
    return crop == null
        ? List.of()
        : places.withAlike(crop.places().stream().map(p -> p.text().strip()).toList());
  }

  /** The crops that are right. */
  Map<String, Crop> crops() {
    return crops;
  }

  private Node.Keyed written(Layers layers) {
    List<Node.Entry> written = layers.written("crops");
    FilePosition nowhere = new FilePosition(Path.of(""), 0, 0);
    // A list that is missing altogether is reported with the scenario's other missing keys.
    Node.Keyed list = Node.Keyed.unread(nowhere);
    for (int i = 0; i < written.size(); i++) {
      Node value = written.get(i).value();
      if (value instanceof Node.Keyed changes && i > 0) {
        list = changed(list, changes);
      } else if (value instanceof Node.Keyed changes && !layers.whole()) {
        list = list.overlay(changes);
      } else {
        list = SourceText.named("crops", value, faults).flatMap(f -> file(f, value)).orElse(list);
      }
    }
    return list;
  }

  private Node.Keyed changed(Node.Keyed list, Node.Keyed changes) {
    Node.Keyed known = changes;
    for (String name : changes.entries().keySet()) {
      Node.Entry entry = changes.entries().get(name);
      Right right = FaultWords.nearOr(name, list.entries().keySet(), "");
      boolean whole =
          entry.value() instanceof Node.Keyed crop && crop.has("cells") && crop.has("emergence");
      if (!list.has(name) && !whole && right.slip() != null) {
        faults.add(entry.spot(), "no crop " + FaultWords.shown(name), right);
        known = known.without(name);
      }
    }
    return list.overlay(known);
  }

  private Optional<Node.Keyed> file(Path file, Node named) {
    return YamlFile.read(file, named.spot(), unsaved, faults)
        .flatMap(root -> listed(file, root, faults));
  }

  /** The crops of a file that holds a list of them. */
  static Optional<Node.Keyed> listed(Path file, Node.Keyed root, Faults faults) {
    return new Fields("", FilePosition.whole(file), root, List.of("crops"), faults)
        .keyed("crops", "a map of crops by name")
        .filter(
            crops -> {
              if (crops.entries().isEmpty() && !crops.open()) {
                faults.add(crops.spot(), "no crop in the list", "at least one crop");
              }
              return !crops.entries().isEmpty();
            });
  }
}
