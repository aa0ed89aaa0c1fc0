package propcap.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.latest.LatestAnswer;
import propcap.report.order.SuppliesAnswer;
import propcap.report.plan.PlannedAnswer;
import propcap.report.shift.ShiftsAnswer;
import propcap.report.size.SizingAnswer;
import propcap.report.work.CalendarAnswer;
import propcap.report.work.LabelSheet;
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
import propcap.study.NamesInQuestions;
import propcap.study.NewSowing;
import propcap.study.Period;
import propcap.study.Planning;
import propcap.study.PlanningQuestion;
import propcap.study.RunSettings;
import propcap.study.Shifting;
import propcap.study.SizingQuestion;
import propcap.study.SizingRun;
import propcap.study.Supplying;
import propcap.study.WorkPlanning;
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

  /** In % of springs. */
  private static final long GOAL = Math.round(100 * PlanningQuestion.DEFAULT_GOAL);

  /** In the order in which they stand on the page. */
  private static final List<Known> ALL =
      List.of(
          new Known(
              new QuestionForm(
                  "compare",
                  "Does a change pay?",
                  "Compares each what-if with the plan, on the same springs, in plants and in money."),
              (all, asked) -> compare(all.stream().map(PlanNeeds::scenario).toList())),
          new Known(
              new QuestionForm(
                  "bottleneck",
                  "Which place holds the spring up, and what helps most?",
                  "Tries a tenth more and a tenth less of each place, then adds what helps most, step"
                      + " by step.",
                  new Field("steps", "Steps, at most", "5")),
              (all, asked) -> bottleneck(all.get(0).scenario(), asked)),
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
                  new Field("match", "Sowings, such as tomato", "*"),
                  new Field(
                      "seasons", "Springs of a size, at most", SizingQuestion.DEFAULT_SEASONS)),
              (all, asked) -> size(all.get(0).scenario(), asked)),
          new Known(
              new QuestionForm(
                  "shift",
                  "When is the best day to sow?",
                  "Moves a group of sowings earlier and later; several groups parted by commas.",
                  new Field("match", "Sowings, such as tomato", ""),
                  new Field("from", "From, days", -7),
                  new Field("to", "To, days", 7),
                  new Field("step", "By, days", 7)),
              (all, asked) -> shift(all.get(0).scenario(), asked)),
          new Known(
              new QuestionForm(
                      "latest",
                      "Until when may it be sown?",
                      "Finds the last day of each sowing, alone and in the house as full as it is."
                          + " With a crop, of a sowing of it besides the plan: is it too late to start"
                          + " it?",
                      new Field("match", "Sowings, such as tomato", ""),
                      new Field("goal", "On time in, % of springs", GOAL),
                      new Field("crop", "Or a new sowing of", ""),
                      new Field("plants", "Its plants needed", ""),
                      new Field("bedBy", "In the ground by, such as 2027-07-01", ""))
                  .findingWhatIsEmpty(),
              (all, asked) -> latest(all.get(0), asked)),
          new Known(
              new QuestionForm(
                      "plan",
                      "Is there a better plan?",
                      "Looks for better sowing dates, trays and germination places; where dates or trays"
                          + " are empty, it finds them first. Stopped, it answers with the best found until"
                          + " then; saved, the new sowings.csv lies beside the answer.",
                      new Field("goal", "Each sowing on time in, % of springs", GOAL),
                      new Field(
                          "earlier", "Earlier by, days at most", PlanningQuestion.DEFAULT_DAYS),
                      new Field("later", "Later by, days at most", PlanningQuestion.DEFAULT_DAYS),
                      new Field("minutes", "Minutes to search", 2),
                      new Field("giveUp", "May be given up, such as tomato", ""))
                  .findingWhatIsEmpty(),
              (all, asked) -> plan(all.get(0), asked)),
          new Known(
              new QuestionForm(
                  "calendar",
                  "What is to be done on which day?",
                  "Makes sheets of the work by weeks and by months, labels for the trays and a calendar"
                      + " for a phone.",
                  new Field("from", "From, such as 2027-03-01; empty: all", ""),
                  new Field("to", "To", ""),
                  new Field("label", "Size of a label", LabelSheet.COMMON.size()),
                  new Field("columns", "Labels beside each other", LabelSheet.COMMON.columns()),
                  new Field("rows", "Labels below each other", LabelSheet.COMMON.rows())),
              (all, asked) -> calendar(all.get(0).scenario(), asked)),
          new Known(
              new QuestionForm(
                  "order",
                  "What must be ordered?",
                  "Adds up seed, trays, pots, mix and heating, with what is kept in hand against a bad"
                      + " spring.",
                  new Field("chance", "Enough for each sowing in, % of springs", GOAL)),
              (all, asked) -> order(all.get(0).scenario(), asked)),
          new Known(
              NowQuestion.FORM, (all, asked) -> NowQuestion.of(all.get(0).scenario(), asked)));

  private Questions() {}

  /** A question, looked at before it is asked. */
  @FunctionalInterface
  private interface Question {
    /** Looks at it; the first plan is the one that it is about, the others stand beside it. */
    QuestionRun of(List<PlanNeeds> plans, RequestFields asked)
        throws RefusedException, BadQuestionException;
  }

  private record Known(QuestionForm form, Question question) {}

  /** What the page shows of each. */
  static List<QuestionForm> forms() {
    return ALL.stream().map(Known::form).toList();
  }

  /** What a question asks; its name where it is none of these. */
  static String title(String name) {
    return known(name).map(known -> known.form().title()).orElse(name);
  }

  /** A question that takes springs to answer. */
  @FunctionalInterface
  interface QuestionRun {
    Answer answer(DoubleConsumer progress) throws BadQuestionException, InterruptedException;
  }

  /** Whether a question may be asked where the sowing plan leaves dates or trays to be found. */
  static boolean findsWhatIsEmpty(String name) {
    return known(name).filter(known -> known.form().findsWhatIsEmpty()).isPresent();
  }

  /** The question of a name, about the first of the plans. */
  static QuestionRun of(String name, List<PlanNeeds> plans, RequestFields asked)
      throws RefusedException {
    Known known =
        known(name).orElseThrow(() -> RefusedException.bad("'" + name + "' is no question"));
    try {
      return known.question().of(plans, asked);
    } catch (BadQuestionException e) {
      throw RefusedException.bad(String.valueOf(e.getMessage()));
    }
  }

  private static Optional<Known> known(String name) {
    return ALL.stream().filter(each -> each.form().name().equals(name)).findFirst();
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

  private static QuestionRun size(Scenario scenario, RequestFields asked)
      throws RefusedException, BadQuestionException {
    int from = asked.number("from", 0, 1_000_000);
    int to = asked.number("to", 0, 1_000_000);
    int step = asked.number("step", 1, 1_000_000);
    int seasons = asked.number("seasons", 2, MOST_SIZE_SEASONS);
    if ((to - from) / step > 500) {
      throw RefusedException.bad("more than 500 sizes; take a larger step");
    }
    var range = new SizingQuestion.Range(asked.text("place"), from, to, step);
    Goal goal = Goal.parse(asked.text("goal"));
    var question = new SizingQuestion(List.of(range), goal, matching(asked.text("match")), null);
    question.check(scenario);
    return progress -> {
      var answer =
          SizingRun.size(scenario, question, Outlook.settings(scenario, seasons), progress);
      var order = new Furnishing(AISLES).of(answer);
      return new SizingAnswer(answer, order);
    };
  }

  private static QuestionRun shift(Scenario scenario, RequestFields asked)
      throws RefusedException, BadQuestionException {
    int from = asked.number("from", -200, 200);
    int to = asked.number("to", -200, 200);
    int step = asked.number("step", 1, 200);
    List<String> matches =
        Arrays.stream(asked.text("match").split(",", -1))
            .map(Questions::matching)
            .distinct()
            .toList();
    NamesInQuestions.check(scenario, matches);
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
              asked.number("plants", 1, Sowing.MOST_PLANTS),
              null,
              asked.date("bedBy"),
              null);
      needs = added.in(written);
      matches.add(added.idIn(written.scenario()));
    }
    PlanNeeds all = needs;
    NamesInQuestions.check(all.scenario(), matches);
    LatestQuestion question = new LatestQuestion(goal, matches, written.scenario().today());
    return progress -> {
      RunSettings run = Outlook.settings(all.scenario(), LatestSowing.DEFAULT_SEASONS);
      FirstPlan first = Filling.fill(all, goal, question.earliest(), run);
      var answer = LatestSowing.latest(first.scenario(), question, run, progress);
      return new LatestAnswer(answer, first.filled());
    };
  }

  /** Stopped, it answers with the best plan found until then. */
  private static QuestionRun plan(PlanNeeds needs, RequestFields asked)
      throws RefusedException, BadQuestionException {
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
    NamesInQuestions.check(needs.scenario(), question.giveUp());
    return progress -> {
      RunSettings run = settings(needs.scenario());
      Budget budget = Budget.ofSeconds(seconds, System::nanoTime);
      FirstPlan first = Filling.fill(needs, question.goal(), needs.scenario().today(), run);
      var answer = Planning.plan(first.scenario(), question, run, budget, progress);
      return new PlannedAnswer(answer, first.filled());
    };
  }

  private static QuestionRun calendar(Scenario scenario, RequestFields asked)
      throws RefusedException, BadQuestionException {
    LabelSheet labels = labels(asked);
    Period period =
        Period.asked(scenario.season(), null, dateOrNone(asked, "from"), dateOrNone(asked, "to"));
    return progress ->
        new CalendarAnswer(
            WorkPlanning.calendar(scenario, settings(scenario), progress),
            period,
            labels,
            Instant.now());
  }

  private static LabelSheet labels(RequestFields asked) throws RefusedException {
    try {
      return LabelSheet.of(
          asked.text("label"), asked.number("columns", 1, 20), asked.number("rows", 1, 50));
    } catch (IllegalArgumentException e) {
      throw RefusedException.bad(String.valueOf(e.getMessage()));
    }
  }

  private static @Nullable LocalDate dateOrNone(RequestFields asked, String key)
      throws RefusedException {
    return asked.text(key).isBlank() ? null : asked.date(key);
  }

  private static QuestionRun order(Scenario scenario, RequestFields asked) throws RefusedException {
    double chance = asked.number("chance", 1, 99) / 100.0;
    return progress ->
        new SuppliesAnswer(Supplying.supplies(scenario, chance, settings(scenario), progress));
  }

  private static String matching(String written) {
    return written.isBlank() ? "*" : written.strip();
  }
}
