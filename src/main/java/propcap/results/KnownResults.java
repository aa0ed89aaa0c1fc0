package propcap.results;

import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Every answer that is written: into which folder, in which files, and how it is known again. */
public enum KnownResults {
  FORECAST(
      "",
      "summary.json",
      "scenario sowings waiting",
      "report.html sowings.csv places.csv losses.csv hands.csv seasons.csv"),
  COMPARISON(
      "-compare",
      "comparison.json",
      "scenarios confidence outcomes",
      "comparison.html comparison.csv comparison-money.csv"),
  BOTTLENECK(
      "-bottleneck",
      "bottleneck.json",
      "scenario worths steps",
      "bottleneck.html bottleneck.csv bottleneck-steps.csv"),
  SIZE("-size", "size.json", "scenario goal candidates", "size.html size.csv size-order.csv"),
  SHIFT("-shift", "shift.json", "scenario confidence groups", "shift.html shift.csv"),
  LATEST(
      "-latest",
      "latest.json",
      "scenario tooLate sowings",
      "latest.html latest.csv latest-days.csv"),
  SWEEP("-sweep", "sweep.json", "scenario best scenarios", "sweep.html sweep.csv"),
  PLAN("-plan", "plan.json", "scenario gain changes", "plan.html sowings.csv plan-changes.csv"),
  CALENDAR(
      "-calendar",
      "calendar.json",
      "scenario tasks days",
      "weeks.html months.html labels.html calendar.ics calendar.csv"),
  ORDER("-order", "order.json", "scenario chance sowings lots", "order.html order.csv"),
  GERMINATION_FIT(
      "-germination",
      "germination-fit.json",
      "counts version lots",
      "germination-fit.html germination-fit.csv"),
  GERMINATION(
      "-indices", "germination.json", "counts version groups", "germination.html germination.csv"),
  STAGES(
      "-stages",
      "stages.json",
      "scenario listedTrays crops",
      "stages.html stages.csv stage-trays.csv stages.yaml"),
  FROST(
      "-frost",
      "frost.json",
      "record thresholds releases",
      "frost.html frost.csv frost-days.csv frost-releases.csv");

  private final String ending;
  private final String json;

  /** Apart by spaces, since an enum holds nothing that can change. */
  private final String keys;

  private final String others;

  /**
   * An answer.
   *
   * @param json its file for other programs
   * @param keys that this file must hold
   * @param others the other files
   */
  KnownResults(String ending, String json, String keys, String others) {
    this.ending = ending;
    this.json = json;
    this.keys = keys;
    this.others = others;
  }

  /**
   * What the name of the folder ends in where none is given, after the name of the scenario's file.
   */
  public String ending() {
    return ending;
  }

  /** The file for other programs. */
  public String file() {
    return json;
  }

  /** All files that it has. */
  public List<String> files() {
    return Stream.concat(Stream.of(json), Arrays.stream(others.split(" ", -1))).toList();
  }

  /** Its name in a record of what was written. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether a folder holds this answer, as far as its file for other programs tells. */
  public boolean isIn(Path folder) {
    Path path = folder.resolve(json);
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
