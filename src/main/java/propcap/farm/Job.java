package propcap.farm;

/** What is done to a tray, in the order in which it sees it. */
public enum Job implements Worded {
  SOW(Work.SOW),
  /** In the place of a tray that failed. */
  SOW_AGAIN(Work.SOW),
  OFF_HEAT(Work.MOVE),
  /** Down to one seedling a cell, once the tray has left the heat. */
  THIN(Work.THIN),
  POT_ON(Work.POT_ON),
  MOVE_OUT(Work.MOVE),
  PLANT_OUT(Work.PLANT_OUT);

  private final Work work;

  Job(Work work) {
    this.work = work;
  }

  /** What its hours go into. */
  public Work work() {
    return work;
  }

  public boolean isSowing() {
    return work == Work.SOW;
  }
}
