package propcap.study.plan;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import propcap.study.plan.Choice.Setting;

/**
 * Takes back what a found plan changes for nothing, on springs that had no part in finding it:
 * nobody likes to change without need. All that is taken back, together, costs no goal, gives
 * nothing up, and costs no more worth than its error or a small part of the gain.
 *
 * <p>The cheapest changes go first, as many of them at once as may; the others one by one, in part
 * where not in whole.
 */
final class TakingBack {
  /** Springs on which each change is weighed by itself, to put them in order. */
  private static final int WEIGHED_ON = 48;

  /** The part of the gain that fewer changes may cost. Planning default, not measured. */
  private static final double SMALL_PART = 0.05;

  /** Less of a chance than counts as missed. Planning default, not measured. */
  private static final double A_GOAL = 0.01;

  private final List<Choice> choices;
  private final Trials trials;
  private final PlanObjective objective;
  private final TrialPlan asItIs;
  private final Budget budget;
  private final Trial found;
  private final double mayCost;

  private TrialPlan current;
  private int tries;

  /**
   * What is to be taken back.
   *
   * @param objective on the springs of the trials
   * @param asItIs the plan as it is, or the nearest to it that may be chosen
   * @param found the plan that was found
   * @param budget ends it
   * @param tries plans tried until now
   */
  TakingBack(
      List<Choice> choices,
      Trials trials,
      PlanObjective objective,
      TrialPlan asItIs,
      Trial found,
      Budget budget,
      int tries) {
    this.choices = choices;
    this.trials = trials;
    this.objective = objective;
    this.asItIs = asItIs;
    this.found = found;
    this.budget = budget;
    this.tries = tries;
    current = found.trialPlan();
    mayCost = Math.max(0, SMALL_PART * found.worthAbove(objective.asItWas()).mean());
  }

  /**
   * A plan with fewer changes.
   *
   * @param tries plans tried until now
   * @param isStopped whether it was interrupted before all was tried
   */
  record Fewest(TrialPlan trialPlan, int tries, boolean isStopped) {}

  /** The plan with the fewest changes until the budget is spent or the thread is interrupted. */
  Fewest fewest() {
    try {
      List<Integer> order = cheapestFirst();
      int back = mostTogether(order);
      for (int s : order.subList(back, order.size())) {
        takeBack(s);
      }
      return new Fewest(current, tries, false);
    } catch (InterruptedException e) {
      return new Fewest(current, tries, true);
    }
  }

  /** The sowings that are changed, those first whose change brings the least by itself. */
  private List<Integer> cheapestFirst() throws InterruptedException {
    Map<Integer, Double> brings = new HashMap<>();
    for (int s : current.changed(asItIs)) {
      brings.put(s, Double.POSITIVE_INFINITY);
      if (hasTime()) {
        tries++;
        Trial without = trials.of(current.with(s, was(s)), WEIGHED_ON);
        brings.put(s, -objective.gap(without, found).mean());
      }
    }
    return brings.keySet().stream()
        .sorted(Comparator.comparingDouble(s -> brings.getOrDefault(s, 0.0)))
        .toList();
  }

  /** Takes back as many of the first ones as may be at once, found by halving; how many. */
  private int mostTogether(List<Integer> order) throws InterruptedException {
    TrialPlan all = current;
    int back = 0;
    int tooMany = order.size() + 1;
    while (tooMany - back > 1) {
      int half = (back + tooMany) / 2;
      TrialPlan trialPlan = all;
      for (int s : order.subList(0, half)) {
        trialPlan = trialPlan.with(s, was(s));
      }
      if (take(trialPlan)) {
        back = half;
      } else {
        tooMany = half;
      }
    }
    return back;
  }

  /** Takes a change back, or of it what may be: the day, the trays, or some of either. */
  private void takeBack(int s) throws InterruptedException {
    Setting was = was(s);
    Setting is = setting(s);
    for (Setting back :
        List.of(
            was,
            was.withTrays(is.trays()),
            was.onDay(is.day()),
            is.withTrays(was.trays()),
            is.in(was.place()))) {
      if (take(current.with(s, back))) {
        break;
      }
    }
    Setting less = setting(s);
    towards(was.trays(), less.trays(), t -> current.with(s, less.withTrays(t)));
    Setting least = setting(s);
    List<Integer> days = choices.get(s).days();
    towards(
        days.indexOf(was.day()),
        days.indexOf(least.day()),
        d -> current.with(s, least.onDay(days.get(d))));
  }

  /** Goes from a number as near to another as may be, by halving. */
  private void towards(int was, int is, IntFunction<TrialPlan> trialPlan)
      throws InterruptedException {
    int tooFar = was;
    int reached = is;
    while (Math.abs(reached - tooFar) > 1) {
      int half = (tooFar + reached) / 2;
      if (take(trialPlan.apply(half))) {
        reached = half;
      } else {
        tooFar = half;
      }
    }
  }

  private Setting was(int s) {
    return asItIs.settings().get(s);
  }

  private Setting setting(int s) {
    return current.settings().get(s);
  }

  private boolean hasTime() {
    return budget.spent(tries) < 1;
  }

  /** Takes a plan for the current one if it is as good as the one found. */
  private boolean take(TrialPlan trialPlan) throws InterruptedException {
    if (trialPlan.equals(current) || !hasTime()) {
      return false;
    }
    tries++;
    Trial trial = trials.unlessWorse(trialPlan, found, objective, mayCost);
    if (trial == null || !isAsGood(trial)) {
      return false;
    }
    current = trialPlan;
    return true;
  }

  /** Whether it gives up no more, misses no goal more, and costs little or is paid for by goals. */
  private boolean isAsGood(Trial plan) {
    if (objective.givesMoreUp(plan, found)) {
      return false;
    }
    double missed = 0;
    for (int s = 0; s < choices.size(); s++) {
      double more = objective.missing(s, plan.chance(s)) - objective.missing(s, found.chance(s));
      missed += Math.max(0, more);
    }
    Trial.Gap worth = plan.worthAbove(found);
    return missed <= A_GOAL
        && (!worth.isLoss()
            || worth.mean() >= -mayCost
            || objective.score(plan) >= objective.score(found));
  }
}
