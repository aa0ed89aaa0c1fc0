package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.chance.Luck;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.compare.Comparing;
import propcap.study.compare.Comparison;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/**
 * Which scenarios live on luck that is drawn once for both; and that each of them then has the very
 * seasons that it has when it is run alone.
 */
class SharedLuckTest {
  private static final int SEASONS = 12;

  private static final Scenario FARM = farm(c -> {}, f -> {});

  private static Scenario farm(Consumer<Crops> crop, Consumer<Farms> change) {
    Crops cosmos = new Crops();
    cosmos.germination = new Crop.Germination(.8, 100, .02);
    cosmos.spread = .1;
    cosmos.dampingOff = new Crop.DampingOff(.1, .4);
    crop.accept(cosmos);
    Farms farm = new Farms();
    farm.house = 4;
    farm.crops = List.of(cosmos.make());
    farm.sowings = new ArrayList<>();
    farm.sowings.add(Farms.sowing("a", 3, 4));
    farm.sowings.add(Farms.sowing("b", 6, 2));
    change.accept(farm);
    return farm.make();
  }

  private static Arguments crop(String what, Consumer<Crops> change) {
    return Arguments.of(what, farm(change, f -> {}));
  }

  private static Arguments farm(String what, Consumer<Farms> change) {
    return Arguments.of(what, farm(c -> {}, change));
  }

  private static Arguments firstSowing(String what, String id, String lot, int trays) {
    Sowing s = FARM.sowings().get(0);
    Sowing changed =
        new Sowing(
            id,
            s.crop(),
            lot,
            s.sow(),
            trays,
            s.plantsNeeded(),
            s.bedFrom(),
            s.bedBy(),
            s.bedUntil(),
            s.resowUntil(),
            null,
            Sowing.Leeway.NOT_SAID);
    return farm(what, f -> f.sowings.set(0, changed));
  }

  static Stream<Arguments> sameLuck() {
    return Stream.of(
        farm("nothing", f -> {}),
        farm("spaces", f -> f.house = 2),
        farm("a closed place", f -> f.morePlaces.add(tunnel(0))),
        farm("another place", f -> f.morePlaces.add(tunnel(3))),
        farm("stretching", f -> f.stretchLossPerDay = .1),
        farm("a date of sowing", f -> f.sowings.set(0, Farms.sowing("a", 9, 4))),
        farm("dates of the bed", f -> f.sowings.set(0, Farms.sowing("a", 3, 4, 20, 30))),
        farm("the weather", f -> f.minC[22] = -9),
        Arguments.of("a climate", warmerHouse()),
        crop("loss", c -> c.loss = .2),
        crop("days on the table", c -> c.takesDays = 20),
        crop("hardening", c -> c.hardening = new Crop.Hardening(9, 2, -2, .5, .1, 1, 0)),
        crop(
            "potting on",
            c -> c.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 4, 5, 10, 0)));
  }

  private static Scenario warmerHouse() {
    return FARM.withPlaces(
        FARM.places().stream()
            .map(
                p ->
                    p.kind() == PlaceKind.TABLE
                        ? new Place(
                            p.name(), p.kind(), p.spaces(), new Climate.Constant(26), 0, null)
                        : p)
            .toList());
  }

  private static Place tunnel(int spaces) {
    return new Place("Tunnel", PlaceKind.TABLE, spaces, new Climate.Outdoor(), 0, null);
  }

  static Stream<Arguments> otherLuck() {
    return Stream.of(
        crop("cells", c -> c.cells = 12),
        crop("seeds a cell", c -> c.seedsPerCell = 2),
        crop("germination", c -> c.germination = new Crop.Germination(.81, 100, .02)),
        crop("seeds tested", c -> c.germination = new Crop.Germination(.8, 50, .02)),
        crop("correlation", c -> c.germination = new Crop.Germination(.8, 100, .03)),
        crop("emergence", c -> c.emergence = new Crop.Emergence(0, 30, 40, 20, 4.5, 6)),
        crop("the share to leave at", c -> c.leaveAt = .8),
        crop("spread", c -> c.spread = .2),
        crop("damping-off", c -> c.dampingOff = new Crop.DampingOff(.1, .5)),
        firstSowing("trays", "a", "lot", 5),
        firstSowing("the lot", "a", "other lot", 4),
        firstSowing("the id", "c", "lot", 4),
        farm("one sowing more", f -> f.sowings.add(Farms.sowing("c", 3, 1))),
        farm("one sowing less", f -> f.sowings.remove(1)),
        farm("the plan's order", f -> Collections.reverse(f.sowings)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("sameLuck")
  void whatDoesNotTouchATraysLuckSharesIt(String what, Scenario other) {
    assertThat(Luck.isShared(FARM, other)).isTrue();
    assertThat(Luck.isShared(other, FARM)).isTrue();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("otherLuck")
  void whatTouchesItDoesNot(String what, Scenario other) {
    assertThat(Luck.isShared(FARM, other)).isFalse();
    assertThat(Luck.isShared(other, FARM)).isFalse();
  }

  /** Were something shared that must not be, some season would be another one's. */
  @ParameterizedTest(name = "{0}")
  @MethodSource({"sameLuck", "otherLuck"})
  void togetherEachHasTheSeasonsThatItHasAlone(String what, Scenario other)
      throws InterruptedException, BadQuestionException {
    assertEachAsAlone(List.of(FARM, other, FARM), 2);
  }

  static LongStream seeds() {
    return LongStream.range(0, 25);
  }

  /** The farm, all its places a third larger, all its sowings a day later, and a stranger. */
  @ParameterizedTest
  @MethodSource("seeds")
  void soItIsOnAnyFarm(long seed) throws InterruptedException, BadQuestionException {
    Scenario farm = RandomScenarios.from(seed);
    List<Place> larger = farm.places().stream().map(p -> p.withSpaces(p.spaces() * 4 / 3)).toList();
    List<Scenario> scenarios = new ArrayList<>(List.of(farm, farm.withPlaces(larger)));
    if (farm.sowings().stream().allMatch(s -> farm.season().contains(s.sow().plusDays(1)))) {
      scenarios.add(farm.withSowings(farm.sowings().stream().map(s -> s.shifted(1)).toList()));
    }
    for (Scenario scenario : scenarios) {
      assertThat(Luck.isShared(farm, scenario)).isTrue();
    }
    scenarios.add(RandomScenarios.from(seed + 1000));
    assertEachAsAlone(scenarios, 1 + (int) (seed % 3));
  }

  private static void assertEachAsAlone(List<Scenario> scenarios, int threads)
      throws InterruptedException, BadQuestionException {
    RunSettings settings = new RunSettings(5, SEASONS, null, threads);
    Comparison together = Comparing.compare(scenarios, settings, share -> {});
    for (int i = 0; i < scenarios.size(); i++) {
      Forecast alone =
          Forecasting.forecast(scenarios.get(i), new RunSettings(5, SEASONS, null, 1), share -> {});
      assertThat(together.total(Comparison.Kind.ON_TIME).levels().get(i)).isEqualTo(alone.onTime());
      assertThat(together.total(Comparison.Kind.LATE).levels().get(i)).isEqualTo(alone.late());
      double[] met = alone.rows().stream().mapToDouble(Forecast.SeasonRow::sowingsMet).toArray();
      assertThat(together.total(Comparison.Kind.SOWINGS_MET).levels().get(i))
          .isEqualTo(Samples.of(met, Strata.of(scenarios.get(i), 5, SEASONS)).stat());
    }
  }
}
