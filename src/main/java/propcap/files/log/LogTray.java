package propcap.files.log;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.files.text.FaultWords;
import propcap.past.WrittenTray;

/** The rows of one tray of a log, in the order of the file. */
public final class LogTray {
  private static final int MOST_NAMED = 3;

  private final String sowing;
  private final String name;
  private final int rank;

  /** Its rows that were right. */
  private final List<WrittenTray.Entry> entries = new ArrayList<>();

  private final Map<LoggedEvent, Integer> lines = new EnumMap<>(LoggedEvent.class);
  private @Nullable LoggedEvent last;
  private @Nullable String crop;
  private @Nullable LocalDate firstDate;
  private @Nullable LocalDate lastDate;
  private @Nullable Integer alive;
  private int showing;
  private boolean moreThanCells;

  /**
   * A tray without a row.
   *
   * @param rank its number, or the lowest that no other tray of its sowing has, from 1
   */
  LogTray(String sowing, String name, int rank) {
    this.sowing = sowing;
    this.name = name;
    this.rank = rank;
  }

  /** What some trays of one sowing are called in a fault. */
  static String names(List<LogTray> trays) {
    List<String> names = trays.stream().map(t -> t.name).toList();
    return (trays.size() == 1 ? "tray " : "trays ")
        + (names.size() > MOST_NAMED
            ? FaultWords.some(names, MOST_NAMED)
            : FaultWords.listed(names))
        + " of "
        + trays.get(0).sowing;
  }

  /** It had an event, right or wrong; from here on it can't have what comes before that. */
  void had(LoggedEvent event, int line) {
    if (lines.putIfAbsent(event, line) == null || event.mayComeAgain()) {
      last = event;
    }
  }

  /** What keeps an event from coming next; empty where nothing does. */
  Optional<String> unfit(LoggedEvent event) {
    Integer before = lines.get(event);
    if (before != null && !event.mayComeAgain()) {
      return Optional.of("again, first on line " + before);
    }
    return lines.keySet().stream()
        .filter(earlier -> !event.canFollow(earlier))
        .findFirst()
        .map(earlier -> "after it was " + earlier.word());
  }

  /** Whether it stands where an event takes trays from. */
  boolean isFor(LoggedEvent event, Crop.PottingOn.When potting) {
    return last != null
        && event.takes(last, potting)
        && (!lines.containsKey(event) || event.mayComeAgain());
  }

  boolean had(LoggedEvent event) {
    return lines.containsKey(event);
  }

  void dated(LocalDate date) {
    firstDate = firstDate == null ? date : firstDate;
    lastDate = date;
  }

  void counted(LoggedEvent event, int plants) {
    if (event == LoggedEvent.COUNTED) {
      showing = plants;
    } else {
      alive = plants;
    }
  }

  void add(WrittenTray.Entry entry) {
    entries.add(entry);
  }

  /** The most plants that it can have by the rows before; {@code otherwise} where none tells. */
  int most(int otherwise) {
    return alive == null ? otherwise : alive;
  }

  /** The fewest that it can have. */
  int least(LoggedEvent event) {
    return event == LoggedEvent.COUNTED ? showing : 0;
  }

  Optional<LocalDate> firstDate() {
    return Optional.ofNullable(firstDate);
  }

  Optional<LocalDate> lastDate() {
    return Optional.ofNullable(lastDate);
  }

  public Optional<String> crop() {
    return Optional.ofNullable(crop);
  }

  void isOf(String itsCrop) {
    crop = itsCrop;
  }

  /** Whether this is the first time that it is said to have more plants than cells. */
  public boolean isFirstTooMany() {
    boolean first = !moreThanCells;
    moreThanCells = true;
    return first;
  }

  public String sowing() {
    return sowing;
  }

  public String name() {
    return name;
  }

  int rank() {
    return rank;
  }

  public List<WrittenTray.Entry> entries() {
    return entries;
  }

  public Optional<WrittenTray.Entry> at(LoggedEvent event) {
    return entries.stream().filter(e -> e.event() == event).findFirst();
  }
}
