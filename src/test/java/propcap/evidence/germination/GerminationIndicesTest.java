package propcap.evidence.germination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.assertj.core.data.Offset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.CountedTray;

/**
 * The indices of seed laboratories, against the printed results of the R package germinationmetrics
 * (ICAR-NBPGR, version 0.1.10.9000, GPL-2 or 3). Its rows in which a count is exactly half of the
 * seedlings are left out: there it draws its line over two intervals.
 */
class GerminationIndicesTest {
  private static final Offset<Double> EXACT = within(1e-10);

  private static final double RANGE_OF_16 = 0.039320187;

  /** 50 seeds; 4, 17, 10, 7, 1, 0 and 1 seedlings on days 5 to 11. */
  private static final CountedTray EXAMPLE =
      Trays.daily(20, "a", 50, 14, 0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1);

  private static double given(@Nullable Double index) {
    return Objects.requireNonNull(index);
  }

  @Test
  void theWorkedExampleHasItsPrintedResults() {
    GerminationIndices indices = GerminationIndices.of(EXAMPLE);
    assertThat(indices.percent()).isCloseTo(80, EXACT);
    assertThat(given(indices.halfByCoolbear())).isCloseTo(5.97058823529412, EXACT);
    assertThat(given(indices.halfByFarooq())).isCloseTo(5.94117647058824, EXACT);
    assertThat(given(indices.meanDays())).isCloseTo(6.7, EXACT);
    assertThat(given(indices.variance())).isCloseTo(1.44615384615385, EXACT);
    assertThat(given(indices.deviation())).isCloseTo(0.179486771488981, EXACT);
    assertThat(given(indices.meanRate())).isCloseTo(0.149253731343284, EXACT);
    assertThat(given(indices.velocity())).isCloseTo(14.9253731343284, EXACT);
    assertThat(indices.speed()).isCloseTo(6.13892496392496, EXACT);
    assertThat(indices.timson()).isCloseTo(664, EXACT);
    assertThat(given(indices.labouriau())).isCloseTo(8.3, EXACT);
    assertThat(indices.khanUngar()).isCloseTo(47.4285714285714, EXACT);
    assertThat(given(indices.uniformity())).isCloseTo(0.709219858156028, EXACT);
    assertThat(given(indices.synchrony())).isCloseTo(0.266666666666667, EXACT);
    assertThat(given(indices.uncertainty())).isCloseTo(2.062987252274047, EXACT);
  }

  /** The data set gcdata; new seedlings on days 4 to 13, no others. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "G1 1, 0 4 17 10 7 1 0 1 0 0, 50, 80.00000, 5.970588, 5.941176, 6.700000, 1.446154, 6.138925,"
        + " 0.2666667, 2.062987",
    "G2 1, 1 3 15 13 6 2 1 0 1 0, 51, 82.35294, 6.192308, 6.153846, 6.857143, 2.027875, 6.362698,"
        + " 0.2346109, 2.321514",
    "G5 1, 0 5 20 12 8 1 0 0 1 1, 50, 96.00000, 5.975000, 5.950000, 6.812500, 2.368351, 7.318987,"
        + " 0.2606383, 2.146051",
    "G1 2, 0 3 21 11 7 1 1 1 1 0, 49, 93.87755, 5.976190, 5.952381, 6.869565, 2.071498, 6.931782,"
        + " 0.2792271, 2.160545"
  })
  void theTrialOfFiveGenotypesHasItsPrintedResults(
      String row,
      String fresh,
      int seeds,
      double percent,
      double coolbear,
      double farooq,
      double mean,
      double variance,
      double speed,
      double synchrony,
      double uncertainty) {
    int[] days = new int[13];
    int[] read = Arrays.stream(fresh.split(" ", -1)).mapToInt(Integer::parseInt).toArray();
    System.arraycopy(read, 0, days, 3, read.length);
    GerminationIndices indices = GerminationIndices.of(Trays.daily(20, row, seeds, 14, days));
    Offset<Double> printed = within(1e-6);
    assertThat(indices.percent()).isCloseTo(percent, within(1e-5));
    assertThat(given(indices.halfByCoolbear())).isCloseTo(coolbear, printed);
    assertThat(given(indices.halfByFarooq())).isCloseTo(farooq, printed);
    assertThat(given(indices.meanDays())).isCloseTo(mean, printed);
    assertThat(given(indices.variance())).isCloseTo(variance, printed);
    assertThat(indices.speed()).isCloseTo(speed, printed);
    assertThat(given(indices.synchrony())).isCloseTo(synchrony, printed);
    assertThat(given(indices.uncertainty())).isCloseTo(uncertainty, printed);
  }

  /** Computed apart from the counts: 10.6547, 3.7254 and 2.4436 days. */
  @Test
  void barleyHasTheMeanTimesFoundByAnotherProgram() {
    assertThat(given(GerminationIndices.of(Barley.at3()).meanDays()))
        .isCloseTo(10.6547, within(5e-5));
    assertThat(given(GerminationIndices.of(Barley.at15()).meanDays()))
        .isCloseTo(3.7254, within(5e-5));
    assertThat(given(GerminationIndices.of(Barley.at25()).meanDays()))
        .isCloseTo(2.4436, within(5e-5));
  }

  /** A tie: 20 of 40 by day 5, so half of them by day 5 and the 20.5th a little after. */
  @Test
  void aCountThatIsJustHalfWasHalfThen() {
    GerminationIndices indices =
        GerminationIndices.of(Trays.daily(20, "a", 50, 8, 0, 0, 0, 5, 15, 10, 10));
    assertThat(given(indices.halfByFarooq())).isCloseTo(5, EXACT);
    assertThat(given(indices.halfByCoolbear())).isCloseTo(5.05, EXACT);
  }

  @Test
  void whatTooFewSeedlingsLeaveOpenIsLeftOpen() {
    GerminationIndices none = GerminationIndices.of(Trays.daily(20, "a", 50, 8));
    assertThat(none.percent()).isZero();
    assertThat(none.meanDays()).isNull();
    assertThat(none.synchrony()).isNull();
    GerminationIndices one = GerminationIndices.of(Trays.daily(20, "a", 50, 8, 0, 0, 1));
    assertThat(given(one.meanDays())).isEqualTo(3);
    assertThat(one.variance()).isNull();
    assertThat(one.uniformity()).isNull();
    GerminationIndices together = GerminationIndices.of(Trays.daily(20, "a", 50, 8, 0, 0, 9));
    assertThat(given(together.synchrony())).isEqualTo(1);
    assertThat(given(together.uncertainty())).isZero();
    assertThat(together.uniformity()).isNull();
  }

  /** 7 CFR 201.55(a): at an average of 90 % (or 11 %) ranges of 12 and 9 points are allowed. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "84 90 90 96, WITHIN, 12",
    "83 90 91 96, BEYOND, 12",
    "17 11 11 5, WITHIN, 12",
    "18 11 10 5, BEYOND, 12",
    "86 94, WITHIN, 9",
    "85 95, BEYOND, 9",
    "97 99 100 100, WITHIN, 5",
    "93 99 100 100, BEYOND, 6",
    "62 71 71 80, WITHIN, 18",
    "61 71 72 80, BEYOND, 18",
    "50 60 60 68, WITHIN, 18",
    "50 60 60 69, TABLE_ENDS, 18",
    "64 78, WITHIN, 14"
  })
  void replicatesAreJudgedByTheTableOfTheFederalRule(
      String emerged, ReplicateTolerance.Verdict verdict, int allowed) {
    ReplicateTolerance tolerance = ReplicateTolerance.of(replicates(emerged, 100));
    assertThat(tolerance.verdict()).isEqualTo(verdict);
    assertThat(tolerance.allowed()).isEqualTo(allowed);
  }

  @Test
  void otherSizesThanTheRuleIsForAreOnlyComparedWithChance() {
    ReplicateTolerance fifties = ReplicateTolerance.of(replicates("40 46 48", 50));
    assertThat(fifties.verdict()).isEqualTo(ReplicateTolerance.Verdict.NO_RULE);
    // 16 points apart; computed apart, in Python, over all outcomes of three Binomial(50, 134/150).
    assertThat(given(fifties.chanceOfRange())).isCloseTo(RANGE_OF_16, within(1e-6));
    assertThat(ReplicateTolerance.of(replicates("40", 50)).chanceOfRange()).isNull();
    assertThat(ReplicateTolerance.of(replicates("0 0", 50)).chanceOfRange()).isNull();
    // The table has no row for two replicates above 97 %.
    assertThat(ReplicateTolerance.of(replicates("99 99", 100)).verdict())
        .isEqualTo(ReplicateTolerance.Verdict.NO_RULE);
  }

  /**
   * The chance that four replicates of 100 lie further apart than 7 CFR 201.55(a) allows, were they
   * alike; computed apart from the table, in Python: such tables are drawn up for about 2.5 %
   * (Miles 1963), by an approximation that is somewhat wide.
   */
  @ParameterizedTest(name = "{0} % germinate: {1} points, {2}")
  @CsvSource({
    "99, 5, 0.0017",
    "95, 9, 0.0116",
    "90, 12, 0.0169",
    "85, 14, 0.0210",
    "80, 16, 0.0182",
    "75, 17, 0.0217"
  })
  void theChanceOfARangeIsThatOfThePublishedTolerances(int percent, int allowed, double chance) {
    String alike = String.join(" ", Collections.nCopies(4, Integer.toString(percent)));
    List<CountedTray> trays = replicates(alike, 100);
    assertThat(ReplicateRange.chanceOf(trays, allowed + 1)).isCloseTo(chance, within(6e-5));
    // The twin: a point less would be passed in more than 2.5 % of tests, but at 99 %.
    assertThat(ReplicateRange.chanceOf(trays, allowed - 1)).isGreaterThan(0.025);
  }

  /** 20 of 20 beside 60 of 80: percents are compared, and the pooled share is 80 of 100. */
  @Test
  void theChanceOfARangeTakesTraysOfAnySize() {
    List<CountedTray> trays = new ArrayList<>(replicates("20", 20));
    trays.addAll(replicates("60", 80));
    double chance = 0;
    for (int a = 0; a <= 20; a++) {
      for (int b = 0; b <= 80; b++) {
        if (Math.abs(4 * a - b) >= 20) {
          chance +=
              new BinomialDistribution(null, 20, 0.8).probability(a)
                  * new BinomialDistribution(null, 80, 0.8).probability(b);
        }
      }
    }
    assertThat(given(ReplicateTolerance.of(trays).chanceOfRange())).isCloseTo(chance, within(1e-9));
  }

  private static List<CountedTray> replicates(String emerged, int seeds) {
    return Arrays.stream(emerged.split(" ", -1))
        .map(n -> Trays.total(20, n, seeds, Integer.parseInt(n)))
        .toList();
  }
}
