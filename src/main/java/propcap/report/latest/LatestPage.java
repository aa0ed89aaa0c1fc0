package propcap.report.latest;

import java.util.ArrayList;
import java.util.List;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.FilledWords;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Words;
import propcap.study.fill.FirstPlan.Filled;
import propcap.study.latest.Latest;
import propcap.study.latest.Latest.Course;

/** The page of the last days to sow. */
final class LatestPage {
  /** So many have a chart each; of more there is one of their days alone. */
  private static final int MOST_CHARTS = 12;

  private final Latest latest;
  private final List<Filled> filled;
  private final List<LatestRow> rows;

  private LatestPage(Latest latest, List<Filled> filled) {
    this.latest = latest;
    this.filled = filled;
    this.rows = LatestRow.of(latest, filled);
  }

  static AnswerPage of(Latest latest, List<Filled> filled, String version) {
    return new LatestPage(latest, filled).page(version);
  }

  private AnswerPage page(String version) {
    List<Part> parts = new ArrayList<>(List.of(lastDays()));
    // Of one sowing the chart stands beside its verdict, which comes first.
    for (int r = 0; rows.size() > 1 && rows.size() <= MOST_CHARTS && r < rows.size(); r++) {
      parts.add(chances(rows.get(r), r + 1));
    }
    return new AnswerPage(
        latest.scenario().name(),
        "Until when to sow",
        Fact.of(
            latest.scenario(),
            "up to " + Words.count(latest.settings().seasons()) + " of each day",
            latest.settings()),
        version,
        parts,
        reading());
  }

  private Part lastDays() {
    List<String> sentences =
        new ArrayList<>(FilledWords.sentences(filled, latest.scenario().season()));
    LatestWords.begun(latest).ifPresent(sentences::add);
    if (!latest.withoutNeed().isEmpty()) {
      sentences.add(
          "Left out, as no plants are needed of them: " + Words.list(latest.withoutNeed()) + ".");
    }
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(
        LatestRow.TABLE.sheet(
            "The last day to sow.",
            "Below it the days between which it lies with 95 % confidence. Each sowing was moved by"
                + " itself, all else as planned. What is too late, or never in time, is bold.",
            rows));
    sheets.add(FilledWords.sheet(filled, latest.scenario().season()));
    return new Part(
        "latest",
        "The last day to sow",
        rows.size() == 1 ? LatestWords.of(rows.get(0)) : LatestWords.together(rows),
        sentences,
        rows.size() == 1
            ? List.of(chart(rows.get(0), 1))
            : List.of(
                new Figure(
                    "Last days, and the plan's.",
                    "Whiskers are the days between which a last day lies with 95 % confidence.",
                    LastDaysChart.of(rows, "lastdays"))),
        sheets);
  }

  private static Part chances(LatestRow row, int number) {
    return new Part(
        "sowing" + number,
        row.sowing().id(),
        LatestWords.of(row),
        List.of(),
        List.of(chart(row, number)),
        List.of());
  }

  private static Figure chart(LatestRow row, int number) {
    Course inHouse = row.answer().inHouse();
    return new Figure(
        "The chance by the day of sowing.",
        "The upright line: the day on which it is sown"
            + (row.isPlanned() ? " by the plan." : " as filled in.")
            + (inHouse.isWhole() || inHouse.days().isEmpty()
                ? ""
                : " In the full house earlier days than those in the chart were not tried.")
            + (LatestWords.isTooEarly(row.answer().alone(), row.answer().goal())
                ? " Where the line is low on the left it is too early to sow."
                : ""),
        LatestChart.of(row, "chance" + number));
  }

  private static List<AnswerPage.Term> reading() {
    return List.of(
        AnswerPage.SPRING,
        new AnswerPage.Term(
            "The last day to sow",
            "is the last working day from which the plants needed are in the ground by the bed's day"
                + " in as many springs as asked for, by the estimate. Every working day after it was"
                + " tried, and falls short."),
        new AnswerPage.Term(
            "The days between which it lies",
            "are the last of which the 95 % interval of the chance lies above the goal, and the last"
                + " of which it reaches it; each day's interval holds by itself."),
        new AnswerPage.Term(
            "Alone",
            "the sowing has all the places and hands of the house to itself. What it has more time"
                + " for than in the full house, the others take."),
        new AnswerPage.Term(
            "Springs of a day",
            "are some tens where it is plain that a chance is far from what is asked, and all near"
                + " it. Of earlier days than a fortnight before the last, the full house was tried only"
                + " where none had reached the goal until then."));
  }
}
