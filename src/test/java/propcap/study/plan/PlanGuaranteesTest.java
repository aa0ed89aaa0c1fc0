package propcap.study.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.farm.Place;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.scenario.ScenarioReader;
import propcap.season.SeasonOutcome;
import propcap.study.PricedFarms;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/** What a better plan promises, on many farms: {@code mvn -B -Pguarantees test}. */
@Tag("guarantees")
class PlanGuaranteesTest {
  private static final int FARMS = 60;
  private static final int OTHER_SPRINGS = 1500;
  private static final long OTHER_LUCK = 4711;

  /** A farm, and what was planned on it. */
  private record Case(Scenario farm, Planned planned) {}

  private static final List<Case> CASES = new ArrayList<>();
  private static Scenario example;

  @BeforeAll
  static void plan() throws Exception {
    example = ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
    for (long seed = 1; seed <= FARMS; seed++) {
      Scenario farm = seed % 4 == 0 ? partOfTheExample(seed) : RandomScenarios.from(seed);
      Scenario priced = seed % 2 == 0 ? PricedFarms.priced(farm, new SplittableRandom(seed)) : farm;
      CASES.add(
          new Case(
              priced,
              Planning.plan(
                  priced,
                  new PlanningQuestion(0.9, 14, 14, 2, List.of()),
                  new RunSettings(seed, 400, null, 1),
                  Budget.ofTries(150),
                  share -> {})));
    }
  }

  /**
   * Three sowings of the example, each a quarter as large, and room that is more or less scarce.
   */
  private static Scenario partOfTheExample(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Sowing> sowings = new ArrayList<>(example.sowings());
    while (sowings.size() > 3) {
      sowings.remove(random.nextInt(sowings.size()));
    }
    double room = random.nextDouble(0.03, 0.15);
    List<Place> places =
        example.places().stream()
            .map(p -> p.withSpaces((int) Math.max(2, room * p.spaces())))
            .toList();
    return example
        .withPlaces(places)
        .withSowings(
            sowings.stream()
                .map(
                    s ->
                        new Sowing(
                            s.id(),
                            s.crop(),
                            s.lot(),
                            s.sow(),
                            s.trays() / 4,
                            s.plantsNeeded() / 4,
                            s.bedFrom(),
                            s.bedBy(),
                            s.bedUntil(),
                            s.resowUntil(),
                            null,
                            Sowing.Leeway.NOT_SAID))
                .toList());
  }

  @Test
  void noPlanPassesTheBound() {
    long plans = 10;
    int springs = 20;
    long above =
        LongStream.rangeClosed(1, 300)
            .map(
                seed ->
                    PlansByForce.above(
                        PricedFarms.from(seed),
                        new SplittableRandom(seed),
                        (int) plans,
                        springs,
                        0))
            .sum();
    assertThat(above).isZero();
    long found =
        CASES.stream()
            .filter(c -> c.farm.prices() != null)
            .filter(c -> c.planned.bound().toBest().high() < 0)
            .count();
    Tried.row(
        "guarantees",
        "plan: no plan that sows all its trays brings more",
        "300 farms made up, 10 plans each at random, in each of 20 springs and in their mean; and the"
            + " plans found on "
            + CASES.size() / 2
            + " farms",
        above + " and " + found + " above the bound");
    assertThat(found).isZero();
  }

  @Test
  void noSowingIsGivenUpUnsaid() throws Exception {
    int sowings = 0;
    int worse = 0;
    double most = 0;
    for (Case c : CASES) {
      if (!c.planned.isConfirmed()) {
        continue;
      }
      List<Scenario> both = List.of(c.farm, c.planned.kept().scenario());
      List<List<SeasonOutcome>> outcomes = outcomes(both);
      for (int s = 0; s < c.farm.sowings().size(); s++) {
        int needed = c.farm.sowings().get(s).plantsNeeded();
        if (needed == 0) {
          // Whatever becomes of it, it has the plants that it needs.
          continue;
        }
        sowings++;
        double goal = c.planned.goals().get(s);
        Difference met = difference(outcomes, s, needed, true);
        Difference supplied = difference(outcomes, s, needed, false);
        double now = chance(outcomes.get(1), s, needed);
        double fewer = Math.min(-met.mean(), goal - now);
        double falls = met.low() > 0 ? fewer : Math.max(fewer, now < goal ? -supplied.mean() : 0);
        most = Math.max(most, falls);
        worse += falls > 0.05 ? 1 : 0;
      }
    }
    Tried.row(
        "guarantees",
        "plan: no sowing is given up that may not be",
        sowings
            + " sowings of the plans confirmed on "
            + FARMS
            + " farms, each on "
            + OTHER_SPRINGS
            + " other springs",
        String.format(
            "%d fell by more than 5 points below their goal and what they were; at most %.1f",
            worse, 100 * most));
    assertThat(worse).isLessThanOrEqualTo(sowings / 50);
  }

  private static List<List<SeasonOutcome>> outcomes(List<Scenario> plans)
      throws InterruptedException {
    try (Seasons seasons = new Seasons(plans, new RunSettings(OTHER_LUCK, 1, null, 1))) {
      return seasons.run(
          IntStream.range(0, plans.size()).boxed().toList(),
          0,
          OTHER_SPRINGS,
          (s, o) -> o,
          done -> {});
    }
  }

  private static double chance(List<SeasonOutcome> seasons, int s, int needed) {
    return Samples.mean(seasons, o -> o.onTime(s) >= needed ? 1 : 0);
  }

  private static Difference difference(
      List<List<SeasonOutcome>> outcomes, int s, int needed, boolean met) {
    double[][] each =
        outcomes.stream()
            .map(
                seasons ->
                    seasons.stream()
                        .mapToDouble(
                            o ->
                                met
                                    ? (o.onTime(s) >= needed ? 1 : 0)
                                    : Math.min(1, o.onTime(s) / (double) needed))
                        .toArray())
            .toArray(double[][]::new);
    return Paired.difference(each[0], each[1], Strata.one(each[0].length));
  }

  /** Each day and place of each sowing, in all its trays, with endless room, by force. */
  @Test
  void aloneNoDayIsBetterByMoreThanTheError() throws Exception {
    int sowings = 0;
    int better = 0;
    int untrue = 0;
    double most = 0;
    for (Case c : CASES) {
      List<Choice> choices = Choice.of(c.farm, c.planned.question());
      double[] best = bestByForce(c.farm, choices);
      for (int s = 0; s < best.length; s++) {
        Planned.AloneInHouse alone = c.planned.alone().get(s);
        sowings++;
        most = Math.max(most, best[s] - alone.chance());
        better += best[s] - alone.chance() > 0.07 ? 1 : 0;
        boolean isTold = alone.isOutOfReach() && alone.chance() < c.planned.goals().get(s);
        untrue += isTold && best[s] >= c.planned.goals().get(s) ? 1 : 0;
      }
    }
    Tried.row(
        "guarantees",
        "plan: not even alone would a sowing reach its goal; its best alone",
        sowings
            + " sowings of "
            + FARMS
            + " farms, each day and place in all trays by force, 300 springs",
        String.format(
            "untrue of %d; a better day than the one told by more than 7 points for %d, at most %.1f",
            untrue, better, 100 * most));
    assertThat(untrue).isZero();
    assertThat(better).isLessThanOrEqualTo(sowings / 50);
  }

  private static double[] bestByForce(Scenario farm, List<Choice> choices) throws Exception {
    double[] best = new double[choices.size()];
    Scenario endless = farm.withEndlessRoom().withEndlessHands();
    int days = choices.stream().mapToInt(c -> c.days().size()).max().orElseThrow();
    int places = choices.stream().mapToInt(c -> c.places().size()).max().orElseThrow();
    try (TrialSprings springs =
        new TrialSprings(Choice.widest(farm, choices), OTHER_LUCK, 1, 300)) {
      Trials trials = new Trials(endless, choices, new PlanWorth(farm), springs);
      for (int d = 0; d < days; d++) {
        for (int p = 0; p < places; p++) {
          int day = d;
          int place = p;
          Trial tried =
              trials.of(
                  new TrialPlan(
                      choices.stream()
                          .map(
                              c ->
                                  new Choice.Setting(
                                      c.days().get(Math.min(day, c.days().size() - 1)),
                                      c.mostTrays(),
                                      Math.min(place, c.places().size() - 1)))
                          .toList()));
          for (int s = 0; s < best.length; s++) {
            best[s] = Math.max(best[s], tried.chance(s));
          }
        }
      }
    }
    return best;
  }

  @Test
  void whatIsChangedDoesSomething() throws Exception {
    int found = 0;
    int kept = 0;
    int nothing = 0;
    for (Case c : CASES) {
      if (c.planned.isConfirmed()) {
        found += c.planned.search().changed();
        kept += c.planned.changes().size();
        nothing +=
            (int)
                c.planned.effects().stream()
                    .filter(e -> e.worth().low() <= 0 && e.own().low() <= 0 && e.other() == null)
                    .count();
      }
    }
    Tried.row(
        "guarantees",
        "plan: what brings nothing is taken back",
        found + " sowings changed by the search on " + FARMS + " farms",
        kept
            + " are left, of which "
            + nothing
            + " by themselves did nothing beyond doubt on 200 springs");
    assertThat(nothing).isLessThanOrEqualTo(kept / 5);
  }
}
