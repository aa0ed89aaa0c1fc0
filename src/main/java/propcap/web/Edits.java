package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import propcap.files.edit.ScenarioEditor;
import propcap.files.scenario.WrittenScenario;
import propcap.web.desk.Folder;
import propcap.web.desk.Readings;
import propcap.web.request.RefusedException;
import propcap.web.request.RequestFields;
import propcap.web.typed.TypedCells;

/** What a grower does on the page, carried out on the scenario's files. */
record Edits(Folder folder, List<RequestFields> edits) {
  private static final int MOST = 5_000;
  private static final Pattern KEY =
      Pattern.compile("[a-z]+(?:-[a-z]+)*(?:\\.[a-z]+(?:-[a-z]+)*)*");

  /** Keys that name a table. */
  private static final Set<String> FILES = Set.of("weather", "so-far", "weather-so-far");

  private static final Pattern NAME = Pattern.compile("\\S(?:.{0,58}\\S)?");

  Edits {
    edits = List.copyOf(edits);
  }

  /** Whether they are new rows of the log and nothing else. */
  boolean areRows() throws RefusedException {
    boolean areRows = !edits.isEmpty();
    for (RequestFields edit : edits) {
      areRows &= edit.text("do").equals("log");
    }
    return areRows;
  }

  void write(ScenarioEditor editor, WrittenScenario written) throws IOException, RefusedException {
    if (edits.size() > MOST) {
      throw RefusedException.bad("more than " + MOST + " changes at once");
    }
    TypedCells typed = new TypedCells(Readings.season(written).orElse(null));
    Map<Integer, Map<String, String>> sowings = new LinkedHashMap<>();
    for (RequestFields edit : edits) {
      switch (edit.text("do")) {
        case "sowing" -> of(row(edit), sowings).putAll(keyed(edit, typed));
        case "shift" -> of(row(edit), sowings).putAll(shifted(edit, written));
        default -> {
          flush(sowings, editor);
          write(edit, editor, written, typed);
        }
      }
    }
    flush(sowings, editor);
  }

  private static Map<String, String> of(int row, Map<Integer, Map<String, String>> sowings) {
    return sowings.computeIfAbsent(row, r -> new LinkedHashMap<>());
  }

  /** Many fields that were pasted, and many sowings that were moved, are written at once. */
  private static void flush(Map<Integer, Map<String, String>> sowings, ScenarioEditor editor)
      throws IOException {
    if (!sowings.isEmpty()) {
      editor.setSowings(sowings);
      sowings.clear();
    }
  }

  private void write(
      RequestFields edit, ScenarioEditor editor, WrittenScenario written, TypedCells typed)
      throws IOException, RefusedException {
    String what = edit.text("do");
    switch (what) {
      case "head" -> head(edit, editor, typed);
      case "price" -> editor.setPrice(name(edit), key(edit), value(edit, typed));
      case "record" ->
          editor.setWeather(folder.file(edit.text("name"), ".csv"), edit.longText("text"));
      case "place" -> editor.setPlace(name(edit), key(edit), value(edit, typed));
      case "climate" -> editor.setClimate(name(edit), keyed(edit, typed));
      case "add-place" -> editor.addPlace(keyed(edit, typed));
      case "remove-place" -> editor.removePlace(name(edit));
      case "rename-place" -> editor.renamePlace(name(edit), name(edit, "to"), scenarios());
      case "move-place" -> editor.movePlace(name(edit), edit.isTrue("up"));
      case "crop" -> editor.setCrop(name(edit), key(edit), value(edit, typed));
      case "add-crop" -> addCrop(edit, editor, written);
      case "copy-crop" -> BroughtCrops.copy(name(edit), editor, written);
      case "add-sowing" -> editor.addSowing(keyed(edit, typed));
      case "extra" -> editor.setExtraHands(row(edit), keyed(edit, typed));
      case "add-extra" -> editor.addExtraHands(keyed(edit, typed));
      case "remove-extra" -> editor.removeExtraHands(row(edit));
      case "remove-sowing" -> editor.removeSowing(row(edit));
      case "keep-log" -> editor.keepLog();
      case "log" -> editor.addLogRow(keyed(edit, typed));
      case "take-back" -> editor.removeLogRow(row(edit));
      default -> throw RefusedException.bad("'" + what + "' is nothing that can be done");
    }
  }

  /**
   * A weather record or a log is one of the folder's; which files else are named is not changed
   * here.
   */
  private void head(RequestFields edit, ScenarioEditor editor, TypedCells typed)
      throws IOException, RefusedException {
    String key = key(edit);
    if (List.of("crops", "sowings", "extends", "places").contains(key)) {
      throw RefusedException.bad(key + " cannot be changed here");
    }
    if (FILES.contains(key) && !folder.tables().contains(edit.text("value"))) {
      throw RefusedException.bad(
          "'" + edit.text("value") + "' is no table in the scenario's folder");
    }
    editor.setHead(key, typed.read(key, edit.text("value")));
  }

  private static void addCrop(RequestFields edit, ScenarioEditor editor, WrittenScenario written)
      throws IOException, RefusedException {
    String like = edit.text("like");
    Map<String, String> keys = new LinkedHashMap<>();
    for (WrittenScenario.Entry crop : written.crops()) {
      if (crop.name().equals(like)) {
        crop.cells().forEach((key, cell) -> keys.put(key, cell.text()));
      }
      if (crop.name().equals(name(edit))) {
        throw RefusedException.bad("there is a crop " + crop.name() + " already");
      }
    }
    if (keys.isEmpty()) {
      throw RefusedException.bad("there is no crop '" + like + "'");
    }
    editor.addCrop(name(edit), keys);
  }

  /** Moves a sowing by days: it and its sowing again move, the beds wait. */
  private static Map<String, String> shifted(RequestFields edit, WrittenScenario written)
      throws RefusedException {
    int days = edit.number("days", -400, 400);
    int row = row(edit);
    Map<String, String> moved = new LinkedHashMap<>();
    for (String column : List.of("sow", "resow-until")) {
      String date = written.sowings().get(row).text(column);
      if (!date.isEmpty()) {
        try {
          moved.put(column, LocalDate.parse(date).plusDays(days).toString());
        } catch (DateTimeException e) {
          throw RefusedException.bad(column + " is no date: '" + date + "'");
        }
      }
    }
    return moved;
  }

  private static int row(RequestFields edit) throws RefusedException {
    return edit.number("row", 0, Integer.MAX_VALUE);
  }

  private List<Path> scenarios() throws IOException {
    return folder.scenarios().stream().map(folder.root()::resolve).toList();
  }

  private static String name(RequestFields edit) throws RefusedException {
    return name(edit, "name");
  }

  private static String name(RequestFields edit, String key) throws RefusedException {
    String name = edit.text(key);
    if (!NAME.matcher(name).matches()) {
      throw RefusedException.bad("a name of one line, at most 60 letters");
    }
    return name;
  }

  private static String key(RequestFields edit) throws RefusedException {
    return known(edit.text("key"));
  }

  private static String known(String key) throws RefusedException {
    if (!KEY.matcher(key).matches()) {
      throw RefusedException.bad("'" + key + "' is no key");
    }
    return key;
  }

  private static String value(RequestFields edit, TypedCells typed) throws RefusedException {
    return typed.read(key(edit), edit.text("value"));
  }

  private static Map<String, String> keyed(RequestFields edit, TypedCells typed)
      throws RefusedException {
    Map<String, String> keys = edit.texts("keys");
    for (String key : keys.keySet()) {
      var unused = known(key);
    }
    return typed.read(keys);
  }
}
