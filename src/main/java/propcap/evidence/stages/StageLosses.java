package propcap.evidence.stages;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
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
    Listed listed = new Listed(crop, weight);
    int growing = with(trays, Loss.GROWING_ON);
    int potted = with(trays, Loss.POTTING);
    int hardened = with(trays, Loss.HARDENING);
    int held =
        (int) trays.stream().filter(t -> isHeld(t, lnDegreeDays, listed.holdsDays().low())).count();
    if (trays.isEmpty()) {
      return new StageLosses(
          Learned.nothing(listed.loss()),
          Learned.nothing(listed.chance()),
          Learned.nothing(listed.severity()),
          List.of(),
          Learned.nothing(listed.potting()),
          Learned.nothing(listed.hardening()),
          Learned.nothing(listed.holdsDays()),
          Learned.nothing(listed.overheld()));
    }
    List<TrayLikelihood> likelihoods = trays.stream().map(TrayLikelihood::new).toList();
    LossPosterior both =
        new LossPosterior(
            new StagePrior(crop, weight, takesDays, false, requirement, ready, trays), likelihoods);
    Learned holds = learned(listed.holdsDays(), both, null, StageParameters::holdsDays, held);
    LossesByLogAlone alone =
        LossesByLogAlone.of(trays, crop, holds.learned().low(), listed.potHoldsDays().low());
    StageParameters middle = both.middle();
    List<Double> outbreaks =
        IntStream.range(0, trays.size())
            .filter(i -> trays.get(i).has(Loss.GROWING_ON))
            .mapToObj(i -> likelihoods.get(i).chanceOfOutbreak(middle))
            .toList();
    double struck = outbreaks.stream().mapToDouble(Double::doubleValue).sum();
    int struckTrays = struck < 0.5 ? 0 : (int) Math.max(1, Math.round(struck));
    return new StageLosses(
        learned(listed.loss(), both, alone.loss(), StageParameters::loss, growing),
        learned(listed.chance(), both, alone.chance(), StageParameters::chance, growing),
        learned(listed.severity(), both, null, StageParameters::severity, struckTrays),
        outbreaks,
        learned(listed.potting(), both, alone.potting(), StageParameters::potting, potted),
        learned(listed.hardening(), both, alone.hardening(), StageParameters::hardening, hardened),
        holds,
        learned(listed.overheld(), both, null, StageParameters::overheld, held));
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

  private static Learned learned(
      Estimate listed,
      LossPosterior both,
      @Nullable Estimate alone,
      ToDoubleFunction<StageParameters> figure,
      int trays) {
    return trays == 0
        ? Learned.nothing(listed)
        : new Learned(listed, alone, both.estimate(figure), trays);
  }

  /** The figures of the crop list, with the error that their weight amounts to. */
  private record Listed(Crop crop, double weight) {
    private Estimate share(double listed, double trials) {
      return BetaBelief.of(listed, trials).around(listed);
    }

    private double plants() {
      return weight * crop.cells();
    }

    Estimate loss() {
      return share(crop.growingOn().loss(), plants());
    }

    Estimate chance() {
      return share(crop.growingOn().dampingOff().chance(), weight);
    }

    Estimate severity() {
      return share(
          StagePrior.listedSeverity(crop), Stages.LISTED_OUTBREAKS * Stages.OUTBREAK_WEIGHS);
    }

    Estimate potting() {
      return share(crop.pottingOn().loss(), plants());
    }

    Estimate hardening() {
      return share(crop.hardening().loss(), plants());
    }

    Estimate overheld() {
      return share(crop.growingOn().overheldLossPerDay(), plants());
    }

    Estimate holdsDays() {
      return days(crop.growingOn().holdsDays());
    }

    Estimate potHoldsDays() {
      return days(crop.pottingOn().holdsDays());
    }

    private Estimate days(double days) {
      double factor = Math.exp(1.96 / Math.sqrt(weight));
      double middle = Math.max(StagePrior.LEAST_DAYS, days);
      return Estimate.within(days, middle / factor, middle * factor);
    }
  }
}
