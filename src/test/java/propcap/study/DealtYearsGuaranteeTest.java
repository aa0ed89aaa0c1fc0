package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;
import propcap.season.SeasonOutcome;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/**
 * Whether what is told of a mean and of a chance holds where weather years are dealt evenly: 300
 * seeds, in whole blocks and not, the truth by force on other luck, ever so many springs of each
 * year. The twin takes the springs for drawn at random.
 */
@Tag("guarantees")
class DealtYearsGuaranteeTest {
  private static final int SEEDS = 300;
  private static final int BY_FORCE = 40_000;
  private static final long OTHER_LUCK = 4711;

  /** What came of one number: how often its limits held, and how wide they were. */
  private static final class Tally {
    int told;
    int held;
    double width;
    double widthAtRandom;

    void add(MeanLimits limits, MeanLimits atRandom, double truth) {
      told++;
      held += limits.low() <= truth && truth <= limits.high() ? 1 : 0;
      width += limits.high() - limits.low();
      widthAtRandom += atRandom.high() - atRandom.low();
    }
  }

  private static List<ToDoubleFunction<SeasonOutcome>> numbers(Scenario scenario) {
    List<ToDoubleFunction<SeasonOutcome>> numbers = new ArrayList<>();
    numbers.add(SeasonTotals::onTime);
    IntStream.range(0, scenario.sowings().size())
        .forEach(s -> numbers.add(o -> SeasonTotals.isMet(scenario, o, s) ? 1 : 0));
    return numbers;
  }

  /** By number, its value in each spring. */
  private static double[][] run(Scenario scenario, long seed, int seasons)
      throws InterruptedException {
    List<ToDoubleFunction<SeasonOutcome>> numbers = numbers(scenario);
    try (Seasons runs = new Seasons(List.of(scenario), new RunSettings(seed, 1, null, 2))) {
      List<double[]> rows =
          runs.run(
                  List.of(0),
                  0,
                  seasons,
                  (s, o) -> numbers.stream().mapToDouble(n -> n.applyAsDouble(o)).toArray(),
                  done -> {})
              .get(0);
      return IntStream.range(0, numbers.size())
          .mapToObj(m -> Samples.column(rows, m))
          .toArray(double[][]::new);
    }
  }

  private record Tallies(Tally mean, Tally chances, Tally small) {
    Tallies() {
      this(new Tally(), new Tally(), new Tally());
    }
  }

  private static void tally(Scenario scenario, int seasons, int seeds, Tallies tallies)
      throws InterruptedException {
    int block = scenario.weather().size();
    double[][] forced = run(scenario, OTHER_LUCK, RunSettings.whole(BY_FORCE, block));
    for (long seed = 1; seed <= seeds; seed++) {
      Strata strata = Strata.of(scenario, seed, seasons);
      Strata atRandom = Strata.one(seasons);
      double[][] seen = run(scenario, seed, seasons);
      tallies.mean.add(
          MeanLimits.ofUnlike(seen[0], strata, .95),
          MeanLimits.ofUnlike(seen[0], atRandom, .95),
          Samples.mean(forced[0]));
      for (int m = 1; m < forced.length; m++) {
        double truth = Samples.mean(forced[m]);
        double rarer = Math.min(truth, 1 - truth);
        // What force saw in fewer than 40 springs it does not know well enough itself.
        if (rarer * BY_FORCE >= 40) {
          (rarer < .02 ? tallies.small : tallies.chances)
              .add(
                  MeanLimits.ofChance(seen[m], strata),
                  MeanLimits.ofChance(seen[m], atRandom),
                  truth);
        }
      }
    }
  }

  private static void tell(String what, String on, int seasons, Tally tally) {
    double held = tally.held / (double) tally.told;
    Tried.row(
        "guarantees",
        what,
        on + ", " + SEEDS + " seeds of " + seasons + " springs",
        String.format(
            Locale.ROOT,
            "%.1f %% of %,d hold; %.2f times as wide as of springs drawn at random",
            100 * held,
            tally.told,
            tally.width / tally.widthAtRandom));
    assertThat(held).isBetween(.93 - 3 * error(tally), .97 + 3 * error(tally));
  }

  /** Limits of one seed hang together, so that a seed counts as one. */
  private static double error(Tally tally) {
    return Math.sqrt(.95 * .05 / Math.min(SEEDS, tally.told));
  }

  private static void check(String on, List<Scenario> farms, int seasons)
      throws InterruptedException {
    Tallies tallies = new Tallies();
    for (Scenario farm : farms) {
      tally(farm, seasons, SEEDS / farms.size(), tallies);
    }
    tell("the mean of all plants on time", on, seasons, tallies.mean);
    tell("the chance of a sowing", on, seasons, tallies.chances);
    if (tallies.small.told > 0) {
      tell("the chance of a sowing, below 2 % or above 98 %", on, seasons, tallies.small);
    }
  }

  private static Scenario example() throws Exception {
    return ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
  }

  @Test
  void inWholeBlocksOfTheExample() throws Exception {
    check("the example", List.of(example()), 120);
    check("the example", List.of(example()), 1008);
  }

  @Test
  void inBlocksOfTheExampleThatAreNotWhole() throws Exception {
    check("the example", List.of(example()), 100);
  }

  @Test
  void ofFarmsMadeUp() throws Exception {
    List<Scenario> farms =
        IntStream.range(301, 331).mapToObj(f -> RandomScenarios.from(f)).toList();
    check("30 farms made up", farms, 120);
    check("30 farms made up", farms, 101);
  }
}
