package propcap.report.germination;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import propcap.evidence.germination.CropEntry;
import propcap.evidence.germination.CurveFit;
import propcap.evidence.germination.GerminationFit;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.evidence.germination.GerminationFit.Lot;
import propcap.evidence.germination.GerminationFit.TriedFamily;
import propcap.evidence.germination.GoodnessOfFit;
import propcap.evidence.germination.ThermalFit;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Csv;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;

/** The page of what a germination test tells for the crop list. */
final class GerminationFitPage {
  private GerminationFitPage() {}

  /** The page; entries are those of the lots, in their order. */
  static AnswerPage of(GerminationFit fit, List<CropEntry> entries, String counts, String version) {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < fit.lots().size(); i++) {
      parts.add(part(fit.lots().get(i), entries.get(i), "lot" + (i + 1)));
    }
    return new AnswerPage(
        counts,
        "What the germination test tells",
        List.of(
            new Fact("Lots", Integer.toString(fit.lots().size())),
            new Fact("Seeds", Words.count(fit.lots().stream().mapToInt(Lot::seeds).sum()))),
        version,
        parts,
        reading());
  }

  private static Part part(Lot lot, CropEntry entry, String id) {
    GerminationWords words = new GerminationWords(lot, entry);
    List<String> sentences = new ArrayList<>();
    sentences.add(words.base());
    sentences.add(words.trays());
    sentences.addAll(words.remarks());
    List<Figure> figures = new ArrayList<>();
    for (int t = 0; t < lot.temperatures().size(); t++) {
      AtTemperature at = lot.temperatures().get(t);
      figures.add(
          new Figure(
              "At " + Limits.temperature(at.tempC()) + ".",
              "%s in %s, %s up by day %s."
                  .formatted(
                      Words.plural(at.seeds(), "seed"),
                      Words.plural(at.trays().size(), "tray"),
                      Words.count(at.emerged()),
                      Limits.days(at.lastDays())),
              GerminationChart.of(at, words.name(), id + "at" + (t + 1))));
    }
    return new Part(
        id,
        words.name(),
        List.of(words.verdict()),
        sentences,
        figures,
        List.of(estimates(lot), shapes(lot), together(lot.thermal()), block(entry)));
  }

  private static Sheet estimates(Lot lot) {
    return GerminationFitTables.AT.sheet(
        "By temperature.",
        "By the lognormal curve, which the simulator takes. Below each number its 95 % limits.",
        lot.temperatures());
  }

  private static Sheet shapes(Lot lot) {
    Table<AtTemperature> table = new Table<>("At", at -> Limits.temperatureOnOneLine(at.tempC()));
    List<String> shapes = List.of("Lognormal", "Log-logistic", "Weibull");
    for (int s = 0; s < shapes.size(); s++) {
      int shape = s;
      table.cell(shapes.get(s), "", at -> akaike(at, at.tried().get(shape)));
    }
    return table
        .words("Best", at -> at.best() == null ? "–" : at.best().family().word())
        .number("Fit of the best", "chance of a worse", at -> fit(at.best()))
        .number("Fit of the lognormal", "chance of a worse", at -> fit(at.lognormal()))
        .sheet(
            "Shapes of the curve.",
            "Akaike's criterion: the least is best, and less than 2 more is nearly as good. Beside it"
                + " the chance of a worse fit of the best and of the lognormal curve (Pearson's"
                + " chi-square on the times of the seedlings, intervals put together until 5 are"
                + " expected in each).",
            lot.temperatures().stream().filter(at -> at.best() != null).toList());
  }

  private static Cell akaike(AtTemperature at, TriedFamily tried) {
    boolean isBest = at.best() != null && at.best().family() == tried.family();
    return Cell.of(Csv.number(Math.round(10 * tried.akaike()) / 10.0)).strongIf(isBest);
  }

  private static String fit(@Nullable CurveFit curve) {
    GoodnessOfFit test = curve == null ? null : curve.test();
    return test == null ? "too few counts" : Words.chance(test.chance());
  }

  private static Sheet together(@Nullable ThermalFit thermal) {
    Map<String, String> rows = new LinkedHashMap<>();
    if (thermal != null) {
      rows.put("Base", Limits.temperature(thermal.base()));
      rows.put(
          "Thermal time to half", Limits.whole(thermal.theta()) + " degree days above the base");
      rows.put("Spread of the log of time", Limits.fine(thermal.spread()));
      rows.put(
          "Drawn through",
          Words.list(thermal.temperaturesC().stream().map(Limits::temperature).toList()));
      rows.put(
          "Chance of a worse fit",
          Words.chance(thermal.test().chance())
              + " (likelihood ratio against a curve of its own at each)");
    }
    return new Table<Map.Entry<String, String>>("", Map.Entry::getKey)
        .words("With 95 % limits", Map.Entry::getValue)
        .sheet(
            "All temperatures together.",
            "Days = degree days / (temperature - base), after Garcia-Huidobro, Monteith and Squire"
                + " (1982), J. Exp. Bot. 33; up to the optimum only: the warmest is left out as long"
                + " as half of its seedlings came later than the line through the others has it by"
                + " more than chance (likelihood ratio, one side, 5 %).",
            List.copyOf(rows.entrySet()));
  }

  private static Sheet block(CropEntry entry) {
    return new Table<Map.Entry<String, Map<String, String>>>("Key", Map.Entry::getKey)
        .words(
            "Values",
            key ->
                key.getValue().entrySet().stream()
                    .map(e -> e.getKey() + ": " + e.getValue())
                    .collect(Collectors.joining(", ")))
        .sheet(
            "For the crop list.",
            "What is not here stays as it is in your list.",
            List.copyOf(new CropEntryText(entry).values().entrySet()));
  }

  private static List<AnswerPage.Term> reading() {
    return List.of(
        new AnswerPage.Term(
            "95 % limits",
            "enclose the truth of the lot in 95 of 100 such tests. They are wide where few seeds were"
                + " tested, and know nothing of what differs between your test and your trays."),
        new AnswerPage.Term(
            "The steps",
            "are the counts: between two inspections nobody knows when a seedling came, and the curve"
                + " takes no more from them than that. Seeds that never came may be dead, or late; a"
                + " test that ends early leaves it open. The curve then drawn is the one of the share that is"
                + " written."),
        new AnswerPage.Term(
            "The band", "is where the curve may lie, day by day, with 95 % confidence."),
        new AnswerPage.Term(
            "Spread",
            "is how unevenly they come: the standard deviation of the logarithm of time. At 0.2 nine in"
                + " ten are up at about 1.3 times the days of half."),
        new AnswerPage.Term(
            "Tested seeds",
            "stands in the crop list for how well the rate is known: the simulator draws it as widely as"
                + " the limits lie. It is lower than the seeds that were sown where trays differ by more"
                + " than chance, and where the test ended early; then the rate is the middle of what it"
                + " may be. Where all came up, or none, it is one more, for no count of seeds makes it"
                + " certain."));
  }
}
