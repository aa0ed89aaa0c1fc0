package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MoneyTest {
  @Test
  void anErrorBelowHalfAUnitIsNotRoundedAway() {
    assertThat(new Money("EUR").difference(7.118, 0.274)).isEqualTo("+7.12 ± 0.27 EUR");
    assertThat(new Money("EUR").difference(7.118, 0.001)).isEqualTo("+7.12 ± 0.01 EUR");
    assertThat(new Money("EUR").difference(7.118, 0.5)).isEqualTo("+7 ± 1 EUR");
    assertThat(new Money("EUR").difference(-1240.4, 90.2)).isEqualTo("-1,240 ± 90 EUR");
    assertThat(Money.level(5200.337, 0.31)).isEqualTo("5,200.34 ± 0.31");
    assertThat(Money.level(5200.337, 0)).isEqualTo("5,200");
  }
}
