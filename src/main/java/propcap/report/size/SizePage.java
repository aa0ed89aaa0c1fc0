package propcap.report.size;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Sheet.Column;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.size.FurnishingList;
import propcap.study.size.Goal.Measure;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;

/** The page of how large a place must be, and of what to order for it. */
final class SizePage {
  private static final int CHEAPEST_SHOWN = 10;
  private static final String KEY =
      "● holds, ○ fails, ◊ too near to tell; below it the 95 % limits.";

  private final Sizing sizing;
  private final SizeWords words;

  private SizePage(Sizing sizing) {
    this.sizing = sizing;
    this.words = SizeWords.of(sizing);
  }

  static AnswerPage of(Sizing sizing, FurnishingList order, String version) {
    return new SizePage(sizing).page(order, version);
  }

  private AnswerPage page(FurnishingList order, String version) {
    List<Fact> facts =
        new ArrayList<>(
            Fact.of(
                sizing.scenario(),
                Words.count((double) sizing.seasonsRun()) + " of all sizes together",
                sizing.settings()));
    facts.add(new Fact("Most for a size", Words.plural(sizing.most(), "spring")));
    List<Part> parts = new ArrayList<>();
    parts.add(size());
    if (!order.lines().isEmpty()) {
      parts.add(order(order));
    }
    return new AnswerPage(
        sizing.scenario().name(),
        "How large must " + Words.list(sizing.places()) + " be?",
        facts,
        version,
        parts,
        reading());
  }

  private Part size() {
    boolean isPair = sizing.places().size() > 1;
    String caption =
        sizing.goal().measure() == Measure.MARGIN
            ? "Whiskers are 95 % limits. Below: how many springs it took to tell."
            : "The dashed line is the goal; within the pale band an answer may be wrong. Whiskers"
                + " are 95 % limits. Below: how many springs it took to tell.";
    return new Part(
        "size",
        "The answer",
        List.of(new SizeVerdict(words).text()),
        new SizeNotes(words).all(),
        List.of(new Figure("Every size that was tried.", caption, SizeChart.of(sizing))),
        isPair ? List.of(grid(), cheapest()) : List.of(sizes(sizing.candidates())));
  }

  private Sheet sizes(List<Candidate> candidates) {
    boolean isPair = sizing.places().size() > 1;
    return new Table<Candidate>(
            isPair ? "Pair" : sizing.places().get(0) + ", " + words.countedIn(0),
            c -> isPair ? words.size(c) : Words.count(c.spaces().get(0)))
        .cell(
            Column.words("Goal"),
            c -> Cell.of(SizeWords.mark(c.found()) + " " + words.found(c.found())).strongIf(is(c)))
        .cell(
            "Measured",
            words.axis(),
            c -> Cell.of(words.bareEstimate(c), words.limits(c, "–")).strongIf(is(c)))
        .number("Springs run", "", c -> Words.count(c.seasons()))
        .when(
            isPair || words.costIsMoney(), t -> t.number("Cost", words.costUnit(), words::bareCost))
        .sheet(
            isPair ? "The cheapest that hold." : "Sizes tried.",
            "The answer is bold. Below an estimate its 95 % limits.",
            candidates);
  }

  private boolean is(Candidate candidate) {
    return candidate.equals(sizing.answer());
  }

  private Sheet cheapest() {
    return sizes(
        sizing.candidates().stream()
            .filter(c -> c.found() == Found.HOLDS || is(c))
            .sorted(Comparator.comparingDouble(Candidate::yearlyCost))
            .limit(CHEAPEST_SHOWN)
            .toList());
  }

  /** The first place's sizes down, the second's across. */
  private Sheet grid() {
    List<Integer> across =
        sizing.candidates().stream().map(c -> c.spaces().get(1)).distinct().sorted().toList();
    Table<Integer> table = new Table<>(sizing.places().get(0), down -> words.amount(0, down));
    across.forEach(a -> table.cell(Words.count(a), sizing.places().get(1), down -> cell(down, a)));
    return table.sheet(
        "Every pair that was tried, " + words.axis() + ".",
        KEY + " The answer is bold.",
        sizing.candidates().stream().map(c -> c.spaces().get(0)).distinct().sorted().toList());
  }

  private Cell cell(int down, int across) {
    Optional<Candidate> pair =
        sizing.candidates().stream()
            .filter(c -> c.spaces().equals(List.of(down, across)))
            .findFirst();
    if (pair.isEmpty()) {
      return Cell.of("–");
    }
    Candidate c = pair.get();
    return Cell.of(SizeWords.mark(c.found()) + " " + words.bareEstimate(c), words.limits(c, "–"))
        .strongIf(is(c))
        .shaded(c.found() == Found.HOLDS ? 3 : c.found() == Found.NEAR ? 1 : 0);
  }

  private Part order(FurnishingList order) {
    return new Part(
        "order",
        "What to order",
        List.of(),
        order.arithmetic(),
        List.of(),
        List.of(SizeFiles.ORDER.sheet("Order list.", "", order.lines())));
  }

  private List<AnswerPage.Term> reading() {
    List<AnswerPage.Term> terms = new ArrayList<>();
    terms.add(AnswerPage.SPRING);
    terms.add(
        new AnswerPage.Term(
            "Holds or fails",
            "is looked at after so many springs, after twice as many and so on up to the most, and"
                + " ends as soon as it is told, so that sizes far from the goal take few. All such"
                + " answers of the page together are right, or within the band about the goal, with "
                + Words.given(sizing.confidence())
                + " confidence."));
    terms.add(
        new AnswerPage.Term(
            "Limits",
            "hold for all sizes together and at every look with "
                + Words.given(sizing.confidence())
                + " confidence, which makes them wide. They say nothing of whether the crop list,"
                + " the plan and the weather record are right."));
    if (words.costIsMoney() || sizing.goal().measure() == Measure.MARGIN) {
      terms.add(AnswerPage.MONEY);
    }
    return terms;
  }
}
