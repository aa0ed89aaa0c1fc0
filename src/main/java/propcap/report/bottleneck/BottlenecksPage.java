package propcap.report.bottleneck;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.report.chart.DifferencesChart;
import propcap.report.chart.DifferencesChart.Interval;
import propcap.report.chart.DifferencesChart.Strand;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Money;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Words;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Trial;
import propcap.study.bottleneck.Bottlenecks.Worth;

/** The page of what a little more or less of each place brings, and what helps step by step. */
final class BottlenecksPage {
  private final Bottlenecks answer;
  private final BottlenecksWords words;
  private final BottlenecksTables tables;

  private BottlenecksPage(Bottlenecks answer) {
    this.answer = answer;
    this.words = new BottlenecksWords(answer);
    this.tables = new BottlenecksTables(answer);
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
    if (Money.of(answer.scenario()).isPresent()) {
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
            tables
                .worths()
                .sheet(
                    "Places, the most plants by the space first.",
                    "What is clearly more or less is bold. Below it: shared out over the spaces"
                        + " tried.",
                    answer.worths())));
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

  private Part stair() {
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
            tables
                .steps()
                .sheet(
                    "The steps.",
                    "Plants on time of a spring, margin of a season.",
                    answer.steps())));
  }
}
