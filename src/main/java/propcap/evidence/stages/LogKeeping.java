package propcap.evidence.stages;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;

/** How a log was kept, which decides what a row that is not there says. */
final class LogKeeping {
  /** From one place of a tray's to the next, after the heat. */
  static final List<LoggedEvent> MOVES =
      List.of(LoggedEvent.POTTED_ON, LoggedEvent.MOVED_OUT, LoggedEvent.PLANTED_OUT);

  private final LocalDate lastDay;
  private final int seasonDays;
  private final Map<String, Rows> crops = new HashMap<>();
  private final Map<String, Rows> sowings = new HashMap<>();

  LogKeeping(List<LoggedTray> log, int seasonDays) {
    this.seasonDays = seasonDays;
    lastDay = log.stream().map(LogKeeping::lastRow).max(LocalDate::compareTo).orElse(LocalDate.MIN);
    for (LoggedTray tray : log) {
      crops.merge(tray.crop(), Rows.of(tray), Rows::and);
      sowings.merge(tray.sowing(), Rows.of(tray), Rows::and);
    }
  }

  /** Trays that are written to have been ready, and those that were moved without that. */
  private record Rows(int ready, int movedUnsaid) {
    static Rows of(LoggedTray tray) {
      boolean isReady = tray.had(LoggedEvent.READY);
      return new Rows(isReady ? 1 : 0, !isReady && hasMoved(tray) ? 1 : 0);
    }

    Rows and(Rows more) {
      return new Rows(ready + more.ready, movedUnsaid + more.movedUnsaid);
    }

    boolean tells() {
      return ready + movedUnsaid > 0;
    }

    boolean areKept() {
      return ready > 0 && movedUnsaid == 0;
    }
  }

  static boolean hasMoved(LoggedTray tray) {
    return MOVES.stream().anyMatch(tray::had);
  }

  static LocalDate lastRow(LoggedTray tray) {
    return tray.entries().get(tray.entries().size() - 1).date();
  }

  /** The day up to which the log was kept. */
  LocalDate lastDay() {
    return lastDay;
  }

  /**
   * Whether a tray that never left may still be there: its last row is of the log's last season.
   */
  boolean isOfTheLastSeason(LoggedTray tray) {
    return lastRow(tray).isAfter(lastDay.minusDays(seasonDays));
  }

  /**
   * Whether trays are written to be ready before they are moved: those of the same sowing, or,
   * where none of them has come so far, those of the crop.
   */
  boolean writesReady(LoggedTray tray) {
    Rows sowing = sowings.getOrDefault(tray.sowing(), new Rows(0, 0));
    return (sowing.tells() ? sowing : crops.getOrDefault(tray.crop(), sowing)).areKept();
  }
}
