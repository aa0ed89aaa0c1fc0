package propcap.farm;

import java.util.List;

/**
 * A crop for tests, sure in all things unless told otherwise: every seed comes up, all at 90 degree
 * days (4.5 days at 20 C), every tray grows for 200 (10 days at 20 C), no plant is lost.
 */
public final class Crops {
  public String name = "cosmos";
  public int cells = 10;
  public int seedsPerCell = 1;
  public Crop.Germination germination = new Crop.Germination(1, 0, 0);
  public Crop.Emergence emergence = new Crop.Emergence(0, 30, 40, 20, 4.5, 4.5 * (1 + 1e-12));
  public List<String> germinateIn = List.of("Mats");
  public double leaveAt = 0.5;
  public double pullAfterDays = 21;
  public double standWindowDays = 5;
  public double failBelow = 0.25;
  public double takesDays = 10;
  public double spread = 0;
  public double loss = 0;
  public Crop.DampingOff dampingOff = Crop.DampingOff.NONE;
  public double holdsDays = 7;
  public double overheldLossPerDay = 0;
  public Crop.PottingOn pottingOn = Crop.PottingOn.NEVER;
  public Crop.Hardening hardening = new Crop.Hardening(3, 2, -2, 0, 0, 1, 0);

  public Crop make() {
    return new Crop(
        name,
        cells,
        seedsPerCell,
        germination,
        emergence,
        germinateIn,
        leaveAt,
        pullAfterDays,
        standWindowDays,
        failBelow,
        new Crop.GrowingOn(
            0, 30, 20, takesDays, spread, loss, dampingOff, holdsDays, overheldLossPerDay),
        pottingOn,
        hardening,
        Materials.NOT_KNOWN);
  }
}
