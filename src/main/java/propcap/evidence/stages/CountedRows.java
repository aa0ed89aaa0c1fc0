package propcap.evidence.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;
import propcap.farm.LoggedTray.Entry;

/** A tray's rows with counts, but for those that stand in the middle of a stage. */
final class CountedRows {
  private final LoggedTray tray;

  CountedRows(LoggedTray tray) {
    this.tray = tray;
  }

  /** From the stand on, one for the end of each stage that was counted. */
  List<Entry> kept() {
    List<Entry> kept = new ArrayList<>();
    counted(LoggedEvent.OFF_HEAT).ifPresent(kept::add);
    if (diedOnTheTable()) {
      // Whether of damping-off or of being held, the stand and its end are all that tells.
      return kept.isEmpty() ? List.of() : List.of(kept.get(0), diedOut().orElseThrow());
    }
    Optional<Entry> potted = counted(LoggedEvent.POTTED_ON);
    Optional<Entry> movedOut = counted(LoggedEvent.MOVED_OUT);
    Optional<Entry> planted = tray.had(LoggedEvent.MOVED_OUT) ? end() : Optional.empty();
    boolean isCountedLater = potted.isPresent() || movedOut.isPresent() || planted.isPresent();
    lastOnTheTable(isCountedLater).ifPresent(kept::add);
    potted.ifPresent(kept::add);
    movedOut.ifPresent(kept::add);
    planted.ifPresent(kept::add);
    for (int i = 0; i < kept.size(); i++) {
      if (plants(kept.get(i)) == 0) {
        return List.copyOf(kept.subList(0, i + 1));
      }
    }
    return kept;
  }

  /**
   * The count at which growing on was over: that of the ready plugs, or of damping-off among them.
   * One of damping-off before that is in the middle of growing on, and is taken only for want of a
   * later one.
   */
  private Optional<Entry> lastOnTheTable(boolean isCountedLater) {
    Optional<Entry> ready = counted(LoggedEvent.READY);
    Optional<Entry> outbreak = counted(LoggedEvent.OUTBREAK);
    boolean isOver = follows(LoggedEvent.OUTBREAK, LoggedEvent.READY);
    boolean isAllThereIs = ready.isEmpty() && !isCountedLater;
    return outbreak.filter(o -> isOver || isAllThereIs).or(() -> ready);
  }

  private boolean follows(LoggedEvent later, LoggedEvent earlier) {
    List<LoggedEvent> events = tray.entries().stream().map(Entry::event).toList();
    return events.contains(earlier) && events.indexOf(later) > events.indexOf(earlier);
  }

  private boolean diedOnTheTable() {
    return diedOut().isPresent() && !LogKeeping.hasMoved(tray);
  }

  private Optional<Entry> diedOut() {
    return counted(LoggedEvent.THROWN_OUT).filter(e -> plants(e) == 0);
  }

  private Optional<Entry> end() {
    return counted(LoggedEvent.PLANTED_OUT).or(this::diedOut);
  }

  private Optional<Entry> counted(LoggedEvent event) {
    return tray.at(event).filter(e -> e.plants() != null);
  }

  private static int plants(Entry entry) {
    return Optional.ofNullable(entry.plants()).orElse(0);
  }
}
