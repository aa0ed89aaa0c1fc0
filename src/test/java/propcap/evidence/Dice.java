package propcap.evidence;

import java.util.SplittableRandom;
import propcap.evidence.stages.TrayEvidence;
import umontreal.ssj.probdist.BetaDist;
import umontreal.ssj.probdist.NormalDist;

/** Draws of a printed seed, for logs whose truth is known. */
public final class Dice {
  private final SplittableRandom random;

  public Dice(long seed) {
    random = new SplittableRandom(seed);
  }

  public double uniform() {
    return (random.nextLong() >>> 11) * 0x1p-53 + 0x1p-54;
  }

  public double normal() {
    return NormalDist.inverseF01(uniform());
  }

  public double beta(double lost, double kept) {
    return BetaDist.inverseF(lost, kept, uniform());
  }

  public int lost(int plants, double chance) {
    int lost = 0;
    for (int i = 0; i < plants; i++) {
      lost += uniform() < chance ? 1 : 0;
    }
    return lost;
  }

  /** Chi-squared of a whole number of degrees of freedom. */
  public double chiSquared(int degrees) {
    double sum = 0;
    for (int i = 0; i < degrees; i++) {
      double z = normal();
      sum += z * z;
    }
    return sum;
  }

  /** A tray that lost by the background, and by an outbreak with a chance. */
  public TrayEvidence.Count tray(int plants, double loss, double chance, double severity) {
    int lost = lost(plants, loss);
    if (uniform() < chance) {
      lost += lost(plants - lost, beta(2 * severity, 2 * (1 - severity)));
    }
    return new TrayEvidence.Count(plants, lost);
  }
}
