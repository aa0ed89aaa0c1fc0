package propcap.web.desk;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;

/** The drafts that were on a desk before, and those that were gone back from. */
final class Steps {
  private static final int MOST_BACK = 200;

  private final Deque<Draft> undo = new ArrayDeque<>();
  private final Deque<Draft> redo = new ArrayDeque<>();

  boolean areBack() {
    return !undo.isEmpty();
  }

  boolean areForth() {
    return !redo.isEmpty();
  }

  /** A step from a draft to another. */
  void add(Draft before) {
    undo.push(before);
    if (undo.size() > MOST_BACK) {
      undo.removeLast();
    }
    redo.clear();
  }

  /** The draft before this one. */
  Draft back(Draft now) {
    redo.push(now);
    return undo.pop();
  }

  /** The draft that was gone back from to this one. */
  Draft forth(Draft now) {
    undo.push(now);
    return redo.pop();
  }

  /**
   * Files have been written since: what is behind leads back over that, and there is no way forth.
   *
   * @param before what the written files held
   * @param written what they hold now
   */
  void saved(Map<Path, String> before, Map<Path, String> written) {
    List<Draft> back = undo.stream().map(d -> d.beforeSaving(before, written)).toList();
    clear();
    undo.addAll(back);
  }

  void clear() {
    undo.clear();
    redo.clear();
  }
}
