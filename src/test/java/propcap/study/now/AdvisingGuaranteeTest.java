package propcap.study.now;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.past.LogWalk;
import propcap.season.PretendedLog;
import propcap.season.PretendedLog.Counting;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Kind;

/** Advice to sow again, held against many springs that had no part in it, on farms made up. */
@Tag("guarantees")
class AdvisingGuaranteeTest {
  private static final int FARMS = Integer.getInteger("farms", 400);
  private static final int SPRINGS = 1000;
  private static final RunSettings ASKED = new RunSettings(1, 200, null, 1);
  private static final RunSettings FRESH = new RunSettings(2, SPRINGS, null, 1);

  private int told;
  private int within;
  private int noGain;
  private int lastDays;
  private int lastDaysShort;

  @Test
  void whatIsToldOfSowingAgainHoldsOnOtherSprings() throws Exception {
    for (int seed = 0; seed < FARMS; seed++) {
      Scenario scenario = robbed(RandomScenarios.from(seed), seed);
      SeasonNow now = AskingNow.ask(scenario, ASKED, 0.8, true, done -> {});
      for (Advice advice : now.advice()) {
        if (advice.kind() == Kind.SOW_AGAIN) {
          hold(scenario, advice);
        }
      }
    }
    Tried.row(
        "guarantees",
        "now: sowing again helps, its chance lies within its 95 % limits, and its last day reaches"
            + " the goal of 80 %, less 5 points",
        FARMS
            + " farms made up, a fifth into their season, all trays of half the sowings thrown out, asked with "
            + ASKED.seasons()
            + " springs, held against "
            + SPRINGS
            + " others",
        noGain
            + " of "
            + told
            + " without gain, "
            + within
            + " within, "
            + lastDaysShort
            + " of "
            + lastDays
            + " last days short");
    assertThat(told).isGreaterThan(FARMS / 20);
    assertThat(noGain).isLessThanOrEqualTo(told / 40 + 1);
    assertThat(within).isGreaterThanOrEqualTo((int) (0.85 * told));
    assertThat(lastDaysShort).isLessThanOrEqualTo(lastDays / 10 + 1);
  }

  /** A farm in mid-season, of which half of the sowings have just been thrown out. */
  private static Scenario robbed(Scenario scenario, int seed) {
    int today = scenario.season().days() / 5;
    SeasonPlan plan = new SeasonPlan(scenario);
    var luck = plan.luck(seed).reader().season(0);
    var log = PretendedLog.of(plan, luck, today, Counting.STANDS);
    SplittableRandom random = new SplittableRandom(seed);
    List<String> hit =
        scenario.sowings().stream().map(Sowing::id).filter(s -> random.nextBoolean()).toList();
    List<TrayPast> trays =
        LogWalk.walk(scenario, scenario.season().date(today), log).trays().stream()
            .map(t -> t.isGone() || !hit.contains(t.sowing()) ? t : t.thrownOut(today - 1))
            .toList();
    return scenario.withSoFar(new SoFar(scenario.season().date(today), trays, List.of()));
  }

  private void hold(Scenario scenario, Advice advice) throws InterruptedException {
    Sowing sowing = requireNonNull(advice.sowing());
    int s = scenario.sowings().indexOf(sowing);
    double without = chance(scenario, s, -1);
    double with = chance(again(scenario, sowing, advice, 0), s, scenario.sowings().size());
    SeasonNow.Chance chance = requireNonNull(advice.chance());
    told++;
    noGain += with > without ? 0 : 1;
    double error = 2 * Math.sqrt(with * (1 - with) / SPRINGS);
    within += with >= chance.low() - error && with <= chance.high() + error ? 1 : 0;
    if (advice.lastDay().isPresent()) {
      int days = advice.lastDay().getAsInt() - scenario.firstDay();
      lastDays++;
      double last = chance(again(scenario, sowing, advice, days), s, scenario.sowings().size());
      lastDaysShort += last < 0.75 ? 1 : 0;
    }
  }

  private static Scenario again(Scenario scenario, Sowing sowing, Advice advice, int days) {
    List<Sowing> more = new ArrayList<>(scenario.sowings());
    more.add(
        new Sowing(
            sowing.id() + " again",
            sowing.crop(),
            sowing.lot(),
            scenario.today().plusDays(days),
            advice.trays(),
            0,
            sowing.bedFrom(),
            sowing.bedBy(),
            sowing.bedUntil(),
            null,
            sowing.germinateIn(),
            Sowing.Leeway.NOT_SAID));
    return scenario.withSowings(more);
  }

  private static double chance(Scenario scenario, int sowing, int again)
      throws InterruptedException {
    int needed = scenario.sowings().get(sowing).plantsNeeded();
    try (Seasons seasons = new Seasons(List.of(scenario), FRESH)) {
      return seasons
          .run(List.of(0), 0, SPRINGS, (i, o) -> onTime(o, sowing, again), done -> {})
          .get(0)
          .stream()
          .mapToInt(plants -> plants >= needed ? 1 : 0)
          .average()
          .orElseThrow();
    }
  }

  private static Integer onTime(SeasonOutcome outcome, int sowing, int again) {
    return Arrays.stream(new int[] {sowing, again}).filter(s -> s >= 0).map(outcome::onTime).sum();
  }
}
