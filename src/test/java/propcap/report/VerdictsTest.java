package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Place;
import propcap.study.Comparison.Investment;
import propcap.study.Difference;
import propcap.study.Goal;
import propcap.study.Goal.Measure;
import propcap.study.Sizing;
import propcap.study.Sizing.Candidate;
import propcap.study.Sizing.Found;

/** What the answers say in a sentence, and what they must not say. */
class VerdictsTest {
  private static String onTime(Difference difference) {
    return ComparisonWords.of(Questions.plain("Base", "Other", difference)).get(0).verdict();
  }

  @ParameterizedTest
  @CsvSource({"-40,210", "40,210", "210,210", "-210,210", "0.3,0.4", "0,5"})
  void noDirectionIsSaidWhereTheIntervalSpansZero(double mean, double halfWidth) {
    assertThat(onTime(Questions.d(mean, halfWidth)))
        .startsWith("Other adds nothing that 400 springs could tell (")
        .doesNotContain("loses", "gain");
  }

  @Test
  void aGainAndALossAreSaidWhereTheyAreClear() {
    assertThat(onTime(Questions.d(1240, 90)))
        .isEqualTo(
            "Other adds 1,240 ± 90 plants on time a spring. With it nothing waits for room.");
    assertThat(onTime(Questions.d(-1240, 90)))
        .startsWith("Other loses 1,240 ± 90 plants on time a spring.");
  }

  @Test
  void aScenarioAgainstItselfChangesNothing() {
    assertThat(onTime(Questions.d(0, 0)))
        .isEqualTo("Other changes nothing: 400 springs gave the same plants on time.");
  }

  @Test
  void aVerdictNamesWhatChangedMostAndWhatNowHoldsUp() {
    List<ComparisonWords> words = ComparisonWords.of(Questions.comparison());
    assertThat(words.get(0).verdict())
        .isEqualTo(
            "A second chamber adds nothing that 400 springs could tell (-40 ± 210 plants on time a"
                + " spring): the tables are full, and trays stretch waiting to leave the heat (666"
                + " tray-days a spring). What it does change: 310 ± 22 fewer tray-days wait to be"
                + " sown, 286 ± 25 more tray-days wait to leave the heat, 190 ± 38 fewer are lost"
                + " (kept too long) and 240 ± 40 more are lost (leggy).");
    assertThat(words.get(1).verdict())
        .isEqualTo(
            "House 3 adds 1,240 ± 90 plants on time a spring: 330 ± 24 fewer tray-days wait to"
                + " leave the heat and 610 ± 35 fewer are lost (leggy). With it the heat is full,"
                + " and trays wait to be sown (122 tray-days a spring).");
    assertThat(words.get(2).verdict())
        .startsWith(
            "Without House 2 loses 3,120 ± 260 plants on time a spring: 530 ± 48 more tray-days"
                + " wait to leave the heat and 960 ± 90 more are lost (leggy).");
  }

  private static InvestmentWords investment(
      List<Place> places, double value, double halfWidth, @Nullable Double payback) {
    return new InvestmentWords(
        "Other",
        new Investment(
            places,
            new BigDecimal("5200.50"),
            new BigDecimal("770.49"),
            Questions.d(10, 20),
            value,
            halfWidth,
            payback,
            0.5),
        new Money("EUR"),
        0.065);
  }

  @Test
  void whetherToBuyFollowsTheInterval() {
    List<Place> house = List.of(Questions.scenario("x").places().get(2));
    assertThat(investment(house, 800.5, 200, 4.2).verdict())
        .isEqualTo(
            "Buy House 1: over its life it brings more than it costs (net present value +801 ± 200"
                + " EUR).");
    assertThat(investment(house, -800, 200, null).verdict()).startsWith("Do not buy House 1: ");
    assertThat(investment(house, 100, 200, 9.0).verdict())
        .isEqualTo(
            "Whether House 1 pays is not told (net present value +100 ± 200 EUR). Only more springs"
                + " would tell.");
    assertThat(investment(house, -800, 200, null).reasons())
        .contains("5,201 EUR once", "770 EUR a year at 6.5 %", "never paid back", "50 %");
  }

  @Test
  void whereNothingIsBoughtNothingIsAdvised() {
    assertThat(investment(List.of(), 0, 0, null).verdict())
        .isEqualTo(
            "Other: nothing is to be bought. Its margin is +10 ± 20 EUR a season against the"
                + " first: neither a gain nor a loss is told.");
    assertThat(investment(List.of(), 0, 0, null).reasons()).isEmpty();
  }

  @Test
  void wherePlacesDoNotMatterNoneIsToBeBought() {
    BottlenecksWords words = new BottlenecksWords(Questions.noBottleneck());
    assertThat(words.verdict())
        .isEqualTo("No tenth more of any one place clearly gains plants on time.");
    assertThat(words.plan())
        .isEqualTo("There is nothing to buy: no tenth of any place clearly helps.");
    assertThat(words.warnings()).isEmpty();
  }

  @Test
  void aPlaceHoldsUpOnlyWhatClearlyWaitsLess() {
    assertThat(BottlenecksWords.holdsUp(Questions.bottlenecks().worths().get(2)))
        .hasValue("to be sown (-71.0 ± 9.0 tray-days)");
    assertThat(BottlenecksWords.holdsUp(Questions.bottlenecks().worths().get(3))).isEmpty();
    assertThat(new BottlenecksWords(Questions.bottlenecks()).warnings())
        .containsExactly("More of Mats loses plants: -61 ± 30 a spring for 4 spaces more.");
  }

  private static Candidate candidate(double mean, double se, Found found, Integer... spaces) {
    return new Candidate(List.of(spaces), 100, mean, se, found, List.of(spaces).get(0));
  }

  private static String verdict(Goal goal, @Nullable Candidate answer, Candidate... candidates) {
    Sizing sizing = Questions.sizing(List.of("House 2"), goal, List.of(candidates), answer);
    return SizeWords.of(sizing).verdict();
  }

  @Test
  void theSmallestSizeIsNamedWithItsGoal() {
    assertThat(SizeWords.of(Questions.sizing()).verdict())
        .isEqualTo(
            "House 2 needs 120 spaces: the smallest of 21 sizes tried for which every sowing has"
                + " its plants on time in at least 90 % of springs (90.7 ± 2.0 %).");
    assertThat(SizeWords.of(Questions.sizing()).guarantee())
        .hasValue(
            "With 95 % confidence this is right, or within 2 percentage points of the goal. It is"
                + " so near that 850 springs did not tell; it counts as its estimate says.");
  }

  @Test
  void aSingleSizeIsNotCalledTheSmallest() {
    Candidate only = candidate(0.96, 0.01, Found.HOLDS, 40);
    assertThat(verdict(new Goal(Measure.ON_TIME_SHARE, 0.925), only, only))
        .isEqualTo(
            "House 2 needs 40 spaces: the only size tried, and with it at least 92.5 % of the plants"
                + " needed are on time (96.0 ± 2.0 %).");
  }

  @Test
  void whereNoneHoldsItIsSaidHowMuchTheBestLacks() {
    assertThat(
            verdict(
                new Goal(Measure.MET, 0.9),
                null,
                candidate(0.5, 0.05, Found.FAILS, 20),
                candidate(0.71, 0.015, Found.FAILS, 400)))
        .isEqualTo(
            "None of the 2 sizes tried is enough: the best of them, 400 spaces of House 2, comes"
                + " to 71.0 ± 2.9 %, which falls 19 percentage points short of the goal of 90 %.");
    assertThat(
            verdict(
                new Goal(Measure.ON_TIME, 80_000), null, candidate(77_700, 150, Found.FAILS, 20)))
        .isEqualTo(
            "No: the only size tried is not enough: 20 spaces of House 2 come to 77,700 ± 294 plants, which falls 2,300 plants short of the goal of"
                + " 80,000 plants.");
  }

  @Test
  void largerSizesThatFailAreAWarning() {
    Candidate enough = candidate(0.96, 0.01, Found.HOLDS, 320);
    Goal goal = new Goal(Measure.MET, 0.9);
    List<Candidate> tried =
        List.of(
            candidate(0.2, 0.01, Found.FAILS, 300),
            enough,
            candidate(0.1, 0.01, Found.FAILS, 340),
            candidate(0.97, 0.01, Found.HOLDS, 360));
    assertThat(
            SizeWords.of(Questions.sizing(List.of("House 2"), goal, tried, enough)).moreDoesHarm())
        .hasValueSatisfying(words -> assertThat(words).contains("with 340 spaces the goal fails"));
    assertThat(SizeWords.of(Questions.sizing()).moreDoesHarm()).isEmpty();
  }

  @Test
  void theLargestMarginIsCalledBest() {
    Candidate best = candidate(34_200.5, 150, Found.HOLDS, 120);
    Candidate other = candidate(30_000, 150, Found.FAILS, 140);
    assertThat(verdict(new Goal(Measure.MARGIN, 0), best, best, other))
        .startsWith(
            "House 2 is best with 120 spaces: of 2 sizes tried the largest mean margin of a season,"
                + " 34,201 ± 294");
  }

  @Test
  void aPairIsChosenByWhatItCosts() {
    assertThat(SizeWords.of(Questions.pairs()).verdict())
        .startsWith(
            "80 spaces of Chamber and 120 of House 2 are needed: the cheapest (200 spaces in all) of"
                + " 30 pairs tried for which every sowing");
  }

  @Test
  void aShiftIsAdvisedOnlyWhereItIsToldFromNone() {
    List<ShiftWords> words = ShiftWords.of(Questions.shifts(false));
    assertThat(words.get(0).verdict())
        .isEqualTo(
            "Sow tomato* 7 days earlier: +210 ± 60 plants on time, +180 ± 84 of all sowings. -14"
                + " days is not told apart from it.");
    assertThat(words.get(1).verdict())
        .startsWith(
            "Leave kale* as it is: 7 days later came out best, but the springs do not tell it from"
                + " no shift (+31 ± 60 plants on time");
    assertThat(words.get(2).verdict())
        .isEqualTo("Leave pepper* as it is: no shift tried does better.");
    assertThat(ShiftWords.of(Questions.unshifted()).get(0).verdict())
        .isEqualTo("kale* was tried only on its day.");
  }
}
