package propcap.files.edit;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import propcap.files.edit.YamlText.Step;
import propcap.files.log.LogRow;
import propcap.files.scenario.CropBook;
import propcap.files.scenario.SowingPlan;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.OnDisk;
import propcap.files.text.UnsavedTexts;

/**
 * Writes what a grower changes into a scenario's own files, and leaves all else in them as it was.
 * A scenario that extends another gets the change alone. A crop list or plan that lies outside the
 * scenario's folder is copied beside the scenario first, for others may use it.
 */
public final class ScenarioEditor {
  private final Path scenario;
  private final OwnFolder folder;
  private UnsavedTexts unsaved;
  private @Nullable Path plan;
  private @Nullable WrittenScenario written;

  public ScenarioEditor(Path scenario, UnsavedTexts unsaved) {
    this.scenario = OnDisk.key(scenario);
    this.folder = OwnFolder.of(this.scenario);
    this.unsaved = unsaved;
  }

  /** What was given, with all that was written. */
  public UnsavedTexts unsaved() {
    return unsaved;
  }

  /**
   * Puts a key of the scenario itself, such as {@code season.start}; an empty text takes it out.
   */
  public void setHead(String key, String text) throws IOException {
    put(scenario, EditedKeys.keys(key), EditedKeys.value(key, text));
  }

  /**
   * Puts a price of a crop's plants, such as {@code worth}; an empty text takes it out.
   *
   * @param crop {@code default}: of the crops without prices of their own
   */
  public void setPrice(String crop, String key, String text) throws IOException {
    put(scenario, List.of(Step.to("money"), Step.to("plants"), Step.to(crop), Step.to(key)), text);
  }

  /** Puts keys of a week with extra people, by its number; an empty text takes one out. */
  public void setExtraHands(int row, Map<String, String> keys) throws IOException {
    write(scenario, ExtraHands.set(unsaved.text(scenario), written(), row, keys));
  }

  /** Adds a week with extra people. */
  public void addExtraHands(Map<String, String> keys) throws IOException {
    write(scenario, ExtraHands.add(unsaved.text(scenario), written(), keys));
  }

  /** Takes a week with extra people out, by its number. */
  public void removeExtraHands(int row) throws IOException {
    write(scenario, ExtraHands.remove(unsaved.text(scenario), written(), row));
  }

  /** Takes another weather record: a file of this text, in the scenario's folder. */
  public void setWeather(Path file, String text) throws IOException {
    if (unsaved.has(file)) {
      throw new IllegalArgumentException("there is a file " + file.getFileName() + " already");
    }
    write(file, text);
    put(scenario, List.of(Step.to("weather")), String.valueOf(file.getFileName()));
  }

  /** Puts a key of a place, such as {@code climate.constant}; an empty text takes it out. */
  public void setPlace(String name, String key, String text) throws IOException {
    write(scenario, PlaceKeys.set(unsaved.text(scenario), written(), name, key, text));
  }

  /** Puts a place's climate as a whole. */
  public void setClimate(String name, Map<String, String> climate) throws IOException {
    write(scenario, PlaceKeys.setClimate(unsaved.text(scenario), name, climate));
  }

  /** Adds a place with these keys, its name among them. */
  public void addPlace(Map<String, String> keys) throws IOException {
    write(scenario, PlaceKeys.add(unsaved.text(scenario), keys));
  }

  /** Takes a place out that the scenario itself has written. */
  public void removePlace(String name) throws IOException {
    put(scenario, PlaceKeys.of(name), "");
  }

  /**
   * Gives a place another name, in all that names it.
   *
   * @param others the folder's scenarios, which may read the same files
   */
  public void renamePlace(String name, String to, Collection<Path> others) throws IOException {
    Set<Path> all = new LinkedHashSet<>(others);
    unsaved.texts().keySet().stream().filter(f -> f.toString().endsWith("ml")).forEach(all::add);
    unsaved = PlaceRename.of(scenario, all, unsaved, name, to);
    written = null;
  }

  /** Moves a place one up or down in the order. */
  public void movePlace(String name, boolean isUp) throws IOException {
    write(scenario, PlaceOrder.moved(scenario, unsaved, unsaved.text(scenario), name, isUp));
  }

  /** Puts a key of a crop, such as {@code emergence.at}; an empty text takes it out. */
  public void setCrop(String name, String key, String text) throws IOException {
    Path list = cropList();
    put(list, EditedKeys.path(crop(name), key), EditedKeys.value(key, text));
  }

  /** Adds a crop with these keys. */
  public void addCrop(String name, Map<String, String> keys) throws IOException {
    Path list = cropList();
    write(list, EditedKeys.put(unsaved.text(list), crop(name), keys));
  }

  /**
   * Adds a crop as a list has it, with its comments and sources.
   *
   * @param places that it germinates in, best first; none: as the entry has it
   */
  public void copyCrop(CropBook.Entry entry, List<String> places) throws IOException {
    Path list = cropList();
    write(list, CopiedCrop.into(unsaved.text(list), entry, places));
  }

  private static List<Step> crop(String name) {
    return List.of(Step.to("crops"), Step.to(name));
  }

  private Path cropList() throws IOException {
    if (isNamedHere("crops") || !isExtending()) {
      return ownFile("crops", ".yaml");
    }
    return scenario;
  }

  /** Puts columns of sowings, each by its number in the plan. */
  public void setSowings(Map<Integer, Map<String, String>> rows) throws IOException {
    List<WrittenScenario.Entry> sowings = written().sowings();
    boolean isPlain =
        rows.entrySet().stream()
            .allMatch(
                row ->
                    PlanChanges.isPlain(sowings.get(row.getKey()).name())
                        && (!row.getValue().containsKey("id")
                            || isAddedHere(sowings.get(row.getKey()))));
    if (isChangingAnothers() && isPlain) {
      String text = unsaved.text(scenario);
      for (Map.Entry<Integer, Map<String, String>> row : rows.entrySet()) {
        text = PlanChanges.set(text, sowings.get(row.getKey()).name(), row.getValue());
      }
      write(scenario, text);
      return;
    }
    Path file = ownPlan();
    List<WrittenScenario.Entry> own = written().sowings();
    Map<Integer, Map<String, String>> lines = new LinkedHashMap<>();
    rows.forEach((row, columns) -> lines.put(own.get(row).spot().line(), columns));
    write(file, CsvText.set(unsaved.text(file), lines));
  }

  /** Whether rows are those of a scenario that this one extends, and changes to them stand here. */
  private boolean isChangingAnothers() {
    return isExtending() && !isNamedHere("sowings");
  }

  private boolean isAddedHere(WrittenScenario.Entry sowing) {
    return OnDisk.key(sowing.spot().file()).equals(scenario);
  }

  /** Adds a sowing at the plan's end. */
  public void addSowing(Map<String, String> columns) throws IOException {
    addSowings(List.of(columns));
  }

  /** Adds sowings at the plan's end. */
  public void addSowings(List<Map<String, String>> rows) throws IOException {
    if (isChangingAnothers()
        && rows.stream().allMatch(row -> PlanChanges.isPlain(row.getOrDefault("id", "")))) {
      String text = unsaved.text(scenario);
      for (Map<String, String> row : rows) {
        text = PlanChanges.add(text, row);
      }
      write(scenario, text);
      return;
    }
    Path own = ownPlan();
    write(own, CsvText.add(unsaved.text(own), rows));
  }

  /** Takes a sowing out, by its number in the plan. */
  public void removeSowing(int row) throws IOException {
    WrittenScenario.Entry sowing = written().sowings().get(row);
    if (isChangingAnothers() && PlanChanges.isPlain(sowing.name())) {
      String text = unsaved.text(scenario);
      write(scenario, PlanChanges.remove(text, sowing.name(), isAddedHere(sowing)));
      return;
    }
    Path own = ownPlan();
    write(own, CsvText.remove(unsaved.text(own), written().sowings().get(row).spot().line()));
  }

  /** A scenario takes a whole plan of its own where a change to another's can't be told by ids. */
  private Path ownPlan() throws IOException {
    Path known = plan == null ? findPlan() : plan;
    plan = known;
    return known;
  }

  private Path findPlan() throws IOException {
    if (isNamedHere("sowings") || !isExtending()) {
      return ownFile("sowings", ".csv");
    }
    List<Map<String, String>> rows = new ArrayList<>();
    for (WrittenScenario.Entry sowing : written().sowings()) {
      Map<String, String> row = new LinkedHashMap<>();
      sowing.cells().forEach((column, cell) -> row.put(column, cell.text()));
      rows.add(row);
    }
    Path copy = folder.free(unsaved, scenario, "sowings", ".csv");
    write(copy, CsvText.of(SowingPlan.COLUMNS, rows));
    put(scenario, List.of(Step.to("sowings")), copy.getFileName().toString());
    return copy;
  }

  /** The file that a key names, in the scenario's folder; a copy there of one that lies outside. */
  private Path ownFile(String key, String ending) throws IOException {
    WrittenScenario.Cell named = written().head().cells().get(key);
    if (named == null) {
      throw new IOException(key + " names no file");
    }
    Path file = named.spot().file().resolveSibling(named.text());
    if (folder.holds(file)) {
      return file;
    }
    Path copy = folder.free(unsaved, scenario, key, ending);
    write(copy, unsaved.text(file));
    put(scenario, List.of(Step.to(key)), copy.getFileName().toString());
    return copy;
  }

  private boolean isExtending() {
    return isNamedHere("extends");
  }

  /** Whether the scenario's own file names a file under a key. */
  private boolean isNamedHere(String key) {
    WrittenScenario.Cell cell = written().head().cells().get(key);
    return cell != null && OnDisk.key(cell.spot().file()).equals(scenario);
  }

  private WrittenScenario written() {
    WrittenScenario known = written == null ? WrittenScenario.of(scenario, unsaved) : written;
    written = known;
    return known;
  }

  // The log of the season.

  /** Adds a row to the log of this season, in the columns that it has. */
  public void addLogRow(Map<String, String> columns) throws IOException {
    Path log = log();
    String before = unsaved.text(log);
    List<String> known = CsvText.columns(before);
    for (Map.Entry<String, String> column : columns.entrySet()) {
      if (!column.getValue().isEmpty() && !known.contains(column.getKey())) {
        throw new IllegalArgumentException(
            log.getFileName() + " has no column " + column.getKey() + "; add it to its header");
      }
    }
    write(log, CsvText.add(before, columns));
  }

  /** Takes a row out of the log of this season, by its number there. */
  public void removeLogRow(int row) throws IOException {
    Path log = log();
    write(log, CsvText.remove(unsaved.text(log), written().log().get(row).spot().line()));
  }

  /** Begins a log of this season in a new file beside the scenario, which names it from now on. */
  public void keepLog() throws IOException {
    if (written().logFile().isPresent()) {
      throw new IllegalArgumentException("it names a log already");
    }
    Path file = unsaved.free(folder.path(), "log", ".csv");
    write(file, CsvText.of(LogRow.WRITTEN, List.of()));
    put(scenario, List.of(Step.to("so-far")), String.valueOf(file.getFileName()));
  }

  private Path log() {
    return written()
        .logFile()
        .orElseThrow(() -> new IllegalArgumentException("the scenario names no log"));
  }

  private void write(Path file, String text) {
    unsaved = unsaved.with(file, text);
    written = null;
  }

  private void put(Path file, List<Step> path, Object value) throws IOException {
    write(file, YamlText.put(unsaved.text(file), path, value));
  }
}
