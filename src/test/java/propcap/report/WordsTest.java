package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.study.Stat;

class WordsTest {
  @ParameterizedTest
  @CsvSource({
    "0, no spring",
    "0.04, fewer than 1 spring of 10",
    "0.1, 1 spring of 10",
    "0.6, 6 springs of 10",
    "0.7, 7 springs of 10",
    "0.87, 8 springs of 10",
    "0.88, nearly 9 springs of 10",
    "0.9, 9 springs of 10",
    "0.96, 9 springs of 10",
    "0.98, nearly every spring",
    "1, every spring"
  })
  void aChanceIsSaidInSprings(double chance, String words) {
    assertThat(Words.springs(chance)).isEqualTo(words);
  }

  @Test
  void thousandsStandApart() {
    assertThat(Words.count(1234567.4)).isEqualTo("1,234,567");
    assertThat(Words.range(new Stat(0, 0, 1900.2, 0, 2400))).isEqualTo("1,900–2,400");
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
    assertThat(Words.interval(new Stat(1000, 50, 0, 0, 0))).isEqualTo("95 % interval 902 to 1,098");
    assertThat(Words.interval(new Stat(1000, 0, 0, 0, 0))).isEqualTo("no 95 % interval");
  }

  @Test
  void thingsAreListedWithAnAnd() {
    assertThat(Words.list(List.of("Mats"))).isEqualTo("Mats");
    assertThat(Words.list(List.of("Mats", "House 1", "House 2")))
        .isEqualTo("Mats, House 1 and House 2");
  }
}
