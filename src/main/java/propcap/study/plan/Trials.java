package propcap.study.plan;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.statistics.Strata;

/** Tries plans of one scenario, each on the same springs. */
final class Trials {
  /** Springs after which a plan may be given up; then all of them. */
  private static final int[] LOOKS = {16, 48};

  private final Scenario scenario;
  private final List<Choice> choices;
  private final PlanWorth worth;
  private final TrialSprings springs;
  private final SeasonPlan like;

  Trials(Scenario scenario, List<Choice> choices, PlanWorth worth, TrialSprings springs) {
    this.scenario = scenario;
    this.choices = choices;
    this.worth = worth;
    this.springs = springs;
    this.like = new SeasonPlan(scenario);
  }

  /** The weather years of the springs. */
  Strata strata() {
    return springs.strata();
  }

  Trial of(TrialPlan trialPlan) throws InterruptedException {
    return of(trialPlan, springs.count());
  }

  /** A plan on the first springs, so many at most. */
  Trial of(TrialPlan trialPlan, int first) throws InterruptedException {
    Scenario sown = trialPlan.sown(scenario, choices);
    int n = Math.min(first, springs.count());
    Trial trial = trialOf(trialPlan);
    trial.add(springs.run(new SeasonPlan(sown, like), 0, n, reading(sown)));
    return trial;
  }

  private Trial trialOf(TrialPlan trialPlan) {
    return new Trial(trialPlan, choices.size(), springs.count());
  }

  /**
   * A plan beside another one; null where it was clearly worse on the first springs.
   *
   * @param worse by how much it may be worse
   */
  @Nullable Trial unlessWorse(
      TrialPlan trialPlan, Trial against, PlanObjective objective, double worse)
      throws InterruptedException {
    Scenario sown = trialPlan.sown(scenario, choices);
    SeasonPlan plan = new SeasonPlan(sown, like);
    Function<SeasonOutcome, Trial.Spring> reading = reading(sown);
    Trial trial = trialOf(trialPlan);
    for (int look : LOOKS) {
      if (look < springs.count()) {
        trial.add(springs.run(plan, trial.springs(), look, reading));
        if (objective.isClearlyWorse(trial, against, worse)) {
          return null;
        }
      }
    }
    trial.add(springs.run(plan, trial.springs(), springs.count(), reading));
    return trial;
  }

  private Function<SeasonOutcome, Trial.Spring> reading(Scenario sown) {
    List<Sowing> sowings = sown.sowings();
    return season -> {
      boolean[] met = new boolean[sowings.size()];
      float[] supplied = new float[met.length];
      for (int s = 0; s < met.length; s++) {
        met[s] = worth.isMet(s, season.onTime(s));
        supplied[s] = (float) worth.supplied(s, season.onTime(s));
      }
      return new Trial.Spring(worth.of(season, sowings), met, supplied);
    };
  }
}
