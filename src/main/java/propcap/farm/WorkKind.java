package propcap.farm;

/** What people's hours go into, in the order in which a round comes to it. */
public enum WorkKind implements Worded {
  PLANT_OUT("plant"),
  /** A tray, or a tray of pots, from one place to another. */
  MOVE("tray"),
  /** Down to one seedling a cell. */
  THIN("tray"),
  POT_ON("plant"),
  /** The tray filled, sown and set into the heat. */
  SOW("tray");

  private final String unit;

  WorkKind(String unit) {
    this.unit = unit;
  }

  /** What its minutes are counted by: tray or plant. */
  public String unit() {
    return unit;
  }
}
