package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.files.text.FaultsException;

/** The faults that a grower can make with money: each is reported at its place. */
class MoneyFaultsTest {
  private static final String PLANTS =
      """
      tomato: {worth: 0.95, late: 0.40, short: 1.20, tray: 6.50}
          default: {worth: 0.30, late: 0.10, short: 0.45}\
      """;

  private PricedFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new PricedFolder(path);
  }

  static List<String> oneMoneyFaultEach() throws IOException {
    try (InputStream in =
            MoneyFaultsTest.class.getResourceAsStream("/propcap/files/one-money-fault-each.txt");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().filter(line -> !line.isBlank() && !line.startsWith("#")).toList();
    }
  }

  @ParameterizedTest
  @MethodSource("oneMoneyFaultEach")
  void aFaultIsReportedWhereItStandsAndNothingElseIs(String line) {
    String[] parts = line.replace("\\n", "\n").split(" \\| ", -1);

    String place = folder.change(parts[0], parts[1]);

    assertThat(folder.faults()).containsExactly(place + ": " + parts[2]);
  }

  /** The one fault of a scenario that extends the priced one must stand at the ^ in it. */
  private void isReported(String changes, String fault) {
    String place = folder.files().writeMarked("other.yaml", "extends: priced.yaml\n" + changes);
    assertThat(folder.files().faults("other.yaml")).containsExactly(place + ": " + fault);
  }

  @Test
  void manyFaultsAreReportedInOneGo() {
    folder.change("currency: EUR", "curency: EUR");
    folder.change("worth: 0.95", "worth: \"0,95\"");
    folder.change("tray: 1.10", "tray: -1.10");
    folder.change("lasts: 12 years", "lasts: 12");
    folder.change("run: 3.60/day", "run: 3.60/year");

    assertThat(folder.faults())
        .containsExactly(
            "priced.yaml:3:3: unknown key 'curency'; did you mean currency?",
            "priced.yaml:5:21: worth of tomato's prices is '0,95'; an amount such as 1.10",
            "priced.yaml:7:9: tray of money is '-1.10'; 0 to 1000000000",
            "priced.yaml:12:46: lasts of Chamber's cost is '12'; a unit is missing: a number of"
                + " years, such as 12 years",
            "priced.yaml:12:71: run of Chamber's cost is '3.60/year'; an amount a day, such as"
                + " 3.60/day");
  }

  @Test
  void moneyNeedsItsCurrencyItsPlantsAndItsTrays() {
    folder.files().write("other.yaml", "extends: scenario.yaml\nmoney: {discount: 6 %}\n");

    assertThat(folder.files().faults("other.yaml"))
        .containsExactly(
            "other.yaml:2:1: currency of money is missing; the key currency",
            "other.yaml:2:1: plants of money is missing; the key plants",
            "other.yaml:2:1: pot-tray of money is missing; the key pot-tray",
            "other.yaml:2:1: tray of money is missing; the key tray");
  }

  @Test
  void everyCropThatIsSownNeedsAPriceAndIsReportedOnce() {
    folder.change(
        PLANTS,
        """
        tomato: {worth: 0.95, late: 0.40, short: 1.20}
            onion: {worth: 0.04, late: 0.02, short: 0.06}
            peper: {worth: 0.80, late: 0.40, short: 1}
            snapdragon: {worth: 0.25, late: 0.10, short: 0.30}
            marigold: {worth: lots, late: 0.10, short: 0.30}\
        """);

    assertThat(folder.faults())
        .containsExactly(
            "priced.yaml:4:3: no prices for cabbage, which is sown; an entry for cabbage in plants,"
                + " or for default",
            "priced.yaml:4:3: no prices for lettuce, which is sown; an entry for lettuce in plants,"
                + " or for default",
            "priced.yaml:7:5: unknown key 'peper'; did you mean pepper?",
            "priced.yaml:9:23: worth of marigold's prices is 'lots'; an amount such as 1.10");
  }

  @Test
  void aCropThatIsNotSownNeedsNoPrice() throws FaultsException {
    folder.change(PLANTS, "tomato: {worth: 0.95, late: 0.40, short: 1.20}");
    folder
        .files()
        .write(
            "sowings.csv",
            """
            id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until
            a,tomato,,2027-03-01,3,10,2027-05-01,2027-06-01,,
            """);

    assertThat(folder.read().prices()).isNotNull();
  }

  @Test
  void aChangeOfTheCurrencyThatLeavesAmountsBehindIsTheChangesFault() {
    isReported(
        "money: {currency: ^USD}\n",
        "currency is 'USD', where amounts are in EUR; amounts in the same currency");
  }

  @Test
  void aSowingThatIsChangedToACropWithoutPricesIsTheChangesFault() {
    folder.change(PLANTS, "tomato: {worth: 0.95, late: 0.40, short: 1.20}");
    folder
        .files()
        .write(
            "sowings.csv",
            """
            id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until
            a,tomato,,2027-03-01,3,10,2027-05-01,2027-06-01,,
            """);

    isReported(
        "sowings:\n  - {match: a, ^crop: onion}\n",
        "crop of a is 'onion', for which money has no prices; an entry for onion in plants, or for"
            + " default");
  }

  @Test
  void faultsOfAChangeStandInTheChange() {
    isReported(
        "money: {plants: {tomato: {worth: ^1.10 USD}}}\n",
        "worth of tomato's prices is '1.10 USD'; an amount in EUR");
    isReported(
        "money: {plants: {^tomatoe: {worth: 1.10}}}\n",
        "unknown key 'tomatoe'; did you mean tomato?");
    isReported(
        "places:\n  - {name: Chamber, cost: {lasts: ^0 years}}\n",
        "lasts of Chamber's cost is '0 years'; more than 0");
  }

  @Test
  void aNewCostNeedsItsPriceAndHowLongItLasts() {
    folder
        .files()
        .write("other.yaml", "extends: priced.yaml\nplaces:\n  - {name: Mats, cost: {}}\n");

    assertThat(folder.files().faults("other.yaml"))
        .containsExactly(
            "other.yaml:3:18: buy of Mats's cost is missing; the key buy",
            "other.yaml:3:18: lasts of Mats's cost is missing; the key lasts");
  }

  @Test
  void aMissingBaseDoesNotMakeItsChangesFaults() {
    folder
        .files()
        .write(
            "other.yaml",
            """
            extends: none.yaml
            places:
              - {name: Chamber, cost: {keep: 100/year}}
            money:
              plants: {dahlia: {worth: 1.10 USD}}
              tray: much
            """);

    assertThat(folder.files().faults("other.yaml"))
        .containsExactly(
            "other.yaml:1:10: no file 'none.yaml'; the name of a file that is there",
            "other.yaml:6:9: tray of money is 'much'; an amount such as 1.10");
  }

  @Test
  void aMissingCropListDoesNotMakePricesFaults() {
    folder.files().change("scenario.yaml", "crops.yaml", "none.yaml");

    assertThat(folder.faults())
        .containsExactly(
            "scenario.yaml:3:8: no file 'none.yaml'; the name of a file that is there");
  }
}
