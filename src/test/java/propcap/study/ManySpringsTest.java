package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Scenario;
import propcap.files.Nursery;
import propcap.files.scenario.ScenarioReader;
import propcap.season.SeasonOutcome;
import propcap.study.compare.Comparison;
import propcap.study.compare.Measures;
import propcap.study.forecast.Summary;
import propcap.study.plan.Budget;
import propcap.study.plan.Planning;
import propcap.study.plan.PlanningQuestion;

/** A hundred thousand springs of the demonstration fit in the memory that the program asks for. */
class ManySpringsTest {
  private static final double MOST_BYTES_A_SPRING = 0.7 * 512 * (1 << 20) / 100_000;
  private static final RunSettings FEW = new RunSettings(1, 48, null, 1);

  @TempDir Path folder;

  private static Scenario demonstration;
  private static List<SeasonOutcome> seasons;

  @BeforeAll
  static void runAFew() throws Exception {
    demonstration = ScenarioReader.read(Path.of("scenarios/spring.yaml"));
    try (Seasons few = new Seasons(List.of(demonstration), new RunSettings(1, 1, null, 1))) {
      seasons = few.run(List.of(0), 0, FEW.seasons(), (s, o) -> o, done -> {}).get(0);
    }
  }

  @Test
  void aForecastAndTheTwoOfAPlanFit() {
    Summary summary = new Summary(demonstration, FEW);
    seasons.forEach(summary::add);
    assertThat(2 * summary.bytesASeason() + 16 + 2L * demonstration.sowings().size())
        .isBetween(1000L, (long) MOST_BYTES_A_SPRING);
  }

  /** Whatever the number of springs so far, so that none are refused who knows when. */
  @Test
  void whatASpringTakesIsToldFromTheFirstOnesOn() {
    Summary summary = new Summary(demonstration, FEW);
    seasons.forEach(summary::add);
    long first = summary.bytesASeason();
    for (int i = 0; i < 40; i++) {
      seasons.forEach(summary::add);
    }
    assertThat(summary.bytesASeason()).isEqualTo(first);
  }

  @Test
  void theMeasuresOfTenthsAreThoseThatAreTold() {
    EnumSet<Comparison.Kind> told =
        EnumSet.of(Comparison.Kind.ON_TIME, Comparison.Kind.WAITING, Comparison.Kind.MARGIN);
    Measures some = new Measures(List.of(demonstration), told);
    Measures all = new Measures(List.of(demonstration));
    SeasonOutcome season = seasons.get(0);
    assertThat(some.all()).hasSizeLessThan(all.all().size());
    double[] numbers = some.of(0, season);
    IntStream.range(0, numbers.length)
        .forEach(
            i -> {
              Measures.Measure m = some.all().get(i);
              assertThat(numbers[i])
                  .isEqualTo(all.of(0, season)[all.indexOf(m.kind(), m.subject())]);
            });
  }

  @Test
  void whatDoesNotFitIsRefusedBeforeTheSearch() throws Exception {
    assumeTrue(Runtime.getRuntime().maxMemory() < 15L << 30, "more memory than a million take");
    Scenario large = ScenarioReader.read(Nursery.write(folder, 500, 500, 10));
    assertThatThrownBy(
            () ->
                Planning.plan(
                    large,
                    new PlanningQuestion(0.9, 0, 0, 1, List.of()),
                    new RunSettings(1, 1_000_000, null, 1),
                    Budget.ofTries(1),
                    share -> {
                      throw new AssertionError("searched first");
                    }))
        .isInstanceOf(TooLargeException.class)
        .hasMessageContaining("1,000,000 springs take some");
  }
}
