package propcap.study.fill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.SowingNeed;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.plan.Budget;
import propcap.study.plan.Planned;
import propcap.study.plan.Planning;
import propcap.study.plan.PlanningQuestion;

/**
 * A plan from needs alone. On the small farm a tray of ten sown on day d is in the bed on d+19: for
 * a bed by day 45 the last day is 26, and a week before it 19.
 */
class FillingTest {
  private static final RunSettings SETTINGS = new RunSettings(3, 200, null, 1);

  private final Farms farm = new Farms();
  private final Crops crop = new Crops();

  private static Sowing needed(String id, int plants, int bedBy, Sowing.Leeway leeway) {
    return new Sowing(
        id,
        "cosmos",
        id,
        Farms.START,
        1,
        plants,
        Farms.START,
        Farms.day(bedBy),
        null,
        null,
        null,
        leeway);
  }

  private PlanNeeds needs(boolean isDateOpen, boolean areTraysOpen, Sowing... sowings) {
    farm.crops = List.of(crop.make());
    farm.sowings = List.of(sowings);
    return new PlanNeeds(
        farm.make(),
        farm.sowings.stream().map(s -> new SowingNeed(s.id(), isDateOpen, areTraysOpen)).toList());
  }

  private static FirstPlan fill(PlanNeeds needs) throws BadQuestionException, InterruptedException {
    return Filling.fill(needs, 0.9, Farms.START, SETTINGS);
  }

  @Test
  void withoutLuckTraysAndDayAreThoseOfArithmetic() throws Exception {
    FirstPlan plan =
        fill(
            needs(
                true,
                true,
                needed("a", 25, 45, Sowing.Leeway.NOT_SAID),
                needed("b", 40, 39, Sowing.Leeway.NOT_SAID)));
    assertThat(plan.scenario().sowings()).extracting(Sowing::trays).containsExactly(3, 4);
    assertThat(plan.scenario().sowings())
        .extracting(Sowing::sow)
        .containsExactly(Farms.day(19), Farms.day(13));
    assertThat(plan.filled()).extracting(FirstPlan.Filled::chance).containsExactly(1.0, 1.0);
  }

  @Test
  void whatIsWrittenStays() throws Exception {
    Sowing a = needed("a", 25, 45, Sowing.Leeway.NOT_SAID);
    Sowing trays = fill(needs(false, true, a.sownOn(Farms.day(5)))).filled().get(0).sowing();
    assertThat(trays.sow()).isEqualTo(Farms.day(5));
    assertThat(trays.trays()).isEqualTo(3);
    Sowing date = fill(needs(true, false, a.withTrays(7))).filled().get(0).sowing();
    assertThat(date.trays()).isEqualTo(7);
    assertThat(date.sow()).isEqualTo(Farms.day(19));
    PlanNeeds none = PlanNeeds.none(needs(true, true, a).scenario());
    assertThat(fill(none).scenario()).isSameAs(none.scenario());
  }

  @Test
  void theDayKeepsToSowFromAndSowTo() throws Exception {
    Sowing.Leeway early = new Sowing.Leeway(null, Farms.day(10), null);
    assertThat(fill(needs(true, true, needed("a", 25, 45, early))).filled().get(0).sowing().sow())
        .isBeforeOrEqualTo(Farms.day(10));
    Sowing.Leeway late = new Sowing.Leeway(Farms.day(24), null, null);
    assertThat(fill(needs(true, true, needed("a", 25, 45, late))).filled().get(0).sowing().sow())
        .isBetween(Farms.day(24), Farms.day(26));
  }

  /**
   * Cells fill with chance .8: of 10 trays 90 plants are there in P(Bin(100, .8) >= 90) = .006, and
   * for nine springs of ten 12 trays are the fewest by the law (.928 of Bin(120, .8)), 11 have
   * .368.
   */
  @Test
  void theTraysAreTheFewestThatGiveThePlantsWithTheChanceAndNotTheMean() throws Exception {
    crop.germination = new Crop.Germination(0.8, 0, 0);
    crop.failBelow = 0;
    crop.leaveAt = 0.1;
    FirstPlan.Filled a =
        fill(needs(true, true, needed("a", 90, 45, Sowing.Leeway.NOT_SAID))).filled().get(0);
    int fewest = 9;
    while (1 - new BinomialDistribution(null, 10 * fewest, 0.8).cumulativeProbability(89) < 0.9) {
      fewest++;
    }
    assertThat(a.sowing().trays()).isBetween(fewest, fewest + 1);
    assertThat(a.chance()).isGreaterThanOrEqualTo(0.9);
  }

  /** A lot tested on ten seeds may be a poor one: trays that do for the mean do not do for it. */
  @Test
  void aLotThatIsLittleKnownTakesMoreTrays() throws Exception {
    crop.failBelow = 0;
    crop.leaveAt = 0.1;
    crop.germination = new Crop.Germination(0.8, 0, 0);
    int sure =
        fill(needs(true, true, needed("a", 90, 45, Sowing.Leeway.NOT_SAID)))
            .filled()
            .get(0)
            .sowing()
            .trays();
    crop.germination = new Crop.Germination(0.8, 10, 0);
    FirstPlan.Filled unsure =
        fill(needs(true, true, needed("a", 90, 45, Sowing.Leeway.NOT_SAID))).filled().get(0);
    assertThat(unsure.sowing().trays()).isGreaterThan(sure + 1);
    assertThat(unsure.chance()).isGreaterThanOrEqualTo(0.9);
  }

  @Test
  void whatCannotBeInTimeIsFilledAllTheSameAndSaysSo() throws Exception {
    FirstPlan.Filled a =
        fill(needs(true, true, needed("a", 25, 15, Sowing.Leeway.NOT_SAID))).filled().get(0);
    assertThat(a.chance()).isZero();
    assertThat(a.sowing().trays()).isPositive();
  }

  @Test
  void whereNoDayIsLeftAllAreNamed() {
    PlanNeeds needs =
        needs(
            true,
            true,
            needed("a", 25, 15, Sowing.Leeway.NOT_SAID),
            needed("b", 25, 16, Sowing.Leeway.NOT_SAID),
            needed("c", 25, 45, Sowing.Leeway.NOT_SAID));
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Filling.fill(needs, 0.9, Farms.day(20), SETTINGS))
        .withMessageContaining("a (in the bed by 2027-03-16), b (in the bed by 2027-03-17);");
  }

  /** With chance in all of it: six sowings, of which nothing is written but what is needed. */
  @Test
  void aFarmThatKnowsOnlyItsNeedsHasAPlanThatReachesItsGoals() throws Exception {
    crop.germination = new Crop.Germination(0.85, 50, 0.01);
    crop.spread = 0.1;
    crop.dampingOff = new Crop.DampingOff(0.05, 0.4);
    farm.mats = 12;
    farm.house = 16;
    farm.yard = 16;
    List<Sowing> wanted = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      wanted.add(needed("s" + i, 30, 30 + 5 * i, Sowing.Leeway.NOT_SAID));
    }
    PlanNeeds needs = needs(true, true, wanted.toArray(Sowing[]::new));
    Scenario first = fill(needs).scenario();
    Planned planned =
        Planning.plan(
            first,
            new PlanningQuestion(0.9, 14, 14, 2, List.of()),
            SETTINGS,
            Budget.ofTries(60),
            share -> {});
    assertThat(planned.missed()).isEmpty();
  }

  @Test
  void threadsChangeNoDigit() throws Exception {
    crop.germination = new Crop.Germination(0.85, 50, 0.01);
    PlanNeeds needs = needs(true, true, needed("a", 90, 45, Sowing.Leeway.NOT_SAID));
    assertThat(Filling.fill(needs, 0.9, Farms.START, new RunSettings(3, 200, null, 2)).filled())
        .isEqualTo(fill(needs).filled());
  }
}
