package propcap.farm;

import java.util.Optional;

/** What is done to a tray, in the order in which it sees it. */
public enum TrayTask implements Worded {
  SOW(WorkKind.SOW),
  /** In the place of a tray that failed. */
  SOW_AGAIN(WorkKind.SOW),
  OFF_HEAT(WorkKind.MOVE),
  /** Down to one seedling a cell, once the tray has left the heat. */
  THIN(WorkKind.THIN),
  POT_ON(WorkKind.POT_ON),
  MOVE_OUT(WorkKind.MOVE),
  PLANT_OUT(WorkKind.PLANT_OUT);

  private final WorkKind work;

  TrayTask(WorkKind work) {
    this.work = work;
  }

  /** What its hours go into. */
  public WorkKind work() {
    return work;
  }

  /** What is written in the log when it is done; empty where nothing is. */
  public Optional<LoggedEvent> logged() {
    return switch (this) {
      case SOW, SOW_AGAIN -> Optional.of(LoggedEvent.SOWN);
      case OFF_HEAT -> Optional.of(LoggedEvent.OFF_HEAT);
      case THIN -> Optional.empty();
      case POT_ON -> Optional.of(LoggedEvent.POTTED_ON);
      case MOVE_OUT -> Optional.of(LoggedEvent.MOVED_OUT);
      case PLANT_OUT -> Optional.of(LoggedEvent.PLANTED_OUT);
    };
  }

  public boolean isSowing() {
    return work == WorkKind.SOW;
  }
}
