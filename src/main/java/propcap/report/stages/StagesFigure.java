package propcap.report.stages;

import java.util.ArrayList;
import java.util.List;
import propcap.evidence.Estimate;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.Learned;
import propcap.report.kit.Words;

/**
 * A figure of the crop list that a log tells of.
 *
 * @param key in files for other programs
 * @param word in a spreadsheet, as the crop list names it
 * @param title on the page
 * @param isDays whether it is in days rather than a share
 */
record StagesFigure(String key, String word, String title, boolean isDays, Learned learned) {

  static List<StagesFigure> of(CropStages crop) {
    List<StagesFigure> figures = new ArrayList<>();
    figures.add(
        new StagesFigure(
            "takesDays", "growing-on takes", "Growing on takes", true, crop.takesDays()));
    figures.add(
        new StagesFigure("spread", "growing-on spread", "Spread of trays", false, crop.spread()));
    figures.add(
        new StagesFigure("loss", "growing-on loss", "Lost on the table", false, crop.loss()));
    figures.add(
        new StagesFigure(
            "outbreakChance",
            "damping-off chance",
            "Damping-off, trays",
            false,
            crop.outbreakChance()));
    figures.add(
        new StagesFigure(
            "severity", "damping-off severity", "Damping-off, plants", false, crop.severity()));
    figures.add(
        new StagesFigure(
            "holdsDays", "growing-on holds", "Ready plugs keep", true, crop.holdsDays()));
    figures.add(
        new StagesFigure(
            "overheldLoss", "overheld-loss", "Held too long, a day", false, crop.overheldLoss()));
    Learned potting = crop.pottingLoss();
    if (potting != null) {
      figures.add(
          new StagesFigure("pottingLoss", "potting-on loss", "Lost in potting on", false, potting));
    }
    figures.add(
        new StagesFigure(
            "hardeningLoss", "hardening loss", "Lost hardening off", false, crop.hardeningLoss()));
    return figures;
  }

  /** A figure in its unit. */
  String text(double value) {
    return isDays ? StagesWords.days(value) + " days" : Words.percent(value);
  }

  /** Its interval in its unit. */
  String interval(Estimate estimate) {
    return isDays
        ? StagesWords.days(estimate.low()) + "–" + StagesWords.days(estimate.high())
        : StagesWords.percents(estimate);
  }
}
