package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static propcap.study.Money.amount;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Farms;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/** What the farm's records of money refuse, and what a sowing's dates do when it moves. */
class MoneyAndDatesTest {
  private static Arguments refused(String message, ThrowingCallable made) {
    return Arguments.of(message, made);
  }

  private static ThrowingCallable plant(String worth, String late, String lacking, String tray) {
    return () -> new Prices.PlantPrices(amount(worth), amount(late), amount(lacking), amount(tray));
  }

  private static ThrowingCallable prices(
      String currency, String tray, String potTray, double discount) {
    return () ->
        new Prices(
            currency,
            Map.of(),
            null,
            amount(tray),
            amount(potTray),
            discount,
            false,
            BigDecimal.ZERO);
  }

  static Stream<Arguments> amounts() {
    return Stream.of(
        refused("worth must be 0 or more, was -0.01", plant("-0.01", "0", "0", "0")),
        refused("late must be 0 or more, was -1", plant("1", "-1", "0", "0")),
        refused("short must be 0 or more, was -1.20", plant("1", "0", "-1.20", "0")),
        refused("tray must be 0 or more, was -6.5", plant("1", "0", "0", "-6.5")),
        refused("money needs a currency", prices(" ", "0", "0", 0)),
        refused("tray must be 0 or more, was -1.10", prices("EUR", "-1.10", "0", 0)),
        refused("pot-tray must be 0 or more, was -2.40", prices("EUR", "0", "-2.40", 0)),
        refused("discount must be between 0 and 100 %", prices("EUR", "0", "0", -.01)),
        refused("discount must be between 0 and 100 %", prices("EUR", "0", "0", 6)),
        refused("discount must be between 0 and 100 %", prices("EUR", "0", "0", Double.NaN)),
        refused("buy must be 0 or more, was -5200", () -> Money.cost("-5200", 12, "0", "0")),
        refused("lasts must be more than 0, was 0", () -> Money.cost("5200", 0, "0", "0")),
        refused(
            "lasts must be more than 0, was Inf",
            () -> Money.cost("5200", Double.POSITIVE_INFINITY, "0", "0")),
        refused("keep must be 0 or more, was -150", () -> Money.cost("1", 12, "-150", "0")),
        refused("run must be 0 or more, was -3.60", () -> Money.cost("1", 12, "0", "-3.60")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("amounts")
  void aBadAmountIsRefusedWithWhatWasGiven(String message, ThrowingCallable made) {
    assertThatIllegalArgumentException().isThrownBy(made).withMessageContaining(message);
  }

  @Test
  void aCropThatIsSownNeedsAPrice() {
    Farms farm = new Farms();
    farm.sowings = List.of(Farms.sowing("a", 0, 1));
    Scenario plain = farm.make();
    Prices none =
        new Prices(
            "EUR", Map.of(), null, BigDecimal.ZERO, BigDecimal.ZERO, 0, false, BigDecimal.ZERO);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Money.in(plain, none))
        .withMessage("money has no price for cosmos, and no default");
  }

  @Test
  void aTrayCostsAsForAllUnlessItsCropSaysOtherwise() {
    Prices.PlantPrices own =
        new Prices.PlantPrices(BigDecimal.ONE, BigDecimal.ZERO, BigDecimal.ZERO, amount("6.50"));
    Prices.PlantPrices other =
        new Prices.PlantPrices(BigDecimal.ONE, BigDecimal.ZERO, BigDecimal.ZERO, null);
    Prices prices =
        new Prices(
            "EUR",
            Map.of("tomato", own),
            other,
            amount("1.10"),
            BigDecimal.ZERO,
            0,
            false,
            BigDecimal.ZERO);
    assertThat(prices.trayOf("tomato")).isEqualTo(amount("6.50"));
    assertThat(prices.trayOf("kale")).isEqualTo(amount("1.10"));
  }

  @Test
  void aSowingThatMovesTakesItsSowingAgainAlongAndLeavesTheBedsAlone() {
    Sowing sowing =
        new Sowing(
            "a",
            "cosmos",
            "lot",
            Farms.day(10),
            3,
            20,
            Farms.day(40),
            Farms.day(50),
            Farms.day(55),
            Farms.day(20),
            null,
            Sowing.Leeway.NOT_SAID);
    assertThat(sowing.shifted(-7))
        .isEqualTo(
            new Sowing(
                "a",
                "cosmos",
                "lot",
                Farms.day(3),
                3,
                20,
                Farms.day(40),
                Farms.day(50),
                Farms.day(55),
                Farms.day(13),
                null,
                Sowing.Leeway.NOT_SAID));
    assertThat(sowing.shifted(0)).isEqualTo(sowing);
    assertThat(sowing.shifted(9).shifted(-9)).isEqualTo(sowing);
  }

  @Test
  void aSowingThatIsNeverSownAgainIsNotWhenItMoves() {
    Sowing moved = Farms.sowing("a", 10, 3).shifted(4);
    assertThat(moved.resowUntil()).isNull();
    assertThat(moved.sow()).isEqualTo(Farms.day(14));
  }
}
