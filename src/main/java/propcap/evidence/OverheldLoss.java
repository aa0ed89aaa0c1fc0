package propcap.evidence;

import java.util.List;
import propcap.evidence.TrayEvidence.Count;
import propcap.evidence.TrayEvidence.Overheld;
import propcap.farm.Loss;

/**
 * What holding plugs too long costs a day: over D days beyond those that they keep, each plant is
 * lost with a chance 1 - (1 - o)^D, and again by potting on or hardening off where that lies
 * between the same counts. Summed over a grid of o.
 */
final class OverheldLoss {
  private static final int NODES = 20_000;

  private OverheldLoss() {}

  static Estimate fit(List<Overheld> trays, BetaBelief belief, double potting, double hardening) {
    double[] points = new double[NODES];
    double[] logs = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      double daily = (i + 0.5) / NODES;
      points[i] = daily;
      logs[i] = belief.logDensity(daily);
      for (Overheld tray : trays) {
        double besides = besides(tray, potting, hardening);
        double lnKept = tray.days() * Math.log1p(-daily) + Math.log1p(-besides);
        Count count = tray.count();
        logs[i] += (count.plants() - count.lost()) * lnKept;
        if (count.lost() > 0) {
          logs[i] += count.lost() * Math.log(-Math.expm1(lnKept));
        }
      }
    }
    WeightedPoints after = new WeightedPoints(points, WeightedPoints.exp(logs));
    return after.around(after.mean());
  }

  private static double besides(Overheld tray, double potting, double hardening) {
    return tray.besides() == Loss.POTTING
        ? potting
        : tray.besides() == Loss.HARDENING ? hardening : 0;
  }
}
