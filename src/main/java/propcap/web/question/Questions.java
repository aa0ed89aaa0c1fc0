package propcap.web.question;

import java.util.List;
import java.util.Optional;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.report.work.LabelSheet;
import propcap.study.BadQuestionException;
import propcap.study.forecast.Safety;
import propcap.study.plan.PlanningQuestion;
import propcap.study.size.SizingQuestion;
import propcap.web.question.QuestionForm.Field;
import propcap.web.request.RefusedException;
import propcap.web.request.RequestFields;

/**
 * The questions that the page can ask, each on the code of the command of its name. One more is one
 * more entry here.
 */
public final class Questions {
  /** In % of springs. */
  private static final long GOAL = Math.round(100 * Safety.DEFAULT_GOAL);

  /** In the order in which they stand on the page. */
  private static final List<Known> ALL =
      List.of(
          new Known(
              new QuestionForm(
                  "compare",
                  "Does a change pay?",
                  "Compares each what-if with the plan, on the same springs, in plants and in money."),
              (all, asked) -> QuestionRuns.compare(all.stream().map(PlanNeeds::scenario).toList())),
          ofScenario(
              new QuestionForm(
                  "bottleneck",
                  "Which place holds the spring up, and what helps most?",
                  "Tries a tenth more and a tenth less of each place, then adds what helps most, step"
                      + " by step.",
                  new Field("steps", "Steps, at most", "5")),
              QuestionRuns::bottleneck),
          ofScenario(
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
              QuestionRuns::size),
          ofScenario(
              new QuestionForm(
                  "shift",
                  "When is the best day to sow?",
                  "Moves a group of sowings earlier and later; several groups parted by commas.",
                  new Field("match", "Sowings, such as tomato", ""),
                  new Field("from", "From, days", -7),
                  new Field("to", "To, days", 7),
                  new Field("step", "By, days", 7)),
              QuestionRuns::shift),
          ofPlan(
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
              QuestionRuns::latest),
          ofPlan(
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
              QuestionRuns::plan),
          ofScenario(
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
              QuestionRuns::calendar),
          ofScenario(
              new QuestionForm(
                  "order",
                  "What must be ordered?",
                  "Adds up seed, trays, pots, mix and heating, with what is kept in hand against a bad"
                      + " spring.",
                  new Field("chance", "Enough for each sowing in, % of springs", GOAL)),
              QuestionRuns::order),
          ofScenario(NowQuestion.FORM, NowQuestion::of));

  private Questions() {}

  /** A question, looked at before it is asked. */
  @FunctionalInterface
  private interface Question<T> {
    QuestionRuns.QuestionRun of(T about, RequestFields asked)
        throws RefusedException, BadQuestionException;
  }

  /** About the first of the plans; the others stand beside it. */
  private record Known(QuestionForm form, Question<List<PlanNeeds>> question) {}

  private static Known ofPlan(QuestionForm form, Question<PlanNeeds> question) {
    return new Known(form, (plans, asked) -> question.of(plans.get(0), asked));
  }

  private static Known ofScenario(QuestionForm form, Question<Scenario> question) {
    return ofPlan(form, (plan, asked) -> question.of(plan.scenario(), asked));
  }

  /** What the page shows of each. */
  public static List<QuestionForm> forms() {
    return ALL.stream().map(Known::form).toList();
  }

  /** What a question asks; its name where it is none of these. */
  public static String title(String name) {
    return known(name).map(known -> known.form().title()).orElse(name);
  }

  /** Whether a question may be asked where the sowing plan leaves dates or trays to be found. */
  static boolean findsWhatIsEmpty(String name) {
    return known(name).filter(known -> known.form().findsWhatIsEmpty()).isPresent();
  }

  /** The question of a name, about the first of the plans. */
  static QuestionRuns.QuestionRun of(String name, List<PlanNeeds> plans, RequestFields asked)
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
}
