package propcap.evidence.stages;

import propcap.farm.Crop;

/**
 * How many days a crop takes in each stage, where nothing waits and no tray is luckier than
 * another. Infinite where it stands still: too cold, or too hot to come up.
 *
 * @param halfShow from sowing until half of the seedlings that will ever show have shown
 * @param mostShow from sowing until nine in ten have
 * @param growingOn on the table as a plug
 * @param inPots on the table in a pot; 0 unless the crop is always potted on
 * @param hardening fit days outdoors
 */
public record StageDays(
    double halfShow, double mostShow, double growingOn, double inPots, double hardening) {
  private static final int DAYS_A_WEEK = 7;

  /** Where chamber and table are held at one temperature, degrees C. */
  public static StageDays at(Crop crop, double tempC) {
    return at(crop, tempC, tempC);
  }

  /** At the temperatures that the crop's own days are given for. */
  public static StageDays asGiven(Crop crop) {
    return at(crop, crop.emergence().atC(), crop.growingOn().atC());
  }

  private static StageDays at(Crop crop, double showingC, double growingC) {
    Crop.Emergence emergence = crop.emergence();
    double halfShow = emergence.medianDegreeDays() / emergence.rate(showingC);
    double mostShow = halfShow * emergence.mostByDays() / emergence.halfByDays();
    double rate = crop.growingOn().rate(growingC);
    boolean always = crop.pottingOn().when() == Crop.PottingOn.When.ALWAYS;
    return new StageDays(
        halfShow,
        mostShow,
        crop.growingOnDegreeDays() / rate,
        always ? crop.pottedDegreeDays() / rate : 0,
        crop.hardening().takesDays());
  }

  /** Whether it shows at all. */
  public boolean comesUp() {
    return Double.isFinite(halfShow);
  }

  /** Whether it grows once it shows. */
  public boolean growsOn() {
    return Double.isFinite(growingOn + inPots);
  }

  /** Weeks from sowing to the bed at the earliest: a tray that leaves the heat at half. */
  public double weeksToBed() {
    return (halfShow + growingOn + inPots + hardening) / DAYS_A_WEEK;
  }
}
