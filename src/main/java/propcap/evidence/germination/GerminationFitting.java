package propcap.evidence.germination;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.evidence.germination.GerminationFit.Lot;
import propcap.evidence.germination.GerminationFit.NoBase;
import propcap.evidence.germination.GerminationFit.TriedFamily;
import propcap.farm.CountedTray;

/** From the counts of a germination test to what the simulator asks of a lot. */
public final class GerminationFitting {
  /**
   * No crop's base lies below it, degrees C: water freezes, and the lowest in the list is that of
   * spinach, -1.6 C (docs/crops.md). A line that has it lower is bent.
   */
  private static final double LEAST_BASE_C = -5;

  private final List<CountedTray> trays;
  private final double optimumC;
  private final List<AtTemperature> temperatures = new ArrayList<>();
  private final List<ThermalFitting.Counted> counted = new ArrayList<>();

  private GerminationFitting(List<CountedTray> trays, double optimumC) {
    this.trays = trays;
    this.optimumC = optimumC;
  }

  /**
   * Fits each lot of each crop by itself, in the order of the counts.
   *
   * @param optimaC by crop, where known: no warmer temperature has a part in the base
   */
  public static GerminationFit fit(List<CountedTray> trays, Map<String, Double> optimaC) {
    Map<List<String>, List<CountedTray>> byLot =
        trays.stream()
            .collect(groupingBy(t -> List.of(t.crop(), t.lot()), LinkedHashMap::new, toList()));
    return new GerminationFit(
        byLot.entrySet().stream()
            .map(
                lot ->
                    new GerminationFitting(
                            lot.getValue(),
                            optimaC.getOrDefault(lot.getKey().get(0), Double.POSITIVE_INFINITY))
                        .lot(lot.getKey().get(0), lot.getKey().get(1)))
            .toList());
  }

  private Lot lot(String crop, String lot) {
    List<List<CountedTray>> alike = ReplicateGroups.of(trays);
    double weight = Heterogeneity.of(alike).weight();
    trays.stream()
        .collect(groupingBy(CountedTray::tempC, TreeMap::new, toList()))
        .forEach((tempC, there) -> at(tempC, new ShowingCounts(there), weight));
    Base base = base();
    return new Lot(
        crop, lot, temperatures, TrayCorrelation.of(alike).orElse(null), base.line(), base.why());
  }

  /** A line that is told, or why none is. */
  private record Base(@Nullable ThermalFit line, @Nullable NoBase why) {
    static Base none(NoBase why) {
      return new Base(null, why);
    }
  }

  private Base base() {
    if (counted.size() < 2) {
      return Base.none(NoBase.ONE_TEMPERATURE);
    }
    List<ThermalFitting.Counted> upToFastest = upToFastest();
    if (upToFastest.size() < 2) {
      return Base.none(NoBase.COLDEST_IS_FASTEST);
    }
    ThermalFitting fitting = ThermalFitting.upToOptimum(upToFastest);
    Optional<ThermalFitting.Counted> warmer =
        counted.stream()
            .filter(c -> c.tempC() > fitting.warmestC() && c.tempC() <= optimumC)
            .findFirst();
    if (warmer.isPresent() && !fitting.isBelowOptimum(warmer.get())) {
      return Base.none(NoBase.OPTIMUM_TOO_NEAR);
    }
    ThermalFit line = fitting.fit().orElse(null);
    if (line == null) {
      return Base.none(NoBase.COLD_DOES_NOT_SLOW);
    }
    if (line.test().isPoor()) {
      return Base.none(NoBase.FITS_POORLY);
    }
    return line.base().value() < LEAST_BASE_C
        ? Base.none(NoBase.BELOW_FREEZING)
        : new Base(line, null);
  }

  private void at(double tempC, ShowingCounts counts, double weight) {
    CurveFitting fitting = new CurveFitting(counts, weight);
    if (!counts.tellACurve()) {
      temperatures.add(
          new AtTemperature(tempC, counts.trays(), fitting.germinating(), null, null, List.of()));
      return;
    }
    List<CurveFitting.Peak> peaks = Stream.of(CurveFamily.values()).map(fitting::peak).toList();
    CurveFitting.Peak lognormalPeak = peaks.get(CurveFamily.LOGNORMAL.ordinal());
    CurveFitting.Peak bestPeak =
        peaks.stream().min(Comparator.comparingDouble(CurveFitting.Peak::akaike)).orElseThrow();
    CurveFit lognormal = fitting.fit(lognormalPeak);
    temperatures.add(
        new AtTemperature(
            tempC,
            counts.trays(),
            lognormal.germinating(),
            lognormal,
            bestPeak.equals(lognormalPeak) ? lognormal : fitting.fit(bestPeak),
            peaks.stream().map(p -> new TriedFamily(p.family(), p.akaike())).toList()));
    counted.add(new ThermalFitting.Counted(tempC, counts, lognormalPeak));
  }

  /** Up to the optimum, as far as it is known or the counts show it. */
  private List<ThermalFitting.Counted> upToFastest() {
    double fastestC =
        counted.stream()
            .min(Comparator.comparingDouble(c -> c.alone().logMedian()))
            .map(ThermalFitting.Counted::tempC)
            .orElse(Double.NEGATIVE_INFINITY);
    double most = Double.isFinite(optimumC) ? optimumC : fastestC;
    return counted.stream().filter(c -> c.tempC() <= most).toList();
  }
}
