package propcap.files.edit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import propcap.files.text.OnDisk;
import propcap.files.text.UnsavedTexts;

/** A scenario's folder: only what lies in it is changed, for what lies elsewhere others may use. */
record OwnFolder(Path path) {
  static OwnFolder of(Path scenario) {
    return new OwnFolder(scenario.resolveSibling(""));
  }

  /** Whether a file lies in it, wherever links lead. */
  boolean holds(Path file) throws IOException {
    return Files.exists(file)
        ? file.toRealPath().startsWith(path.toRealPath())
        : OnDisk.key(file).startsWith(path);
  }

  /** A new file for what a scenario names by a key. */
  Path free(UnsavedTexts unsaved, Path scenario, String key, String ending) {
    String stem = String.valueOf(scenario.getFileName()).replaceFirst("\\.ya?ml$", "") + "-" + key;
    return unsaved.free(path, stem, ending);
  }
}
