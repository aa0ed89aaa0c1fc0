package propcap.study.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.Tried;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Variants;
import propcap.farm.Variants.Variant;
import propcap.files.scenario.ScenarioReader;
import propcap.study.ByForce;
import propcap.study.Money;
import propcap.study.RunSettings;
import propcap.study.compare.Comparison;

/**
 * What {@code sweep} promises: with 95 % confidence the scenario with the highest margin in truth
 * is the best told or one that is not told from it. Truth is seen on a hundred times the springs of
 * an answer, of other luck. The twin leaves out those that are not told from the best.
 */
@Tag("guarantees")
class SweepingGuaranteeTest {
  private static final int SEEDS = 40;
  private static final int SPRINGS = 48;
  private static final int FORCED = 10_000;

  @ParameterizedTest
  @ValueSource(longs = {12, 44, 85})
  void theBestInTruthIsAmongThoseNamed(long farmSeed) throws Exception {
    Scenario farm = new Money().in(RandomScenarios.from(farmSeed));
    check(
        "random farm " + farmSeed,
        farm,
        Stream.of(1.0, 0.75, 0.9, 1.1, 1.25, 1.5).map(by -> sized(farm, by)).toList());
  }

  /** A space more or fewer of one place: all near each other. */
  @Test
  void ofScenariosThatHardlyDifferTheBestIsAmongThoseNamed() throws Exception {
    Scenario example =
        new Money()
            .in(ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml")));
    String house = example.places().get(example.places().size() - 2).name();
    check(
        "the example",
        example,
        IntStream.of(0, -2, -1, 1, 2, 3).mapToObj(more -> more(example, house, more)).toList());
  }

  private static Scenario more(Scenario farm, String place, int spaces) {
    return farm.withPlaces(
            farm.places().stream()
                .map(p -> p.name().equals(place) ? p.withSpaces(p.spaces() + spaces) : p)
                .toList())
        .named(farm.name() + " " + spaces);
  }

  private static void check(String what, Scenario farm, List<Scenario> all) throws Exception {
    ByForce force = new ByForce(farm, FORCED);
    List<Double> truth = new ArrayList<>();
    for (Scenario scenario : all) {
      truth.add(force.difference(farm, scenario, Comparison.Kind.MARGIN, ""));
    }
    double most = truth.stream().mapToDouble(t -> t).max().orElseThrow();
    List<Integer> best =
        IntStream.range(0, all.size()).filter(i -> truth.get(i) >= most - 1e-9).boxed().toList();
    int missed = 0;
    int missedByTheFirst = 0;
    int named = 0;
    for (int seed = 1; seed <= SEEDS; seed++) {
      Variants variants =
          new Variants(
              List.of(), all.stream().map(s -> new Variant(s.name(), s, List.of())).toList());
      Sweep sweep =
          new Sweeping(
                  variants, new RunSettings(seed, SPRINGS, null, 1), "", key -> Optional.empty())
              .sweep((key, text) -> {}, share -> {});
      int first = sweep.ranking().get(0);
      boolean isFirst = best.contains(first);
      missedByTheFirst += isFirst ? 0 : 1;
      missed += isFirst || best.stream().anyMatch(sweep.notTold()::contains) ? 0 : 1;
      named += 1 + sweep.notTold().size();
    }
    Tried.row(
        "guarantees",
        "`sweep`: the best in truth is the best told or one that is not told from it",
        String.format(
            Locale.ENGLISH,
            "%s and %d like it, %d seeds of %d springs, truth on %,d",
            what,
            all.size() - 1,
            SEEDS,
            SPRINGS,
            FORCED),
        String.format(
            Locale.ENGLISH,
            "%d of %d missed it; the best told alone missed it %d times; %.1f named on the average",
            missed,
            SEEDS,
            missedByTheFirst,
            named / (double) SEEDS));
    assertThat(missed).isLessThanOrEqualTo(ByForce.mostMissed(SEEDS));
  }

  private static Scenario sized(Scenario farm, double by) {
    return farm.withPlaces(
            farm.places().stream()
                .map(p -> p.isOpen() ? p.withSpaces((int) Math.ceil(p.spaces() * by)) : p)
                .toList())
        .named(farm.name() + " x " + by);
  }
}
