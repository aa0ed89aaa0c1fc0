package propcap.evidence.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.evidence.stages.TrayEvidence.Count;
import propcap.evidence.stages.TrayEvidence.Leg;
import propcap.farm.Crop;
import propcap.farm.Loss;

/**
 * What a log says of losses by itself: of each stage by those counts between which nothing else
 * befell the plants, for what other counts say hangs on the crop list.
 *
 * @param loss on the table, outbreaks apart; null, as the others: nothing
 * @param chance of an outbreak in a tray
 */
record LossesByLogAlone(
    @Nullable Estimate loss,
    @Nullable Estimate chance,
    @Nullable Estimate potting,
    @Nullable Estimate hardening) {

  /**
   * Of trays.
   *
   * @param plugKeeps days that a ready plug keeps for certain
   * @param potKeeps days that a ready pot does
   */
  static LossesByLogAlone of(List<TrayCourse> trays, Crop crop, double plugKeeps, double potKeeps) {
    List<TrayCourse> tables = only(trays, Loss.GROWING_ON, plugKeeps, potKeeps);
    WarmthRequirement.Prior requirement =
        new WarmthRequirement.Prior(crop.growingOnDegreeDays(), crop.growingOn().spread(), 1);
    LossPosterior table =
        tables.isEmpty()
            ? null
            : new LossPosterior(
                new StagePrior(
                    crop,
                    1,
                    crop.growingOn().takesDays(),
                    true,
                    requirement,
                    new ReadyTimes(List.of(), List.of()),
                    tables),
                tables.stream().map(TrayLikelihood::new).toList());
    return new LossesByLogAlone(
        table == null ? null : table.estimate(StageParameters::loss),
        table == null ? null : table.estimate(StageParameters::chance),
        counted(only(trays, Loss.POTTING, plugKeeps, potKeeps)),
        counted(only(trays, Loss.HARDENING, plugKeeps, potKeeps)));
  }

  private static List<TrayCourse> only(
      List<TrayCourse> trays, Loss stage, double plugKeeps, double potKeeps) {
    return trays.stream()
        .map(t -> t.with(leg -> t.tellsOnly(stage, leg, plugKeeps, potKeeps)))
        .filter(t -> !t.legs().isEmpty())
        .toList();
  }

  /** The exact binomial interval of Clopper and Pearson (1934), Biometrika 26. */
  static @Nullable Estimate counted(List<TrayCourse> trays) {
    List<Count> counts = trays.stream().flatMap(t -> t.legs().stream()).map(Leg::count).toList();
    int plants = counts.stream().mapToInt(Count::plants).sum();
    int lost = counts.stream().mapToInt(Count::lost).sum();
    int kept = plants - lost;
    return plants == 0
        ? null
        : new Estimate(
            (double) lost / plants,
            lost == 0 ? 0 : new BetaBelief(lost, kept + 1).quantile(Estimate.TAIL),
            kept == 0 ? 1 : new BetaBelief(lost + 1, kept).quantile(1 - Estimate.TAIL));
  }
}
