package propcap.evidence.germination;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.evidence.Estimate;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.evidence.germination.GerminationFit.Lot;
import propcap.farm.CountedTray;

/** A test that ended while seedlings were still coming up: its doubt is written, not its counts. */
class EarlyEndTest {
  /**
   * Lotus ornithopodioides, green seeds: data set lotusOr of the R package drcte (GPL), after
   * Gresta and others (2011), Crop Science 51, printed in Onofri's tutorial on seed germination
   * (project stats4biology). 4 dishes of 25 seeds, looked at daily up to day 15; the last day still
   * found some in each.
   */
  static List<CountedTray> lotus() {
    int[][] fresh = {
      {0, 0, 0, 0, 0, 1, 2, 1, 1, 1, 3, 1, 1, 4, 2},
      {0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 1, 2, 3, 1, 1},
      {0, 0, 0, 0, 0, 3, 4, 4, 3, 1, 2, 1, 1, 0, 1},
      {0, 0, 0, 0, 0, 1, 3, 1, 2, 1, 2, 1, 3, 1, 1}
    };
    List<CountedTray> dishes = new ArrayList<>();
    for (int[] dish : fresh) {
      dishes.add(Trays.daily(20, "dish " + (dishes.size() + 1), 25, 15, dish));
    }
    return dishes;
  }

  /**
   * Verbascum blattaria, 100 seeds (see {@link CurveFittingTest}), had the counting ended there.
   */
  private static List<CountedTray> mullein(int lastDay) {
    int[] all = {0, 0, 9, 30, 34, 5, 2, 1, 3};
    return List.of(Trays.daily(20, "all", 100, lastDay, java.util.Arrays.copyOf(all, lastDay)));
  }

  /** 200 seeds of which 85 % germinate, half of those by day 5; the counting ends on that day. */
  static List<CountedTray> halfWay(int seed) {
    return new Trays.Law(0.85, 0, 5, 0.25, 1, 5).draw(new Well19937c(seed), 20, 1, 200);
  }

  private static Lot only(List<CountedTray> trays) {
    return GerminationFitting.fit(trays, Map.of()).lots().get(0);
  }

  /** What is written is as unsure as what was told, and never surer than what was seen. */
  private static void assertDoubtIsWritten(List<CountedTray> trays) {
    Lot lot = only(trays);
    AtTemperature at = lot.temperatures().get(0);
    CropEntry entry = CropEntry.of(lot, null);
    assertThat(entry.tested().rate()).isLessThan(1);
    assertThat(entry.tested().seeds()).isLessThanOrEqualTo(at.seeds() + 1);
    BetaDistribution written =
        new BetaDistribution(
            entry.tested().rate() * entry.tested().seeds(),
            (1 - entry.tested().rate()) * entry.tested().seeds());
    Estimate told = at.germinating().share();
    double tolerance = 0.02 + 0.1 * (told.high() - told.low());
    assertThat(written.inverseCumulativeProbability(0.025))
        .isCloseTo(told.low(), within(tolerance));
    assertThat(written.inverseCumulativeProbability(0.975))
        .isCloseTo(told.high(), within(tolerance));
  }

  @Test
  void lotusStillComingUpIsWrittenWithItsDoubt() {
    assertDoubtIsWritten(lotus());
    Estimate told = only(lotus()).temperatures().get(0).germinating().share();
    // 67 of 100 were up; no upper limit was seen.
    assertThat(told.low()).isBetween(0.55, 0.68);
    assertThat(told.high()).isEqualTo(1);
    assertThat(told.value()).isLessThan(1);
  }

  /**
   * Brown seeds of the same data set: 87 of 100 were up and the likeliest curve has all of them
   * come. As few trays differ, the counts alone leave the upper limit nearly as open.
   */
  @Test
  void whatTheLikeliestCurveAddsIsNotTakenForSeen() {
    int[][] fresh = {
      {0, 0, 0, 4, 1, 2, 1, 1, 0, 1, 2, 2, 3, 2, 1},
      {0, 0, 0, 4, 2, 2, 1, 0, 1, 1, 3, 4, 3, 4, 0},
      {0, 0, 0, 4, 0, 4, 1, 2, 1, 1, 3, 3, 2, 2, 0},
      {0, 0, 0, 4, 3, 2, 2, 3, 1, 1, 1, 1, 1, 0, 0}
    };
    List<CountedTray> dishes = new ArrayList<>();
    for (int[] dish : fresh) {
      dishes.add(Trays.daily(20, "dish " + (dishes.size() + 1), 25, 15, dish));
    }
    GerminatingShare germinating = only(dishes).temperatures().get(0).germinating();
    assertThat(germinating.endedEarly()).isTrue();
    assertThat(germinating.share().value()).isLessThan(0.97);
    assertDoubtIsWritten(dishes);
  }

  @ParameterizedTest(name = "ended on day {0}")
  @ValueSource(ints = {5, 6, 9})
  void mulleinThatWasCountedForAShorterTimeIsWrittenWithItsDoubt(int lastDay) {
    assertDoubtIsWritten(mullein(lastDay));
  }

  /** Of 100 such tests a third have their likeliest curve at a share of 100 %. */
  @Test
  void halfACurveIsNeverWrittenAsCertain() {
    for (int seed = 0; seed < 20; seed++) {
      assertDoubtIsWritten(halfWay(seed));
    }
  }

  /** Within the days that were counted the curve is known, whatever share goes with it. */
  @Test
  void theCurveKeepsItsBand() {
    for (int seed = 0; seed < 10; seed++) {
      AtTemperature at = only(halfWay(seed)).temperatures().get(0);
      Estimate band = requireNonNull(at.lognormal()).band().at(5).orElseThrow();
      assertThat(band.holds((double) at.emerged() / at.seeds())).isTrue();
      assertThat(band.high() - band.low()).isBetween(0.08, 0.2);
    }
  }

  /** Seedlings of two days side by side tell no curve, nor how many are to come. */
  @Test
  void whereTheFirstSeedlingsAreAllThatWasSeenNoUpperLimitIsTold() {
    AtTemperature at = only(List.of(Trays.daily(20, "a", 50, 4, 0, 0, 3, 9))).temperatures().get(0);
    assertThat(at.lognormal()).isNull();
    assertThat(at.germinating().share().high()).isEqualTo(1);
    // As soon as ten days bring no more, they were all.
    AtTemperature over =
        only(List.of(Trays.daily(20, "a", 50, 14, 0, 0, 3, 9))).temperatures().get(0);
    assertThat(over.germinating().share().high()).isLessThan(0.4);
  }

  /** Exact limits: of 50 all up, 0.025^(1/50); a certainty that 50 seeds cannot give. */
  @Test
  void allUpIsWrittenAsTheTestTellsIt() {
    CropEntry entry =
        CropEntry.of(only(List.of(Trays.daily(20, "a", 50, 14, 0, 0, 5, 20, 15, 10))), null);
    assertThat(entry.tested().rate()).isCloseTo(50.0 / 51, within(1e-3));
    assertThat(entry.tested().seeds()).isEqualTo(51);
    CropEntry none = CropEntry.of(only(List.of(Trays.daily(20, "a", 50, 14))), null);
    assertThat(none.tested().rate()).isCloseTo(1.0 / 51, within(1e-3));
    assertThat(none.tested().seeds()).isEqualTo(51);
  }

  /** 44 of 50, long over: what was counted is written. */
  @Test
  void aWholeTestIsWrittenAsItWasCounted() {
    CropEntry entry =
        CropEntry.of(only(List.of(Trays.daily(20, "a", 50, 14, 0, 0, 4, 16, 16, 6, 2))), null);
    assertThat(entry.tested().rate()).isCloseTo(0.88, within(1e-4));
    assertThat(entry.tested().seeds()).isEqualTo(50);
  }

  /** The days belong to the share that is written: together they give what was counted. */
  @Test
  void theDaysWrittenAreThoseOfTheShareWritten() {
    for (int seed = 0; seed < 5; seed++) {
      Lot lot = only(halfWay(seed));
      CropEntry entry = CropEntry.of(lot, null);
      CropEntry.Showing showing = requireNonNull(entry.emergence());
      double spread = Math.log(showing.mostByDays() / showing.halfByDays()) / 1.281552;
      double up =
          entry.tested().rate()
              * CurveFamily.LOGNORMAL.below(Math.log(5 / showing.halfByDays()) / spread);
      AtTemperature at = lot.temperatures().get(0);
      assertThat(up).isCloseTo((double) at.emerged() / at.seeds(), within(0.02));
    }
  }
}
