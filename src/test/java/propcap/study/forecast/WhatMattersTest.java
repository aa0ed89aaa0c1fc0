package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowings;
import propcap.study.Money;
import propcap.study.statistics.Difference;

class WhatMattersTest {
  private static Scenario needing(int plants) {
    Scenario any = RandomScenarios.from(1);
    return any.withSowings(List.of(Sowings.needing(any.sowings().get(0), plants)));
  }

  /** Half a per cent of 10,000 plants is 50. */
  @ParameterizedTest
  @CsvSource({
    "50, 10, 100, MATTERS",
    "-50, 10, 100, MATTERS",
    "49, 10, 100, NONE",
    "-49, 48, 100, NONE",
    "10, 20, 100, NONE",
    "0, 49, 100, NONE",
    "10, 45, 100, NOT_TOLD",
    "-10, 45, 100, NOT_TOLD",
    "200, 210, 100, NOT_TOLD",
    "200, 10, 19, NOT_TOLD",
    "0, 0, 0, NONE"
  })
  void whatIsSmallOrWithinItsErrorDoesNotMatter(
      double mean, double halfWidth, int differing, WhatMatters expected) {
    Difference difference =
        new Difference(mean, halfWidth, halfWidth / 2, 0.5, halfWidth == 0 ? null : 1.0, differing);
    assertThat(WhatMatters.of(difference, needing(10_000))).isEqualTo(expected);
  }

  /** Ten plants at 1 each: half a per cent of it is 0.05. */
  @ParameterizedTest
  @CsvSource({"0.05, 0.01, true", "0.049, 0.01, false", "0.06, 0.07, false", "-1, 0.1, false"})
  void aMarginRisesByWhatMattersOfTheWorthOfThePlantsNeeded(
      double mean, double halfWidth, boolean expected) {
    Difference margin = new Difference(mean, halfWidth, halfWidth / 2, 0.5, 1.0, 100);
    Money money = new Money();
    money.worth = Money.amount("1");
    assertThat(WhatMatters.isGain(margin, money.in(needing(10)))).isEqualTo(expected);
    assertThat(WhatMatters.isGain(margin, needing(10).withoutMoney())).isFalse();
  }
}
