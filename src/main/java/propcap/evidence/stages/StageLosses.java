package propcap.evidence.stages;

import java.util.List;
import java.util.stream.IntStream;
import propcap.evidence.stages.StagePrior.Figure;
import propcap.farm.Crop;
import propcap.farm.Loss;

/**
 * What trays lost, stage by stage, and how long ready plugs keep, all found together: a count that
 * stages share, or of which it is not known how long the plugs had been held, tells of their sum.
 *
 * @param loss on the table, outbreaks apart
 * @param chance of an outbreak of damping-off in a tray
 * @param severity mean share that one takes
 * @param outbreaks chance that a tray had one, for each with a stand and a later count
 * @param potting loss in potting on
 * @param hardening loss in hardening off
 * @param holdsDays that a ready plug keeps
 * @param overheld loss of a day beyond them
 */
record StageLosses(
    Learned loss,
    Learned chance,
    Learned severity,
    List<Double> outbreaks,
    Learned potting,
    Learned hardening,
    Learned holdsDays,
    Learned overheld) {
  StageLosses {
    outbreaks = List.copyOf(outbreaks);
  }

  /**
   * Fits.
   *
   * @param weight how many trays the list weighs
   * @param takesDays that growing on takes
   * @param lnDegreeDays the mean logarithm of the degree days that it takes
   */
  static StageLosses fit(
      Crop crop,
      List<TrayCourse> all,
      double weight,
      WarmthRequirement.Prior requirement,
      ReadyTimes ready,
      double takesDays,
      double lnDegreeDays) {
    List<TrayCourse> trays = all.stream().filter(t -> !t.legs().isEmpty()).toList();
    List<TrayLikelihood> likelihoods = trays.stream().map(TrayLikelihood::new).toList();
    StagePrior prior = new StagePrior(crop, weight, takesDays, false, requirement, ready, trays);
    LossPosterior both = new LossPosterior(prior, likelihoods);
    int growing = with(trays, Loss.GROWING_ON);
    double leastDays = prior.estimate(Figure.LN_HOLDS).low();
    int held = (int) trays.stream().filter(t -> isHeld(t, lnDegreeDays, leastDays)).count();
    Learned holds = both.learned(Figure.LN_HOLDS, StageParameters::holdsDays, null, held);
    LossesByLogAlone alone =
        LossesByLogAlone.of(
            trays, crop, holds.learned().low(), prior.estimate(Figure.LN_POT_HOLDS).low());
    StageParameters middle = both.middle();
    List<Double> outbreaks =
        IntStream.range(0, trays.size())
            .filter(i -> trays.get(i).has(Loss.GROWING_ON))
            .mapToObj(i -> likelihoods.get(i).chanceOfOutbreak(middle))
            .toList();
    double struck = outbreaks.stream().mapToDouble(Double::doubleValue).sum();
    int struckTrays = struck < 0.5 ? 0 : (int) Math.max(1, Math.round(struck));
    return new StageLosses(
        both.learned(Figure.LOSS, StageParameters::loss, alone.loss(), growing),
        both.learned(Figure.CHANCE, StageParameters::chance, alone.chance(), growing),
        both.learned(Figure.SEVERITY, StageParameters::severity, null, struckTrays),
        outbreaks,
        both.learned(
            Figure.POTTING, StageParameters::potting, alone.potting(), with(trays, Loss.POTTING)),
        both.learned(
            Figure.HARDENING,
            StageParameters::hardening,
            alone.hardening(),
            with(trays, Loss.HARDENING)),
        holds,
        both.learned(Figure.OVERHELD, StageParameters::overheld, null, held));
  }

  private static int with(List<TrayCourse> trays, Loss stage) {
    return (int) trays.stream().filter(t -> t.has(stage)).count();
  }

  /** Whether a plug was held long enough to tell how long plugs keep, as far as is known. */
  private static boolean isHeld(TrayCourse tray, double lnDegreeDays, double leastDays) {
    WarmthCourse warmth = tray.warmth();
    double ready =
        warmth == null
            ? tray.readyBy()
            : Math.min(warmth.when(Math.exp(lnDegreeDays)), tray.readyBy());
    return tray.legs().stream().anyMatch(leg -> tray.plugBeyond(leg, ready, leastDays) > 0);
  }
}
