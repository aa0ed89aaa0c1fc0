package propcap.report.germination;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import propcap.evidence.germination.GerminationReport;
import propcap.evidence.germination.GerminationReport.Group;
import propcap.evidence.germination.ReplicateTolerance;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Sheet;
import propcap.report.kit.Table;
import propcap.report.kit.Words;

/** The page of a germination test as a seed laboratory reports it. */
final class GerminationReportPage {
  /** As rare as the published tolerances have it (Miles 1963, by the range at 97.5 %). */
  private static final double RARE = 0.025;

  private GerminationReportPage() {}

  static AnswerPage of(GerminationReport report, String counts, String version) {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < report.groups().size(); i++) {
      parts.add(part(report.groups().get(i), "test" + (i + 1)));
    }
    parts.add(new Part("formulas", "Formulas and sources", List.of(), List.of(formulas())));
    return new AnswerPage(
        counts,
        "The germination test, as seed laboratories report it",
        List.of(
            new Fact("Tests", Integer.toString(report.groups().size())),
            new Fact(
                "Trays",
                Words.count(report.groups().stream().mapToInt(g -> g.trays().size()).sum()))),
        version,
        parts,
        List.of(
            new AnswerPage.Term("A dash", "stands where too few seedlings leave an index open."),
            new AnswerPage.Term(
                "The rule of 7 CFR 201.55",
                "is for 4 or 2 replicates of 100 seeds: a test whose best and worst lie further apart"
                    + " than its table allows at their average is made again. Of trays of"
                    + " other numbers it is told how often trays that are alike, all with the pooled"
                    + " share, lie as far apart; less than 2.5 % of the time is more than chance."),
            new AnswerPage.Term(
                "Of all seeds, mean of the trays",
                "are two numbers where trays differ in size: the first counts each seed alike, the"
                    + " second each tray. The fit takes the first, the federal rule the second."),
            new AnswerPage.Term(
                "The indices",
                "count a seedling at the inspection that found it, so that they grow with the days"
                    + " between inspections; the curves of the fit do not.")));
  }

  static String name(Group group) {
    String lot = group.lot().equals(group.crop()) ? "" : ", lot " + group.lot();
    return group.crop() + lot + ", at " + Limits.temperature(group.tempC());
  }

  /** Final germination, mean time, and whether the replicates agree. */
  static String verdict(Group group) {
    DoubleSummaryStatistics mean = values(group, LaboratoryIndex.MEAN_TIME);
    return name(group)
        + ": "
        + number(group.pooledPercent())
        + " % of all seeds germinated ("
        + Words.count(group.emerged())
        + " of "
        + Words.count(group.seeds())
        + meanOfTrays(group)
        + ")"
        + (mean.getCount() == 0
            ? ". "
            : ", after " + Limits.days(mean.getAverage()) + " days in the mean. ")
        + tolerance(group.tolerance());
  }

  /** Said where it is another number, as trays of different sizes make it. */
  private static String meanOfTrays(Group group) {
    String mean = number(group.meanPercent());
    return mean.equals(number(group.pooledPercent())) ? "" : "; mean of the trays " + mean + " %";
  }

  private static String tolerance(ReplicateTolerance t) {
    String range =
        Words.plural(t.replicates(), "replicate") + " lie " + number(t.range()) + " points apart";
    return switch (t.verdict()) {
      case WITHIN -> range + ", within the " + t.allowed() + " that 7 CFR 201.55 allows.";
      case BEYOND ->
          range + ", more than the " + t.allowed() + " that 7 CFR 201.55 allows: test again.";
      case TABLE_ENDS ->
          range
              + "; the table of 7 CFR 201.55 as it could be read ends at 71 %, where "
              + t.allowed()
              + " are allowed: look it up.";
      case NO_RULE -> unruled(t);
    };
  }

  private static String unruled(ReplicateTolerance t) {
    Double chance = t.chanceOfRange();
    if (chance == null) {
      return t.replicates() == 1 ? "One tray cannot be compared." : "All trays are alike.";
    }
    return "%s lie %s points apart, %s (as far or further in %s of tests)."
        .formatted(
            Words.plural(t.replicates(), "tray"),
            number(t.range()),
            chance < RARE ? "more than chance has it" : "no more than chance has it",
            Words.chance(chance));
  }

  private static Part part(Group group, String id) {
    return new Part(
        id, name(group), List.of(verdict(group)), List.of(indices(group), trays(group)));
  }

  private static Sheet indices(Group group) {
    return new Table<LaboratoryIndex>("Index", LaboratoryIndex::title, LaboratoryIndex::unit)
        .number("Mean of the trays", "", i -> of(group, i, DoubleSummaryStatistics::getAverage))
        .number("Lowest", "", i -> of(group, i, DoubleSummaryStatistics::getMin))
        .number("Highest", "", i -> of(group, i, DoubleSummaryStatistics::getMax))
        .sheet(
            "Indices.",
            "Of each tray by itself; formulas below.",
            List.of(LaboratoryIndex.values()));
  }

  private static String of(
      Group group, LaboratoryIndex index, ToDoubleFunction<DoubleSummaryStatistics> which) {
    DoubleSummaryStatistics values = values(group, index);
    return values.getCount() == 0 ? "–" : number(which.applyAsDouble(values));
  }

  private static Sheet trays(Group group) {
    List<LaboratoryIndex> chief =
        List.of(
            LaboratoryIndex.PERCENT,
            LaboratoryIndex.MEAN_TIME,
            LaboratoryIndex.T50_COOLBEAR,
            LaboratoryIndex.SPEED);
    Table<GerminationReport.Tray> table =
        new Table<GerminationReport.Tray>("Tray", t -> t.counts().tray())
            .number("Seeds", "", t -> Words.count(t.counts().seeds()));
    chief.forEach(
        index ->
            table.number(index.title(), index.unit(), t -> numberOrNone(index.of(t.indices()))));
    return table.sheet("Trays.", "All indices of each are in the CSV file.", group.trays());
  }

  private static String numberOrNone(@Nullable Double value) {
    return value == null ? "–" : number(value);
  }

  private static Sheet formulas() {
    return new Table<LaboratoryIndex>("Index", LaboratoryIndex::title)
        .words("Formula", LaboratoryIndex::formula)
        .words("Source", LaboratoryIndex::source)
        .sheet(
            "Indices.",
            "N: new seedlings at an inspection at day T; C: seedlings found by then; C' and T': those"
                + " of the next inspection; n: all seedlings; S: seeds. Formulas as the manual of the"
                + " R package germinationmetrics (ICAR-NBPGR) gives them, which names these sources.",
            List.of(LaboratoryIndex.values()));
  }

  private static DoubleSummaryStatistics values(Group group, LaboratoryIndex index) {
    DoubleSummaryStatistics values = new DoubleSummaryStatistics();
    for (GerminationReport.Tray tray : group.trays()) {
      add(values, index.of(tray.indices()));
    }
    return values;
  }

  private static void add(DoubleSummaryStatistics values, @Nullable Double value) {
    if (value != null) {
      values.accept(value);
    }
  }

  /** Four figures, which is more than a count of seedlings is worth. */
  private static String number(double number) {
    double size = Math.abs(Words.finite(number));
    String pattern = size >= 100 ? "%.0f" : size >= 10 ? "%.1f" : size >= 1 ? "%.2f" : "%.3f";
    return String.format(Locale.ENGLISH, pattern, number).replaceFirst("\\.0+$", "");
  }
}
