package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Place;
import propcap.study.Comparison;
import propcap.study.Comparison.Addition;
import propcap.study.Comparison.Investment;
import propcap.study.Comparison.Worth;
import propcap.study.Difference;

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
                + " spring): the tables are full, and trays stretch waiting to leave the heat (380"
                + " tray-days a spring now, 666 with it). What it does change: 310 ± 22 fewer tray-days wait to be"
                + " sown, 286 ± 25 more tray-days wait to leave the heat, 190 ± 38 fewer are lost"
                + " (kept too long) and 240 ± 40 more are lost (leggy).");
    assertThat(words.get(1).verdict())
        .isEqualTo(
            "House 3 adds 1,240 ± 90 plants on time a spring: 330 ± 24 fewer tray-days wait to"
                + " leave the heat and 610 ± 35 fewer are lost (leggy). With it the heat is still"
                + " full, and trays wait to be sown (412 tray-days a spring now, 122 with it).");
    assertThat(words.get(2).verdict())
        .startsWith(
            "Without House 2 loses 3,120 ± 260 plants on time a spring: 530 ± 48 more tray-days"
                + " wait to leave the heat and 960 ± 90 more are lost (leggy).")
        .endsWith(
            "With it the tables are full, and trays stretch waiting to leave the heat (380 tray-days"
                + " a spring now, 910 with it). Besides, 620 ± 80 more come late; 2.40 ± 0.40 fewer"
                + " sowings have their plants; pepper (-1,200 ± 140) and tomato (-900 ± 120) lose"
                + " most.");
  }

  @Test
  void aGainDoesNotHideWhatGetsWorse() {
    Comparison gain = Questions.plain("Base", "Other", Questions.d(1240, 90));
    List<Comparison.Outcome> outcomes = new ArrayList<>(gain.outcomes());
    for (Comparison.Outcome o : Questions.comparison().outcomes()) {
      if (o.kind() == Comparison.Kind.LATE || o.subject().equals("kale")) {
        outcomes.add(
            new Comparison.Outcome(
                o.kind(),
                o.subject(),
                o.moreIsBetter(),
                List.of(o.levels().get(0), o.levels().get(3)),
                List.of(o.differences().get(2))));
      }
    }
    Comparison mixed =
        new Comparison(gain.scenarios(), gain.settings(), gain.seasons(), .95, outcomes, List.of());
    ComparisonWords words = ComparisonWords.of(mixed).get(0);
    assertThat(words.verdict())
        .startsWith("Other adds 1,240 ± 90 plants")
        .endsWith(" But 620 ± 80 more come late; kale (-600 ± 90) loses.");
    assertThat(words.shortVerdict())
        .isEqualTo("Other: +1,240 ± 90 plants on time a spring; 620 ± 80 more come late");
  }

  private static final Place HOUSE = Questions.withMoney(Questions.scenario("x")).places().get(2);

  private static InvestmentWords investment(
      List<Addition> additions, double value, double halfWidth, @Nullable Double payback) {
    return words(
        false,
        new Investment(
            additions,
            Questions.d(10, 20),
            new Worth(
                new BigDecimal("5200.50"),
                new BigDecimal("770.49"),
                value,
                halfWidth,
                payback,
                0.5)));
  }

  private static InvestmentWords words(boolean isOneOfMany, Investment investment) {
    return new InvestmentWords("Other", "Base", isOneOfMany, investment, new Money("EUR"), 0.065);
  }

  @Test
  void whetherToBuyFollowsTheInterval() {
    List<Addition> house = List.of(new Addition(HOUSE, 0));
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
    InvestmentWords none = words(false, new Investment(List.of(), Questions.d(10, 20), null));
    assertThat(none.verdict())
        .isEqualTo(
            "Other: nothing is to be bought. Its margin is +10 ± 20 EUR a season against Base:"
                + " neither a gain nor a loss is told.");
    assertThat(none.reasons()).isEmpty();
    assertThat(none.does()).isEqualTo("buys nothing");
  }

  @Test
  void whatHasNoCostIsNotCalledFree() {
    Place plain = Questions.scenario("x").places().get(2);
    InvestmentWords one =
        words(false, new Investment(List.of(new Addition(plain, 0)), Questions.d(90, 20), null));
    assertThat(one.verdict())
        .isEqualTo(
            "House 1 has no cost in the scenario: whether it pays cannot be told. The margin before"
                + " buying is +90 ± 20 EUR a season against Base. Give it cost: {buy: ..., lasts: ..."
                + " years}.");
    assertThat(one.does()).isEqualTo("buys House 1; no cost of House 1");
    assertThat(List.of(one.buy(), one.yearly(), one.value(), one.payback(), one.chance()))
        .containsOnly("–");
    assertThat(one.reasons()).isEmpty();
    InvestmentWords both =
        words(
            true,
            new Investment(
                List.of(new Addition(HOUSE, 0), new Addition(plain, 200)),
                Questions.d(90, 20),
                null));
    assertThat(both.verdict()).startsWith("House 1, as in Other, has no cost in the scenario: ");
  }

  @Test
  void oneOfSeveralIsNamedWithItsScenarioAndALargerPlaceIsCalledSo() {
    InvestmentWords larger =
        words(
            true,
            new Investment(
                List.of(new Addition(HOUSE, 200)),
                Questions.d(-90, 20),
                new Worth(BigDecimal.TEN, BigDecimal.ONE, -800, 200, null, 0)));
    assertThat(larger.verdict())
        .isEqualTo(
            "Do not buy the larger House 1 (330 spaces), as in Other: over its life it costs more"
                + " than it brings (net present value -800 ± 200 EUR).");
    assertThat(larger.shortVerdict())
        .isEqualTo(
            "Do not buy the larger House 1 (330 spaces), as in Other: net present value -800 ± 200"
                + " EUR.");
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

  @Test
  void aShiftIsAdvisedOnlyWhereItIsToldFromNone() {
    List<ShiftWords> words = ShiftWords.of(Questions.shifts(false));
    assertThat(words.get(0).verdict())
        .isEqualTo(
            "Sow tomato* 7 days earlier: +210 ± 60 of these plants on time; +180 ± 84 counting all"
                + " crops. -14 days is not told apart from it.");
    assertThat(words.get(1).verdict())
        .startsWith(
            "Leave kale* as it is: 7 days later came out best, but the springs do not tell it from"
                + " no shift (+31 ± 60 of these plants on time");
    assertThat(words.get(2).verdict())
        .isEqualTo("Leave pepper* as it is: no shift tried does better.");
    assertThat(ShiftWords.of(Questions.unshifted()).get(0).verdict())
        .isEqualTo("kale* was tried only on its day.");
  }
}
