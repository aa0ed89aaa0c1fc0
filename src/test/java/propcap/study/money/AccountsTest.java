package propcap.study.money;

import static org.assertj.core.api.Assertions.assertThat;
import static propcap.study.Money.amount;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.chance.DrawPurpose;
import propcap.chance.HandLuck;
import propcap.chance.SeasonLuck;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.Money;

/**
 * Seasons worked by hand in money. A tray of ten cells stands on the mats for 5 days, on the table
 * for 10, and is planted out 19 days after it was sown. A plant on time is worth 0.95, a late one
 * 0.40, and one that is lacking costs 1.20.
 */
class AccountsTest {
  private final Farms farm = new Farms();
  private final Money money = new Money();

  private void sow(int trays, int plantsNeeded, int bedBy) {
    farm.sowings.add(
        new Sowing(
            "sowing " + farm.sowings.size(),
            "cosmos",
            "lot",
            Farms.day(0),
            trays,
            plantsNeeded,
            Farms.day(0),
            Farms.day(bedBy),
            null,
            Farms.day(30),
            null,
            Sowing.Leeway.NOT_SAID));
  }

  private BigDecimal margin() {
    Scenario scenario = money.in(farm.make());
    return margin(scenario, new HandLuck(scenario).make());
  }

  private static BigDecimal margin(Scenario scenario, SeasonLuck luck) {
    return Accounts.margin(
        scenario, prices(scenario), House.season(new SeasonPlan(scenario), luck));
  }

  private static Prices prices(Scenario scenario) {
    Prices prices = scenario.prices();
    if (prices == null) {
      throw new AssertionError("the farm has no money");
    }
    return prices;
  }

  private static void assertIs(BigDecimal margin, String amount) {
    assertThat(margin).isEqualByComparingTo(amount);
  }

  @Test
  void plantsOnTimeAreSold() {
    sow(1, 10, 59);
    assertIs(margin(), "9.50");
  }

  @Test
  void latePlantsAreSoldForLess() {
    sow(1, 10, 18);
    assertIs(margin(), "4.00");
  }

  @Test
  void plantsThatAreLackingAreBoughtIn() {
    sow(1, 25, 59);
    // 9.50 - 15 x 1.20.
    assertIs(margin(), "-8.50");
  }

  @Test
  void aLatePlantIsNotLackingAsWell() {
    sow(1, 12, 18);
    // 4.00 - 2 x 1.20.
    assertIs(margin(), "1.60");
  }

  @Test
  void surplusIsWorthNothingUnlessItIsSold() {
    sow(1, 7, 59);
    assertIs(margin(), "9.50");
    money.sellSurplus = false;
    assertIs(margin(), "6.65");
  }

  /** With one mat the second tray waits until the first leaves, and is out on day 24. */
  @Test
  void ofMorePlantsThanAreNeededTheLateOnesAreTheSurplus() {
    farm.mats = 1;
    sow(2, 14, 20);
    assertIs(margin(), "13.50");
    money.sellSurplus = false;
    // 10 x 0.95 + 4 x 0.40.
    assertIs(margin(), "11.10");
  }

  @Test
  void surplusOfOneSowingDoesNotFillTheLackOfAnother() {
    sow(1, 0, 59);
    sow(1, 20, 59);
    money.sellSurplus = false;
    // Nothing for the first, 9.50 - 10 x 1.20 for the second.
    assertIs(margin(), "-2.50");
  }

  @Test
  void everyTrayThatIsSownCostsSeedAndMix() {
    sow(3, 30, 59);
    money.tray = amount("1.10");
    assertIs(margin(), "25.20");
  }

  /** Of seeds that come up in every second cell none does in the first tray: it has failed. */
  @Test
  void aTraySownAgainCostsSeedAndMixAgain() {
    Crops crop = new Crops();
    crop.germination = new Crop.Germination(.5, 0, 0);
    crop.pullAfterDays = 5;
    farm.crops = List.of(crop.make());
    sow(1, 10, 59);
    money.tray = amount("1.10");
    Scenario scenario = money.in(farm.make());
    SeasonLuck luck =
        new HandLuck(scenario)
            .with(0, 0, 0, DrawPurpose.FILLS, 1e-9)
            .with(0, 0, 1, DrawPurpose.FILLS, 1 - 1e-9)
            .make();
    SeasonOutcome season = House.season(new SeasonPlan(scenario), luck);
    assertThat(season.trays(0, TrayMove.SOWN)).isEqualTo(2);
    assertThat(season.onTime(0)).isEqualTo(10);
    // 9.50 - 2 x 1.10.
    assertIs(margin(scenario, luck), "7.30");
  }

  /** Ten plugs at four pots a tray fill three trays of pots. */
  @Test
  void traysOfPotsAreCounted() {
    Crops crop = new Crops();
    crop.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 4, 5, 10, 0);
    farm.crops = List.of(crop.make());
    sow(1, 10, 59);
    money.potTray = amount("2.40");
    // 9.50 - 3 x 2.40.
    assertIs(margin(), "2.30");
  }

  @Test
  void aCropsOwnPricesComeFirst() {
    sow(1, 12, 59);
    Prices.PlantPrices own =
        new Prices.PlantPrices(amount("2.05"), amount("1"), amount("0.07"), amount("6.50"));
    Prices prices =
        new Prices(
            "EUR",
            Map.of("cosmos", own),
            null,
            amount("1.10"),
            BigDecimal.ZERO,
            .06,
            true,
            BigDecimal.ZERO);
    Scenario scenario = Money.in(farm.make(), prices);
    // 10 x 2.05 - 2 x 0.07 - 6.50.
    assertIs(margin(scenario, new HandLuck(scenario).make()), "13.86");
  }

  /** On the mats from day 0 to day 4: five days; buying and keeping them is not the season's. */
  @Test
  void aPlaceRunsOnTheDaysOnWhichItHasAnythingInIt() {
    sow(1, 10, 59);
    Scenario scenario =
        Money.withCost(money.in(farm.make()), "Mats", 10, Money.cost("5200", 12, "150", "3.60"));
    assertIs(margin(scenario, new HandLuck(scenario).make()), "-8.50");
  }

  @Test
  void twoTraysInAPlaceRunItOnce() {
    sow(2, 20, 59);
    Scenario scenario =
        Money.withCost(money.in(farm.make()), "Mats", 10, Money.cost("0", 12, "0", "3.60"));
    // 19.00 - 5 x 3.60.
    assertIs(margin(scenario, new HandLuck(scenario).make()), "1.00");
  }

  /** A tenth has no end in binary: a thousand of them would come to 99.9999999999986. */
  @Test
  void aThousandTimesATenthIsAHundred() {
    Crops crop = new Crops();
    crop.cells = 1;
    farm.crops = List.of(crop.make());
    farm.mats = 1000;
    farm.house = 1000;
    farm.yard = 1000;
    IntStream.range(0, 1000).forEach(i -> sow(1, 1, 59));
    money.worth = amount("0.1");
    assertIs(margin(), "100");
    double sum = 0;
    for (int i = 0; i < 1000; i++) {
      sum += 0.1;
    }
    assertThat(sum).isNotEqualTo(100);
  }
}
