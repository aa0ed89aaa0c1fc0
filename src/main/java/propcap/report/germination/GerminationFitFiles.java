package propcap.report.germination;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import propcap.evidence.CropEntry;
import propcap.evidence.CurveFit;
import propcap.evidence.Estimate;
import propcap.evidence.FitTest;
import propcap.evidence.GerminationFit;
import propcap.evidence.GerminationFit.AtTemperature;
import propcap.evidence.GerminationFit.Lot;
import propcap.evidence.ThermalFit;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;

/** What a germination test tells, for other programs and for a spreadsheet. */
final class GerminationFitFiles {
  private GerminationFitFiles() {}

  static String json(GerminationFit fit, List<CropEntry> entries, String counts, String version) {
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      numbers.add(i);
    }
    return new PutJson()
        .put("counts", counts)
        .put("version", version)
        .put("confidence", 0.95)
        .put("lots", PutJson.each(numbers, i -> lot(fit.lots().get(i), entries.get(i))))
        .text();
  }

  private static PutJson lot(Lot lot, CropEntry entry) {
    ThermalFit thermal = lot.thermal();
    GerminationFit.NoBase why = lot.noBase();
    return new PutJson()
        .put("crop", lot.crop())
        .put("lot", lot.lot())
        .put("trayCorrelation", estimate(lot.trayCorrelation()))
        .put("thermal", thermal == null ? null : thermal(thermal))
        .put("noBase", why == null ? "" : why.name().toLowerCase(Locale.ROOT))
        .put("temperatures", PutJson.each(lot.temperatures(), GerminationFitFiles::at))
        .put("entry", entry(entry));
  }

  private static PutJson thermal(ThermalFit thermal) {
    return new PutJson()
        .put("base", estimate(thermal.base()))
        .put("theta", estimate(thermal.theta()))
        .put("spread", estimate(thermal.spread()))
        .put("test", test(thermal.test()));
  }

  private static PutJson at(AtTemperature at) {
    return new PutJson()
        .put("temperatureC", at.tempC())
        .put("trays", (long) at.trays().size())
        .put("seeds", (long) at.seeds())
        .put("emerged", (long) at.emerged())
        .put("germinating", estimate(at.germinating().share()))
        .put("endedEarly", at.germinating().endedEarly())
        .put("lognormal", curve(at.lognormal()))
        .put("best", curve(at.best()))
        .put(
            "tried",
            PutJson.each(
                at.tried(),
                t -> new PutJson().put("family", t.family().word()).put("akaike", t.akaike())));
  }

  private static @Nullable PutJson curve(@Nullable CurveFit curve) {
    return curve == null
        ? null
        : new PutJson()
            .put("family", curve.family().word())
            .put("germinating", estimate(curve.germinating().share()))
            .put("halfByDays", estimate(curve.halfByDays()))
            .put("mostByDays", estimate(curve.mostByDays()))
            .put("spread", estimate(curve.spread()))
            .put("akaike", curve.akaike())
            .put("test", test(curve.test()));
  }

  /** A limit that there is not is null. */
  private static @Nullable PutJson estimate(@Nullable Estimate estimate) {
    return estimate == null
        ? null
        : new PutJson()
            .put("value", estimate.value())
            .put("low", estimate.hasLow() ? Double.valueOf(estimate.low()) : null)
            .put("high", estimate.hasHigh() ? Double.valueOf(estimate.high()) : null);
  }

  private static @Nullable PutJson test(@Nullable FitTest test) {
    return test == null
        ? null
        : new PutJson()
            .put("chiSquare", test.statistic())
            .put("degreesOfFreedom", (long) test.degreesOfFreedom())
            .put("chanceOfWorse", test.chance());
  }

  private static PutJson entry(CropEntry entry) {
    PutJson json = new PutJson();
    new CropEntryText(entry)
        .values()
        .forEach(
            (key, within) -> {
              PutJson values = new PutJson();
              within.forEach(values::put);
              json.put(key, values);
            });
    return json;
  }

  /** A row for each lot and temperature. */
  static String csv(GerminationFit fit) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("crop", "lot", "temperature-c", "trays", "seeds", "emerged"),
        names("germinating"),
        names("half-by-days"),
        names("most-by-days"),
        names("spread"),
        List.of("best-curve", "chance-of-worse-fit"),
        names("base-c"),
        names("theta-degree-days"),
        names("tray-correlation"));
    for (Lot lot : fit.lots()) {
      ThermalFit thermal = lot.thermal();
      for (AtTemperature at : lot.temperatures()) {
        CurveFit curve = at.lognormal();
        CurveFit best = at.best();
        FitTest test = curve == null ? null : curve.test();
        table.row(
            List.of(lot.crop(), lot.lot(), RowCsv.number(at.tempC())),
            RowCsv.wholes(at.trays().size(), at.seeds(), at.emerged()),
            cells(at.germinating().share()),
            cells(curve == null ? null : curve.halfByDays()),
            cells(curve == null ? null : curve.mostByDays()),
            cells(curve == null ? null : curve.spread()),
            List.of(
                best == null ? "" : best.family().word(),
                test == null ? "" : RowCsv.number(test.chance())),
            cells(thermal == null ? null : thermal.base()),
            cells(thermal == null ? null : thermal.theta()),
            cells(lot.trayCorrelation()));
      }
    }
    return table.text();
  }

  private static List<String> names(String name) {
    return List.of(name, name + "-low", name + "-high");
  }

  private static List<String> cells(@Nullable Estimate estimate) {
    return estimate == null
        ? List.of("", "", "")
        : List.of(
            RowCsv.number(estimate.value()),
            estimate.hasLow() ? RowCsv.number(estimate.low()) : "",
            estimate.hasHigh() ? RowCsv.number(estimate.high()) : "");
  }
}
