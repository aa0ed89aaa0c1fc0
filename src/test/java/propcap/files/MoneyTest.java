package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Prices.PlantPrices;
import propcap.farm.Scenario;
import propcap.files.text.FaultsException;

class MoneyTest {
  private static final PlantPrices TOMATO = plant("0.95", "0.40", "1.20", "6.50");
  private static final PlantPrices OTHERS = plant("0.30", "0.10", "0.45", null);
  private static final Place.Cost CHAMBER = cost("5200", 12, "150", "3.60");

  private PricedFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new PricedFolder(path);
  }

  private static BigDecimal amount(String text) {
    return new BigDecimal(text);
  }

  private static PlantPrices plant(
      String worth, String late, String lacking, @Nullable String tray) {
    return new PlantPrices(
        amount(worth), amount(late), amount(lacking), tray == null ? null : amount(tray));
  }

  private static Place.Cost cost(String buy, double years, String keep, String run) {
    return new Place.Cost(amount(buy), years, amount(keep), amount(run));
  }

  private static Prices prices(Scenario scenario) {
    return Objects.requireNonNull(scenario.prices());
  }

  private static Place place(Scenario scenario, String name) {
    return scenario.places().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void everyKeyOfMoneyAndOfACostIsRead() throws FaultsException {
    Scenario scenario = folder.read();

    assertThat(prices(scenario))
        .isEqualTo(
            new Prices(
                "EUR",
                Map.of("tomato", TOMATO),
                OTHERS,
                amount("1.10"),
                amount("2.40"),
                0.06,
                true,
                BigDecimal.ZERO));
    assertThat(place(scenario, "Chamber").cost()).isEqualTo(CHAMBER);
    assertThat(place(scenario, "Mats").cost()).isNull();
  }

  @Test
  void anHourOfWorkMayHaveAPrice() throws FaultsException {
    assertThat(prices(folder.read()).hour()).isEqualByComparingTo("0");
    folder.change("  sell-surplus: true\n", "  sell-surplus: true\n  hour: 14.50\n");
    assertThat(prices(folder.read()).hour()).isEqualTo(amount("14.50"));
  }

  @Test
  void whatIsNotWrittenTakesItsDefault() throws FaultsException {
    folder.change("  discount: 6 %\n  sell-surplus: true\n", "");
    folder.change(", keep: 150/year, run: 3.60/day", "");

    Scenario scenario = folder.read();

    assertThat(prices(scenario).discount()).isZero();
    assertThat(prices(scenario).sellSurplus()).isFalse();
    assertThat(place(scenario, "Chamber").cost()).isEqualTo(cost("5200", 12, "0", "0"));
  }

  @Test
  void aScenarioWithoutMoneyHasNoPrices() throws FaultsException {
    assertThat(folder.files().read().prices()).isNull();
  }

  @Test
  void aCostWithoutMoneyIsReadInAnyCurrency() throws FaultsException {
    folder
        .files()
        .write(
            "other.yaml",
            """
            extends: scenario.yaml
            places:
              - {name: Chamber, cost: {buy: 5200 $, lasts: 1 year}}
            """);

    Scenario scenario = folder.files().read("other.yaml");

    assertThat(scenario.prices()).isNull();
    assertThat(place(scenario, "Chamber").cost()).isEqualTo(cost("5200", 1, "0", "0"));
  }

  @Test
  void noDefaultIsNeededWhereEveryCropThatIsSownHasPrices() throws FaultsException {
    StringBuilder plants = new StringBuilder();
    for (String crop : folder.files().read().crops().keySet()) {
      plants.append("\n    ").append(crop).append(": {worth: 1, late: 0, short: 2}");
    }
    folder.change(
        """

            tomato: {worth: 0.95, late: 0.40, short: 1.20, tray: 6.50}
            default: {worth: 0.30, late: 0.10, short: 0.45}\
        """,
        plants.toString());

    assertThat(prices(folder.read()).otherwise()).isNull();
    assertThat(prices(folder.read()).byCrop()).hasSize(7);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"1.10", "+1.10", "1.10 EUR", "1.10EUR", "1.10\u00A0EUR", "\"  1.10  EUR \""})
  void anAmountIsReadAsPeopleWriteIt(String text) throws FaultsException {
    folder.change("\n  tray: 1.10\n", "\n  tray: " + text + "\n");

    assertThat(prices(folder.read()).tray()).isEqualTo("1.10");
  }

  @ParameterizedTest
  @ValueSource(strings = {"150/year", "150 / year", "150 EUR/year", "150EUR / year"})
  void anAmountAYearIsReadAsPeopleWriteIt(String text) throws FaultsException {
    folder.change("150/year", text);

    assertThat(place(folder.read(), "Chamber").cost()).isEqualTo(CHAMBER);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0",
        "0.1",
        ".5",
        "5.",
        "123456.789012345678901234567890123456789",
        "1000000000"
      })
  void amountsKeepEveryDigit(String text) throws FaultsException {
    folder.change("\n  tray: 1.10\n", "\n  tray: " + text + "\n");

    assertThat(prices(folder.read()).tray()).isEqualTo(amount(text));
  }

  @Test
  void anExtendingScenarioChangesMoneyKeyByKeyAndPlantsByCrop() throws FaultsException {
    Scenario scenario =
        folder.extended(
            """
            money:
              plants: {tomato: {late: 0.55 EUR}, onion: {worth: 0.04, late: 0.02, short: 0.06}}
              pot-tray: 3
              sell-surplus: false
            """);

    assertThat(prices(scenario))
        .isEqualTo(
            new Prices(
                "EUR",
                Map.of(
                    "tomato",
                    plant("0.95", "0.55", "1.20", "6.50"),
                    "onion",
                    plant("0.04", "0.02", "0.06", null)),
                OTHERS,
                amount("1.10"),
                amount("3"),
                0.06,
                false,
                BigDecimal.ZERO));
  }

  @Test
  void aPlaceThatIsChangedKeepsItsCostAndChangesItKeyByKey() throws FaultsException {
    assertThat(
            place(folder.extended("places:\n  - {name: Chamber, spaces: 9}\n"), "Chamber").cost())
        .isEqualTo(CHAMBER);
    assertThat(
            place(
                    folder.extended("places:\n  - {name: Chamber, cost: {buy: 4800 EUR}}\n"),
                    "Chamber")
                .cost())
        .isEqualTo(cost("4800", 12, "150", "3.60"));
  }

  @Test
  void aPlaceLikeAnotherCostsTheSameUnlessItHasACostOfItsOwn() throws FaultsException {
    Scenario scenario =
        folder.extended(
            """
            places:
              - {name: Chamber 2, like: Chamber, spaces: 20}
              - {name: Chamber 3, like: Chamber, cost: {buy: 900, lasts: 5 years}}
            """);

    assertThat(place(scenario, "Chamber 2").cost()).isEqualTo(CHAMBER);
    assertThat(place(scenario, "Chamber 3").cost()).isEqualTo(cost("900", 5, "0", "0"));
    assertThat(place(scenario, "Chamber 3").spaces()).isEqualTo(60);
  }

  @Test
  void aCropThatAScenarioAddsMayHaveItsPricesThere() throws FaultsException {
    Scenario scenario =
        folder.extended(
            """
            crops:
              leek:
                cells: 200
                germination: {rate: 80 %}
                emergence: {base: 2 C, optimum: 24 C, ceiling: 35 C, at: 20 C, half-by: 7 days, most-by: 9 days}
                germinate-in: [Mats]
                growing-on: {base: 3 C, optimum: 22 C, at: 16 C, takes: 50 days, holds: 20 days}
                hardening: {takes: 8 days}
            money:
              plants: {leek: {worth: 0.05, late: 0.02, short: 0.08, tray: 3}}
            """);

    assertThat(prices(scenario).trayOf("leek")).isEqualTo("3");
  }
}
