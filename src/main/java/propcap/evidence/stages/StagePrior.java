package propcap.evidence.stages;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.special.Gamma;
import propcap.evidence.Estimate;
import propcap.farm.Crop;
import propcap.farm.Loss;

/**
 * What is believed, before any tray is looked at, of the figures that losses hang on: what the crop
 * list says, as if so many trays had shown it. Figures that the trays have nothing to do with stay
 * as listed. Shares are measured by their log odds, days by their logarithm.
 */
final class StagePrior {
  /** A plug that keeps for no time at all is listed as keeping half a day. */
  private static final double LEAST_DAYS = 0.5;

  private static final double LEAST_SHARE = 1e-12;

  /** What losses hang on. */
  enum Figure {
    MU,
    LN_SIGMA,
    AT_ONCE,
    LOSS,
    CHANCE,
    SEVERITY,
    POTTING,
    HARDENING,
    LN_HOLDS,
    OVERHELD,
    WAITING,
    LN_POT_HOLDS
  }

  private final Crop crop;
  private final double weight;
  private final WarmthRequirement.Prior requirement;
  private final ReadyTimes ready;
  private final double takesDays;
  private final Map<Figure, BetaBelief> shares = new EnumMap<>(Figure.class);
  private final Map<Figure, Integer> places = new EnumMap<>(Figure.class);

  /**
   * Believes.
   *
   * @param weight how many trays the list weighs
   * @param takesDays that growing on takes
   * @param alone whether losses on the table are to be as good as unknown. How bad an outbreak is
   *     stays listed: without any notion of that, mild ones could not be told from other losses
   */
  StagePrior(
      Crop crop,
      double weight,
      double takesDays,
      boolean alone,
      WarmthRequirement.Prior requirement,
      ReadyTimes ready,
      List<TrayCourse> trays) {
    this.crop = crop;
    this.weight = weight;
    this.requirement = requirement;
    this.ready = ready;
    this.takesDays = takesDays;
    double plants = weight * crop.cells();
    believe(Figure.LOSS, plants, alone);
    believe(Figure.CHANCE, weight, alone);
    believe(Figure.SEVERITY, Stages.LISTED_OUTBREAKS * Stages.OUTBREAK_WEIGHS, false);
    believe(Figure.POTTING, plants, false);
    believe(Figure.HARDENING, plants, false);
    believe(Figure.OVERHELD, plants, false);
    // Trays of which nobody wrote that they were ready: any share was moved on that very round.
    shares.put(Figure.AT_ONCE, new BetaBelief(1, 1));
    // Of the daily loss while growing on, anything between none and all goes on.
    shares.put(Figure.WAITING, new BetaBelief(0.3, 1));
    boolean isPotted = trays.stream().anyMatch(t -> Double.isFinite(t.pottedAt()));
    take(
        trays.stream().anyMatch(t -> t.warmth() != null),
        Figure.MU,
        Figure.LN_SIGMA,
        Figure.AT_ONCE);
    take(
        trays.stream().anyMatch(t -> t.has(Loss.GROWING_ON)),
        Figure.LOSS,
        Figure.CHANCE,
        Figure.SEVERITY);
    take(trays.stream().anyMatch(t -> t.has(Loss.POTTING)), Figure.POTTING);
    take(trays.stream().anyMatch(t -> t.has(Loss.HARDENING)), Figure.HARDENING);
    take(trays.stream().anyMatch(TrayCourse::mayBeHeld), Figure.LN_HOLDS, Figure.OVERHELD);
    take(
        trays.stream().anyMatch(t -> t.legs().stream().anyMatch(l -> t.waiting(l) > 0)),
        Figure.WAITING);
    take(isPotted, Figure.LN_POT_HOLDS);
  }

  private void believe(Figure figure, double trials, boolean isUnknown) {
    shares.put(figure, isUnknown ? BetaBelief.NONE : BetaBelief.of(listed(figure), trials));
  }

  /** As the crop list has it: a share, or days; of growing on, as the requirement has it. */
  private double listed(Figure figure) {
    Crop.GrowingOn growing = crop.growingOn();
    return switch (figure) {
      case MU -> requirement.mu();
      case LN_SIGMA -> Math.log(requirement.sigma());
      case AT_ONCE -> 0.5;
      case LOSS -> growing.loss();
      case CHANCE -> growing.dampingOff().chance();
      // Of a crop that has no damping-off, one that it may have.
      case SEVERITY ->
          growing.dampingOff().chance() > 0
              ? growing.dampingOff().severity()
              : Stages.UNLISTED_SEVERITY;
      case POTTING -> crop.pottingOn().loss();
      case HARDENING -> crop.hardening().loss();
      case LN_HOLDS -> growing.holdsDays();
      case OVERHELD -> growing.overheldLossPerDay();
      case WAITING -> 0;
      case LN_POT_HOLDS -> crop.pottingOn().holdsDays();
    };
  }

  /** A share or days of the crop list, with the error that their weight amounts to. */
  Estimate estimate(Figure figure) {
    double listed = listed(figure);
    if (figure != Figure.LN_HOLDS && figure != Figure.LN_POT_HOLDS) {
      return share(figure).around(listed);
    }
    double factor = Math.exp(1.96 / Math.sqrt(weight));
    double middle = Math.max(LEAST_DAYS, listed);
    return Estimate.within(listed, middle / factor, middle * factor);
  }

  private void take(boolean isTold, Figure... figures) {
    if (isTold) {
      for (Figure figure : figures) {
        places.put(figure, places.size());
      }
    }
  }

  double[] mean() {
    return each(this::mean);
  }

  double[] sd() {
    return each(this::sd);
  }

  private double[] each(ToDoubleFunction<Figure> value) {
    double[] all = new double[places.size()];
    places.forEach((figure, place) -> all[place] = value.applyAsDouble(figure));
    return all;
  }

  private double mean(Figure figure) {
    return switch (figure) {
      case MU, LN_SIGMA -> listed(figure);
      case LN_HOLDS, LN_POT_HOLDS -> Math.log(Math.max(LEAST_DAYS, listed(figure)));
      default -> {
        BetaBelief share = share(figure);
        yield Gamma.digamma(share.lost()) - Gamma.digamma(share.kept());
      }
    };
  }

  private double sd(Figure figure) {
    return switch (figure) {
      case MU -> requirement.sigma() / Math.sqrt(weight);
      case LN_SIGMA -> 1 / Math.sqrt(2 * weight);
      case LN_HOLDS, LN_POT_HOLDS -> 1 / Math.sqrt(weight);
      default -> {
        BetaBelief share = share(figure);
        yield Math.sqrt(Gamma.trigamma(share.lost()) + Gamma.trigamma(share.kept()));
      }
    };
  }

  private BetaBelief share(Figure figure) {
    return shares.getOrDefault(figure, BetaBelief.NONE);
  }

  /** Logarithm of the density of figures as they are measured here, up to a constant. */
  double logDensity(double[] figures) {
    double sum = 0;
    for (Map.Entry<Figure, Integer> place : places.entrySet()) {
      double value = figures[place.getValue()];
      sum +=
          switch (place.getKey()) {
            // Both at once, by the other of the two.
            case MU -> 0;
            case LN_SIGMA -> {
              double mu = figures[places.getOrDefault(Figure.MU, 0)];
              yield requirement.logDensity(mu, value) + ready.logLikelihood(mu, Math.exp(value));
            }
            case LN_HOLDS, LN_POT_HOLDS -> {
              double off = (value - mean(place.getKey())) / sd(place.getKey());
              yield -off * off / 2;
            }
            default -> {
              BetaBelief share = share(place.getKey());
              yield -share.lost() * Math.log1p(Math.exp(-value))
                  - share.kept() * Math.log1p(Math.exp(value));
            }
          };
    }
    return sum;
  }

  /** The figures as the simulator has them. */
  StageParameters guess(double[] figures) {
    double atOnce = share(figures, Figure.AT_ONCE);
    double chance = share(figures, Figure.CHANCE);
    double lnKeptGrowing = lnKept(figures, Figure.LOSS);
    return new StageParameters(
        figure(figures, Figure.MU),
        Math.exp(figure(figures, Figure.LN_SIGMA)),
        Math.log(atOnce),
        Math.log1p(-atOnce),
        lnKeptGrowing,
        Math.log(chance),
        Math.log1p(-chance),
        share(figures, Figure.SEVERITY),
        lnKept(figures, Figure.POTTING),
        lnKept(figures, Figure.HARDENING),
        Math.exp(figure(figures, Figure.LN_HOLDS)),
        lnKept(figures, Figure.OVERHELD),
        share(figures, Figure.WAITING) * lnKeptGrowing / takesDays,
        Math.exp(figure(figures, Figure.LN_POT_HOLDS)));
  }

  /** Neither none nor all, where a logarithm has no end; as listed where it is not asked. */
  private double share(double[] figures, Figure figure) {
    Integer place = places.get(figure);
    return place == null
        ? listed(figure)
        : Math.max(LEAST_SHARE, Math.min(1 - LEAST_SHARE, 1 / (1 + Math.exp(-figures[place]))));
  }

  private double lnKept(double[] figures, Figure figure) {
    return Math.log1p(-share(figures, figure));
  }

  private double figure(double[] figures, Figure figure) {
    Integer place = places.get(figure);
    return place == null ? mean(figure) : figures[place];
  }
}
