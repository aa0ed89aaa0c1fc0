package propcap.evidence;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
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
      Requirement.Prior requirement,
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
    Found both =
        new Found(
            new StageBelief(crop, weight, takesDays, false, requirement, ready, trays),
            likelihoods);
    Found alone =
        new Found(
            new StageBelief(crop, weight, takesDays, true, requirement, ready, trays), likelihoods);
    StageGuess mean = both.mean();
    List<Double> outbreaks =
        IntStream.range(0, trays.size())
            .filter(i -> trays.get(i).has(Loss.GROWING_ON))
            .mapToObj(i -> likelihoods.get(i).chanceOfOutbreak(mean))
            .toList();
    double struck = outbreaks.stream().mapToDouble(Double::doubleValue).sum();
    int struckTrays = struck < 0.5 ? 0 : (int) Math.max(1, Math.round(struck));
    return new StageLosses(
        learned(listed.loss(), both, alone, StageGuess::loss, growing),
        learned(listed.chance(), both, alone, StageGuess::chance, growing),
        learned(listed.severity(), both, null, StageGuess::severity, struckTrays),
        outbreaks,
        learned(listed.potting(), both, alone, StageGuess::potting, potted),
        learned(listed.hardening(), both, alone, StageGuess::hardening, hardened),
        learned(listed.holdsDays(), both, null, StageGuess::holdsDays, held),
        learned(listed.overheld(), both, alone, StageGuess::overheld, held));
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
      Found both,
      @Nullable Found alone,
      ToDoubleFunction<StageGuess> figure,
      int trays) {
    return trays == 0
        ? Learned.nothing(listed)
        : new Learned(
            listed, alone == null ? null : alone.estimate(figure), both.estimate(figure), trays);
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
          StageBelief.listedSeverity(crop), Stages.LISTED_OUTBREAKS * Stages.OUTBREAK_WEIGHS);
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
      double days = crop.growingOn().holdsDays();
      double factor = Math.exp(1.96 / Math.sqrt(weight));
      double middle = Math.max(StageBelief.LEAST_DAYS, days);
      return Estimate.within(days, middle / factor, middle * factor);
    }
  }

  /** What is believed after the trays. */
  private static final class Found {
    private final StageBelief belief;
    private final WeightedDraws draws;

    Found(StageBelief belief, List<TrayLikelihood> trays) {
      this.belief = belief;
      draws =
          WeightedDraws.of(
              belief::logDensity,
              figures -> {
                StageGuess guess = belief.guess(figures);
                OutbreakChance outbreak = new OutbreakChance(guess.severity());
                double sum = 0;
                for (TrayLikelihood tray : trays) {
                  sum += tray.log(guess, outbreak);
                }
                return sum;
              },
              belief.mean(),
              belief.sd());
    }

    Estimate estimate(ToDoubleFunction<StageGuess> figure) {
      WeightedPoints points = points(figure);
      return points.around(points.mean());
    }

    private WeightedPoints points(ToDoubleFunction<StageGuess> figure) {
      return draws.of(figures -> figure.applyAsDouble(belief.guess(figures)));
    }

    /** The mean of each figure. */
    StageGuess mean() {
      return new StageGuess(
          points(StageGuess::mu).mean(),
          points(StageGuess::sigma).mean(),
          points(StageGuess::atOnce).mean(),
          points(StageGuess::lnKeptGrowing).mean(),
          Math.log(points(StageGuess::chance).mean()),
          Math.log1p(-points(StageGuess::chance).mean()),
          points(StageGuess::severity).mean(),
          points(StageGuess::lnKeptPotting).mean(),
          points(StageGuess::lnKeptHardening).mean(),
          points(StageGuess::holdsDays).mean(),
          points(StageGuess::lnKeptHeld).mean(),
          points(StageGuess::lnKeptWaiting).mean(),
          points(StageGuess::potHoldsDays).mean());
    }
  }
}
