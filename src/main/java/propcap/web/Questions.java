package propcap.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.latest.LatestAnswer;
import propcap.report.plan.PlannedAnswer;
import propcap.report.shift.ShiftsAnswer;
import propcap.report.size.SizingAnswer;
import propcap.results.Answer;
import propcap.study.BadQuestionException;
import propcap.study.Bottlenecking;
import propcap.study.Budget;
import propcap.study.Comparing;
import propcap.study.Filling;
import propcap.study.FirstPlan;
import propcap.study.Furnishing;
import propcap.study.Goal;
import propcap.study.LatestQuestion;
import propcap.study.LatestSowing;
import propcap.study.NewSowing;
import propcap.study.Planning;
import propcap.study.PlanningQuestion;
import propcap.study.RunSettings;
import propcap.study.Shifting;
import propcap.study.SizingQuestion;
import propcap.study.SizingRun;

/**
 * The questions that the page can ask, each on the code of the command of its name. One more is one
 * more entry here and a form with its name on the page.
 */
final class Questions {
  /** More springs of one size than anyone would wait for. */
  private static final int MOST_SIZE_SEASONS = 1_000_000;

  /** Share of a house's floor that is aisle, as the command {@code size} has it. */
  private static final double AISLES = 0.33;

  private static final int MOST_MINUTES = 60;

  private static final Map<String, Question> KNOWN =
      Map.of(
          "compare", (all, asked) -> compare(all),
          "bottleneck", (all, asked) -> bottleneck(all.get(0), asked),
          "size", (all, asked) -> size(all.get(0), asked),
          "shift", (all, asked) -> shift(all.get(0), asked));

  /** Those that find what the sowing plan leaves empty. */
  private static final Map<String, Filler> FILLING =
      Map.of("latest", Questions::latest, "plan", Questions::plan);

  private Questions() {}

  /** A question, looked at before it is asked. */
  @FunctionalInterface
  private interface Question {
    /** Looks at it; the first scenario is the one that it is about, the others stand beside it. */
    QuestionRun of(List<Scenario> scenarios, RequestFields asked) throws RefusedException;
  }

  /** A question about one scenario, of which something may be left to be found. */
  @FunctionalInterface
  private interface Filler {
    QuestionRun of(PlanNeeds needs, RequestFields asked)
        throws RefusedException, BadQuestionException;
  }

  /** A question that takes springs to answer. */
  @FunctionalInterface
  interface QuestionRun {
    Answer answer(DoubleConsumer progress) throws BadQuestionException, InterruptedException;
  }

  /** Whether a question may be asked where the sowing plan leaves dates or trays to be found. */
  static boolean findsWhatIsEmpty(String name) {
    return FILLING.containsKey(name);
  }

  /** The question of a name, about the first of the scenarios. */
  static QuestionRun of(String name, List<PlanNeeds> plans, RequestFields asked)
      throws RefusedException {
    Filler filler = FILLING.get(name);
    if (filler != null) {
      try {
        return filler.of(plans.get(0), asked);
      } catch (BadQuestionException e) {
        throw RefusedException.bad(String.valueOf(e.getMessage()));
      }
    }
    List<Scenario> scenarios = plans.stream().map(PlanNeeds::scenario).toList();
    Question question =
        Optional.ofNullable(KNOWN.get(name))
            .orElseThrow(() -> RefusedException.bad("'" + name + "' is no question"));
    return question.of(scenarios, asked);
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

  /** With a crop, of a sowing of it besides the plan. */
  private static QuestionRun latest(PlanNeeds written, RequestFields asked)
      throws RefusedException, BadQuestionException {
    double goal = asked.number("goal", 1, 99) / 100.0;
    List<String> matches = new ArrayList<>();
    PlanNeeds needs = written;
    if (asked.text("crop").isBlank()) {
      matches.add(matching(asked.text("match")));
    } else {
      NewSowing added =
          new NewSowing(
              asked.text("crop").strip(),
              asked.number("plants", 1, 1_000_000_000),
              null,
              asked.date("bedBy"),
              null);
      needs = added.in(written);
      matches.add(added.idIn(written.scenario()));
    }
    PlanNeeds all = needs;
    LatestQuestion question =
        new LatestQuestion(goal, matches, written.scenario().season().start());
    return progress -> {
      RunSettings run = Outlook.settings(all.scenario(), LatestSowing.DEFAULT_SEASONS);
      FirstPlan first = Filling.fill(all, goal, question.earliest(), run);
      var answer = LatestSowing.latest(first.scenario(), question, run, progress);
      return new LatestAnswer(answer, first.filled());
    };
  }

  /** Stopped, it answers with the best plan found until then. */
  private static QuestionRun plan(PlanNeeds needs, RequestFields asked) throws RefusedException {
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
      RunSettings run = settings(needs.scenario());
      Budget budget = Budget.ofSeconds(seconds, System::nanoTime);
      FirstPlan first =
          Filling.fill(needs, question.goal(), needs.scenario().season().start(), run);
      var answer = Planning.plan(first.scenario(), question, run, budget, progress);
      return new PlannedAnswer(answer, first.filled());
    };
  }

  private static String matching(String written) {
    return written.isBlank() ? "*" : written.strip();
  }
}
