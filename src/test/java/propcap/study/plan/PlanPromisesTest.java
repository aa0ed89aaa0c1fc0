package propcap.study.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.WeatherYear;
import propcap.files.scenario.ScenarioReader;
import propcap.study.BadQuestionException;
import propcap.study.Money;
import propcap.study.RunSettings;

/** What a better plan promises: each case is one in which a promise was once broken. */
class PlanPromisesTest {
  private static Planned plan(Scenario scenario, PlanningQuestion question, int tries, int seasons)
      throws BadQuestionException, InterruptedException {
    return Planning.plan(
        scenario,
        question,
        new RunSettings(1, seasons, null, 1),
        Budget.ofTries(tries),
        share -> {});
  }

  private static Sowing sowing(String id, int sowDay, int trays, int needed, int bedBy) {
    return new Sowing(
        id,
        "cosmos",
        "lot",
        Farms.day(sowDay),
        trays,
        needed,
        Farms.day(0),
        Farms.day(bedBy),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  // What is given up.

  /**
   * Four spaces on the mats, each taken for five days; what is sown on day s is planted out on
   * s+19. Of the large sowing's eight trays four are in time, and the other four keep the small one
   * off the mats until it is too late.
   */
  private static Scenario crowded() {
    Farms farm = new Farms();
    farm.mats = 4;
    farm.house = 20;
    farm.yard = 20;
    farm.sowings.add(sowing("large", 0, 8, 80, 22));
    farm.sowings.add(sowing("small", 0, 2, 20, 24));
    return farm.make();
  }

  @Test
  void aSowingThatCannotReachItsGoalIsNotGivenUpToSaveItsTrays() throws Exception {
    Planned planned = plan(crowded(), new PlanningQuestion(0.9, 0, 0, 1, List.of()), 120, 20);
    assertThat(planned.before().sowings().get(0).onTime().mean()).isEqualTo(40);
    assertThat(planned.kept().sowings().get(0).onTime().mean()).isEqualTo(40);
    assertThat(planned.kept().sowings().get(1).chanceMet()).isEqualTo(1);
  }

  /**
   * All four spaces are the large sowing's when the small one is due: it is the one or the other.
   */
  private static Scenario oneOrTheOther() {
    Farms farm = new Farms();
    farm.mats = 4;
    farm.house = 20;
    farm.yard = 20;
    farm.sowings.add(sowing("large", 0, 4, 80, 22));
    farm.sowings.add(sowing("small", 0, 2, 20, 23));
    return farm.make();
  }

  @Test
  void noSowingIsGivenUpForAnotherUnlessItMayBe() throws Exception {
    Planned kept = plan(oneOrTheOther(), new PlanningQuestion(0.9, 0, 0, 1, List.of()), 60, 20);
    assertThat(kept.kept().sowings().get(0).onTime().mean()).isEqualTo(40);
    assertThat(kept.kept().sowings().get(1).chanceMet()).isZero();
    Planned allowed =
        plan(oneOrTheOther(), new PlanningQuestion(0.9, 0, 0, 1, List.of("large")), 60, 20);
    assertThat(allowed.isConfirmed()).isTrue();
    assertThat(allowed.kept().sowings().get(1).chanceMet()).isEqualTo(1);
    assertThat(allowed.givenUp()).containsExactly(new Planned.GivenUp(0, true));
  }

  @Test
  void whatMayBeGivenUpMustBeASowing() {
    assertThatThrownBy(
            () -> plan(crowded(), new PlanningQuestion(0.9, 0, 0, 1, List.of("larch*")), 9, 20))
        .isInstanceOf(BadQuestionException.class)
        .hasMessageContaining("no sowing's id matches 'larch*'");
  }

  // How far from the best.

  /** Mats at 5 EUR a day of use: it pays to use them for both sowings at a time. */
  private static Scenario matsThatCost() {
    Farms farm = new Farms();
    farm.sowings.add(sowing("one", 5, 2, 20, 59));
    farm.sowings.add(sowing("two", 15, 2, 20, 59));
    Money money = new Money();
    money.tray = Money.amount("2");
    return Money.withCost(money.in(farm.make()), "Mats", 10, Money.cost("0", 1, "0", "5"));
  }

  @Test
  void noPlanIsAboveTheBoundWherePlacesCostSomethingToRun() throws Exception {
    Planned planned =
        plan(matsThatCost(), new PlanningQuestion(0.9, 10, 10, 1, List.of()), 200, 20);
    assertThat(planned.bound().toBest().mean()).isNotNegative();
  }

  // Alone.

  private static Scenario onlyOf(String... ids) throws Exception {
    Scenario example =
        ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
    return example.withSowings(
        example.sowings().stream().filter(s -> List.of(ids).contains(s.id())).toList());
  }

  @Test
  void aloneASowingIsOnItsBestDayWithAllTheTraysThatItMayHave() throws Exception {
    Planned planned =
        plan(
            onlyOf("cabbage-1", "tomato-2"),
            new PlanningQuestion(0.9, 14, 14, 2, List.of()),
            1,
            200);
    // By force: cabbage-1 in 80 trays, tomato-2 in 72 and 14 days earlier.
    assertThat(planned.alone().get(0).chance()).isGreaterThan(0.92);
    assertThat(planned.alone().get(1).chance()).isGreaterThan(0.98);
  }

  // Fewest changes.

  /**
   * A roomy farm, all of its sowings safe but one that is sown too late. Nights of frost come as
   * they like, so that for each there is a day that is a little better than its own.
   */
  private static Scenario roomyButForOne() {
    Crops cosmos = new Crops();
    cosmos.hardening = new Crop.Hardening(3, 2, 0, 0.02, 0, 1, -60);
    Farms farm = new Farms();
    farm.crops = new ArrayList<>(List.of(cosmos.make()));
    farm.mats = 60;
    farm.house = 60;
    farm.yard = 60;
    IntStream.range(0, 8).forEach(i -> farm.sowings.add(sowing("safe-" + i, 4 + i, 4, 35, 40 + i)));
    farm.sowings.add(sowing("late", 22, 4, 35, 38));
    Scenario made = farm.make();
    SplittableRandom random = new SplittableRandom(1);
    List<WeatherYear> years =
        IntStream.range(0, 12)
            .mapToObj(
                y -> {
                  double[] minC =
                      IntStream.range(0, 60).mapToDouble(d -> random.nextDouble(-2, 8)).toArray();
                  double[] maxC = IntStream.range(0, 60).mapToDouble(d -> 18).toArray();
                  return new WeatherYear(2001 + y, minC, maxC);
                })
            .toList();
    Money money = new Money();
    return money.in(
        new Scenario(
            made.name(),
            made.season(),
            made.frostAtC(),
            made.rounds(),
            made.places(),
            made.crops(),
            made.sowings(),
            years,
            null,
            Labour.NOT_LIMITED));
  }

  @Test
  void whatBringsNextToNothingIsTakenBack() throws Exception {
    Planned planned =
        plan(roomyButForOne(), new PlanningQuestion(0.9, 7, 7, 1, List.of()), 150, 100);
    assertThat(planned.isConfirmed()).isTrue();
    // Under eight seeds 8 or 9 are changed and 4 or 5 kept, which bring 23.4 to 24.4 EUR together.
    assertThat(planned.search().changed()).isGreaterThanOrEqualTo(7);
    assertThat(planned.changes()).hasSizeLessThanOrEqualTo(5);
    assertThat(planned.gain().mean()).isGreaterThan(22);
    Planned.Change late = planned.changes().get(planned.changes().size() - 1);
    assertThat(late.to().id()).isEqualTo("late");
    // And what each does by itself was measured.
    assertThat(planned.effects()).hasSameSizeAs(planned.changes());
    assertThat(planned.effects()).allMatch(e -> e.worth().isMore());
    assertThat(planned.effects().get(planned.effects().size() - 1).own().low()).isGreaterThan(0.5);
  }
}
