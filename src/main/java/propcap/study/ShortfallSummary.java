package propcap.study;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.season.SeasonOutcome;

/** What one sowing lacks with endless room, counted as the seasons come in. */
final class ShortfallSummary {
  private final int sowing;
  private final int needed;

  /** With endless room, season by season. */
  private final Column onTime = new Column();

  private final Map<Loss, Double> lost = new EnumMap<>(Loss.class);
  private double late;
  private double tooFewCells;

  ShortfallSummary(int sowing, int needed) {
    this.sowing = sowing;
    this.needed = needed;
    for (Loss cause : Loss.values()) {
      lost.put(cause, 0.0);
    }
  }

  /** Adds a season that was run with endless room. */
  void add(SeasonOutcome season) {
    onTime.add(season.onTime(sowing));
    double lacking = lacking(season.onTime(sowing));
    double taken = season.late(sowing);
    for (Loss cause : Loss.values()) {
      taken += season.lost(sowing, cause);
    }
    double shared = Math.min(lacking, taken);
    tooFewCells += lacking - shared;
    if (shared > 0) {
      double each = shared / taken;
      late += each * season.late(sowing);
      lost.replaceAll((cause, plants) -> plants + each * season.lost(sowing, cause));
    }
  }

  private double lacking(double plants) {
    return Math.max(0, needed - plants);
  }

  int seasons() {
    return onTime.size();
  }

  /**
   * The account.
   *
   * @param real plants on time season by season, as many or more
   * @param strata of those that were run with endless room
   * @return null where fewer than two seasons were run with endless room
   */
  @Nullable Shortfall of(Column real, Strata strata) {
    int n = onTime.size();
    if (n < 2) {
      return null;
    }
    double[] now = lacking(real, n);
    double[] withRoom = lacking(onTime, n);
    Map<Loss, Double> means = new EnumMap<>(Loss.class);
    lost.forEach((cause, plants) -> means.put(cause, plants / n));
    return new Shortfall(
        n,
        Samples.mean(now),
        Paired.difference(withRoom, now, strata, false, Confirming.CONFIDENCE, 1),
        tooFewCells / n,
        late / n,
        means,
        met(now),
        met(withRoom));
  }

  private double[] lacking(Column plants, int n) {
    double[] lacking = new double[n];
    Arrays.setAll(lacking, i -> lacking(plants.get(i)));
    return lacking;
  }

  private static double met(double[] lacking) {
    return Arrays.stream(lacking).filter(l -> l == 0).count() / (double) lacking.length;
  }
}
