package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowings;

/** No tray has more plants in the bed than at its best. */
class TraysAtBestTest {
  private static final int SPRINGS = 20;

  private static LongStream farms() {
    return LongStream.rangeClosed(1, 60);
  }

  @ParameterizedTest
  @MethodSource("farms")
  void inNoSpringDoesASowingHaveMore(long seed) {
    Scenario made = RandomScenarios.from(seed);
    Scenario farm =
        seed % 3 == 0
            ? made.withLabour(new Labour(0.3, new Labour.Minutes(5, 2, 6, 0.5, 0.5), List.of()))
            : made;
    assertThat(above(farm, 0)).isZero();
  }

  /** How often a sowing has more plants out than its trays at their best, each less so many. */
  private static long above(Scenario farm, int less) {
    SeasonPlan plan = new SeasonPlan(farm);
    TraysAtBest best = new TraysAtBest(plan);
    Luck.Reader reader = new Luck(farm, 5).reader();
    return IntStream.range(0, SPRINGS)
        .mapToObj(reader::season)
        .mapToLong(luck -> above(plan, best, luck, less))
        .sum();
  }

  private static long above(SeasonPlan plan, TraysAtBest best, SeasonLuck luck, int less) {
    SeasonOutcome season = House.season(plan, luck);
    return IntStream.range(0, season.sowings())
        .filter(
            s ->
                season.onTime(s) + season.late(s)
                    > IntStream.range(0, plan.line(s).trays)
                        .map(
                            t ->
                                Math.max(best.plants(luck, s, t), best.plantsSownAgain(luck, s, t))
                                    - less)
                        .sum())
        .count();
  }

  /** Seed that seldom comes up, losses on the way, and room, warmth and time enough. */
  private static Scenario easy() {
    Crops cosmos = new Crops();
    cosmos.cells = 100;
    cosmos.germination = new Crop.Germination(0.7, 50, 0.05);
    cosmos.loss = 0.1;
    cosmos.dampingOff = new Crop.DampingOff(0.3, 0.4);
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 30, 3, 20, 0.05);
    cosmos.hardening = new Crop.Hardening(3, 2, -2, 0, 0.1, 1, 0);
    Farms farm = new Farms();
    farm.crops = List.of(cosmos.make());
    farm.house = 100;
    farm.yard = 100;
    farm.sowings.add(Farms.sowing("a", 0, 6));
    return farm.make();
  }

  @Test
  void whereNothingElseIsLostASowingHasJustAsMany() {
    assertThat(above(easy(), 0)).isZero();
    // One plant less a tray, and every spring would be above.
    assertThat(above(easy(), 1)).isEqualTo(SPRINGS);
  }

  /** Nothing comes up in half of the trays, which are sown again when they are pulled on day 21. */
  @Test
  void aTrayThatFailsHasThePlantsOfTheOneThatIsSownAgain() {
    Crops cosmos = new Crops();
    cosmos.germination = new Crop.Germination(0.3, 0, 0.9);
    Farms farm = new Farms();
    farm.crops = List.of(cosmos.make());
    farm.house = 100;
    farm.yard = 100;
    farm.sowings.add(Sowings.sownAgainUntil(Farms.sowing("a", 0, 6), Farms.day(25)));
    Scenario scenario = farm.make();
    TraysAtBest best = new TraysAtBest(new SeasonPlan(scenario));
    Luck.Reader reader = new Luck(scenario, 5).reader();
    int again =
        IntStream.range(0, SPRINGS)
            .mapToObj(reader::season)
            .mapToInt(
                luck -> IntStream.range(0, 6).map(t -> best.plantsSownAgain(luck, 0, t)).sum())
            .sum();
    assertThat(again).isPositive();
    assertThat(above(scenario, 0)).isZero();
  }
}
