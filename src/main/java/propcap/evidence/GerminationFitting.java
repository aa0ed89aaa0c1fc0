package propcap.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import propcap.evidence.GerminationFit.AtTemperature;
import propcap.evidence.GerminationFit.Lot;
import propcap.evidence.GerminationFit.NoBase;
import propcap.evidence.GerminationFit.Tried;
import propcap.farm.CountedTray;

/** From the counts of a germination test to what the simulator asks of a lot. */
public final class GerminationFitting {
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
    Map<List<String>, List<CountedTray>> byLot = new LinkedHashMap<>();
    for (CountedTray tray : trays) {
      byLot.computeIfAbsent(List.of(tray.crop(), tray.lot()), l -> new ArrayList<>()).add(tray);
    }
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
    Map<Double, List<CountedTray>> byTemperature = new TreeMap<>();
    for (CountedTray tray : trays) {
      byTemperature.computeIfAbsent(tray.tempC(), t -> new ArrayList<>()).add(tray);
    }
    Optional<Estimate> correlation = TrayCorrelation.of(List.copyOf(byTemperature.values()));
    byTemperature.forEach(
        (tempC, there) -> {
          List<List<CountedTray>> others = new ArrayList<>(byTemperature.values());
          others.remove(there);
          double rho = correlation.map(Estimate::value).orElse(0.0);
          ShowingCounts counts = new ShowingCounts(there);
          at(tempC, counts, rho, new ShareLimits(counts, rho, TrayCorrelation.told(others)));
        });
    List<ThermalFitting.Counted> upToFastest = upToFastest();
    Optional<ThermalFit> thermal =
        upToFastest.size() < 2 ? Optional.empty() : new ThermalFitting(upToFastest).fit();
    NoBase why =
        thermal.isPresent()
            ? null
            : counted.size() < 2
                ? NoBase.ONE_TEMPERATURE
                : upToFastest.size() < 2 ? NoBase.COLDEST_IS_FASTEST : NoBase.COLD_DOES_NOT_SLOW;
    return new Lot(crop, lot, temperatures, correlation.orElse(null), thermal.orElse(null), why);
  }

  private void at(double tempC, ShowingCounts counts, double correlation, ShareLimits share) {
    if (!counts.tellACurve()) {
      temperatures.add(
          new AtTemperature(tempC, counts.trays(), share.shownByTheEnd(), null, null, List.of()));
      return;
    }
    CurveFitting fitting = new CurveFitting(counts, correlation, share);
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
            peaks.stream().map(p -> new Tried(p.family(), p.akaike())).toList()));
    counted.add(new ThermalFitting.Counted(tempC, counts, lognormalPeak));
  }

  /** Up to the optimum, as far as it is known or the counts show it. */
  private List<ThermalFitting.Counted> upToFastest() {
    double fastestC =
        counted.stream()
            .min(Comparator.comparingDouble(c -> c.alone().halfByDays()))
            .map(ThermalFitting.Counted::tempC)
            .orElse(Double.NEGATIVE_INFINITY);
    double most = Double.isFinite(optimumC) ? optimumC : fastestC;
    return counted.stream().filter(c -> c.tempC() <= most).toList();
  }
}
