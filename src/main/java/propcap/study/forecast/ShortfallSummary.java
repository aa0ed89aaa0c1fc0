package propcap.study.forecast;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.season.SeasonOutcome;
import propcap.study.statistics.ByKind;
import propcap.study.statistics.Column;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/** What one sowing lacks with endless room, counted as the seasons come in. */
final class ShortfallSummary {
  /** What a tray does not lose where it is sown and moved in time and no hard frost comes. */
  private static final List<Loss> UNUSUAL =
      List.of(Loss.STRETCHED, Loss.OVERHELD, Loss.FROST, Loss.DUMPED, Loss.UNPLANTED);

  private final int sowing;
  private final int needed;

  /** With endless room, season by season; likewise below. */
  private final Column onTime = new Column();

  private final Column late = new Column();
  private final Map<Loss, Column> lost = ByKind.of(Loss.class, cause -> new Column());

  ShortfallSummary(int sowing, int needed) {
    this.sowing = sowing;
    this.needed = needed;
  }

  /** Adds a season that was run with endless room. */
  void add(SeasonOutcome season) {
    onTime.add(season.onTime(sowing));
    late.add(season.late(sowing));
    lost.forEach((cause, plants) -> plants.add(season.lost(sowing, cause)));
  }

  private double lacking(double plants) {
    return Math.max(0, needed - plants);
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
    double ordinary = ordinary();
    double tooFewTrays = 0;
    double tooLate = 0;
    double[] taken = new double[Loss.values().length];
    for (int i = 0; i < n; i++) {
      double all = late.get(i);
      for (Loss cause : Loss.values()) {
        all += lost(cause, i);
      }
      double shared = Math.min(Math.max(0, withRoom[i] - lacking(ordinary)), all);
      tooFewTrays += withRoom[i] - shared;
      double each = shared > 0 ? shared / all : 0;
      tooLate += each * late.get(i);
      for (Loss cause : Loss.values()) {
        taken[cause.ordinal()] += each * lost(cause, i);
      }
    }

    return new Shortfall(
        n,
        Samples.mean(now),
        Paired.difference(withRoom, now, strata, false, 1),
        ordinary,
        tooFewTrays / n,
        tooLate / n,
        ByKind.of(Loss.class, cause -> taken[cause.ordinal()] / n),
        met(now),
        met(withRoom));
  }

  /** What its trays give in a median spring, on time or late, where only what is usual is lost. */
  private double ordinary() {
    double[] plants = new double[onTime.size()];
    for (int i = 0; i < plants.length; i++) {
      plants[i] = onTime.get(i) + late.get(i);
      for (Loss cause : UNUSUAL) {
        plants[i] += lost(cause, i);
      }
    }
    Arrays.sort(plants);
    return plants[plants.length / 2];
  }

  private int lost(Loss cause, int season) {
    return Objects.requireNonNull(lost.get(cause)).get(season);
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
