package propcap.study.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Farms;
import propcap.farm.LoggedEvent;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.Sowings;
import propcap.farm.TinyFarm;
import propcap.farm.TrayPast;
import propcap.season.SeasonOutcome;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.SeasonTotals;
import propcap.study.Seasons;
import propcap.study.money.Accounts;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/** A better plan keeps its promises. */
class PlanningTest {
  private static final PlanningQuestion QUESTION = new PlanningQuestion(0.9, 14, 14, 2, List.of());

  private static RunSettings settings(int threads) {
    return new RunSettings(1, 200, null, threads);
  }

  private static Planned plan(Scenario scenario, PlanningQuestion question, int tries)
      throws BadQuestionException, InterruptedException {
    return Planning.plan(scenario, question, settings(2), Budget.ofTries(tries), share -> {});
  }

  /** By the log only its second tray was sown, so that it has two, whatever is planned. */
  @Test
  void noSowingHasFewerTraysThanHaveBeenSown() throws Exception {
    Scenario tiny = TinyFarm.make();
    var sown = new TrayPast.Move(LoggedEvent.SOWN, 5, null, "Mats", 1);
    var second = new TrayPast("one", "2", 1, 0, List.of(sown), -1, 0, 30);
    SoFar soFar = new SoFar(tiny.season().date(6), List.of(second), List.of());
    Scenario inSeason = tried(tiny, 5, 1, 6, 2).withSoFar(soFar);
    assertThat(inSeason.sowings().get(0).trays()).isEqualTo(2);
    assertThat(tried(inSeason, 5, 1, 6, 1).sowings())
        .extracting(Sowing::trays)
        .containsExactly(2, 1);
    Choice choice = Choice.of(inSeason, QUESTION).get(0);
    assertThat(choice.with(inSeason, new Choice.Setting(5, 1, 0)).trays()).isEqualTo(2);
  }

  // A farm that is tiny enough to try everything.

  @Test
  void theBestOfATinyFarmsPlansIsFoundAmongAllOfThem() throws Exception {
    Scenario tiny = TinyFarm.make();
    double best = Double.NEGATIVE_INFINITY;
    for (int one = 2; one <= 8; one++) {
      for (int two = 3; two <= 9; two++) {
        for (int trays = 0; trays < 4; trays++) {
          best = Math.max(best, score(tried(tiny, one, 1 + trays % 2, two, 1 + trays / 2)));
        }
      }
    }
    Planned planned = plan(tiny, new PlanningQuestion(0.9, 3, 3, 1, List.of()), 300);
    assertThat(score(planned.kept().scenario())).isEqualTo(best);
    assertThat(planned.isConfirmed()).isTrue();
    assertThat(best).isGreaterThan(score(tiny) + 1);
  }

  private static Scenario tried(Scenario tiny, int one, int onesTrays, int two, int twosTrays) {
    return tiny.withSowings(
        List.of(
            tiny.sowings().get(0).shifted(one - 5).withTrays(onesTrays),
            tiny.sowings().get(1).shifted(two - 6).withTrays(twosTrays)));
  }

  /** Goals first, then margin; nothing is left to luck on this farm, so that one spring is all. */
  private static double score(Scenario scenario) throws InterruptedException {
    SeasonOutcome only = outcomes(List.of(scenario), 1, 1).get(0).get(0);
    long met = IntStream.range(0, 2).filter(s -> SeasonTotals.isMet(scenario, only, s)).count();
    return 1000 * met + Accounts.marginOf(scenario).applyAsDouble(only);
  }

  private static List<List<SeasonOutcome>> outcomes(List<Scenario> scenarios, long seed, int n)
      throws InterruptedException {
    try (Seasons seasons = new Seasons(scenarios, new RunSettings(seed, 1, null, 1))) {
      return seasons.run(
          IntStream.range(0, scenarios.size()).boxed().toList(), 0, n, (s, o) -> o, done -> {});
    }
  }

  @Test
  void theBoundIsNoLessThanWhatTheBestPlanBrings() throws Exception {
    Planned planned = plan(TinyFarm.make(), new PlanningQuestion(0.9, 3, 3, 1, List.of()), 300);
    assertThat(planned.bound().toBest().mean()).isNotNegative();
    assertThat(planned.bound().chances()).allMatch(chance -> chance == 1);
    assertThat(planned.alone()).allMatch(alone -> alone.chance() == 1 && !alone.isOutOfReach());
  }

  // Promises on any farm.

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void aPlanDoesNotLoseToItsStartOnSpringsThatNeitherHasSeen(long farm) throws Exception {
    Scenario scenario = RandomScenarios.from(farm);
    Planned planned = plan(scenario, QUESTION, 60);
    List<Scenario> both = List.of(scenario, planned.kept().scenario());
    List<List<SeasonOutcome>> outcomes = outcomes(both, 77_777, 400);
    for (int s = 0; s < scenario.sowings().size(); s++) {
      int sowing = s;
      // Four standard errors, as for 833 comparisons: one false alarm in 30,000 for each sowing.
      Difference met =
          Paired.difference(
              met(both, outcomes, 0, s),
              met(both, outcomes, 1, s),
              Strata.of(scenario, outcomes.get(0)),
              true,
              833);
      double goal = planned.goals().get(s);
      double now =
          Samples.mean(outcomes.get(1), o -> SeasonTotals.isMet(scenario, o, sowing) ? 1 : 0);
      double error = 4 * Math.sqrt(goal * (1 - goal) / 400);
      assertThat(met.high() >= -PlanObjective.MATTERS || now + error >= goal).isTrue();
    }
    if (planned.isConfirmed() && planned.met().mean() <= 0) {
      assertThat(planned.kept().scenario().trays()).isLessThan(scenario.trays());
    }
  }

  private static double[] met(
      List<Scenario> plans, List<List<SeasonOutcome>> outcomes, int plan, int sowing) {
    return outcomes.get(plan).stream()
        .mapToDouble(o -> SeasonTotals.isMet(plans.get(plan), o, sowing) ? 1 : 0)
        .toArray();
  }

  @Test
  void theSameSeedAndTriesGiveTheSamePlanOnOneThreadAndTwo() throws Exception {
    Scenario scenario = RandomScenarios.from(3);
    Planned one = Planning.plan(scenario, QUESTION, settings(1), Budget.ofTries(80), share -> {});
    Planned two = plan(scenario, QUESTION, 80);
    assertThat(two.found().scenario().sowings()).isEqualTo(one.found().scenario().sowings());
    assertThat(two.gain()).isEqualTo(one.gain());
    assertThat(two.met()).isEqualTo(one.met());
    assertThat(two.bound()).isEqualTo(one.bound());
  }

  @Test
  void aSearchThatIsStoppedKeepsItsBestSoFar() throws Exception {
    Budget stoppedByHand =
        tries -> {
          if (tries > 40) {
            Thread.currentThread().interrupt();
          }
          return 0;
        };
    Planned planned =
        Planning.plan(TinyFarm.make(), QUESTION, settings(2), stoppedByHand, share -> {});
    assertThat(planned.search().isStopped()).isTrue();
    assertThat(planned.isConfirmed()).isTrue();
    assertThat(Thread.currentThread().isInterrupted()).isFalse();
  }

  @Test
  void datesStayWithinTheDaysThatASowingMayHave() throws Exception {
    Scenario tiny = TinyFarm.make();
    Sowing.Leeway narrow = new Sowing.Leeway(Farms.day(5), Farms.day(6), null);
    Planned planned = plan(Sowings.each(tiny, s -> Sowings.with(s, narrow)), QUESTION, 100);
    assertThat(planned.found().scenario().sowings())
        .allMatch(s -> s.sow().equals(Farms.day(5)) || s.sow().equals(Farms.day(6)));
  }

  // What cannot be.

  @Test
  void daysOutsideTheSeasonAreRefusedByName() {
    Scenario tiny = TinyFarm.make();
    Sowing first = tiny.sowings().get(0);
    Sowing never =
        new Sowing(
            "never",
            "cosmos",
            "lot",
            first.sow(),
            2,
            20,
            first.bedFrom(),
            first.bedBy(),
            null,
            null,
            null,
            new Sowing.Leeway(Farms.day(200), Farms.day(210), null));
    assertThatThrownBy(() -> plan(tiny.withSowings(List.of(first, never)), QUESTION, 10))
        .isInstanceOf(BadQuestionException.class)
        .hasMessageContaining("never (2027-09-17 to 2027-09-27)");
  }

  @Test
  void aGoalOutsideItsBoundsIsRefused() {
    assertThatThrownBy(() -> plan(TinyFarm.make(), new PlanningQuestion(1, 3, 3, 1, List.of()), 10))
        .isInstanceOf(BadQuestionException.class);
    assertThatThrownBy(
            () -> plan(TinyFarm.make(), new PlanningQuestion(0.9, 3, 3, 0.5, List.of()), 10))
        .isInstanceOf(BadQuestionException.class);
  }

  @Test
  void aSowingThatNoPlanCanMeetIsNamed() throws Exception {
    Scenario tiny = TinyFarm.make();
    Sowing first = tiny.sowings().get(0);
    Sowing wanting =
        new Sowing(
            "wanting",
            "cosmos",
            "lot",
            first.sow(),
            2,
            500,
            first.bedFrom(),
            first.bedBy(),
            null,
            null,
            null,
            Sowing.Leeway.NOT_SAID);
    Planned planned = plan(tiny.withSowings(List.of(first, wanting)), QUESTION, 40);
    assertThat(planned.missed()).containsExactly(1);
    assertThat(planned.alone().get(1).isOutOfReach()).isTrue();
    assertThat(planned.bound().chances().get(1)).isZero();
  }
}
