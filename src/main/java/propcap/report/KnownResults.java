package propcap.report;

import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** The files by which a folder of results is known: each answer's, and keys that it must hold. */
enum KnownResults {
  FORECAST("summary.json", "scenario sowings waiting"),
  COMPARISON("comparison.json", "scenarios confidence outcomes"),
  BOTTLENECK("bottleneck.json", "scenario worths steps"),
  SIZE("size.json", "scenario goal candidates"),
  SHIFT("shift.json", "scenario confidence groups"),
  PLAN("plan.json", "scenario gain changes"),
  CALENDAR("calendar.json", "scenario tasks days"),
  ORDER("order.json", "scenario chance sowings lots"),
  GERMINATION_FIT("germination-fit.json", "counts version lots"),
  GERMINATION("germination.json", "counts version groups"),
  STAGES("stages.json", "scenario listedTrays crops"),
  FROST("frost.json", "record thresholds releases");

  private final String file;

  /** Apart by spaces, since an enum holds nothing that can change. */
  private final String keys;

  KnownResults(String file, String keys) {
    this.file = file;
    this.keys = keys;
  }

  String file() {
    return file;
  }

  /** Whether a folder holds a file that this program wrote. */
  static boolean areIn(Path folder) {
    return Arrays.stream(values()).anyMatch(known -> known.isIn(folder));
  }

  private boolean isIn(Path folder) {
    Path path = folder.resolve(file);
    if (!Files.isRegularFile(path)) {
      return false;
    }
    try (Reader in = Files.newBufferedReader(path)) {
      JsonElement results = JsonParser.parseReader(in);
      return results.isJsonObject()
          && results.getAsJsonObject().keySet().containsAll(List.of(keys.split(" ", -1)));
    } catch (IOException | JsonParseException e) {
      return false;
    }
  }
}
