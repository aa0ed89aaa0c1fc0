package propcap.report.bottleneck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.report.chart.DifferencesChart;
import propcap.report.chart.DifferencesChart.Interval;
import propcap.report.chart.DifferencesChart.Strand;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Money;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Sheet.Column;
import propcap.report.kit.Sheet.Row;
import propcap.report.kit.TradeWords;
import propcap.report.kit.Words;
import propcap.study.Bottlenecks;
import propcap.study.Bottlenecks.Trial;
import propcap.study.Bottlenecks.Worth;
import propcap.study.Comparison;
import propcap.study.Comparison.Pays;
import propcap.study.Difference;

/** The page of what a little more or less of each place brings, and what helps step by step. */
final class BottlenecksPage {
  private static final Cell NONE = Cell.of("–");

  private final Bottlenecks answer;
  private final BottlenecksWords words;
  private final Optional<Money> money;

  private BottlenecksPage(Bottlenecks answer) {
    this.answer = answer;
    this.words = new BottlenecksWords(answer);
    this.money = Money.of(answer.scenario());
  }

  static AnswerPage of(Bottlenecks answer, String version) {
    return new BottlenecksPage(answer).page(version);
  }

  private AnswerPage page(String version) {
    List<Fact> facts =
        new ArrayList<>(
            Fact.of(
                answer.scenario(),
                Words.count(answer.seasons()) + " of each trial",
                answer.settings()));
    facts.add(
        new Fact("As things are", Words.estimate(answer.onTime()) + " plants on time a spring"));
    return new AnswerPage(
        answer.scenario().name(),
        "What a little more, or less, of each place brings",
        facts,
        version,
        List.of(worths(), stair()),
        reading());
  }

  private List<AnswerPage.Term> reading() {
    List<AnswerPage.Term> reading = new ArrayList<>();
    reading.add(AnswerPage.SPRING);
    reading.add(AnswerPage.PLUS_MINUS);
    reading.add(
        new AnswerPage.Term(
            "Intervals",
            "hold together with "
                + Words.given(answer.confidence())
                + " confidence, all "
                + answer.intervals()
                + " of this answer: those of both tables, of every column and of every place that a"
                + " step could have taken (Bonferroni). After the plants as things are, ± is half a"
                + " 95 % interval of its own."));
    reading.add(AnswerPage.FEW_SPRINGS);
    reading.add(
        new AnswerPage.Term(
            "More and fewer",
            "are a tenth of a place, at least one space, and are told as they were tried. For each"
                + " is the same shared out over them: where a tenth is several spaces, one alone may"
                + " bring more, or nothing."));
    reading.add(
        new AnswerPage.Term(
            "Holds up",
            "names what clearly waits less, tray-days a spring, when its place has a tenth more."));
    if (words.withHands()) {
      reading.add(
          new AnswerPage.Term(
              "Hands",
              "stand among the places with their hours a day, of all people together: an hour a day"
                  + " is counted as a space is, though it does not cost the same."));
    }
    if (money.isPresent()) {
      reading.add(AnswerPage.MONEY);
      reading.add(
          new AnswerPage.Term(
              "To buy",
              "is said only of what clearly pays: the net present value of a tenth more lies above 0"
                  + " with its interval. Its price is its share, by the spaces, of what its place"
                  + " costs; upkeep is taken to stay as it is."));
    }
    return reading;
  }

  private Part worths() {
    return new Part(
        "worth",
        "Which place holds up the spring?",
        List.of(words.verdict()),
        words.findings(),
        List.of(
            new Figure(
                "Plants on time, a tenth more and a tenth fewer.",
                "Beside each place is how many spaces were tried. Marks are means, whiskers their"
                    + " intervals; one that crosses the line at 0 tells neither more nor less.",
                DifferencesChart.of(
                    answer.worths().stream().map(BottlenecksPage::label).toList(),
                    List.of(
                        new Strand("a tenth more", intervals(Worth::more)),
                        new Strand("a tenth fewer", intervals(Worth::fewer))),
                    "plants on time a spring",
                    "worth",
                    "Plants on time with a tenth more or fewer spaces, by place."))),
        List.of(
            new Sheet(
                "Places, the most plants by the space first.",
                "What is clearly more or less is bold. Below it: shared out over the spaces tried.",
                columns(),
                answer.worths().stream().map(this::row).toList())));
  }

  private static String label(Worth worth) {
    return worth.place().name()
        + ", "
        + Words.count(worth.more().spaces())
        + (worth.place().isHands() ? " h" : "");
  }

  private List<@Nullable Interval> intervals(Function<Worth, @Nullable Trial> which) {
    List<@Nullable Interval> intervals = new ArrayList<>();
    for (Worth worth : answer.worths()) {
      Trial trial = which.apply(worth);
      intervals.add(trial == null ? null : Interval.of(trial.onTime()));
    }
    return intervals;
  }

  private List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("Place"));
    columns.add(Column.number("Tenth", "spaces"));
    columns.add(Column.number("So many more", "plants a spring"));
    columns.add(Column.number("So many fewer", "plants a spring"));
    money.ifPresent(
        m -> {
          columns.add(Column.number("So many more", m.currency() + " a season"));
          columns.add(Column.number("So many fewer", m.currency() + " a season"));
          if (isAnyPriced()) {
            columns.add(Column.number("Net present value", m.currency() + ", more"));
          }
        });
    columns.add(Column.words("Holds up"));
    return columns;
  }

  private boolean isAnyPriced() {
    return answer.worths().stream().anyMatch(w -> w.more().worth() != null);
  }

  private Row row(Worth worth) {
    List<Cell> cells = new ArrayList<>();
    Trial fewer = worth.fewer();
    cells.add(
        Cell.of(Words.count(worth.more().spaces()), "of " + Words.amount(worth.place().size())));
    cells.add(plants(worth.more()));
    cells.add(plants(fewer));
    if (money.isPresent()) {
      cells.add(margin(worth.more().margin()));
      cells.add(margin(fewer == null ? null : fewer.margin()));
      if (isAnyPriced()) {
        cells.add(value(worth.more().worth()));
      }
    }
    cells.add(Cell.of(BottlenecksWords.holdsUp(worth).orElse("nothing clearly")));
    return new Row(worth.place().name(), kind(worth.place().place()), cells);
  }

  private static String kind(@Nullable Place place) {
    return place == null ? "hours a day" : TradeWords.kind(place.kind());
  }

  private static Cell plants(@Nullable Trial trial) {
    if (trial == null) {
      return NONE;
    }
    return Cell.of(
            Words.difference(trial.onTime()),
            trial.spaces() == 1 ? "" : Words.signedAmount(trial.plantsForEach()) + " for each")
        .strongIf(trial.onTime().isClear());
  }

  private static Cell margin(@Nullable Difference difference) {
    return difference == null
        ? NONE
        : Cell.of(Money.bare(difference)).strongIf(difference.isClear());
  }

  private static Cell value(Comparison.@Nullable Worth value) {
    return value == null || !value.isTold()
        ? NONE
        : Cell.of(Money.bare(value.netPresentValue(), value.netPresentValueHalfWidth()))
            .strongIf(value.pays() != Pays.NOT_TOLD);
  }

  private Part stair() {
    List<Row> rows = new ArrayList<>();
    for (Bottlenecks.Step step : answer.steps()) {
      Trial trial = step.trial();
      List<Cell> cells = new ArrayList<>();
      cells.add(Cell.of(step.place().name()));
      cells.add(Cell.of(Words.count(trial.spaces())));
      cells.add(Cell.of(Words.count(step.spacesAdded())));
      cells.add(Cell.of(Words.difference(trial.onTime())).strongIf(trial.onTime().isClear()));
      cells.add(Cell.of(Words.difference(step.gainSoFar())).strongIf(step.gainSoFar().isClear()));
      if (money.isPresent()) {
        cells.add(margin(trial.margin()));
        cells.add(Cell.of(pays(trial.pays())));
      }
      rows.add(new Row(Integer.toString(rows.size() + 1), cells));
    }
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("Step"));
    columns.add(Column.words("Place"));
    columns.add(Column.number("Spaces", "of this step"));
    columns.add(Column.number("Spaces", "so far"));
    columns.add(Column.number("Plants", "of this step"));
    columns.add(Column.number("Plants", "so far"));
    money.ifPresent(
        m -> {
          columns.add(Column.number("Margin", m.currency() + ", this step"));
          columns.add(Column.words("Pays"));
        });
    StairWords stair = new StairWords(answer);
    return new Part(
        "stair",
        "What helps most, step by step",
        List.of(stair.plan()),
        stair.inAll().isEmpty() ? List.of() : List.of(stair.inAll()),
        List.of(
            new Figure(
                "Spaces added and plants gained.",
                "Each rise is a step, numbered, with its place and its spaces.",
                StairChart.of(answer.steps()))),
        List.of(
            new Sheet(
                "The steps.", "Plants on time of a spring, margin of a season.", columns, rows)));
  }

  private static String pays(Pays pays) {
    return switch (pays) {
      case YES -> "yes";
      case NO -> "no";
      case NOT_TOLD -> "not told";
      case NOT_KNOWN -> "its cost is not known";
    };
  }
}
