package propcap.study.money;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static propcap.study.Money.amount;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.farm.Climate;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Money;
import propcap.study.RunSettings;
import propcap.study.compare.Comparing;

/**
 * What it costs to have a place larger, smaller or not at all, worked by hand. At 6 % ten years
 * have the factor 7.36009, twelve 8.38384 and fifteen 9.71225 (any table of annuities). Two trays
 * of ten plants have room everywhere, so that no place brings anything, unless a test says so.
 */
class InvestingTest {
  private static final RunSettings SETTINGS = new RunSettings(3, 20, null, 1);
  private static final double TWELVE_YEARS = 8.38384;
  private static final double FIFTEEN_YEARS = 9.71225;

  private final Farms farm = new Farms();
  private final Money money = new Money();

  /** Mats and a tunnel, of so many spaces and at such costs. */
  private Scenario farm(int mats, Place.@Nullable Cost matsCost, int tunnel) {
    return farm(mats, matsCost, tunnel, Money.cost("3000", 15, "90", "2"));
  }

  private Scenario farm(
      int mats, Place.@Nullable Cost matsCost, int tunnel, Place.@Nullable Cost tunnelCost) {
    farm.mats = mats;
    farm.sowings = List.of(Farms.sowing("a", 0, 2));
    farm.morePlaces =
        List.of(
            new Place("Tunnel", PlaceKind.TABLE, tunnel, new Climate.Constant(20), 0, tunnelCost));
    return Money.withCost(money.in(farm.make()), "Mats", mats, matsCost);
  }

  private static Investment investment(Scenario now, Scenario then)
      throws BadQuestionException, InterruptedException {
    return Comparing.compare(List.of(now, then), SETTINGS, share -> {}).investments().get(0);
  }

  private static Investment.Worth worth(Scenario now, Scenario then)
      throws BadQuestionException, InterruptedException {
    return Objects.requireNonNull(investment(now, then).worth());
  }

  private static Place.Cost chamber() {
    return Money.cost("8000", 12, "300", "0");
  }

  /** 80 spaces for 66: 14 at 8,000 / 66 each, and no upkeep that is not paid already. */
  @Test
  void ofAnEnlargedPlaceOnlyWhatIsAddedIsPaid() throws Exception {
    Investment.Worth worth = worth(farm(66, chamber(), 20), farm(80, chamber(), 20));
    assertThat(worth.buy()).isEqualTo(amount("1696.97"));
    assertThat(worth.yearly()).isEqualTo(amount("202.41"));
    assertThat(worth.netPresentValue()).isCloseTo(-1696.97, within(.005));
  }

  @Test
  void whatTheAlternativeItselfSaysOfTheEnlargingGoesBefore() throws Exception {
    Scenario now = farm(66, chamber(), 20);
    Investment.Worth worth = worth(now, farm(80, Money.cost("2100", 12, "360", "0"), 20));
    assertThat(worth.buy()).isEqualByComparingTo("2100");
    // And 60 a year of upkeep more.
    assertThat(worth.yearly()).isEqualTo(amount("310.48"));
    assertThat(worth.netPresentValue()).isCloseTo(-2100 - 60 * TWELVE_YEARS, within(.005));
  }

  @Test
  void aClosedPlaceSavesItsUpkeepAndIsNotSold() throws Exception {
    Investment.Worth worth = worth(farm(66, chamber(), 20), farm(66, chamber(), 0));
    assertThat(worth.buy()).isEqualByComparingTo("0");
    assertThat(worth.yearly()).isEqualTo(amount("-90.00"));
    assertThat(worth.netPresentValue()).isCloseTo(90 * FIFTEEN_YEARS, within(.005));
    assertThat(worth.chancePays()).isEqualTo(1);
  }

  @Test
  void aPlaceThatIsLeftOutIsClosed() throws Exception {
    Scenario now = farm(66, chamber(), 20);
    farm.morePlaces = List.of();
    Scenario then = Money.withCost(money.in(farm.make()), "Mats", 66, chamber());
    assertThat(worth(now, then).yearly()).isEqualTo(amount("-90.00"));
  }

  @Test
  void aSmallerPlaceSavesTheUpkeepThatTheAlternativeSaysItDoes() throws Exception {
    Scenario now = farm(66, chamber(), 20);
    Scenario less = farm(66, chamber(), 8, Money.cost("3000", 15, "40", "2"));
    assertThat(worth(now, less).buy()).isEqualByComparingTo("0");
    assertThat(worth(now, less).yearly()).isEqualTo(amount("-50.00"));
    assertThat(investment(now, farm(66, chamber(), 8)).worth()).isNull();
  }

  /** The tunnel is the second table: the house has room for one tray, so it runs for a while. */
  @Test
  void aClosedPlaceSavesItsRunning() throws Exception {
    farm.house = 1;
    Scenario now = farm(66, chamber(), 20);
    Scenario free = farm(66, chamber(), 20, Money.cost("3000", 15, "90", "0"));
    double withRunning = investment(now, farm(66, chamber(), 0)).gain().mean();
    double without = investment(free, farm(66, chamber(), 0)).gain().mean();
    // In use on ten days, from leaving the mats on day 5 to the yard on day 15.
    assertThat(withRunning - without).isCloseTo(2 * 10, within(1e-9));
  }

  @Test
  void whatIsSavedPaysForWhatIsBought() throws Exception {
    Place.Cost second = Money.cost("5200", 12, "150", "0");
    Scenario now = farm(66, chamber(), 20);
    Scenario then = farm(66, chamber(), 0);
    Scenario both = withTable(then, "House 2", second);
    Investment.Worth worth = worth(now, both);
    assertThat(worth.buy()).isEqualByComparingTo("5200");
    // 5,200 / 8.38384 + 150 - 90.
    assertThat(worth.yearly()).isCloseTo(amount("680.24"), within(amount("0.01")));
  }

  private static Scenario withTable(Scenario scenario, String name, Place.Cost cost) {
    List<Place> places = new java.util.ArrayList<>(scenario.places());
    places.add(new Place(name, PlaceKind.TABLE, 10, new Climate.Constant(20), 0, cost));
    return scenario.withPlaces(places);
  }

  @Test
  void whatIsThereInBothIsNotBought() throws Exception {
    Scenario now = farm(66, null, 20);
    Scenario priced = farm(66, chamber(), 20);
    assertThat(investment(priced, priced).worth()).isNull();
    // A cost in one of the two only: neither bought nor free.
    assertThat(investment(now, priced).worth()).isNull();
    assertThat(investment(now, priced).unpriced()).hasSize(1);
  }

  @Test
  void anotherClimateAtAPriceOfItsOwnIsBought() throws Exception {
    Scenario now = farm(66, chamber(), 20);
    List<Place> places =
        now.places().stream()
            .map(
                p ->
                    p.name().equals("Tunnel")
                        ? new Place(
                            p.name(),
                            p.kind(),
                            p.spaces(),
                            new Climate.Constant(22),
                            0,
                            Money.cost("700", 10, "90", "2"))
                        : p)
            .toList();
    Investment.Worth worth = worth(now, now.withPlaces(places));
    assertThat(worth.buy()).isEqualByComparingTo("700");
    // 700 / 7.36009.
    assertThat(worth.yearly()).isEqualTo(amount("95.11"));
  }

  @Test
  void whatOutlivesItsPaybackIsPaidBackAndWhatDoesNotIsNever() throws Exception {
    // 2.75 more a season pay 27.50 back after ten years without interest, and not after nine.
    money.discount = 0;
    assertThat(secondMat(Money.cost("27.50", 10, "0", "0")).paybackYears())
        .isCloseTo(5, within(1e-9));
    assertThat(secondMat(Money.cost("27.50", 5, "0", "0")).paybackYears())
        .isCloseTo(5, within(1e-9));
    assertThat(secondMat(Money.cost("27.51", 5, "0", "0")).paybackYears()).isNull();
  }

  /** On one mat the second of two trays is sown on day 5 and is late: 4.00 for it, not 9.50. */
  private Investment.Worth secondMat(Place.Cost cost) throws Exception {
    farm.sowings = List.of(Farms.sowing("a", 0, 2, 0, 20));
    farm.mats = 1;
    Scenario one = money.in(farm.make());
    return worth(one, Money.withCost(one, "Mats", 2, cost));
  }

  /**
   * 5.50 a season for two years and a half: at 6 % 12.43 today, to the day, whichever way it is
   * reckoned, for what it costs a year is reckoned over the same time.
   */
  @Test
  void aLifeThatEndsWithinAYearPaysByTheSameReckoningThroughout() throws Exception {
    double worth = 5.5 * InvestmentFormulas.annuityFactor(.06, 2.5);
    assertThat(worth).isCloseTo(12.43, within(.005));
    for (double buy : new double[] {worth - .02, worth + .02}) {
      Investment.Worth mat =
          secondMat(Money.cost(BigDecimal.valueOf(buy).toString(), 2.5, "0", "0"));
      assertThat(mat.netPresentValue() > 0).isEqualTo(buy < worth);
      assertThat(mat.chancePays()).isEqualTo(buy < worth ? 1 : 0);
    }
  }

  @Test
  void amountsOfDifferentCurrenciesAreNotSubtracted() {
    Scenario euros = farm(66, chamber(), 20);
    Prices p = money.prices();
    Prices dollars =
        new Prices(
            "USD",
            Map.of(),
            p.otherwise(),
            p.tray(),
            p.potTray(),
            p.discount(),
            p.sellSurplus(),
            BigDecimal.ZERO);
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(
            () ->
                Comparing.compare(
                    List.of(euros, euros.named("Same"), Money.in(euros.named("Other"), dollars)),
                    SETTINGS,
                    share -> {}))
        .withMessage(
            "test reckons in EUR and Other in USD: amounts of different currencies cannot be"
                + " compared; write both in one");
  }
}
