package propcap.web.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.files.text.OnDisk;
import propcap.files.text.UnsavedTexts;

/**
 * What has been changed and not saved.
 *
 * @param texts in the place of files
 * @param whatIfs scenarios that stand beside the one that was opened
 * @param seen for each drafted file, what the disk held when it was first changed; empty: nothing
 */
record Draft(Map<Path, String> texts, List<Path> whatIfs, Map<Path, String> seen) {
  static final Draft NONE = new Draft(Map.of(), List.of(), Map.of());

  Draft {
    texts = Map.copyOf(texts);
    whatIfs = List.copyOf(whatIfs);
    seen = Map.copyOf(seen);
  }

  /** With other texts; a file that is as it is on disk is no draft. */
  Draft with(UnsavedTexts changed) throws IOException {
    Map<Path, String> textsNow = new LinkedHashMap<>();
    Map<Path, String> seenNow = new LinkedHashMap<>();
    for (Map.Entry<Path, String> text : changed.texts().entrySet()) {
      String disk = changed.disk().shown(text.getKey());
      if (!text.getValue().equals(disk)) {
        textsNow.put(text.getKey(), text.getValue());
        seenNow.put(text.getKey(), seen.getOrDefault(text.getKey(), disk));
      }
    }
    return new Draft(textsNow, whatIfs, seenNow);
  }

  Draft withWhatIf(Path file) {
    List<Path> more = new ArrayList<>(whatIfs);
    more.add(file);
    return new Draft(texts, more, seen);
  }

  /** Without a scenario beside the first; what was changed in it is gone with it. */
  Draft withoutWhatIf(Path file) {
    List<Path> fewer = new ArrayList<>(whatIfs);
    fewer.remove(file);
    return new Draft(texts, fewer, seen).without(file);
  }

  /** Without what was changed in a file. */
  Draft without(Path file) {
    Map<Path, String> seenStill = new LinkedHashMap<>(seen);
    seenStill.remove(file);
    Map<Path, String> textsStill = new LinkedHashMap<>(texts);
    textsStill.remove(file);
    return new Draft(textsStill, whatIfs, seenStill);
  }

  /**
   * The drafted files that have been changed on disk meanwhile. One that holds the draft's own text
   * was saved, and the program killed before it could note that.
   */
  List<Path> conflicts(OnDisk files) throws IOException {
    List<Path> conflicts = new ArrayList<>();
    for (Map.Entry<Path, String> file : seen.entrySet()) {
      String disk = files.shown(file.getKey());
      if (!disk.equals(file.getValue()) && !disk.equals(texts.get(file.getKey()))) {
        conflicts.add(file.getKey());
      }
    }
    return conflicts.stream().sorted().toList();
  }

  /**
   * This step back, from files that have been written since.
   *
   * @param before what the written files held
   * @param written what they hold now
   */
  Draft beforeSaving(Map<Path, String> before, Map<Path, String> written) {
    Map<Path, String> older = new LinkedHashMap<>(texts);
    Map<Path, String> seenThen = new LinkedHashMap<>(seen);
    for (Map.Entry<Path, String> file : written.entrySet()) {
      String was = before.getOrDefault(file.getKey(), "");
      if (!was.isEmpty()) {
        older.putIfAbsent(file.getKey(), was);
      }
      seenThen.put(file.getKey(), file.getValue());
    }
    seenThen.keySet().retainAll(older.keySet());
    return new Draft(older, whatIfs, seenThen);
  }
}
