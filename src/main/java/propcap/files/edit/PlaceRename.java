package propcap.files.edit;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.Layers;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.Node;
import propcap.files.text.OnDisk;
import propcap.files.text.SourceText;
import propcap.files.text.UnsavedTexts;

/**
 * Another name for a place, in all that names it: the list of places, what is like it or after it,
 * the crops and sowings that germinate in it, and the log. The folder's other scenarios that read
 * one of these files go along, so that none is left with a name that no place has.
 */
final class PlaceRename {
  private static final List<String> IN_CROPS =
      List.of("crops.*.germinate-in", "crops.*.germinate-in.*");
  private static final List<String> IN_SCENARIO =
      List.of(
          "places.*.name",
          "places.*.like",
          "places.*.after",
          "sowings.*.germinate-in",
          IN_CROPS.get(0),
          IN_CROPS.get(1));

  /** What a file is to a scenario. */
  private enum Part {
    SCENARIO,
    CROPS,
    SOWINGS,
    LOG
  }

  /**
   * A file of a scenario's.
   *
   * @param namedIn the file of the scenario that names it; itself for a scenario
   */
  private record Used(Path file, Part part, Path namedIn) {}

  private final OwnFolder folder;
  private final UnsavedTexts before;
  private final String from;
  private final String to;
  private final Set<Used> copied = new HashSet<>();
  private UnsavedTexts after;

  private PlaceRename(OwnFolder folder, UnsavedTexts unsaved, String from, String to) {
    this.folder = folder;
    this.before = unsaved;
    this.after = unsaved;
    this.from = from;
    this.to = to;
  }

  /**
   * The texts with a place renamed.
   *
   * @param others the folder's other scenarios
   * @throws IllegalArgumentException where the name is taken or what names the place can't be
   *     changed, with the reason
   */
  static UnsavedTexts of(
      Path scenario, Collection<Path> others, UnsavedTexts unsaved, String from, String to)
      throws IOException {
    if (to.contains(",")) {
      throw new IllegalArgumentException(
          "a name without a comma, for that parts the places of a crop");
    }
    PlaceRename rename = new PlaceRename(OwnFolder.of(scenario), unsaved, from, to);
    return rename.made(scenario, others);
  }

  private UnsavedTexts made(Path scenario, Collection<Path> others) throws IOException {
    Set<Path> family = new LinkedHashSet<>(List.of(scenario));
    Map<Path, String> changed = new LinkedHashMap<>();
    int known;
    do {
      known = family.size();
      for (Path each : family) {
        rename(used(each), changed);
      }
      for (Path other : others) {
        if (used(other).stream().anyMatch(u -> changed.containsKey(OnDisk.key(u.file())))) {
          family.add(other);
        }
      }
    } while (family.size() > known);
    for (Map.Entry<Path, String> each : changed.entrySet()) {
      after = after.with(each.getKey(), each.getValue());
    }
    for (Path each : family) {
      requireNoNewFault(each);
    }
    return after;
  }

  private void requireNoNewFault(Path scenario) {
    List<Fault> now = ScenarioReader.read(scenario, after).faults();
    List<Fault> was = ScenarioReader.read(scenario, before).faults();
    if (now.size() > was.size()) {
      throw new IllegalArgumentException(
          "it would leave this wrong in "
              + scenario.getFileName()
              + ": "
              + now.stream().filter(f -> !was.contains(f)).findFirst().orElse(now.get(0)).found());
    }
  }

  /** All files of a scenario's that may name a place. */
  private List<Used> used(Path scenario) {
    Faults unheard = new Faults();
    Layers layers = Layers.read(scenario, before, unheard);
    List<Used> used = new ArrayList<>();
    layers.files().stream()
        .map(layer -> layer.spot().file())
        .forEach(file -> used.add(new Used(file, Part.SCENARIO, file)));
    named(layers.written("crops"), Part.CROPS, used);
    named(layers.written("sowings"), Part.SOWINGS, used);
    layers.merged(scenario).entry("so-far").ifPresent(e -> named(List.of(e), Part.LOG, used));
    return used;
  }

  private static void named(List<Node.Entry> written, Part part, List<Used> used) {
    for (Node.Entry entry : written) {
      if (entry.value() instanceof Node.Text) {
        Optional<Path> file = SourceText.named(part.name(), entry.value(), new Faults());
        file.ifPresent(f -> used.add(new Used(f, part, entry.value().spot().file())));
      }
    }
  }

  private void rename(List<Used> files, Map<Path, String> changed) throws IOException {
    for (Used used : files) {
      Path file = OnDisk.key(used.file());
      if (changed.containsKey(file) || !before.has(file)) {
        continue;
      }
      String text = before.text(file);
      String renamed = renamed(used, text, from);
      if (!renamed(used, text, to).equals(text)) {
        throw new IllegalArgumentException(
            "there is a place " + to + " already, in " + file.getFileName());
      }
      if (renamed.equals(text)) {
        continue;
      }
      if (folder.holds(file)) {
        changed.put(file, renamed);
      } else if (copied.add(used)) {
        copy(used, renamed, changed);
      }
    }
  }

  /** The text of a file in which a name is another one: the new one, or one that nothing has. */
  private String renamed(Used used, String text, String name) {
    String other = name.equals(from) ? to : from + to;
    try {
      return switch (used.part()) {
        case SCENARIO -> YamlItems.renamed(text, IN_SCENARIO, name, other);
        case CROPS -> YamlItems.renamed(text, IN_CROPS, name, other);
        case SOWINGS -> CsvText.renamed(text, "germinate-in", name, other);
        case LOG -> CsvText.renamed(text, "place", name, other);
      };
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(used.file().getFileName() + ": " + e.getMessage(), e);
    }
  }

  /** A list that lies elsewhere may be read by others: it is copied, and the copy named. */
  private void copy(Used used, String renamed, Map<Path, String> changed) throws IOException {
    Path scenario = OnDisk.key(used.namedIn());
    boolean isList = used.part() == Part.CROPS || used.part() == Part.SOWINGS;
    if (!isList || !folder.holds(scenario)) {
      throw new IllegalArgumentException(
          used.file().getFileName()
              + " names "
              + from
              + " and lies in another folder, where nothing is written from here");
    }
    String key = used.part() == Part.CROPS ? "crops" : "sowings";
    String ending = used.part() == Part.CROPS ? ".yaml" : ".csv";
    Path copy = OnDisk.key(folder.free(before, scenario, key, ending));
    String text = changed.getOrDefault(scenario, before.text(scenario));
    String namesCopy =
        YamlText.set(text, List.of(Step.to(key)), String.valueOf(copy.getFileName()));
    changed.put(copy, renamed);
    changed.put(scenario, YamlItems.renamed(namesCopy, IN_SCENARIO, from, to));
  }
}
