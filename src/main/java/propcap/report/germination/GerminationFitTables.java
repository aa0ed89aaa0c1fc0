package propcap.report.germination;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.evidence.germination.CropEntry;
import propcap.evidence.germination.CurveFit;
import propcap.evidence.germination.GerminationFit;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.evidence.germination.GerminationFit.Lot;
import propcap.evidence.germination.GoodnessOfFit;
import propcap.evidence.germination.ThermalFit;
import propcap.report.kit.Json;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;

/** What a germination test tells, as tables. */
final class GerminationFitTables {
  private static final Table<GoodnessOfFit> TEST =
      new Table<GoodnessOfFit>()
          .json("chiSquare", GoodnessOfFit::statistic)
          .json("degreesOfFreedom", GoodnessOfFit::degreesOfFreedom)
          .json("chanceOfWorse", GoodnessOfFit::chance);

  private static final Table<CurveFit> CURVE =
      new Table<CurveFit>()
          .json("family", c -> c.family().word())
          .json("germinating", c -> c.germinating().share())
          .file("half-by-days", Table.ESTIMATE, CurveFit::halfByDays)
          .file("most-by-days", Table.ESTIMATE, CurveFit::mostByDays)
          .file("spread", Table.ESTIMATE, CurveFit::spread)
          .json("akaike", CurveFit::akaike)
          .json("test", c -> TEST.object(c.test()));

  private static final Table<ThermalFit> THERMAL =
      new Table<ThermalFit>()
          .csv("base-c", Table.ESTIMATE, ThermalFit::base)
          .json("base", ThermalFit::base)
          .csv("theta-degree-days", Table.ESTIMATE, ThermalFit::theta)
          .json("theta", ThermalFit::theta)
          .json("spread", ThermalFit::spread)
          .json("test", t -> TEST.object(t.test()));

  private static final Table<GerminationFit.TriedFamily> TRIED =
      new Table<GerminationFit.TriedFamily>()
          .json("family", t -> t.family().word())
          .json("akaike", GerminationFit.TriedFamily::akaike);

  /** A row for each temperature of a lot. */
  static final Table<AtTemperature> AT =
      new Table<AtTemperature>("At", at -> Limits.temperatureOnOneLine(at.tempC()))
          .file("temperature-c", AtTemperature::tempC)
          .file("trays", at -> at.trays().size())
          .file("seeds", AtTemperature::seeds)
          .cell(
              "Seeds",
              "trays",
              at -> Cell.of(Words.count(at.seeds()), Words.count(at.trays().size())))
          .file("emerged", AtTemperature::emerged)
          .file("germinating", Table.ESTIMATE, at -> at.germinating().share())
          .cell("Come up", "of the seeds", at -> share(at.germinating().share()))
          .json("endedEarly", at -> at.germinating().endedEarly())
          .csv("", CURVE, AtTemperature::lognormal)
          .json("lognormal", at -> CURVE.object(at.lognormal()))
          .cell("Half by", "days", at -> cell(at, CurveFit::halfByDays, Limits::days))
          .cell("Nine in ten by", "days", at -> cell(at, CurveFit::mostByDays, Limits::days))
          .cell("Spread", "of the log of time", at -> cell(at, CurveFit::spread, Limits::fine))
          .json("best", at -> CURVE.object(at.best()))
          .csv("best-curve", at -> at.best() == null ? null : at.best().family().word())
          .csv("chance-of-worse-fit", at -> chance(at.lognormal()))
          .json("tried", at -> TRIED.objects(at.tried()));

  private GerminationFitTables() {}

  private static Cell share(Estimate share) {
    return Cell.of(Words.percent(share.value()), Limits.percentLimits(share));
  }

  private static Cell cell(
      AtTemperature at, Function<CurveFit, Estimate> figure, DoubleFunction<String> number) {
    CurveFit curve = at.lognormal();
    if (curve == null) {
      return Cell.NONE;
    }
    Estimate estimate = figure.apply(curve);
    return Cell.of(number.apply(estimate.value()), Limits.limits(estimate, number));
  }

  private static @Nullable Double chance(@Nullable CurveFit curve) {
    GoodnessOfFit test = curve == null ? null : curve.test();
    return test == null ? null : test.chance();
  }

  private record Fit(String counts, String version, double confidence, List<LotMembers> lots) {}

  private record LotMembers(
      String crop,
      String lot,
      @Nullable Estimate trayCorrelation,
      @Nullable Map<String, @Nullable Object> thermal,
      String noBase,
      List<?> temperatures,
      Map<String, Map<String, String>> entry) {}

  static String json(GerminationFit fit, List<CropEntry> entries, String counts, String version) {
    return Json.text(
        new Fit(
            counts,
            version,
            0.95,
            IntStream.range(0, entries.size())
                .mapToObj(i -> lot(fit.lots().get(i), entries.get(i)))
                .toList()));
  }

  private static LotMembers lot(Lot lot, CropEntry entry) {
    GerminationFit.NoBase why = lot.noBase();
    return new LotMembers(
        lot.crop(),
        lot.lot(),
        lot.trayCorrelation(),
        THERMAL.object(lot.thermal()),
        why == null ? "" : why.name().toLowerCase(Locale.ROOT),
        AT.objects(lot.temperatures()),
        new CropEntryText(entry).values());
  }

  /** A row for each lot and temperature. */
  static String csv(GerminationFit fit) {
    record Row(Lot lot, AtTemperature at) {}
    return new Table<Row>()
        .csv("crop", r -> r.lot.crop())
        .csv("lot", r -> r.lot.lot())
        .csv("", AT, Row::at)
        .csv("", THERMAL, r -> r.lot.thermal())
        .csv("tray-correlation", Table.ESTIMATE, r -> r.lot.trayCorrelation())
        .csv(
            fit.lots().stream()
                .flatMap(l -> l.temperatures().stream().map(t -> new Row(l, t)))
                .toList());
  }
}
