package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import propcap.files.Drafts;

/**
 * What has been changed and not saved.
 *
 * @param drafts texts in the place of files
 * @param whatIfs scenarios that stand beside the one that was opened
 * @param seen for each drafted file, what the disk held when it was first changed; empty: nothing
 */
record Draft(Drafts drafts, List<Path> whatIfs, Map<Path, String> seen) {
  static final Draft NONE = new Draft(Drafts.NONE, List.of(), Map.of());

  Draft {
    whatIfs = List.copyOf(whatIfs);
    seen = Map.copyOf(seen);
  }

  /** With other drafts; a file that is as it is on disk is no draft. */
  Draft with(Drafts changed) throws IOException {
    Map<Path, String> texts = new LinkedHashMap<>();
    Map<Path, String> seenNow = new LinkedHashMap<>();
    for (Map.Entry<Path, String> text : changed.texts().entrySet()) {
      String disk = Folder.read(text.getKey());
      if (!text.getValue().equals(disk)) {
        texts.put(text.getKey(), text.getValue());
        seenNow.put(text.getKey(), seen.getOrDefault(text.getKey(), disk));
      }
    }
    return new Draft(new Drafts(texts), whatIfs, seenNow);
  }

  Draft withWhatIf(Path file) {
    List<Path> more = new ArrayList<>(whatIfs);
    more.add(file);
    return new Draft(drafts, more, seen);
  }

  /** Without a scenario beside the first; what was changed in it is gone with it. */
  Draft withoutWhatIf(Path file) {
    List<Path> fewer = new ArrayList<>(whatIfs);
    fewer.remove(file);
    return new Draft(drafts, fewer, seen).without(file);
  }

  /** Without what was changed in a file. */
  Draft without(Path file) {
    Map<Path, String> seenStill = new LinkedHashMap<>(seen);
    seenStill.remove(file);
    return new Draft(drafts.without(file), whatIfs, seenStill);
  }

  /**
   * The drafted files that have been changed on disk meanwhile. One that holds the draft's own text
   * was saved, and the program killed before it could note that.
   */
  List<Path> conflicts() throws IOException {
    List<Path> conflicts = new ArrayList<>();
    for (Map.Entry<Path, String> file : seen.entrySet()) {
      String disk = Folder.read(file.getKey());
      if (!disk.equals(file.getValue()) && !drafts.of(file.getKey()).equals(Optional.of(disk))) {
        conflicts.add(file.getKey());
      }
    }
    return conflicts.stream().sorted().toList();
  }

  /**
   * The same step back, from files that have been written since.
   *
   * @param before what the written files held
   * @param written what they hold now
   */
  Draft beforeSaving(Map<Path, String> before, Map<Path, String> written) {
    Drafts older = drafts;
    Map<Path, String> seenThen = new LinkedHashMap<>(seen);
    for (Map.Entry<Path, String> file : written.entrySet()) {
      String was = before.getOrDefault(file.getKey(), "");
      if (older.of(file.getKey()).isEmpty() && !was.isEmpty()) {
        older = older.with(file.getKey(), was);
      }
      seenThen.put(file.getKey(), file.getValue());
    }
    seenThen.keySet().retainAll(older.texts().keySet());
    return new Draft(older, whatIfs, seenThen);
  }
}
