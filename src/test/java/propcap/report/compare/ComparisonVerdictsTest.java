package propcap.report.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Place;
import propcap.report.Questions;
import propcap.report.kit.InvestmentWords;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.compare.Comparison;
import propcap.study.money.Investment;
import propcap.study.money.Investment.Change;
import propcap.study.money.Investment.Price;
import propcap.study.money.Investment.Worth;
import propcap.study.statistics.Difference;

/** What a comparison says in a sentence, and what it must not say. */
class ComparisonVerdictsTest {
  private static String onTime(Difference difference) {
    return ComparisonWords.of(Questions.plain("Base", "Other", difference)).get(0).verdict();
  }

  @ParameterizedTest
  @CsvSource({"-40,210", "40,210", "210,210", "-210,210"})
  void noDirectionIsSaidWhereTheIntervalSpansZero(double mean, double halfWidth) {
    assertThat(onTime(Questions.d(mean, halfWidth)))
        .startsWith("Other adds nothing that 400 springs could tell (")
        .doesNotContain("loses", "gain");
  }

  /** Half a per cent of what is needed is 160 plants. */
  @ParameterizedTest
  @CsvSource({"0.3,0.4", "0,5", "40,10", "-40,10"})
  void whatIsSmallMakesNoDifferenceThatMatters(double mean, double halfWidth) {
    assertThat(onTime(Questions.d(mean, halfWidth)))
        .startsWith("Other makes no difference that matters: ")
        .doesNotContain("loses", "adds");
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
                + " sowings a spring have their plants on average; pepper (-1,200 ± 140) and tomato (-900 ± 120) lose"
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
        new Comparison(
            gain.scenarios(),
            gain.settings(),
            gain.seasons(),
            .95,
            outcomes,
            List.of(30, 36),
            List.of());
    ComparisonWords words = ComparisonWords.of(mixed).get(0);
    assertThat(words.verdict())
        .startsWith("Other adds 1,240 ± 90 plants")
        .endsWith(" But 620 ± 80 more come late; kale (-600 ± 90) loses.");
    assertThat(words.shortVerdict())
        .isEqualTo("Other: +1,240 ± 90 plants on time a spring; 620 ± 80 more come late");
  }

  private static final Place HOUSE = Questions.withMoney(Questions.scenario("x")).places().get(2);

  private static InvestmentWords investment(
      List<Change> changes, double value, double halfWidth, @Nullable Double payback) {
    return words(
        false,
        new Investment(
            changes,
            Questions.d(10, 20),
            worth("5200.50", "770.49", value, halfWidth, true, payback)));
  }

  private static Worth worth(
      String buy,
      String yearly,
      double value,
      double halfWidth,
      boolean isTold,
      @Nullable Double payback) {
    return new Worth(
        new BigDecimal(buy), new BigDecimal(yearly), 12, value, halfWidth, isTold, payback, 0.5);
  }

  private static InvestmentWords words(boolean isOneOfMany, Investment investment) {
    return new InvestmentWords("Other", "Base", isOneOfMany, investment, new Money("EUR"), 0.065);
  }

  /** House 1 has 330 spaces, and cost 5,200 EUR. */
  private static Change house(int spacesNow, @Nullable Price price) {
    return new Change(HOUSE, spacesNow, price);
  }

  private static Change closed(String keepSaved) {
    return new Change(
        HOUSE.withSpaces(0),
        330,
        new Price(BigDecimal.ZERO, false, 12, new BigDecimal(keepSaved).negate()));
  }

  private static Price price(String buy, boolean isShare) {
    return new Price(new BigDecimal(buy), isShare, 12, BigDecimal.ZERO);
  }

  @Test
  void whetherToBuyFollowsTheInterval() {
    List<Change> house = List.of(house(0, price("5200.50", false)));
    assertThat(investment(house, 800.5, 200, 4.2).verdict())
        .isEqualTo(
            "Buy House 1: over its life it brings more than it costs (net present value +801 ± 200"
                + " EUR).");
    assertThat(investment(house, -800, 200, null).verdict()).startsWith("Do not buy House 1: ");
    assertThat(investment(house, 100, 200, 9.0).verdict())
        .isEqualTo(
            "Whether it pays to buy House 1 is not told (net present value +100 ± 200 EUR). Only"
                + " more springs would tell.");
    assertThat(investment(house, -800, 200, null).reasons())
        .contains("5,201 EUR once", "770 EUR a year at 6.5 %", "never paid back", "50 %");
  }

  @Test
  void fewSpringsThatDifferTellNothing() {
    Difference few = new Difference(4, 1, .5, .01, 1.0, 6);
    InvestmentWords words =
        words(
            false,
            new Investment(
                List.of(house(0, price("10", false))), few, worth("10", "1", 800, 20, false, 1.0)));
    assertThat(words.verdict())
        .isEqualTo(
            "Whether it pays to buy House 1 is not told (net present value about 800 EUR). The"
                + " margins differ in 6 springs: too few to tell.");
    assertThat(words.value()).isEqualTo("–");
    assertThat(Words.difference(few)).isEqualTo("+4.0 in 6 springs");
    assertThat(onTime(few))
        .startsWith(
            "Other changes the plants on time in 6 springs of 400 only, too few to tell what it"
                + " brings.");
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
    Change unpriced = new Change(plain, 0, null);
    InvestmentWords one =
        words(false, new Investment(List.of(unpriced), Questions.d(90, 20), null));
    assertThat(one.verdict())
        .isEqualTo(
            "House 1 has no cost in the scenario: whether it pays cannot be told. The margin before"
                + " buying is +90 ± 20 EUR a season against Base. Give it a cost: what it"
                + " takes to buy, and how many years it lasts.");
    assertThat(one.does()).isEqualTo("buys House 1; no cost of House 1");
    assertThat(List.of(one.amount(Worth::buy), one.value(), one.payback(), one.chance()))
        .containsOnly("–");
    assertThat(one.reasons()).isEmpty();
    InvestmentWords both =
        words(
            true,
            new Investment(
                List.of(house(0, price("10", false)), new Change(plain, 200, null)),
                Questions.d(90, 20),
                null));
    assertThat(both.verdict()).startsWith("House 1, as in Other, has no cost in the scenario: ");
  }

  @Test
  void whatLosesBeforeItIsPaidForIsNotToBeBought() {
    Change unpriced = new Change(Questions.scenario("x").places().get(2), 0, null);
    assertThat(
            words(false, new Investment(List.of(unpriced), Questions.d(-90, 20), null)).verdict())
        .isEqualTo(
            "Do not buy House 1: even before it is paid for, the margin is -90 ± 20 EUR a season"
                + " against Base.");
    // Unless what is closed for it may save more.
    assertThat(
            words(
                    false,
                    new Investment(List.of(unpriced, closed("200")), Questions.d(-90, 20), null))
                .verdict())
        .contains("whether it pays cannot be told");
  }

  @Test
  void aCostThatOnlyOneHasIsAskedFor() {
    assertThat(
            words(false, new Investment(List.of(house(330, null)), Questions.d(90, 20), null))
                .verdict())
        .isEqualTo(
            "House 1 has a cost in one of Base and Other only, though nothing else of it is another:"
                + " whether it pays cannot be told. Give it the same cost in both.");
  }

  @Test
  void oneOfSeveralIsNamedWithItsScenarioAndOfALargerPlaceWhatIsAdded() {
    InvestmentWords larger =
        words(
            true,
            new Investment(
                List.of(house(200, price("3380", true))),
                Questions.d(-90, 20),
                worth("3380", "403", -800, 200, true, null)));
    assertThat(larger.verdict())
        .isEqualTo(
            "Do not buy 130 more spaces of House 1 (330 in all), as in Other: over its life it"
                + " costs more than it brings (net present value -800 ± 200 EUR).");
    assertThat(larger.shortVerdict())
        .isEqualTo(
            "Do not buy 130 more spaces of House 1 (330 in all), as in Other: net present value"
                + " -800 ± 200 EUR.");
    assertThat(larger.reasons())
        .startsWith(
            "Other: buying 130 more spaces of House 1 (330 in all) costs 3,380 EUR once (of the"
                + " 5,200 EUR for 200 spaces, the share of those added), lasts 12 years and leaves"
                + " the upkeep as it is. In all that costs 403 EUR a year at 6.5 %;");
  }

  @Test
  void aClosedPlaceIsClosedForWhatItSaves() {
    Investment close =
        new Investment(
            List.of(closed("90")), Questions.d(-20, 5), worth("0", "-90", 580, 40, true, 0.0));
    InvestmentWords words = words(false, close);
    assertThat(words.verdict())
        .isEqualTo(
            "Close House 1: that saves more than it loses (net present value +580 ± 40 EUR).");
    assertThat(words.does()).isEqualTo("closes House 1");
    assertThat(words.payback()).isEqualTo("–");
    assertThat(words.reasons())
        .startsWith(
            "Other: House 1 closed saves 90 EUR a year of upkeep; what it was bought for is spent,"
                + " and no sale of it is reckoned with. In all that saves 90 EUR a year at 6.5 %;")
        .doesNotContain("paid back");
    assertThat(
            words(
                    false,
                    new Investment(
                        close.changes(),
                        Questions.d(-200, 5),
                        worth("0", "-90", -920, 40, true, 0.0)))
                .verdict())
        .startsWith("Do not close House 1: that loses more than it saves");
  }

  @Test
  void whatIsGivenUpStandsWithWhatIsBoughtForIt() {
    Place chamber = Questions.scenario("x").places().get(0);
    Change bought = new Change(chamber, 0, price("5200", false));
    assertThat(
            words(
                    false,
                    new Investment(
                        List.of(bought, closed("90")),
                        Questions.d(90, 20),
                        worth("5200", "530", 800, 200, true, 9.0)))
                .verdict())
        .startsWith("Buy " + chamber.name() + " with House 1 closed: over its life it brings more");
  }
}
