package propcap.study.plan;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import propcap.study.plan.Planned.Start;

/**
 * Looks for a better plan by small changes, each tried on the same springs as the plan that it
 * changes: simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983, Science 220) in which a change
 * that is clearly worse on the first springs is not tried on the rest. A change that gives a sowing
 * up is never taken, whatever else it brings.
 */
final class PlanSearch {
  /** What may be lost by one change at the start, as a share of what the plan is about. */
  private static final double WARMTH = 2e-4;

  private final Trials trials;
  private final PlanObjective objective;
  private final double warmth;
  private final List<Double> chances;
  private final SplittableRandom random;
  private final Proposals proposals;

  private final List<Beginning> starts;
  private int tries;

  /**
   * A search.
   *
   * @param whole what the whole plan is about, in the unit of its worth
   * @param chances of each sowing alone, which are hardly to be passed
   * @param starts plans to begin with, whose settings are worth a try as well
   */
  PlanSearch(
      List<Choice> choices,
      Trials trials,
      PlanObjective objective,
      double whole,
      long seed,
      List<Double> chances,
      List<Beginning> starts) {
    this.trials = trials;
    this.objective = objective;
    this.warmth = WARMTH * whole;
    this.chances = chances;
    this.random = new SplittableRandom(seed);
    this.starts = starts;
    this.proposals =
        new Proposals(choices, starts.stream().map(Beginning::trialPlan).toList(), random);
  }

  /** A plan that a search can begin with. */
  record Beginning(Start name, TrialPlan trialPlan) {}

  /**
   * The best plan found.
   *
   * @param isStopped whether it was interrupted before the budget was spent
   */
  record Found(TrialPlan trialPlan, int tries, Start startedFrom, boolean isStopped) {}

  /**
   * Searches from the best of the starts until the budget is spent or the thread is interrupted.
   *
   * @throws InterruptedException if nothing had been tried yet
   */
  Found found(Budget budget, DoubleConsumer progress) throws InterruptedException {
    Beginning from = starts.get(0);
    Trial best = trials.of(from.trialPlan());
    tries = 1;
    try {
      for (Beginning start : starts.subList(1, starts.size())) {
        Trial other = trials.of(start.trialPlan());
        tries++;
        if (objective.isBetter(other, best, 0)) {
          from = start;
          best = other;
        }
      }
      Trial current = best;
      double spent = budget.spent(tries);
      while (spent < 1) {
        double worse = -Math.log(random.nextDouble()) * warmth * (1 - spent);
        current = changed(current, proposals.from(current.trialPlan(), wanting(current)), worse);
        best = objective.isBetter(current, best, 0) ? current : best;
        progress.accept(spent);
        spent = budget.spent(tries);
      }
      return new Found(best.trialPlan(), tries, from.name(), false);
    } catch (InterruptedException e) {
      return new Found(best.trialPlan(), tries, from.name(), true);
    }
  }

  /** The sowings that miss their goal and could do better. */
  private List<Integer> wanting(Trial plan) {
    return IntStream.range(0, chances.size())
        .filter(s -> objective.missing(s, plan.chance(s)) > 0 && plan.chance(s) < chances.get(s))
        .boxed()
        .toList();
  }

  /** A change of a plan if it is no worse than by so much; else the plan as it is. */
  private Trial changed(Trial current, TrialPlan trialPlan, double worse)
      throws InterruptedException {
    // Counted first, or a farm that leaves nothing to choose would never spend its budget.
    tries++;
    if (trialPlan.equals(current.trialPlan())) {
      return current;
    }
    Trial next = trials.unlessWorse(trialPlan, current, objective, worse);
    return next != null && objective.isBetter(next, current, worse) ? next : current;
  }
}
