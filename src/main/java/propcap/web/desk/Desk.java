package propcap.web.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import propcap.files.edit.ScenarioEditor;
import propcap.files.edit.YamlText;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.ScenarioReader.Reading;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.Fault;
import propcap.files.text.UnsavedTexts;
import propcap.web.request.RefusedException;

/**
 * The scenario that was opened, what is changed in it and beside it, and the steps back. What the
 * grower sees hangs on its version alone, which rises with each change.
 */
public final class Desk {
  private static final int MOST_WHAT_IFS = 5;

  private final Folder folder;
  private Path scenario;
  private DraftFile draftFile;
  private Draft draft;
  private final Steps steps = new Steps();
  private final Readings readings;

  /** What was saved here last, by file. */
  private final Map<Path, String> own = new HashMap<>();

  private final boolean isRestored;
  private Map<String, Long> times;
  private long version = 1;

  public Desk(Path scenario) throws IOException {
    this(scenario, Clock.system(ZoneId.systemDefault()));
  }

  /**
   * A desk for a scenario.
   *
   * @param clock what tells today
   */
  public Desk(Path scenario, Clock clock) throws IOException {
    this.readings = new Readings(clock);
    this.folder = new Folder(scenario.toAbsolutePath().normalize().resolveSibling(""));
    this.scenario = folder.root().resolve(scenario.getFileName());
    this.draftFile = new DraftFile(folder, scenario);
    Draft left = draftFile.read();
    this.draft = left.with(texts(left));
    this.isRestored = !draft.equals(Draft.NONE);
    this.times = folder.times();
  }

  /** What is done to a scenario's files. */
  @FunctionalInterface
  public interface Change {
    void with(ScenarioEditor editor, WrittenScenario written) throws IOException, RefusedException;
  }

  /** A fault that a change brings, and the scenario as it is written with that change. */
  public record NewFault(Fault fault, WrittenScenario written) {}

  private UnsavedTexts texts(Draft of) {
    return new UnsavedTexts(of.texts(), folder.disk());
  }

  public synchronized DeskView view(String name) throws IOException, RefusedException {
    Path shown = shown(name);
    return new DeskView(
        version,
        folder,
        scenario,
        shown,
        scenarios(),
        scenarios().stream().map(s -> reading(s).written().head().name()).toList(),
        texts(draft),
        reading(shown),
        readings.today(),
        readings.clockDay(),
        readings.day(),
        draft.conflicts(folder.disk()),
        steps.areBack(),
        steps.areForth(),
        isRestored);
  }

  public Folder folder() {
    return folder;
  }

  /** The scenario that was opened, then those beside it. */
  public synchronized List<Path> scenarios() {
    List<Path> all = new ArrayList<>(List.of(scenario));
    all.addAll(draft.whatIfs());
    return all;
  }

  public synchronized long version() {
    return version;
  }

  /** The name of the scenario that was opened; its file's where it has none. */
  public synchronized String name() {
    String name = reading(scenario).written().head().name();
    return name.isEmpty() ? folder.name(scenario) : name;
  }

  /** One of the scenarios on the desk, by its file's name; empty: the one that was opened. */
  public synchronized Path shown(String name) throws RefusedException {
    return name.isEmpty()
        ? scenario
        : scenarios().stream()
            .filter(s -> folder.name(s).equals(name))
            .findFirst()
            .orElseThrow(() -> new RefusedException(404, name + " is not open"));
  }

  public synchronized Reading reading(Path file) {
    return readings.of(file, scenario, texts(draft));
  }

  /** Goes on from another day; nothing is written by that. */
  public synchronized void choose(Readings.Day day) {
    if (!day.equals(readings.day())) {
      readings.choose(day);
      version++;
    }
  }

  /**
   * Changes a scenario on the desk, in one step.
   *
   * @param seen the version that the change was made on
   */
  public synchronized void change(String name, long seen, Change change)
      throws IOException, RefusedException {
    step(changed(name, seen, change));
  }

  /**
   * Writes in the log, if what is to be written there brings no fault.
   *
   * @param seen the version that it was written on
   * @return the faults; where there is one, nothing is written
   */
  public synchronized List<NewFault> log(String name, long seen, Change change)
      throws IOException, RefusedException {
    Draft next = changed(name, seen, change);
    List<NewFault> faults = newFaults(next, new LinkedHashSet<>(List.of(scenario, shown(name))));
    if (faults.isEmpty()) {
      step(next);
    }
    return faults;
  }

  /**
   * The faults that a change would bring; nothing is written.
   *
   * @param seen the version that it would be made on
   */
  public synchronized List<NewFault> trial(String name, long seen, Change change)
      throws IOException, RefusedException {
    return newFaults(changed(name, seen, change), List.of(shown(name)));
  }

  private List<NewFault> newFaults(Draft next, Collection<Path> files) {
    Readings trial = readings.onTrial();
    List<NewFault> faults = new ArrayList<>();
    for (Path each : files) {
      List<Fault> before = reading(each).faults();
      Reading after = trial.of(each, scenario, texts(next));
      after.faults().stream()
          .filter(fault -> !before.contains(fault))
          .map(fault -> new NewFault(fault, after.written()))
          .forEach(faults::add);
    }
    return faults;
  }

  private Draft changed(String name, long seen, Change change)
      throws IOException, RefusedException {
    requireSeen(seen);
    Path file = shown(name);
    ScenarioEditor editor = new ScenarioEditor(file, texts(draft));
    return draft.with(made(change, editor, reading(file).written()));
  }

  private UnsavedTexts made(Change change, ScenarioEditor editor, WrittenScenario written)
      throws IOException, RefusedException {
    try {
      change.with(editor, written);
    } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
      throw RefusedException.change(e.getMessage());
    }
    for (Path changed : editor.unsaved().texts().keySet()) {
      folder.inside(changed);
    }
    return editor.unsaved();
  }

  private void requireSeen(long seen) throws RefusedException {
    if (seen != version) {
      throw new RefusedException(409, "this was changed elsewhere meanwhile; look at it again");
    }
  }

  private void step(Draft next) throws IOException {
    if (!next.equals(draft)) {
      steps.add(draft);
      become(next);
    }
  }

  /** Nothing is changed here that is not on disk as well. */
  private void become(Draft next) throws IOException {
    draftFile.write(next);
    draft = next;
    times = folder.times();
    readings.forget();
    version++;
  }

  public synchronized void undo() throws IOException {
    if (steps.areBack()) {
      become(steps.back(draft));
    }
  }

  public synchronized void redo() throws IOException {
    if (steps.areForth()) {
      become(steps.forth(draft));
    }
  }

  /** Throws away what is changed; it can be had back by a step back. */
  public synchronized void discard() throws IOException {
    step(new Draft(Map.of(), draft.whatIfs().stream().filter(Files::exists).toList(), Map.of()));
  }

  /** Takes what the disk holds where it was changed both here and there. */
  public synchronized void takeDisk() throws IOException {
    Draft theirs = draft;
    for (Path file : draft.conflicts(folder.disk())) {
      theirs = theirs.without(file);
    }
    step(theirs);
  }

  /**
   * Looks whether the folder's files or the day are other than they were, and if so reads anew.
   *
   * @return whether they are
   */
  public synchronized boolean look() throws IOException {
    Map<String, Long> now = folder.times();
    boolean isOther = !now.equals(times) || readings.areOfYesterday();
    if (isOther) {
      times = now;
      readings.lookAnew();
      version++;
    }
    return isOther;
  }

  /** Puts a scenario beside the one that was opened: a new one that changes it. */
  public synchronized String addWhatIf(String title) throws IOException, RefusedException {
    return addWhatIf(title, scenario, (editor, written) -> {});
  }

  /**
   * Puts a scenario beside the one that was opened, changed from the first, in one step.
   *
   * @param of which it changes
   */
  public synchronized String addWhatIf(String title, Path of, Change change)
      throws IOException, RefusedException {
    requireRoom();
    if (title.isBlank() || title.length() > 60) {
      throw RefusedException.bad("a name of one line, at most 60 letters");
    }
    String stem =
        title.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    Path file = texts(draft).free(folder.root(), stem.isEmpty() ? "what-if" : stem, ".yaml");
    String text = YamlText.set("extends: base\n", List.of(Step.to("extends")), folder.name(of));
    text = YamlText.set(text, List.of(Step.to("name")), title);
    Draft begun = draft.with(texts(draft).with(folder.inside(file), text)).withWhatIf(file);
    ScenarioEditor editor = new ScenarioEditor(file, texts(begun));
    WrittenScenario written = readings.onTrial().of(file, scenario, texts(begun)).written();
    step(begun.with(made(change, editor, written)));
    return folder.name(file);
  }

  /** Puts a scenario of the folder beside the one that was opened. */
  public synchronized String openBeside(String name) throws IOException, RefusedException {
    requireRoom();
    Path file = folder.file(name, ".yaml");
    if (!Files.isRegularFile(file) || scenarios().contains(file)) {
      throw RefusedException.bad(name + " is no other scenario of this folder");
    }
    step(draft.withWhatIf(file));
    return name;
  }

  private void requireRoom() throws RefusedException {
    if (draft.whatIfs().size() >= MOST_WHAT_IFS) {
      throw RefusedException.bad(
          "at most " + MOST_WHAT_IFS + " stand side by side; close one first");
    }
  }

  public synchronized void closeBeside(String name) throws IOException, RefusedException {
    step(draft.withoutWhatIf(shown(name)));
  }

  /**
   * Writes what is changed.
   *
   * @param over what was changed on disk meanwhile too
   * @throws RefusedException with 409 where a file was changed on disk meanwhile
   */
  public synchronized Folder.Saved save(boolean over) throws IOException, RefusedException {
    folder.disk().forget();
    List<Path> conflicts = draft.conflicts(folder.disk());
    if (!over && !conflicts.isEmpty()) {
      throw new RefusedException(
          409,
          String.join(", ", conflicts.stream().map(folder::name).toList())
              + ": changed on disk since you began");
    }
    Map<Path, String> texts = new LinkedHashMap<>(draft.texts());
    Map<Path, String> before = new HashMap<>();
    for (Path file : texts.keySet()) {
      folder.inside(file);
      before.put(file, folder.disk().shown(file));
    }
    Folder.Saved saved = folder.write(texts, own);
    own.putAll(texts);
    steps.saved(before, texts);
    become(new Draft(Map.of(), draft.whatIfs(), Map.of()));
    return saved;
  }

  /**
   * Writes the scenario under another name, with what is changed in its lists in copies of their
   * own, and goes on with it. The files that it came from stay as they are.
   */
  public synchronized Folder.Saved saveAs(String name) throws IOException, RefusedException {
    Path file = folder.file(name, ".yaml");
    if (texts(draft).has(file)) {
      throw RefusedException.bad("there is a file " + name + " already");
    }
    UnsavedTexts copied = new SavedAs(folder, scenario, texts(draft)).under(file);
    Map<Path, String> texts = new LinkedHashMap<>(copied.texts());
    texts.keySet().removeAll(draft.texts().keySet());
    Folder.Saved saved = folder.write(texts, own);
    own.putAll(texts);
    draftFile.write(Draft.NONE);
    List<Path> whatIfs = draft.whatIfs().stream().filter(Files::exists).toList();
    scenario = file;
    draftFile = new DraftFile(folder, file);
    steps.clear();
    become(new Draft(Map.of(), whatIfs, Map.of()));
    return saved;
  }
}
