package propcap.chance;

import java.util.Arrays;
import java.util.SplittableRandom;
import propcap.chance.KnownShowing.Count;
import propcap.chance.KnownShowing.Slice;
import propcap.chance.KnownShowing.Stand;
import propcap.farm.Crop;
import umontreal.ssj.probdist.NormalDist;

/**
 * The slow, obvious way to the seedlings of a tray: each seed of each cell germinates or not, and
 * shows at a time of its own. No order statistics, and no code of the law that it is held against.
 */
final class ShownCells {
  private final int toLeave;

  /** When each cell shows, degree days, rising; infinite where it never fills. */
  private final double[] times;

  private ShownCells(int toLeave, double[] times) {
    this.toLeave = toLeave;
    this.times = times;
  }

  static ShownCells draw(Crop crop, double g, SplittableRandom random) {
    Crop.Emergence emergence = crop.emergence();
    double sigma =
        Math.log(emergence.mostByDays() / emergence.halfByDays()) / NormalDist.inverseF01(0.9);
    double[] times = new double[crop.cells()];
    Arrays.fill(times, Double.POSITIVE_INFINITY);
    for (int cell = 0; cell < times.length; cell++) {
      for (int seed = 0; seed < crop.seedsPerCell(); seed++) {
        double shows = emergence.medianDegreeDays() * Math.exp(sigma * random.nextGaussian());
        if (random.nextDouble() < g) {
          times[cell] = Math.min(times[cell], shows);
        }
      }
    }
    Arrays.sort(times);
    return new ShownCells(crop.cellsToLeave(), times);
  }

  int by(double degreeDays) {
    int shown = 0;
    while (shown < times.length && times[shown] <= degreeDays) {
      shown++;
    }
    return shown;
  }

  int fills() {
    return by(Double.MAX_VALUE);
  }

  double readyAt() {
    return times[toLeave - 1];
  }

  /** Whether a log would have had of it what is known. */
  boolean fits(KnownShowing known, SplittableRandom random) {
    for (Count count : known.counts()) {
      if (by(count.degreeDays()) != count.seedlings()) {
        return false;
      }
    }
    int shown = by(known.by());
    if (known.below() != KnownShowing.NOT_FAILED) {
      return shown < known.below();
    }
    boolean left = readyAt() > known.notBy() && readyAt() <= known.by();
    boolean pulled = known.isOver() && shown < toLeave && shown >= known.atLeast();
    boolean stays = !known.isOver() && readyAt() > known.notBy();
    if (!left && !pulled && !stays) {
      return false;
    }
    Stand stand = known.stand();
    return stand == null || stand.plants() == kept(stand, left, random);
  }

  private int kept(Stand stand, boolean left, SplittableRandom random) {
    double share = left ? slice(stand).kept() : stand.keptIfPulled();
    int kept = 0;
    for (int i = by(stand.degreeDays()); i > 0; i--) {
      kept += random.nextDouble() < share ? 1 : 0;
    }
    return kept;
  }

  private Slice slice(Stand stand) {
    return stand.slices().stream()
        .filter(s -> readyAt() <= s.byDegreeDays())
        .findFirst()
        .orElseThrow();
  }
}
