package propcap.web.question;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.stream.Collectors;
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
import propcap.study.NamesInQuestions;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.bottleneck.Bottlenecking;
import propcap.study.compare.Comparing;
import propcap.study.fill.Filling;
import propcap.study.fill.FirstPlan;
import propcap.study.latest.LatestQuestion;
import propcap.study.latest.LatestSowing;
import propcap.study.latest.NewSowing;
import propcap.study.order.Supplying;
import propcap.study.plan.Budget;
import propcap.study.plan.Planning;
import propcap.study.plan.PlanningQuestion;
import propcap.study.shift.Shifting;
import propcap.study.shift.Shifts;
import propcap.study.size.Furnishing;
import propcap.study.size.Goal;
import propcap.study.size.SizingQuestion;
import propcap.study.size.SizingRun;
import propcap.study.work.WorkPlanning;
import propcap.web.request.RefusedException;
import propcap.web.request.RequestFields;
import propcap.web.typed.TypedCells;

/** How each question of the page is answered: looked at first, then run on the springs. */
final class QuestionRuns {
  private static final int MOST_MINUTES = 60;

  /** Share of a house's floor that is aisle, as the command {@code size} has it. */
  private static final double AISLES = 0.33;

  /** More springs of one size than anyone would wait for. */
  private static final int MOST_SIZE_SEASONS = 1_000_000;

  /** An answer, and what may be put beside the plan by it. */
  record Answered(Answer answer, Optional<Proposal> proposal) {
    /** One that proposes nothing. */
    Answered(Answer answer) {
      this(answer, Optional.empty());
    }
  }

  /** A question that takes springs to answer. */
  @FunctionalInterface
  interface QuestionRun {
    Answered answer(DoubleConsumer progress) throws BadQuestionException, InterruptedException;
  }

  private QuestionRuns() {}

  private static RunSettings settings(Scenario scenario) {
    return Outlook.settings(scenario, RunSettings.DEFAULT_SEASONS);
  }

  static QuestionRun compare(List<Scenario> scenarios) throws RefusedException {
    if (scenarios.size() < 2) {
      throw RefusedException.bad("put a what-if beside the plan first, to compare it with");
    }
    return progress -> {
      var answer = Comparing.compare(scenarios, settings(scenarios.get(0)), progress);
      return new Answered(new ComparisonAnswer(answer));
    };
  }

  static QuestionRun bottleneck(Scenario scenario, RequestFields asked) throws RefusedException {
    int steps = asked.number("steps", 0, 20);
    return progress -> {
      var answer = Bottlenecking.bottlenecks(scenario, settings(scenario), steps, progress);
      return new Answered(
          new BottlenecksAnswer(answer), Proposal.ofSize(scenario, answer.proposed()));
    };
  }

  static QuestionRun size(Scenario scenario, RequestFields asked)
      throws RefusedException, BadQuestionException {
    int from = asked.number("from", 0, 1_000_000);
    int to = asked.number("to", from, 1_000_000);
    int step = asked.number("step", 1, 1_000_000);
    int seasons = asked.number("seasons", 2, MOST_SIZE_SEASONS);
    if ((to - from) / step > 500) {
      throw RefusedException.bad("more than 500 sizes; take a larger step");
    }
    var range = new SizingQuestion.Range(asked.text("place"), from, to, step);
    Goal goal = goal(asked);
    var question = new SizingQuestion(List.of(range), goal, matching(asked.text("match")), null);
    question.check(scenario);
    return progress -> {
      var answer =
          SizingRun.size(scenario, question, Outlook.settings(scenario, seasons), progress);
      var order = new Furnishing(AISLES).of(answer);
      return new Answered(
          new SizingAnswer(answer, order), Proposal.ofSize(scenario, answer.proposed()));
    };
  }

  private static Goal goal(RequestFields asked) throws RefusedException {
    return switch (asked.text("measure")) {
      case "met" -> new Goal(Goal.Measure.MET, asked.share("least", true));
      case "on-time" -> new Goal(Goal.Measure.ON_TIME_SHARE, asked.share("least", false));
      case "margin" -> new Goal(Goal.Measure.MARGIN, 0);
      default -> throw RefusedException.field("measure", "is none of those that are offered");
    };
  }

  static QuestionRun shift(Scenario scenario, RequestFields asked)
      throws RefusedException, BadQuestionException {
    int from = asked.number("from", -200, 200);
    int to = asked.number("to", from, 200);
    int step = asked.number("step", 1, 200);
    if (asked.text("match").isBlank()) {
      throw RefusedException.field("match", "is empty; name what is moved, * for every sowing");
    }
    List<String> matches =
        Arrays.stream(asked.text("match").split(",", -1))
            .map(QuestionRuns::matching)
            .distinct()
            .toList();
    NamesInQuestions.check(scenario, matches);
    return progress -> {
      var answer = Shifting.shift(scenario, matches, from, to, step, settings(scenario), progress);
      return new Answered(
          new ShiftsAnswer(answer), Proposal.of(shifted(answer), scenario, answer.proposed()));
    };
  }

  /** Such as zinnia* 7 days later. */
  private static String shifted(Shifts shifts) {
    return shifts.groups().stream()
        .flatMap(g -> g.clearlyBest().map(best -> shifted(g.match(), best.days())).stream())
        .collect(Collectors.joining(", "));
  }

  private static String shifted(String match, int days) {
    int by = Math.abs(days);
    return match + " " + by + (by == 1 ? " day " : " days ") + (days < 0 ? "earlier" : "later");
  }

  /** With a crop, of a sowing of it besides the plan. */
  static QuestionRun latest(PlanNeeds written, RequestFields asked)
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
              new TypedCells(written.scenario().season()).date(asked, "bedBy"),
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
      return new Answered(new LatestAnswer(answer, first.filled()));
    };
  }

  /** Stopped, it answers with the best plan found until then. */
  static QuestionRun plan(PlanNeeds needs, RequestFields asked)
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
      return new Answered(
          new PlannedAnswer(answer, first.filled()),
          Proposal.of("A better plan", first.scenario(), answer.proposed()));
    };
  }

  static QuestionRun calendar(Scenario scenario, RequestFields asked)
      throws RefusedException, BadQuestionException {
    LabelSheet labels = labels(asked);
    Period period =
        Period.asked(
            scenario.season(),
            null,
            dateOrNone(asked, "from", scenario),
            dateOrNone(asked, "to", scenario));
    return progress ->
        new Answered(
            new CalendarAnswer(
                WorkPlanning.calendar(scenario, settings(scenario), progress),
                period,
                labels,
                Instant.now()));
  }

  private static LabelSheet labels(RequestFields asked) throws RefusedException {
    try {
      return LabelSheet.of(
          asked.text("label"), asked.number("columns", 1, 20), asked.number("rows", 1, 50));
    } catch (IllegalArgumentException e) {
      throw RefusedException.bad(String.valueOf(e.getMessage()));
    }
  }

  private static @Nullable LocalDate dateOrNone(RequestFields asked, String key, Scenario scenario)
      throws RefusedException {
    return asked.text(key).isBlank() ? null : new TypedCells(scenario.season()).date(asked, key);
  }

  static QuestionRun order(Scenario scenario, RequestFields asked) throws RefusedException {
    double chance = asked.number("chance", 1, 99) / 100.0;
    return progress -> {
      var answer = Supplying.supplies(scenario, chance, settings(scenario), progress);
      return new Answered(
          new SuppliesAnswer(answer), Proposal.of("Trays as ordered", scenario, answer.proposed()));
    };
  }

  private static String matching(String written) {
    return written.isBlank() ? "*" : written.strip();
  }
}
