package propcap.evidence.stages;

import propcap.evidence.stages.TrayEvidence.Leg;
import propcap.farm.Loss;

/**
 * The chance of all counts of a tray, for a guess at what made them. Where it is not known when the
 * tray was ready, it is the mean over the law of that, given that it was ready by its first move.
 */
final class TrayLikelihood {
  /** No leg is taken as quite without a loss, for a plant may always die, nor as quite deadly. */
  private static final double NONE_LOST = Math.log1p(-BetaBelief.NEARLY_IMPOSSIBLE);

  private static final double ALL_LOST = -30;

  private final TrayCourse tray;
  private final Leg[] legs;
  private final boolean[] isGrowing;
  private final boolean[] isPotting;
  private final boolean[] isHardening;
  private final double[] waiting;
  private final ReadyLaw onTheRound;

  TrayLikelihood(TrayCourse tray) {
    this.tray = tray;
    legs = tray.legs().toArray(new Leg[0]);
    isGrowing = new boolean[legs.length];
    isPotting = new boolean[legs.length];
    isHardening = new boolean[legs.length];
    waiting = new double[legs.length];
    for (int i = 0; i < legs.length; i++) {
      isGrowing[i] = legs[i].losses().contains(Loss.GROWING_ON);
      isPotting[i] = legs[i].losses().contains(Loss.POTTING);
      isHardening[i] = legs[i].losses().contains(Loss.HARDENING);
      waiting[i] = tray.waiting(legs[i]);
    }
    onTheRound = ReadyLaw.between(tray.readyAfter(), tray.readyBy());
  }

  /**
   * Logarithm of the chance of its counts, up to a constant.
   *
   * @param outbreak of the guessed severity
   */
  double log(StageParameters guess, OutbreakChance outbreak) {
    ReadyLaw ready = ready(guess);
    double whenever = 0;
    double[] logs = null;
    for (int leg = 0; leg < legs.length; leg++) {
      // Of a leg on which nothing was held it does not matter when the tray was ready.
      if (!isHeld(leg, ready.earliest(), guess)) {
        whenever += log(leg, ready.earliest(), guess, outbreak);
        continue;
      }
      logs = logs == null ? ready.lnWeights() : logs;
      for (int i = 0; i < logs.length; i++) {
        logs[i] += log(leg, ready.time(i), guess, outbreak);
      }
    }
    return logs == null ? whenever : whenever + logOfSum(logs);
  }

  /** Whether plugs were held too long on a leg. */
  private boolean isHeld(int leg, double ready, StageParameters guess) {
    return Math.min(legs[leg].to(), tray.pottedAt()) > ready + guess.holdsDays();
  }

  /** The chance that it had an outbreak on the table; 1 where one was seen. */
  double chanceOfOutbreak(StageParameters guess) {
    OutbreakChance outbreak = new OutbreakChance(guess.severity());
    double without = log(guess.withChance(0), outbreak);
    double with = log(guess.withChance(1), outbreak);
    double odds = Math.exp(without - with) * (1 - guess.chance()) / guess.chance();
    return tray.outbreakSeen() ? 1 : 1 / (1 + odds);
  }

  private double log(int leg, double ready, StageParameters guess, OutbreakChance outbreak) {
    double lnKept = Math.max(ALL_LOST, Math.min(NONE_LOST, lnKept(leg, ready, guess)));
    int plants = legs[leg].count().plants();
    int lost = legs[leg].count().lost();
    double without =
        (plants - lost) * lnKept + (lost == 0 ? 0 : lost * Math.log(1 - Math.exp(lnKept)));
    if (!isGrowing[leg]) {
      return without;
    }
    double with = outbreak.log(plants, lost, lnKept) + guess.lnOutbreak();
    return tray.outbreakSeen() ? with : logOfSum(without + guess.lnNoOutbreak(), with);
  }

  private double lnKept(int leg, double ready, StageParameters guess) {
    double beyond =
        tray.plugBeyond(legs[leg], ready, guess.holdsDays())
            + tray.potBeyond(legs[leg], guess.potHoldsDays());
    return (isGrowing[leg] ? guess.lnKeptGrowing() : 0)
        + (isPotting[leg] ? guess.lnKeptPotting() : 0)
        + (isHardening[leg] ? guess.lnKeptHardening() : 0)
        + guess.lnKeptWaiting() * waiting[leg]
        + guess.lnKeptHeld() * beyond;
  }

  private ReadyLaw ready(StageParameters guess) {
    WarmthCourse warmth = tray.warmth();
    return warmth == null
        ? onTheRound
        : ReadyLaw.unwritten(warmth, tray.readyBy(), onTheRound, guess);
  }

  private static double logOfSum(double... logs) {
    double most = logs[0];
    for (double log : logs) {
      most = Math.max(most, log);
    }
    if (most == Double.NEGATIVE_INFINITY) {
      return most;
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - most);
    }
    return most + Math.log(sum);
  }
}
