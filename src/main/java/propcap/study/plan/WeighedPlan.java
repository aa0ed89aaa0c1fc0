package propcap.study.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * A plan each of whose changes does some good that can be told from chance.
 *
 * @param effects of its changes, in the order of the sowings that are changed; none where the
 *     weighing was stopped
 */
record WeighedPlan(TrialPlan trialPlan, List<Planned.Effect> effects) {

  /**
   * Takes back every change that is for nothing, one by one, and weighs the others again until none
   * is left that is. All that goes, together, gives no sowing up and costs nothing that can be told
   * from chance.
   *
   * @param asItIs the nearest to the plan as it was that may be chosen: where it differs, a change
   *     cannot go
   */
  static WeighedPlan of(
      Trials trials, PlanObjective objective, TrialPlan asItWas, TrialPlan asItIs, TrialPlan found)
      throws InterruptedException {
    Trial start = trials.of(found);
    TrialPlan current = found;
    while (true) {
      List<Planned.Effect> effects = new ArrayList<>();
      TrialPlan weighed = current;
      for (int s : weighed.changed(asItWas)) {
        Planned.Effect effect = new ChangeEffects(trials, current).of(s, asItWas);
        effects.add(effect);
        Choice.Setting was = asItWas.settings().get(s);
        TrialPlan without = current.with(s, was);
        if (effect.isForNothing()
            && was.equals(asItIs.settings().get(s))
            && mayGo(trials.of(without), start, objective)) {
          current = without;
        }
      }
      if (current.equals(weighed)) {
        return new WeighedPlan(current, List.copyOf(effects));
      }
    }
  }

  private static boolean mayGo(Trial without, Trial found, PlanObjective objective) {
    return !objective.gap(without, found).isLoss() && !objective.givesMoreUp(without, found);
  }
}
