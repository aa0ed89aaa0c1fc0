package propcap.study.plan;

import propcap.study.statistics.Difference;
import propcap.study.statistics.Paired;

/** What each change of a plan does: the plan against the same with this one change taken back. */
final class ChangeEffects {
  private final Trials trials;
  private final Trial plan;

  ChangeEffects(Trials trials, TrialPlan plan) throws InterruptedException {
    this.trials = trials;
    this.plan = trials.of(plan);
  }

  /** What the change of one sowing does. */
  Planned.Effect of(int s, TrialPlan asItWas) throws InterruptedException {
    int sowings = asItWas.settings().size();
    Trial without = trials.of(plan.trialPlan().with(s, asItWas.settings().get(s)));
    Integer other = null;
    Difference others = null;
    for (int o = 0; o < sowings; o++) {
      // One of so many is picked for its rise.
      Difference rises = rise(without, o, sowings);
      if (o != s && rises.low() > 0 && (others == null || rises.mean() > others.mean())) {
        other = o;
        others = rises;
      }
    }
    return new Planned.Effect(worth(without), rise(without, s, 1), other, others);
  }

  private Difference worth(Trial without) {
    return Paired.difference(without.worths(), plan.worths(), trials.strata());
  }

  private Difference rise(Trial without, int sowing, int comparisons) {
    return Paired.difference(
        without.mets(sowing), plan.mets(sowing), trials.strata(), true, comparisons);
  }
}
