package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.farm.CountedTray;
import umontreal.ssj.probdist.BetaDist;

/** How often 95 % limits hold the truth, over made-up germination tests whose truth is known. */
final class Coverage {
  /** Nine in ten are up within the median times e to this times the spread. */
  private static final double NINE_IN_TEN = 1.2815516;

  private final Map<String, int[]> held = new LinkedHashMap<>();

  private void count(String what, Estimate told, double truth) {
    int[] times = held.computeIfAbsent(what, w -> new int[2]);
    times[0] += told.holds(truth) ? 1 : 0;
    times[1]++;
  }

  double percent(String what) {
    int[] times = held.getOrDefault(what, new int[2]);
    return 100.0 * times[0] / times[1];
  }

  Map<String, Double> percents() {
    return held.keySet().stream()
        .collect(Collectors.toMap(w -> w, this::percent, (a, b) -> a, LinkedHashMap::new));
  }

  /** Such as {@code share 95.1 %, half-by 94.8 % of 1,000}. */
  @Override
  public String toString() {
    return held.entrySet().stream()
        .map(
            e ->
                String.format(
                    Locale.ENGLISH,
                    "%s %.1f %% of %,d",
                    e.getKey(),
                    percent(e.getKey()),
                    e.getValue()[1]))
        .collect(Collectors.joining(", "));
  }

  /** Trays of 50 seeds of a law, looked at daily: what is told of share and days, and written. */
  static Coverage ofTrays(Trays.Law law, int trays, int seedsATray, int tests) {
    Coverage coverage = new Coverage();
    RandomGenerator chance = new Well19937c(41);
    for (int i = 0; i < tests; i++) {
      List<CountedTray> drawn = law.draw(chance, 20, trays, seedsATray);
      ShowingCounts counts = new ShowingCounts(drawn);
      CurveFitting fitting = new CurveFitting(counts, Heterogeneity.of(List.of(drawn)).weight());
      boolean isCurve = counts.tellACurve();
      CurveFit curve = isCurve ? fitting.fit(fitting.peak(CurveFamily.LOGNORMAL)) : null;
      coverage.at(curve == null ? fitting.germinating() : curve.germinating(), curve, law);
    }
    return coverage;
  }

  private void at(GerminatingShare germinating, @Nullable CurveFit curve, Trays.Law law) {
    count("share", germinating.share(), law.germinating());
    count("share as written", limits(germinating.tested()), law.germinating());
    if (curve != null) {
      count("half-by", curve.halfByDays(), law.medianDays());
      count("most-by", curve.mostByDays(), law.medianDays() * Math.exp(NINE_IN_TEN * law.spread()));
      count("spread", curve.spread(), law.spread());
    }
  }

  /** Those of the beta distribution from which the simulator draws. */
  static Estimate limits(EquivalentCount tested) {
    double up = tested.rate() * tested.seeds();
    double down = (1 - tested.rate()) * tested.seeds();
    return Estimate.within(
        tested.rate(), BetaDist.inverseF(up, down, 0.025), BetaDist.inverseF(up, down, 0.975));
  }

  /**
   * Trays at several temperatures, of a crop that is as fast above its optimum as at it; base 3 C,
   * 80 degree days to half, spread 0.25.
   */
  static List<CountedTray> atTemperatures(
      RandomGenerator chance, double optimumC, int trays, double... temperaturesC) {
    List<CountedTray> drawn = new ArrayList<>();
    for (double tempC : temperaturesC) {
      double median = 80 / (Math.min(tempC, optimumC) - 3);
      drawn.addAll(
          new Trays.Law(0.85, 0, median, 0.25, 1, Math.ceil(2.5 * median))
              .draw(chance, tempC, trays, 50));
    }
    return drawn;
  }

  /** Of base, degree days and spread, as often as a base is told. */
  static Coverage ofBase(double optimumC, int trays, int tests, double... temperaturesC) {
    Coverage coverage = new Coverage();
    RandomGenerator chance = new Well19937c(43);
    for (int i = 0; i < tests; i++) {
      ThermalFit line =
          GerminationFitting.fit(atTemperatures(chance, optimumC, trays, temperaturesC), Map.of())
              .lots()
              .get(0)
              .thermal();
      if (line != null) {
        coverage.count("base", line.base(), 3);
        coverage.count("degree days", line.theta(), 80);
        coverage.count("spread", line.spread(), 0.25);
      }
    }
    return coverage;
  }
}
