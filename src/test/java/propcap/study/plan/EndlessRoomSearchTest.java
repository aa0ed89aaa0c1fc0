package propcap.study.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;

/** Each sowing alone, against all of its days, places and trays tried by force. */
class EndlessRoomSearchTest {
  private static final int SPRINGS = 40;

  private static LongStream farms() {
    return LongStream.rangeClosed(1, 6);
  }

  @ParameterizedTest
  @MethodSource("farms")
  void theFirstTraysOfManyAreWhatFewerAre(long seed) throws Exception {
    Scenario farm = RandomScenarios.from(seed);
    List<Choice> choices = Choice.of(farm, new PlanningQuestion(0.9, 4, 4, 2, List.of()));
    PlanWorth worth = new PlanWorth(farm);
    Scenario widest = Choice.widest(farm, choices);
    try (TrialSprings springs = new TrialSprings(widest, 1, 1, SPRINGS)) {
      Trials trials = new Trials(farm, choices, worth, springs);
      PlanObjective objective =
          new PlanObjective(choices, worth, trials.of(TrialPlan.asItWas(farm, choices)));
      EndlessRoomSearch alone = EndlessRoomSearch.of(farm, choices, objective, worth, springs);
      Trials endless =
          new Trials(farm.withEndlessRoom().withEndlessHands(), choices, worth, springs);
      Trial surest = endless.of(alone.surest());
      Trial best = endless.of(alone.best());
      double[] most = new double[choices.size()];
      double[] score = new double[choices.size()];
      Arrays.fill(score, Double.NEGATIVE_INFINITY);
      int days = choices.stream().mapToInt(c -> c.days().size()).max().orElseThrow();
      int places = choices.stream().mapToInt(c -> c.places().size()).max().orElseThrow();
      int trays = choices.stream().mapToInt(Choice::mostTrays).max().orElseThrow();
      for (int d = 0; d < days; d++) {
        for (int p = 0; p < places; p++) {
          for (int t = 1; t <= trays; t++) {
            int day = d;
            int place = p;
            int many = t;
            Trial tried =
                endless.of(
                    new TrialPlan(
                        choices.stream()
                            .map(
                                c ->
                                    new Choice.Setting(
                                        c.days().get(Math.min(day, c.days().size() - 1)),
                                        Math.min(many, c.mostTrays()),
                                        Math.min(place, c.places().size() - 1)))
                            .toList()));
            for (int s = 0; s < most.length; s++) {
              most[s] = Math.max(most[s], tried.chance(s));
              score[s] = Math.max(score[s], score(objective, tried, s));
            }
          }
        }
      }
      for (int s = 0; s < most.length; s++) {
        assertThat(surest.chance(s)).isEqualTo(alone.chances().get(s));
        // All days were tried on 32 of the springs, and those near the best on all of them.
        assertThat(surest.chance(s)).isCloseTo(most[s], within(0.1));
        assertThat(score(objective, best, s)).isCloseTo(score[s], within(0.1 * worth.whole()));
        if (alone.isOutOfReach(s)) {
          assertThat(most[s]).isLessThan(choices.get(s).goal());
        }
      }
    }
  }

  /** Without money a sowing's worth is its trays. */
  private static double score(PlanObjective objective, Trial trial, int s) {
    return objective.score(
        s, -trial.trialPlan().settings().get(s).trays(), trial.chance(s), trial.supplied(s));
  }
}
