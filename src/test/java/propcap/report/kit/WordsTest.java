package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.study.Stats;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

class WordsTest {
  @ParameterizedTest
  @CsvSource({
    "0, no spring",
    "0.004, fewer than 1 spring of 100",
    "0.04, 4 springs of 100",
    "0.1, 1 spring of 10",
    "0.6, 6 springs of 10",
    "0.7, 7 springs of 10",
    "0.46, 46 springs of 100",
    "0.87, 87 springs of 100",
    "0.899, 89 springs of 100",
    "0.9, 9 springs of 10",
    "0.904, 9 springs of 10",
    "0.96, 96 springs of 100",
    "0.999, 99 springs of 100",
    "1, every spring"
  })
  void aChanceIsSaidInSprings(double chance, String words) {
    assertThat(Words.springs(chance)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({
    "0, no spring",
    "0.004, fewer than 1 spring of 100",
    "0.01, only 1 spring of 100",
    "0.13, only 13 springs of 100"
  })
  void tooFewSpringsAreSaidInWordsThatCanBeRead(double chance, String words) {
    assertThat(Words.onlySprings(chance)).isEqualTo(words);
  }

  @Test
  void thousandsStandApart() {
    assertThat(Words.count(1234567.4)).isEqualTo("1,234,567");
    assertThat(Words.range(Stats.of(0, 0, 1900.2, 0, 2400))).isEqualTo("1,900–2,400");
  }

  @Test
  void smallAmountsKeepADecimal() {
    assertThat(Words.amount(9.94)).isEqualTo("9.9");
    assertThat(Words.amount(9.96)).isEqualTo("10");
    assertThat(Words.amount(0.02)).isEqualTo("<0.1");
    assertThat(Words.amount(0)).isEqualTo("0");
    assertThat(Words.plural(1, "sowing")).isEqualTo("1 sowing");
    assertThat(Words.plural(1.3, "day")).isEqualTo("1.3 days");
  }

  /** The mark of what is below 90 % and the figure beside it must not differ. */
  @ParameterizedTest
  @CsvSource({
    "0.8999, 89 %",
    "0.895, 89 %",
    "0.9, 90 %",
    "0.29, 29 %",
    "0.57, 57 %",
    "0.994, 99 %"
  })
  void aChanceIsCutAndNeverRoundedUpToAGoal(double chance, String words) {
    assertThat(Words.chance(chance)).isEqualTo(words);
    assertThat(Words.chances(chance, 1)).isEqualTo(words.replace(" %", "–100 %"));
  }

  /** A chance lies within its limits as they are written, too. */
  @Test
  void limitsAreWrittenAsTheChanceIs() {
    assertThat(Words.chance(0.996)).isEqualTo(">99 %");
    assertThat(Words.chances(0.989, 0.998)).isEqualTo("98–>99 %");
    assertThat(Words.chances(0.001, 0.02)).isEqualTo("<1–2 %");
    assertThat(Words.chances(0, 1)).isEqualTo("0–100 %");
  }

  @Test
  void aShareIsNeverRoundedToNothingOrAll() {
    assertThat(Words.percent(0.0002)).isEqualTo("<0.1 %");
    assertThat(Words.percent(0.034)).isEqualTo("3.4 %");
    assertThat(Words.percent(0.34)).isEqualTo("34 %");
    assertThat(Words.percent(0)).isEqualTo("0 %");
    assertThat(Words.percent(0.999)).isEqualTo(">99 %");
    assertThat(Words.chance(0.999)).isEqualTo(">99 %");
    assertThat(Words.chance(0.001)).isEqualTo("<1 %");
    assertThat(Words.chance(1)).isEqualTo("100 %");
  }

  @Test
  void anIntervalIsTwoStandardErrorsWideOnEachSide() {
    // 1000 -+ 1.96 * 50 = 902 to 1098.
    assertThat(Words.interval(Stats.of(1000, 50, 0, 0, 0))).isEqualTo("95 % interval 902 to 1,098");
    assertThat(Words.interval(Stats.of(1000, 0, 0, 0, 0))).isEqualTo("no 95 % interval");
  }

  @Test
  void anEstimateTellsItsErrorEvenlyLopsidedOrByHowOftenItWasSeen() {
    assertThat(Words.estimate(Stats.of(1000, 50, 0, 0, 0))).isEqualTo("1,000 ± 98");
    Stat lopsided = new Stat(3.1, 1, new MeanLimits(1.2, 8.4), 100, 12, 0, 0, 2);
    assertThat(Words.estimate(lopsided)).isEqualTo("3.1 (1.2 to 8.4)");
    assertThat(Words.estimate(Stats.seldom(0.4, 3))).isEqualTo("0.4 (seen in 3 of 100 springs)");
    assertThat(Words.estimate(Stats.always(0, 100))).isEqualTo("0 (seen in none of 100 springs)");
    assertThat(Words.estimate(Stats.always(40, 100))).isEqualTo("40 (in all 100 springs)");
    assertThat(Words.estimate(Stats.always(40, 1))).isEqualTo("40");
    assertThat(Words.estimate(new Stat(40.2, 1, null, 100, 2, 40, 40, 40)))
        .isEqualTo("40.2 (other than 40 in 2 of 100 springs)");
  }

  @Test
  void whatIsUsualIsARangeOrHowSeldomItWasSeen() {
    assertThat(Words.usual(Stats.of(40, 1, 30, 40, 50))).isEqualTo("8 springs of 10: 30–50");
    assertThat(Words.usual(Stats.seldom(0.4, 3))).isEqualTo("seen in 3 of 100 springs");
    assertThat(Words.spread(Stats.seldom(0.4, 3))).isEqualTo("seen in 3 of 100 springs");
    assertThat(Words.spread(Stats.always(0, 100))).isEqualTo("0");
    assertThat(Words.mean(Stats.seldom(0.4, 3))).isEqualTo("0.4 (seen in 3 of 100 springs)");
    assertThat(Words.mean(Stats.of(366, 12, 0, 0, 0))).isEqualTo("366");
  }

  @Test
  void aDifferenceThatIsAlwaysTheSameHasNoPlusOrMinus() {
    assertThat(Words.difference(new Difference(2, 0, 0, 1, null, 0))).isEqualTo("+2");
    assertThat(Words.difference(new Difference(0, 0, 0, 0, null, 0))).isEqualTo("0");
    assertThat(Words.difference(new Difference(2, 1, .5, 1, 1.0, 100))).isEqualTo("+2.0 ± 1.0");
  }

  @Test
  void thingsAreListedWithAnAnd() {
    assertThat(Words.list(List.of("Mats"))).isEqualTo("Mats");
    assertThat(Words.list(List.of("Mats", "House 1", "House 2")))
        .isEqualTo("Mats, House 1 and House 2");
  }
}
