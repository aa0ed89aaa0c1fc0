package propcap.report.compare;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.report.chart.DifferencesChart;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.InvestmentWords;
import propcap.report.kit.Money;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.compare.Comparison;
import propcap.study.compare.Comparison.Kind;
import propcap.study.compare.Comparison.Outcome;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/** The page of a comparison: what each alternative is worth, a picture for each question. */
final class ComparisonPage {
  private final Comparison comparison;
  private final List<ComparisonWords> alternatives;
  private final List<InvestmentWords> investments;

  private ComparisonPage(Comparison comparison) {
    this.comparison = comparison;
    this.alternatives = ComparisonWords.of(comparison);
    this.investments = InvestmentWords.of(comparison);
  }

  static AnswerPage of(Comparison comparison, String version) {
    return new ComparisonPage(comparison).page(version);
  }

  private AnswerPage page(String version) {
    List<Fact> facts =
        new ArrayList<>(
            Fact.of(
                comparison.scenarios().get(0),
                Words.count(comparison.seasons()),
                comparison.settings()));
    facts.add(new Fact("Alternatives", Integer.toString(alternatives.size())));
    List<Part> parts = new ArrayList<>();
    if (!investments.isEmpty() || comparison.find(Kind.MARGIN, "").isPresent()) {
      parts.add(money());
    }
    parts.add(plants());
    parts.add(part("crops", "Which crops gain or lose", Kind.ON_TIME_OF_CROP, "plants on time"));
    parts.add(part("waiting", "What waits", Kind.WAITING, "tray-days of waiting"));
    parts.add(part("losses", "Where plants are lost", Kind.LOST, "cells or plants lost"));
    parts.add(all());
    return new AnswerPage(
        comparison.scenarios().get(0).name(),
        "What the alternatives would change",
        facts,
        version,
        parts.stream().filter(p -> !isEmpty(p)).toList(),
        reading());
  }

  private static boolean isEmpty(Part part) {
    return part.verdicts().isEmpty() && part.figures().isEmpty() && part.sheets().isEmpty();
  }

  private Part plants() {
    return new Part(
        "plants",
        "Does it bring more plants?",
        alternatives.stream().map(ComparisonWords::verdict).toList(),
        List.of(),
        List.of(
            figure(
                "Plants on time, against " + comparison.scenarios().get(0).name() + ".",
                List.of(comparison.total(Kind.ON_TIME)),
                "plants on time a spring, against the first",
                "plants")),
        List.of());
  }

  private Part part(String id, String heading, Kind kind, String unit) {
    List<Outcome> outcomes =
        comparison.outcomes().stream()
            .filter(o -> o.kind() == kind && !o.subject().isEmpty())
            .filter(ComparisonPage::isSeen)
            .toList();
    return new Part(
        id,
        heading,
        List.of(),
        List.of(),
        List.of(
            figure(
                "Difference to " + comparison.scenarios().get(0).name() + ".",
                outcomes,
                unit + " a spring, against the first",
                id)),
        List.of());
  }

  /** Whether there is any of it in any scenario. */
  private static boolean isSeen(Outcome outcome) {
    return outcome.levels().stream().anyMatch(l -> l.mean() != 0);
  }

  private Part money() {
    String currency = currency();
    return new Part(
        "money",
        "Does it pay?",
        investments.stream().map(InvestmentWords::verdict).toList(),
        investments.stream().map(InvestmentWords::reasons).filter(r -> !r.isEmpty()).toList(),
        List.of(
            figure(
                "Margin of a season, against " + comparison.scenarios().get(0).name() + ".",
                comparison.find(Kind.MARGIN, "").stream().toList(),
                currency + " a season, against the first",
                "margin")),
        List.of(
            ComparisonTables.investments(currency)
                .sheet(
                    "What it costs and brings.",
                    "The yearly cost is the buying as an annuity, and the upkeep, less what upkeep"
                        + " is saved; the margin is against "
                        + comparison.scenarios().get(0).name()
                        + ", running costs paid. A dash: nothing is bought, or its cost is not"
                        + " known.",
                    investments)));
  }

  private Figure figure(String title, List<Outcome> outcomes, String unit, String id) {
    List<DifferencesChart.Strand> strands = new ArrayList<>();
    for (ComparisonWords alternative : alternatives) {
      List<DifferencesChart.@Nullable Interval> intervals = new ArrayList<>();
      outcomes.forEach(o -> intervals.add(DifferencesChart.Interval.of(alternative.difference(o))));
      strands.add(new DifferencesChart.Strand(alternative.name(), intervals));
    }
    return new Figure(
        title,
        "Marks are means, whiskers their intervals; one that crosses the line at 0 tells neither"
            + " more nor less.",
        DifferencesChart.of(
            outcomes.stream().map(ComparisonWords::shortName).toList(), strands, unit, id, title));
  }

  private Part all() {
    Table<Outcome> table =
        new Table<Outcome>("Outcome", this::name)
            .number(comparison.scenarios().get(0).name(), "mean of a spring", this::first);
    alternatives.forEach(
        a -> table.cell(a.name(), "difference", o -> cell(a.difference(o), isMoney(o))));
    return new Part(
        "all",
        "Every outcome",
        List.of(),
        List.of(
            table.sheet(
                "Level of the first, and how the others differ.",
                "What is clearly more or less is bold. Below it: the share of springs in which the"
                    + " alternative is better, and how many times wider the interval would be on"
                    + " luck of its own; neither where the two do not differ.",
                comparison.outcomes())));
  }

  private static boolean isMoney(Outcome outcome) {
    return outcome.kind() == Kind.MARGIN;
  }

  private String name(Outcome outcome) {
    String name = ComparisonWords.name(outcome);
    return isMoney(outcome) ? name + ", " + currency() : name;
  }

  private String currency() {
    return Money.currency(comparison.scenarios().get(0)).orElse("");
  }

  private String first(Outcome outcome) {
    Stat first = outcome.levels().get(0);
    return isMoney(outcome)
        ? Money.level(first.mean(), Words.Z_95 * first.se())
        : Words.estimate(first);
  }

  /** A difference that rounds to nothing is nothing, and nothing more is said of it. */
  private static Cell cell(Difference d, boolean isMoney) {
    String text = isMoney ? Money.bare(d) : Words.difference(d);
    return Words.isNothing(text)
        ? Cell.of("0")
        : Cell.of(text, "ahead " + Words.chance(d.shareAhead()) + narrowing(d))
            .strongIf(d.isClear());
  }

  /** How many times narrower pairing made the interval; nothing where there is none. */
  private static String narrowing(Difference d) {
    Double narrowing = d.narrowing();
    return narrowing == null ? "" : ", " + Words.amount(narrowing) + "×";
  }

  private List<AnswerPage.Term> reading() {
    List<AnswerPage.Term> terms = new ArrayList<>();
    terms.add(AnswerPage.SPRING);
    terms.add(AnswerPage.PLUS_MINUS);
    terms.add(
        new AnswerPage.Term(
            "Intervals",
            "of one outcome hold for all alternatives together with "
                + Words.given(comparison.confidence())
                + " confidence (Bonferroni). Each alternative is compared with the first, not with"
                + " the other alternatives. After the level of the first, ± is half a 95 % interval"
                + " of its own."));
    terms.add(
        new AnswerPage.Term(
            "Ahead",
            "is the share of springs in which the alternative is better; a tie is not. After it"
                + " stands how many times narrower the interval is than it would be had the two been"
                + " run on luck of their own."));
    terms.add(AnswerPage.FEW_SPRINGS);
    if (!investments.isEmpty()) {
      terms.add(AnswerPage.MONEY);
      terms.add(
          new AnswerPage.Term(
              "What is there",
              "is paid already: of a larger place only what is added is bought, in proportion to the"
                  + " spaces unless the alternative gives it a buy of its own. A place that is closed"
                  + " saves its upkeep and its running, and is not sold."));
      terms.add(
          new AnswerPage.Term(
              "Net present value",
              "is what the changed places bring over their life less what they cost, later money"
                  + " counting less by the discount of "
                  + Words.given(investments.get(0).discount())
                  + " a year; its interval has the error of the mean gain. The chance that it pays"
                  + " draws the springs of its life from those simulated."));
    }
    return terms;
  }
}
