package propcap.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.report.DifferencesChart.Interval;
import propcap.report.DifferencesChart.Strand;
import propcap.report.Part.Figure;
import propcap.report.Sheet.Cell;
import propcap.report.Sheet.Column;
import propcap.report.Sheet.Row;
import propcap.study.Bottlenecks;
import propcap.study.Bottlenecks.Worth;
import propcap.study.Difference;

/** The page of what a little more of each place is worth, and of what to buy in which order. */
final class BottlenecksPage {
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
    List<AnswerPage.Term> reading = new ArrayList<>();
    reading.add(AnswerPage.SPRING);
    reading.add(AnswerPage.PLUS_MINUS);
    reading.add(
        new AnswerPage.Term(
            "Intervals",
            "of one table hold together with "
                + Words.given(answer.confidence())
                + " confidence. After the plants as things are, ± is half a 95 % interval of its"
                + " own."));
    reading.add(
        new AnswerPage.Term(
            "A space",
            "is room for a tray. The worth of one is that of a tenth more, or less, of its place,"
                + " shared out over the spaces of that tenth."));
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
    }
    return new AnswerPage(
        answer.scenario().name(),
        "What a little more of each place is worth",
        facts,
        version,
        List.of(worths(), stair()),
        reading);
  }

  private Part worths() {
    return new Part(
        "worth",
        "Which place holds up the spring?",
        List.of(words.verdict()),
        words.warnings(),
        List.of(
            new Figure(
                "Plants on time for each space.",
                "Marks are means of a tenth of the place, whiskers their intervals; one that"
                    + " crosses the line at 0 tells neither more nor less."
                    + (words.withHands()
                        ? " An hour a day is no space: hands are in the table alone."
                        : ""),
                DifferencesChart.of(
                    places().map(w -> w.place().name()).toList(),
                    List.of(
                        new Strand("one space more", intervals(Worth::moreOnTime)),
                        new Strand("one space less", intervals(Worth::lessOnTime))),
                    "plants on time a spring",
                    "worth",
                    "Plants on time for each space more or less, by place."))),
        List.of(
            new Sheet(
                "Places, the worth of a space first.",
                "What is clearly more or less is bold.",
                columns(),
                answer.worths().stream().map(this::row).toList())));
  }

  private List<@Nullable Interval> intervals(Function<Worth, Difference> which) {
    List<@Nullable Interval> intervals = new ArrayList<>();
    places()
        .forEach(
            worth -> {
              Difference d = which.apply(worth);
              double spaces = worth.spaces();
              intervals.add(new Interval(d.mean() / spaces, d.halfWidth() / spaces));
            });
    return intervals;
  }

  /** What is worth something by the space. */
  private Stream<Worth> places() {
    return answer.worths().stream().filter(w -> !w.place().isHands());
  }

  private List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("Place"));
    columns.add(Column.number("Tenth", "spaces"));
    columns.add(Column.number("A space more", "plants a spring"));
    columns.add(Column.number("A space less", "plants a spring"));
    money.ifPresent(
        m -> {
          columns.add(Column.number("A space more", m.currency() + " a season"));
          columns.add(Column.number("A space less", m.currency() + " a season"));
        });
    columns.add(Column.words("Holds up"));
    return columns;
  }

  private Row row(Worth worth) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.of(Words.count(worth.spaces()), "of " + Words.amount(worth.place().size())));
    cells.add(plants(worth.moreOnTime(), worth.spaces()));
    cells.add(plants(worth.lessOnTime(), worth.spaces()));
    if (money.isPresent()) {
      cells.add(margin(worth.moreMargin(), worth.spaces()));
      cells.add(margin(worth.lessMargin(), worth.spaces()));
    }
    cells.add(Cell.of(BottlenecksWords.holdsUp(worth).orElse("nothing clearly")));
    return new Row(worth.place().name(), kind(worth.place().place()), cells);
  }

  private static String kind(@Nullable Place place) {
    return place == null ? "hours a day" : TradeWords.kind(place.kind());
  }

  private static Cell plants(Difference difference, int spaces) {
    return Cell.of(BottlenecksWords.perSpace(difference, spaces)).strongIf(difference.isClear());
  }

  private static Cell margin(@Nullable Difference difference, int spaces) {
    return difference == null
        ? Cell.of("–")
        : Cell.of(Money.bare(difference.mean() / spaces, difference.halfWidth() / spaces))
            .strongIf(difference.isClear());
  }

  private Part stair() {
    List<Row> rows = new ArrayList<>();
    for (Bottlenecks.Step step : answer.steps()) {
      List<Cell> cells = new ArrayList<>();
      cells.add(Cell.of(step.place().name()));
      cells.add(Cell.of(Words.count(step.spaces())));
      cells.add(Cell.of(Words.count(step.spacesBought())));
      cells.add(Cell.of(Words.difference(step.gain())).strongIf(step.gain().isClear()));
      cells.add(Cell.of(Words.difference(step.gainSoFar())).strongIf(step.gainSoFar().isClear()));
      Difference margin = step.margin();
      if (money.isPresent()) {
        cells.add(margin(margin, 1));
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
    money.ifPresent(m -> columns.add(Column.number("Margin", m.currency() + ", this step")));
    String inAll = words.planInAll();
    return new Part(
        "stair",
        "What to buy, in which order",
        List.of(words.plan()),
        inAll.isEmpty() ? List.of() : List.of(inAll),
        List.of(
            new Figure(
                "Spaces bought and plants gained.",
                "Each rise is a step, numbered, with its place and its spaces.",
                StairChart.of(answer.steps()))),
        List.of(
            new Sheet(
                "The steps.", "Plants on time of a spring, margin of a season.", columns, rows)));
  }
}
