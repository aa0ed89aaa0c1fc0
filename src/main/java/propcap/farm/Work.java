package propcap.farm;

import java.util.Locale;

/** What people's hours go into, in the order in which a round comes to it. */
public enum Work {
  PLANT_OUT("plant"),
  /** A tray, or a tray of pots, from one place to another. */
  MOVE("tray"),
  /** Down to one seedling a cell. */
  THIN("tray"),
  POT_ON("plant"),
  /** The tray filled, sown and set into the heat. */
  SOW("tray");

  private final String unit;

  Work(String unit) {
    this.unit = unit;
  }

  /** What its minutes are counted by: tray or plant. */
  public String unit() {
    return unit;
  }

  /** The word used in files and reports, such as {@code pot-on}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
