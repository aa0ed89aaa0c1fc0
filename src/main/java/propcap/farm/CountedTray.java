package propcap.farm;

import java.util.List;

/**
 * A tray of a germination test as it was counted, one inspection after the other.
 *
 * @param tempC temperature at which it stood, degrees C
 * @param tray which tray of its lot and temperature
 * @param seeds seeds sown in it
 * @param inspections in the order of time, at least one
 */
public record CountedTray(
    String lot, String crop, double tempC, String tray, int seeds, List<Inspection> inspections) {

  /**
   * A look at the tray.
   *
   * @param days since sowing
   * @param emerged seedlings that had shown by then
   */
  public record Inspection(double days, int emerged) {
    public Inspection {
      Checks.notNegative("time of an inspection", days);
      Checks.atLeast(0, "seedlings", emerged);
    }
  }

  public CountedTray {
    Checks.finite("temperature", tempC);
    Checks.atLeast(1, "seeds", seeds);
    inspections = List.copyOf(inspections);
    Checks.require(!inspections.isEmpty(), "a tray needs an inspection");
    double before = -1;
    int shown = 0;
    for (Inspection inspection : inspections) {
      Checks.require(
          inspection.days() > before, "times must rise, were " + before + ", " + inspection.days());
      Checks.require(
          inspection.emerged() >= shown,
          "counts must not fall, were " + shown + ", " + inspection.emerged());
      Checks.require(
          inspection.days() > 0 || inspection.emerged() == 0, "no seedling shows at time 0");
      before = inspection.days();
      shown = inspection.emerged();
    }
    Checks.require(before > 0, "a tray must be looked at after it was sown");
    Checks.require(shown <= seeds, "of " + seeds + " seeds cannot come " + shown + " seedlings");
  }

  /** Seedlings that had shown by the last inspection. */
  public int emerged() {
    return inspections.get(inspections.size() - 1).emerged();
  }

  /** Days from sowing to the last inspection. */
  public double lastDays() {
    return inspections.get(inspections.size() - 1).days();
  }
}
