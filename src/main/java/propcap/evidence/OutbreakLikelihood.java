package propcap.evidence;

import java.util.ArrayList;
import java.util.List;
import umontreal.ssj.util.Num;

/**
 * The chances of what trays lost, with an outbreak and without one. Of n plants x were lost:
 * without one binomial; with one, k to the background and x - k of the other n - k to an outbreak
 * whose chance is Beta(2s, 2(1 - s)), summed over k. The binomial coefficient that both have is
 * left out.
 */
final class OutbreakLikelihood {
  private final List<TableLosses.Tray> trays;

  OutbreakLikelihood(List<TableLosses.Tray> trays) {
    this.trays = List.copyOf(trays);
  }

  int size() {
    return trays.size();
  }

  boolean outbreakSeen(int tray) {
    return trays.get(tray).outbreakSeen();
  }

  /** Logarithm of the chance without an outbreak. */
  double logWithout(int tray, double loss) {
    TableLosses.Tray t = trays.get(tray);
    return t.lost() * Math.log(loss) + (t.plants() - t.lost()) * Math.log1p(-loss);
  }

  /** Logarithms of the chance with an outbreak of a severity, for each of some losses. */
  double[] logWith(int tray, double[] losses, double severity) {
    TableLosses.Tray t = trays.get(tray);
    int x = t.lost();
    double alpha = 2 * severity;
    double beta = 2 * (1 - severity);
    double[] terms = new double[x + 1];
    for (int k = 0; k <= x; k++) {
      terms[k] =
          BetaBelief.lnChoose(x, k)
              + Num.lnGamma(x - k + alpha)
              - Num.lnGamma(t.plants() - k + 2.0);
    }
    double common = Num.lnGamma(t.plants() - x + beta) - Num.lnGamma(alpha) - Num.lnGamma(beta);
    double[] logs = new double[losses.length];
    for (int g = 0; g < losses.length; g++) {
      double lnKept = Math.log1p(-losses[g]);
      double lnOdds = Math.log(losses[g]) - lnKept;
      logs[g] = common + t.plants() * lnKept + logOfSum(terms, lnOdds);
    }
    return logs;
  }

  /** Logarithm of the sum of terms, the k-th times the odds to the power of k. */
  private static double logOfSum(double[] logTerms, double lnOdds) {
    double most = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < logTerms.length; k++) {
      most = Math.max(most, logTerms[k] + k * lnOdds);
    }
    double sum = 0;
    for (int k = 0; k < logTerms.length; k++) {
      sum += Math.exp(logTerms[k] + k * lnOdds - most);
    }
    return most + Math.log(sum);
  }

  /** For each tray the chance that it had an outbreak; 1 where one was seen. */
  List<Double> outbreaks(double loss, double chance, double severity) {
    List<Double> outbreaks = new ArrayList<>();
    for (int i = 0; i < trays.size(); i++) {
      double with = logWith(i, new double[] {loss}, severity)[0];
      double odds = Math.exp(logWithout(i, loss) - with) * (1 - chance) / chance;
      outbreaks.add(outbreakSeen(i) ? 1 : 1 / (1 + odds));
    }
    return outbreaks;
  }
}
