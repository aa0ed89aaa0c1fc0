package propcap.study.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.Money;
import propcap.study.plan.Choice.Setting;

/** What a found plan changes for nothing goes back, in whole or in part. */
class TakingBackTest {
  private static Sowing sowing(String id, int needed) {
    return new Sowing(
        id,
        "cosmos",
        "lot",
        Farms.day(5),
        10,
        needed,
        Farms.day(0),
        Farms.day(59),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  /** Nothing is left to luck: a tray is ten plants, and costs 2 EUR. */
  private static Scenario farm() {
    Farms farm = new Farms();
    farm.mats = 60;
    farm.house = 60;
    farm.yard = 60;
    farm.sowings.add(sowing("short of a tray", 110));
    farm.sowings.add(sowing("well as it is", 100));
    farm.sowings.add(sowing("with a tray too many", 90));
    Money money = new Money();
    money.tray = Money.amount("2");
    money.sellSurplus = false;
    return money.in(farm.make());
  }

  private static List<Setting> fewest(TrialPlan found, Budget budget) throws Exception {
    Scenario farm = farm();
    List<Choice> choices = Choice.of(farm, new PlanningQuestion(0.9, 14, 14, 2, List.of()));
    PlanWorth worth = new PlanWorth(farm);
    try (TrialSprings springs = new TrialSprings(Choice.widest(farm, choices), 1, 1, 60)) {
      Trials trials = new Trials(farm, choices, worth, springs);
      TrialPlan asItIs = TrialPlan.asItIs(farm, choices);
      PlanObjective objective = new PlanObjective(choices, worth, trials.of(asItIs));
      return new TakingBack(choices, trials, objective, asItIs, trials.of(found), budget, 0)
          .fewest()
          .trialPlan()
          .settings();
    }
  }

  private static TrialPlan found() {
    return new TrialPlan(
        List.of(new Setting(9, 20, 0), new Setting(2, 10, 0), new Setting(5, 9, 0)));
  }

  @Test
  void daysGoBackAndTraysAsFarAsTheyMay() throws Exception {
    // 20 trays are more than the 11 that hold 110 plants; a tray that is saved stays saved.
    assertThat(fewest(found(), Budget.ofTries(200)))
        .containsExactly(new Setting(5, 11, 0), new Setting(5, 10, 0), new Setting(5, 9, 0));
  }

  @Test
  void withoutTimeNothingGoesBack() throws Exception {
    assertThat(fewest(found(), tries -> 1)).isEqualTo(found().settings());
  }
}
