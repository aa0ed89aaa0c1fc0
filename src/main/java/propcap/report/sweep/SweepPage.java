package propcap.report.sweep;

import java.util.ArrayList;
import java.util.List;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Words;
import propcap.study.sweep.Sweep;

/** The page of many scenarios. */
record SweepPage(Sweep sweep) {

  AnswerPage page(String version) {
    return new AnswerPage(
        sweep.first().variant().name(),
        "Which of " + Words.plural(sweep.scenarios().size(), "scenario") + " does best?",
        Fact.of(
            sweep.first().variant().scenario(),
            Words.count(sweep.settings().seasons()) + " of each scenario",
            sweep.settings()),
        version,
        List.of(
            new Part(
                "sweep",
                "Which does best",
                new SweepWords(sweep).verdicts(),
                List.of(),
                List.of(new SweepChart(sweep).figure()),
                List.of(
                    SweptRow.table(sweep)
                        .sheet(
                            "The scenarios, best first.",
                            "Means of a spring with half their 95 % interval, below them 8 springs"
                                + " of 10. What is clearly more or less than the first is bold.",
                            SweptRow.bestFirst(sweep))))),
        reading());
  }

  private List<AnswerPage.Term> reading() {
    List<AnswerPage.Term> terms = new ArrayList<>();
    terms.add(AnswerPage.SPRING);
    terms.add(
        new AnswerPage.Term(
            "The best",
            "has the highest mean "
                + (sweep.byMargin() ? "margin of a season" : "of plants on time")
                + ". With "
                + Words.given(sweep.confidence())
                + " confidence the one that is best in truth is it or one of those that the springs"
                + " do not tell from it."));
    terms.add(
        new AnswerPage.Term(
            "Safe sowings",
            "have the plants that they need on time in at least 9 springs of 10. Met are those that"
                + " have them in a spring."));
    terms.add(
        new AnswerPage.Term(
            "Fullest", "is the place with no space left on the most days of a spring."));
    terms.add(AnswerPage.PLUS_MINUS);
    terms.add(
        new AnswerPage.Term(
            "Intervals",
            "of the differences to the first hold together with "
                + Words.given(sweep.confidence())
                + " confidence, those of plants and those of money each."));
    terms.add(AnswerPage.FEW_SPRINGS);
    terms.add(AnswerPage.EIGHT_OF_TEN);
    if (!SweptRow.currency(sweep).isEmpty()) {
      terms.add(AnswerPage.MONEY);
    }
    return terms;
  }
}
