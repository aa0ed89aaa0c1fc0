package propcap.study.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Scenario;
import propcap.farm.TinyFarm;
import propcap.study.PricedFarms;

/** No plan passes its bound. */
class PlanUpperBoundTest {
  private static LongStream farms() {
    return LongStream.rangeClosed(1, 24);
  }

  @ParameterizedTest
  @MethodSource("farms")
  void noPlanPassesItInAnySpring(long seed) throws Exception {
    assertThat(PlansByForce.above(PricedFarms.from(seed), new SplittableRandom(seed), 4, 10, 0))
        .isZero();
  }

  /** Two sowings of 20 plants, all on time in two trays each at 2 EUR: there is no better. */
  @Test
  void whereNothingIsLostThePlanThatLosesNothingReachesIt() throws Exception {
    Scenario tiny = TinyFarm.make();
    List<Choice> choices = Choice.of(tiny, new PlanningQuestion(0.9, 3, 3, 1, List.of()));
    PlanUpperBound bounding = new PlanUpperBound(tiny, choices);
    List<PlanUpperBound.Spring> springs = PlansByForce.atBest(tiny, choices, bounding, 5);
    assertThat(bounding.most(springs)).containsOnly(2.0 * (20 - 2 * 2));
    assertThat(bounding.fewest(0, springs)).isEqualTo(2);
    assertThat(bounding.chance(0, 1, springs)).isZero();
    // A bound of 5 EUR less is passed, on other farms as well.
    long passed =
        IntStream.rangeClosed(1, 24)
            .mapToLong(
                seed ->
                    PlansByForce.above(
                        PricedFarms.from(seed), new SplittableRandom(seed), 4, 10, 5))
            .sum();
    assertThat(passed).isPositive();
  }
}
