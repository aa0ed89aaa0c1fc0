package propcap.study.plan;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What a search is after: no sowing given up, then each sowing's chance at its goal, then the most
 * worth. A chance below what is aimed at weighs, in parts of 1, as much as the whole plan is worth:
 * one percent missed on one sowing is one percent of it.
 *
 * <p>A sowing is given up where it does not reach its goal and does worse than under the plan as it
 * was: its plants are on time in fewer springs, or, where they are so in no more, fewer of those
 * needed are on time.
 *
 * <p>The search aims one standard error above each. A plan that is picked for doing well on some
 * springs does a little worse on others.
 */
final class PlanObjective {
  /**
   * Less of a chance, or of the plants needed, than anyone would call given up. Planning default,
   * not measured.
   */
  static final double MATTERS = 0.02;

  /** How many times a chance missed a sowing by itself that is given up weighs. */
  private static final double HELD = 10;

  /** Standard errors by which a plan must fall short to be clearly worse. */
  private static final double CLEARLY = 1.5;

  private final List<Choice> choices;
  private final Trial asItWas;
  private final double[] objective;
  private final double weight;

  /**
   * Aims of a scenario's plans.
   *
   * @param asItWas the plan as it was, on the springs on which others are tried
   */
  PlanObjective(List<Choice> choices, PlanWorth worth, Trial asItWas) {
    this.choices = choices;
    this.asItWas = asItWas;
    objective =
        choices.stream()
            .mapToDouble(c -> c.goal() + Math.sqrt(c.goal() * (1 - c.goal()) / asItWas.springs()))
            .map(a -> Math.min(a, 1))
            .toArray();
    weight = worth.whole();
  }

  Trial asItWas() {
    return asItWas;
  }

  /** By how much a chance misses what is aimed at. */
  double missing(int sowing, double chance) {
    return Math.max(0, objective[sowing] - chance);
  }

  /** By how much a sowing, whose means are these, is given up: a chance, or a share of its need. */
  double givenUp(int sowing, double chance, double supplied) {
    Choice choice = choices.get(sowing);
    if (choice.mayGiveUp() || chance >= choice.goal()) {
      return 0;
    }
    double fewerMet = Math.min(asItWas.chance(sowing), choice.goal()) - chance;
    double lessSupplied = fewerMet < 0 ? 0 : asItWas.supplied(sowing) - supplied;
    return Math.max(0, Math.max(fewerMet, lessSupplied));
  }

  /** By how much a plan may give a sowing up: by a standard error more than it was seen to. */
  double givenUp(int sowing, Trial plan) {
    return Math.max(0, falls(sowing, plan, 1) - MATTERS);
  }

  /**
   * By how much a sowing falls below what it was; 0 at its goal, and where it may be given up.
   *
   * @param errors standard errors by which it may fall more than it was seen to
   */
  private double falls(int sowing, Trial plan, double errors) {
    Choice choice = choices.get(sowing);
    double chance = plan.chance(sowing);
    if (choice.mayGiveUp() || chance >= choice.goal()) {
      return 0;
    }
    Trial.Gap met = plan.chanceAbove(asItWas, sowing);
    double fewerMet = Math.min(-met.mean(), choice.goal() - chance) + errors * met.se();
    if (met.mean() > Math.abs(errors) * met.se()) {
      return fewerMet;
    }
    Trial.Gap supplied = plan.suppliedAbove(asItWas, sowing);
    return Math.max(fewerMet, errors * supplied.se() - supplied.mean());
  }

  double givenUp(Trial plan) {
    return IntStream.range(0, objective.length).mapToDouble(s -> givenUp(s, plan)).sum();
  }

  /** Whether a plan gives any sowing up by more than another does. */
  boolean givesMoreUp(Trial plan, Trial other) {
    return IntStream.range(0, objective.length).anyMatch(s -> givenUp(s, plan) > givenUp(s, other));
  }

  private double missing(Trial plan) {
    return IntStream.range(0, objective.length).mapToDouble(s -> missing(s, plan.chance(s))).sum();
  }

  /** What a plan is worth, less what missing goals costs. */
  double score(Trial plan) {
    return plan.worth() - weight * missing(plan);
  }

  /**
   * Whether a plan is to be taken for another: it gives less up, or as little and its score is
   * higher.
   *
   * @param worse by how much its score may be lower
   */
  boolean isBetter(Trial plan, Trial other, double worse) {
    double more = givenUp(plan) - givenUp(other);
    return more < 0 || (more == 0 && score(plan) > score(other) - worse);
  }

  /** A sowing by itself, whose means are these: giving it up weighs more than any goal. */
  double score(int sowing, double worth, double chance, double supplied) {
    return worth - weight * (missing(sowing, chance) + HELD * givenUp(sowing, chance, supplied));
  }

  /**
   * Whether a plan is worse than another by more than so much, beyond doubt on the springs seen.
   */
  boolean isClearlyWorse(Trial plan, Trial other, double worse) {
    return gap(plan, other).atMost(CLEARLY) < -worse || clearlyGivesUpMore(plan, other);
  }

  private boolean clearlyGivesUpMore(Trial plan, Trial other) {
    return IntStream.range(0, objective.length)
        .anyMatch(
            s ->
                falls(s, plan, -CLEARLY) > MATTERS
                    && (plan.chanceAbove(other, s).atMost(CLEARLY) < 0
                        || plan.suppliedAbove(other, s).atMost(CLEARLY) < 0));
  }

  /** What a plan brings more than another, in worth and in the goals that either of them misses. */
  Trial.Gap gap(Trial plan, Trial other) {
    boolean[] counted = new boolean[objective.length];
    for (int s = 0; s < counted.length; s++) {
      counted[s] = plan.chance(s) < objective[s] || other.chance(s) < objective[s];
    }
    return plan.worthAbove(other, weight, counted);
  }
}
