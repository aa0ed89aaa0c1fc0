package propcap.web;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleConsumer;
import propcap.farm.Scenario;
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.plan.PlannedAnswer;
import propcap.report.shift.ShiftsAnswer;
import propcap.report.size.SizingAnswer;
import propcap.results.Answer;
import propcap.study.BadQuestionException;
import propcap.study.Bottlenecking;
import propcap.study.Budget;
import propcap.study.Comparing;
import propcap.study.Furnishing;
import propcap.study.Goal;
import propcap.study.Planning;
import propcap.study.PlanningQuestion;
import propcap.study.RunSettings;
import propcap.study.Shifting;
import propcap.study.SizingQuestion;
import propcap.study.SizingRun;
import propcap.web.QuestionForm.Field;

/**
 * The questions that the page can ask, each on the code of the command of its name. One more is one
 * more entry here.
 */
final class Questions {
  /** More springs of one size than anyone would wait for. */
  private static final int MOST_SIZE_SEASONS = 1_000_000;

  /** Share of a house's floor that is aisle, as the command {@code size} has it. */
  private static final double AISLES = 0.33;

  private static final int MOST_MINUTES = 60;

  /** In the order in which they stand on the page. */
  private static final List<Known> ALL =
      List.of(
          new Known(
              new QuestionForm(
                  "compare",
                  "Does a change pay?",
                  "Compares each what-if with the plan, on the same springs, in plants and in money."),
              (all, asked) -> compare(all)),
          new Known(
              new QuestionForm(
                  "bottleneck",
                  "Which place holds the spring up, and what helps most?",
                  "Tries a tenth more and a tenth less of each place, then adds what helps most, step"
                      + " by step.",
                  new Field("steps", "Steps, at most", "5")),
              (all, asked) -> bottleneck(all.get(0), asked)),
          new Known(
              new QuestionForm(
                  "size",
                  "How large must a place be?",
                  "Finds the smallest size for which a goal holds.",
                  new Field("place", "Place", ""),
                  new Field("from", "From, spaces", ""),
                  new Field("to", "To, spaces", ""),
                  new Field("step", "By", ""),
                  new Field(
                      "measure",
                      "Goal",
                      "on-time",
                      List.of(
                          List.of("met", "all these sowings on time, in so many springs"),
                          List.of("on-time", "this share of the plants needed on time"),
                          List.of("margin", "the largest margin"))),
                  new Field("least", "At least, %", ""),
                  new Field("match", "Sowings, such as tomato*", "*"),
                  new Field(
                      "seasons", "Springs of a size, at most", SizingQuestion.DEFAULT_SEASONS)),
              (all, asked) -> size(all.get(0), asked)),
          new Known(
              new QuestionForm(
                  "shift",
                  "When is the best day to sow?",
                  "Moves a group of sowings earlier and later; several groups parted by commas.",
                  new Field("match", "Sowings, such as tomato*", ""),
                  new Field("from", "From, days", -7),
                  new Field("to", "To, days", 7),
                  new Field("step", "By, days", 7)),
              (all, asked) -> shift(all.get(0), asked)),
          new Known(
              new QuestionForm(
                  "plan",
                  "Is there a better plan?",
                  "Looks for better sowing dates, trays and germination places. Stopped, it answers"
                      + " with the best found until then; saved, the new sowings.csv lies beside the"
                      + " answer.",
                  new Field(
                      "goal",
                      "Each sowing on time in, % of springs",
                      Math.round(100 * PlanningQuestion.DEFAULT_GOAL)),
                  new Field("earlier", "Earlier by, days at most", PlanningQuestion.DEFAULT_DAYS),
                  new Field("later", "Later by, days at most", PlanningQuestion.DEFAULT_DAYS),
                  new Field("minutes", "Minutes to search", 2),
                  new Field("giveUp", "May be given up, such as tomato*", "")),
              (all, asked) -> plan(all.get(0), asked)));

  private Questions() {}

  /** A question, looked at before it is asked. */
  @FunctionalInterface
  private interface Question {
    /** Looks at it; the first scenario is the one that it is about, the others stand beside it. */
    QuestionRun of(List<Scenario> scenarios, RequestFields asked) throws RefusedException;
  }

  private record Known(QuestionForm form, Question question) {}

  /** What the page shows of each. */
  static List<QuestionForm> forms() {
    return ALL.stream().map(Known::form).toList();
  }

  /** A question that takes springs to answer. */
  @FunctionalInterface
  interface QuestionRun {
    Answer answer(DoubleConsumer progress) throws BadQuestionException, InterruptedException;
  }

  /** The question of a name, about the first of the scenarios. */
  static QuestionRun of(String name, List<Scenario> scenarios, RequestFields asked)
      throws RefusedException {
    Known known =
        ALL.stream()
            .filter(each -> each.form().name().equals(name))
            .findFirst()
            .orElseThrow(() -> RefusedException.bad("'" + name + "' is no question"));
    return known.question().of(scenarios, asked);
  }

  private static RunSettings settings(Scenario scenario) {
    return Outlook.settings(scenario, RunSettings.DEFAULT_SEASONS);
  }

  private static QuestionRun compare(List<Scenario> scenarios) throws RefusedException {
    if (scenarios.size() < 2) {
      throw RefusedException.bad("put a what-if beside the plan first, to compare it with");
    }
    return progress -> {
      var answer = Comparing.compare(scenarios, settings(scenarios.get(0)), progress);
      return new ComparisonAnswer(answer);
    };
  }

  private static QuestionRun bottleneck(Scenario scenario, RequestFields asked)
      throws RefusedException {
    int steps = asked.number("steps", 0, 20);
    return progress -> {
      var answer = Bottlenecking.bottlenecks(scenario, settings(scenario), steps, progress);
      return new BottlenecksAnswer(answer);
    };
  }

  private static QuestionRun size(Scenario scenario, RequestFields asked) throws RefusedException {
    int from = asked.number("from", 0, 1_000_000);
    int to = asked.number("to", 0, 1_000_000);
    int step = asked.number("step", 1, 1_000_000);
    int seasons = asked.number("seasons", 2, MOST_SIZE_SEASONS);
    if ((to - from) / step > 500) {
      throw RefusedException.bad("more than 500 sizes; take a larger step");
    }
    String match = matching(asked.text("match"));
    String place = asked.text("place");
    String goal = asked.text("goal");
    return progress -> {
      var range = new SizingQuestion.Range(place, from, to, step);
      var question = new SizingQuestion(List.of(range), Goal.parse(goal), match, null);
      var answer =
          SizingRun.size(scenario, question, Outlook.settings(scenario, seasons), progress);
      var order = new Furnishing(AISLES).of(answer);
      return new SizingAnswer(answer, order);
    };
  }

  private static QuestionRun shift(Scenario scenario, RequestFields asked) throws RefusedException {
    int from = asked.number("from", -200, 200);
    int to = asked.number("to", -200, 200);
    int step = asked.number("step", 1, 200);
    List<String> matches =
        Arrays.stream(asked.text("match").split(",", -1))
            .map(Questions::matching)
            .distinct()
            .toList();
    return progress -> {
      var answer = Shifting.shift(scenario, matches, from, to, step, settings(scenario), progress);
      return new ShiftsAnswer(answer);
    };
  }

  /** Stopped, it answers with the best plan found until then. */
  private static QuestionRun plan(Scenario scenario, RequestFields asked) throws RefusedException {
    int seconds = 60 * asked.number("minutes", 1, MOST_MINUTES);
    PlanningQuestion question =
        new PlanningQuestion(
            asked.number("goal", 1, 99) / 100.0,
            asked.number("earlier", 0, 200),
            asked.number("later", 0, 200),
            PlanningQuestion.DEFAULT_MOST_TRAYS,
            Arrays.stream(asked.text("giveUp").split(",", -1))
                .map(String::strip)
                .filter(ids -> !ids.isEmpty())
                .toList());
    return progress -> {
      Budget budget = Budget.ofSeconds(seconds, System::nanoTime);
      var answer = Planning.plan(scenario, question, settings(scenario), budget, progress);
      return new PlannedAnswer(answer);
    };
  }

  private static String matching(String written) {
    return written.isBlank() ? "*" : written.strip();
  }
}
