package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.files.text.FaultsException;
import propcap.files.text.Right;

/** The faults that a grower can make: each is reported at its place, and nothing else is. */
class FaultsTest {
  private GrowersFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new GrowersFolder(path);
  }

  static List<String> oneFaultEach() throws IOException {
    try (InputStream in =
            FaultsTest.class.getResourceAsStream("/propcap/files/one-fault-each.txt");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().filter(line -> !line.isBlank() && !line.startsWith("#")).toList();
    }
  }

  @ParameterizedTest
  @MethodSource("oneFaultEach")
  void aFaultIsReportedWhereItStandsAndNothingElseIs(String line) {
    String[] parts = line.replace("\\n", "\n").split(" \\| ", -1);

    String place = folder.change(parts[0], parts[1], parts[2]);

    assertThat(folder.faults()).containsExactly(place + ": " + parts[3]);
  }

  @Test
  void aDozenFaultsInFourFilesAreReportedInOneGo() {
    folder.change("scenario.yaml", "frost-at: 0 C", "frost-at: 0");
    folder.change("scenario.yaml", "[SUNDAY]", "[SUNDY]");
    folder.change("scenario.yaml", "kind: heat-bench", "kind: bench");
    folder.change("scenario.yaml", "spaces: 160", "space: 160");
    folder.change("crops.yaml", "base: 1.4 C", "base: 25 C");
    folder.change("crops.yaml", "leave-at: 50 %", "leave-at: 150 %");
    folder.change("crops.yaml", "most-by: 4.5 days", "most-by: 2 days");
    folder.change("crops.yaml", "germinate-in: [Mats, House 1]", "germinate-in: [Mat, House 1]");
    folder.change("sowings.csv", "snap-2,snapdragon", "snap-1,snapdragon");
    folder.change("sowings.csv", "pepper-1,pepper,", "pepper-1,peper,");
    folder.change("sowings.csv", "2027-03-20,48", "2028-03-20,48");
    folder.change("weather.csv", "2001-01-01,", "2001-01-02,");

    assertThat(folder.faults())
        .containsExactly(
            "crops.yaml:6:17: base of onion's emergence is '25 C', not below optimum '24 C';"
                + " base below optimum",
            "crops.yaml:15:15: leave-at of cabbage is '150 %'; 0 to 100 %",
            "crops.yaml:21:87: most-by of lettuce's emergence is '2 days', not later than half-by"
                + " '3 days'; most-by later than half-by",
            "crops.yaml:31:20: no place is named 'Mat'; did you mean Mats?",
            "scenario.yaml:6:11: frost-at is '0'; a unit is missing: a temperature in C or F, such"
                + " as 21 C or 70 F",
            "scenario.yaml:7:30: rest day 'SUNDY'; did you mean SUNDAY?",
            "scenario.yaml:10:24: kind of Mats is 'bench'; one of heat-bench, chamber, table,"
                + " hardening",
            "scenario.yaml:12:35: unknown key 'space'; did you mean spaces?",
            "sowings.csv:5: id 'snap-1' again, first on line 4; each sowing with an id of its own",
            "sowings.csv:12: crop of pepper-1 is 'peper', which the crop list lacks; did you mean"
                + " pepper?",
            "sowings.csv:15: sow of marigold-1 is '2028-03-20', outside the season; 2027-01-11 to"
                + " 2027-07-04",
            "weather.csv:1830: date 2001-01-02 again, first on line 1829; each day once");
  }

  /** Whoever shows a fault at its field puts the one for the other; no quote gets in the way. */
  @Test
  void theKnownWordThatIsMeantIsToldBesideTheWords() {
    folder.change("scenario.yaml", "[SUNDAY]", "[Sundy]");
    folder.change("crops.yaml", "germinate-in: [Mats, House 1]", "germinate-in: [Mat', House 1]");
    folder.change("sowings.csv", "pepper-1,pepper,", "pepper-1,peper,");
    folder.change("sowings.csv", "2027-03-20,48", "2028-03-20,48");

    assertThat(
            catchThrowableOfType(FaultsException.class, folder::read).faults().stream()
                .map(fault -> fault.about().slip()))
        .containsExactly(
            new Right.Slip("Mat'", "Mats"),
            new Right.Slip("Sundy", "SUNDAY"),
            new Right.Slip("peper", "pepper"),
            null);
  }

  @Test
  void twoColumnsOfOneNameLeaveAnotherOut() {
    folder.change("sowings.csv", "id,crop,lot", "id,crop,crop");

    assertThat(folder.faults())
        .containsExactly(
            "sowings.csv:1: column 'crop' again; each column once",
            "sowings.csv:1: no column lot; the header"
                + " id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until");
  }

  @Test
  void cellsAreStillReadUnderAHeaderThatLacksAColumn() {
    folder.write(
        "sowings.csv",
        """
        id,crop,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until
        a,onion,2027-02-01,none,5,2027-04-01,2027-05-01,,
        """);

    assertThat(folder.faults())
        .containsExactly(
            "sowings.csv:1: no column lot; the header"
                + " id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until",
            "sowings.csv:2: trays of a is 'none'; a whole number from 0 to 100000");
  }

  @Test
  void faultsOfTheWeatherAreReportedOnTheirLines() {
    folder.write(
        "weather.csv",
        GrowersFolder.weather(LocalDate.of(2001, 1, 1), LocalDate.of(2001, 12, 31))
            + """
            2002-01-01,5.0,4.9
            2001-12-31,1,2
            2002-02-29,1,2
            2002-01-03,,2
            2002-01-04,1,NaN
            2002-01-05,1,1e999
            2002-01-06,1 C,2
            2002-01-07,1
            """);

    assertThat(folder.faults())
        .containsExactly(
            "weather.csv:367: tmin is '5.0', above tmax '4.9'; tmin at or below tmax",
            "weather.csv:368: date 2001-12-31 again, first on line 366; each day once",
            "weather.csv:369: date is '2002-02-29'; a date such as 2027-03-28",
            "weather.csv:370: tmin is empty; a plain number of degrees, such as 5",
            "weather.csv:371: tmax is 'NaN'; a plain number of degrees, such as 5",
            "weather.csv:372: tmax is '1e999'; a finite number: a plain number of degrees, such"
                + " as 5",
            "weather.csv:373: tmin is '1 C'; a plain number of degrees, such as 5",
            "weather.csv:374: a row of 2 fields; 3 fields, as in the header");
  }

  @Test
  void aRecordWithoutAWholeSeasonIsAFaultOfTheWeatherFile() {
    folder.write(
        "weather.csv", GrowersFolder.weather(LocalDate.of(2001, 1, 12), LocalDate.of(2002, 1, 10)));

    assertThat(folder.faults())
        .containsExactly(
            "weather.csv: no year of the record covers the season 2027-01-11 to 2027-07-04; a year"
                + " with a row for each of its days");
  }

  @Test
  void aSownCropWithoutAnOpenPlaceIsReportedAndOneThatIsNotSownIsNot() {
    folder.change("scenario.yaml", "spaces: 60", "spaces: 0");
    folder.change("scenario.yaml", "spaces: 36", "spaces: 0");
    folder.change(
        "sowings.csv",
        "pepper-1,pepper,pep-a,2027-02-26,36,1800,2027-05-08,2027-05-30,2027-06-15,2027-03-20\n",
        "");

    // Onions and others may still germinate in House 1.
    assertThat(folder.faults())
        .containsExactly(
            "crops.yaml:38:5: no open place can germinate tomato: Chamber, Mats; spaces in one of"
                + " them, or another place in germinate-in");
  }

  @Test
  void keysThatAreMissingAreReportedForTheWholeScenario() {
    folder.write("scenario.yaml", "name: bare\n");

    assertThat(folder.faults())
        .containsExactly(
            "scenario.yaml: crops is missing; the key crops",
            "scenario.yaml: places is missing; the key places",
            "scenario.yaml: season is missing; the key season",
            "scenario.yaml: sowings is missing; the key sowings",
            "scenario.yaml: weather is missing; the key weather");
  }

  @Test
  void oneFaultOfACropDoesNotHideAnother() {
    folder.change("crops.yaml", "germinate-in: [Mats, House 1]", "germinate-in: []");
    folder.change(
        "crops.yaml",
        "    cells: 200\n    seeds-per-cell: 2\n    germination: {rate: 78 %",
        "    cells: 2 00\n    germination: {rate: 780 %");
    folder.change("crops.yaml", "takes: 45 days", "takes: 45");

    assertThat(folder.faults())
        .containsExactly(
            "crops.yaml:27:12: cells of snapdragon is '2 00'; a whole number from 1 to 10000",
            "crops.yaml:28:25: rate of snapdragon's germination is '780 %'; 0 to 100 %",
            "crops.yaml:30:5: no place to germinate snapdragon in; a place",
            "crops.yaml:31:61: takes of snapdragon's growing-on is '45'; a unit is missing: a"
                + " number of days, such as 8 days");
  }

  @Test
  void aMissingCropListIsOneFaultNotOneForEachSowing() {
    folder.change("scenario.yaml", "crops.yaml", "none.yaml");

    assertThat(folder.faults())
        .containsExactly(
            "scenario.yaml:3:8: no file 'none.yaml'; the name of a file that is there");
  }
}
