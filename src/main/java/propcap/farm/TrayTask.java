package propcap.farm;

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

  public boolean isSowing() {
    return work == WorkKind.SOW;
  }
}
