package propcap.study.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Scenario;
import propcap.study.EvenChances;

/** No change of a plan that is told is for nothing. */
class WeighedPlanTest {
  /**
   * Plans that differ at random from the one that is sown, on farms of all kinds: some where what
   * is for nothing by itself would, with the rest of it, give a sowing up or cost too much.
   */
  @ParameterizedTest
  @ValueSource(longs = {3, 28, 82, 92, 97, 149})
  void noChangeIsLeftThatIsForNothingUnlessAllOfThemTogetherAreNot(long seed) throws Exception {
    Scenario farm = EvenChances.from(seed);
    List<Choice> choices = Choice.of(farm, new PlanningQuestion(0.9, 14, 14, 2, List.of()));
    PlanWorth worth = new PlanWorth(farm);
    try (TrialSprings springs = new TrialSprings(Choice.widest(farm, choices), 1, 1, 60)) {
      Trials trials = new Trials(farm, choices, worth, springs);
      TrialPlan was = TrialPlan.asItWas(farm, choices);
      PlanObjective objective = new PlanObjective(choices, worth, trials.of(was));
      TrialPlan changed = TrialPlan.asItIs(farm, choices);
      Proposals proposals = new Proposals(choices, List.of(changed), new SplittableRandom(seed));
      for (int i = 0; i < 10; i++) {
        changed = proposals.from(changed, List.of());
      }
      WeighedPlan weighed =
          WeighedPlan.of(trials, objective, was, TrialPlan.asItIs(farm, choices), changed);
      List<Integer> left = weighed.trialPlan().changed(was);
      assertThat(weighed.effects()).hasSameSizeAs(left);
      Trial kept = trials.of(weighed.trialPlan());
      Trial.Gap lost = objective.gap(kept, trials.of(changed));
      assertThat(lost.mean() + 1.645 * lost.se()).isNotNegative();
      assertThat(objective.givesMoreUp(kept, trials.of(changed))).isFalse();
      for (int c = 0; c < left.size(); c++) {
        int s = left.get(c);
        TrialPlan without = weighed.trialPlan().with(s, was.settings().get(s));
        // What is told is what it does in the plan that is told.
        assertThat(weighed.effects().get(c))
            .isEqualTo(new ChangeEffects(trials, weighed.trialPlan()).of(s, was));
        Trial.Gap together = objective.gap(trials.of(without), trials.of(changed));
        boolean mayNotGo =
            together.mean() + 1.645 * together.se() < 0
                || objective.givesMoreUp(trials.of(without), trials.of(changed));
        assertThat(mayNotGo || !weighed.effects().get(c).isForNothing()).isTrue();
      }
    }
  }
}
