package propcap.evidence;

import java.util.ArrayList;
import java.util.List;

/**
 * Losses on the table, outbreaks of damping-off apart from the background: each plant is lost with
 * a background chance, and in a tray with an outbreak each plant again with a chance that differs
 * from outbreak to outbreak, Beta(2s, 2(1 - s)), s the severity; as the simulator has it. A tray of
 * whose outbreak nothing was written may have had one all the same.
 *
 * @param loss the background chance
 * @param chance that a tray has an outbreak
 * @param severity mean share lost in one
 * @param outbreaks for each tray, the chance that it had one
 */
record TableLosses(Estimate loss, Estimate chance, Estimate severity, List<Double> outbreaks) {
  /** Beta(2s, 2(1 - s)) has the variance of three trials, so an outbreak weighs as much. */
  static final double SEVERITY_WEIGHT = 3;

  TableLosses {
    outbreaks = List.copyOf(outbreaks);
  }

  /** A tray's plants, those lost, and whether damping-off was written down. */
  record Tray(int plants, int lost, boolean outbreakSeen) {}

  /** What is believed before. */
  record Belief(BetaBelief loss, BetaBelief chance, BetaBelief severity) {
    /**
     * Of the same severity, but next to nothing of the rest: without any notion of how bad an
     * outbreak is, mild ones could not be told from the background.
     */
    Belief ofSeverityAlone() {
      return new Belief(BetaBelief.NONE, BetaBelief.NONE, severity);
    }
  }

  /** Expected outbreaks among the trays. */
  double expectedOutbreaks() {
    return outbreaks.stream().mapToDouble(Double::doubleValue).sum();
  }

  /** Fits trays of one plant or more, at least one of them. */
  static TableLosses fit(List<Tray> trays, Belief belief) {
    OutbreakLikelihood likelihood = new OutbreakLikelihood(trays);
    Belief rough = sorted(trays, likelihood, belief);
    OutbreakGrid first = new OutbreakGrid(likelihood, belief, rough);
    OutbreakGrid second = new OutbreakGrid(likelihood, belief, first.asBelief());
    Estimate loss = second.loss();
    Estimate chance = second.chance();
    Estimate severity = second.severity();
    return new TableLosses(
        loss,
        chance,
        severity,
        likelihood.outbreaks(loss.value(), chance.value(), severity.value()));
  }

  /**
   * What is believed after sorting trays into those with an outbreak and those without, again and
   * again (the EM algorithm, Dempster, Laird and Rubin 1977, J. R. Stat. Soc. B 39). It only says
   * where to look closely.
   */
  private static Belief sorted(List<Tray> trays, OutbreakLikelihood likelihood, Belief belief) {
    Belief now = belief;
    for (int round = 0; round < 30; round++) {
      List<Double> outbreaks =
          likelihood.outbreaks(now.loss().mean(), now.chance().mean(), now.severity().mean());
      now = after(trays, outbreaks, belief, now.loss().mean());
    }
    return now;
  }

  private static Belief after(
      List<Tray> trays, List<Double> outbreaks, Belief belief, double loss) {
    double lost = 0;
    double kept = 0;
    double with = 0;
    double hit = 0;
    for (int i = 0; i < trays.size(); i++) {
      Tray tray = trays.get(i);
      double out = outbreaks.get(i);
      double share = (double) tray.lost() / tray.plants();
      lost += (1 - out) * tray.lost();
      kept += (1 - out) * (tray.plants() - tray.lost());
      with += out;
      hit += out * Math.max(0, Math.min(1, (share - loss) / (1 - loss)));
    }
    return new Belief(
        belief.loss().after(lost, kept),
        belief.chance().after(with, trays.size() - with),
        belief.severity().after(SEVERITY_WEIGHT * hit, SEVERITY_WEIGHT * (with - hit)));
  }

  static List<Tray> of(List<TrayEvidence> trays) {
    List<Tray> counted = new ArrayList<>();
    for (TrayEvidence tray : trays) {
      TrayEvidence.Count count = tray.growingOn();
      if (count != null) {
        counted.add(new Tray(count.plants(), count.lost(), tray.outbreakSeen()));
      }
    }
    return counted;
  }
}
