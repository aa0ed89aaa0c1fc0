package propcap.files.scenario;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.FilePosition;
import propcap.files.text.KnownKeys;
import propcap.files.text.Node;
import propcap.files.text.OnDisk;
import propcap.files.text.SourceText;
import propcap.files.text.UnsavedTexts;
import propcap.files.text.YamlFile;

/**
 * A scenario file and those that it extends, one changed by the next.
 *
 * @param files the first extends none, the last is the scenario that was asked for
 * @param whole whether all of them could be read
 * @param unsaved what stands in for files, these and those that they name
 */
public record Layers(List<Node.Keyed> files, boolean whole, UnsavedTexts unsaved) {
  private static final List<String> KEYS =
      List.of(
          "name",
          "extends",
          "season",
          "crops",
          "sowings",
          "weather",
          "so-far",
          "weather-so-far",
          "frost-at",
          "rounds",
          "places",
          "labour",
          "money");

  public static Layers read(Path scenario, UnsavedTexts unsaved, Faults faults) {
    List<Node.Keyed> files = new ArrayList<>();
    Set<Path> seen = new HashSet<>();
    Path file = scenario;
    FilePosition named = FilePosition.whole(scenario);
    boolean whole = false;
    while (true) {
      if (!seen.add(identity(file))) {
        String path = FaultWords.shownPath(file);
        faults.add(named, "the scenario extends itself by way of " + path, "no circle");
        break;
      }
      Optional<Node.Keyed> read = YamlFile.read(file, named, unsaved, faults);
      if (read.isEmpty()) {
        break;
      }
      Node.Keyed map = KnownKeys.of(read.get(), KEYS, faults);
      files.add(map);
      Optional<Node.Entry> base = map.entry("extends");
      if (base.isEmpty()) {
        whole = true;
        break;
      }
      named = base.get().value().spot();
      Optional<Path> next = SourceText.named("extends", base.get().value(), faults);
      if (next.isEmpty()) {
        break;
      }
      file = next.get();
    }
    Collections.reverse(files);
    return new Layers(List.copyOf(files), whole, unsaved);
  }

  private static Path identity(Path file) {
    try {
      return file.toRealPath();
    } catch (IOException e) {
      return OnDisk.key(file);
    }
  }

  /** Reports the keys that none of the files has. */
  void reportMissing(Path scenario, List<String> keys, Faults faults) {
    for (String key : keys) {
      if (whole && written(key).isEmpty()) {
        faults.add(FilePosition.whole(scenario), key + " is missing", "the key " + key);
      }
    }
  }

  /** Whether one place stands in a scenario that changes the one where the other stands. */
  boolean isLater(FilePosition spot, FilePosition than) {
    return rank(spot) > rank(than);
  }

  /** Which of the files it stands in; -1: none, but in one that they name. */
  private int rank(FilePosition spot) {
    return files.stream().map(f -> f.spot().file()).toList().indexOf(spot.file());
  }

  /** The scenario as it stands when each file has replaced the keys that it writes. */
  public Node.Keyed merged(Path scenario) {
    FilePosition spot = FilePosition.whole(scenario);
    Node.Keyed merged = new Node.Keyed(spot, Map.of(), !whole);
    for (Node.Keyed file : files) {
      Node.Keyed own = file.without("name", "extends", "crops", "sowings", "places");
      merged = merged.overlay(own);
    }
    return files.isEmpty() ? merged : withName(merged);
  }

  /** A scenario's name is its own: the file's, where none is written. */
  private Node.Keyed withName(Node.Keyed merged) {
    return files
        .get(files.size() - 1)
        .entry("name")
        .map(n -> merged.with("name", n))
        .orElse(merged);
  }

  /**
   * What is written under a key: the last value that stands for itself, and the changes to it that
   * came after.
   */
  public List<Node.Entry> written(String key) {
    List<Node.Entry> written = new ArrayList<>();
    for (Node.Keyed file : files) {
      file.entry(key)
          .ifPresent(
              entry -> {
                if (entry.value() instanceof Node.Text) {
                  written.clear();
                }
                written.add(entry);
              });
    }
    return written;
  }
}
