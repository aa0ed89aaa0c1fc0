package propcap.files.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Materials;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.GrowersFolder;
import propcap.files.text.FaultsException;

class ScenarioReaderTest {
  private GrowersFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new GrowersFolder(path);
  }

  @Test
  void theExampleSetIsReadWhole() throws FaultsException {
    Scenario scenario = folder.read();

    assertThat(scenario.name()).isEqualTo("base");
    assertThat(scenario.trays()).isEqualTo(614);
    assertThat(scenario.sowings()).hasSize(16);
    assertThat(scenario.weather()).hasSize(6);
    assertThat(scenario.crops()).hasSize(7);
    assertThat(scenario.season().days()).isEqualTo(175);
    assertThat(scenario.frostAtC()).isZero();
    assertThat(scenario.rounds().at()).isEqualTo(LocalTime.of(8, 0));
    assertThat(scenario.rounds().rest()).containsExactly(DayOfWeek.SUNDAY);
    assertThat(scenario.places())
        .extracting(Place::name)
        .containsExactly("Chamber", "Mats", "House 1", "Yard");
    assertThat(scenario.places().get(0))
        .isEqualTo(
            new Place("Chamber", PlaceKind.CHAMBER, 60, new Climate.Constant(22), 0.08, null));
    assertThat(scenario.places().get(2).climate()).isEqualTo(new Climate.Heated(14, 5, 26));
    assertThat(scenario.places().get(3).climate()).isEqualTo(new Climate.Outdoor());
  }

  @Test
  void everyKeyOfACropIsRead() throws FaultsException {
    assertThat(folder.read().crops().get("tomato"))
        .isEqualTo(
            new Crop(
                "tomato",
                72,
                1,
                new Crop.Germination(0.9, 100, 0.02),
                new Crop.Emergence(9, 29, 38, 22, 6.5, 9.5),
                List.of("Chamber", "Mats"),
                0.5,
                21,
                5,
                0.25,
                new Crop.GrowingOn(
                    8, 24, 18, 24, 0.08, 0.02, new Crop.DampingOff(0.04, 0.4), 10, 0.04),
                new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 18, 20, 12, 0.02),
                new Crop.Hardening(10, 6, 0, 0.25, 0.02, 0.2, 0),
                Materials.NOT_KNOWN));
  }

  @Test
  void everyColumnOfASowingIsRead() throws FaultsException {
    assertThat(folder.read().sowings().get(11))
        .isEqualTo(
            new Sowing(
                "tomato-1",
                "tomato",
                "tom-a",
                LocalDate.of(2027, 3, 8),
                40,
                2300,
                LocalDate.of(2027, 5, 5),
                LocalDate.of(2027, 5, 28),
                LocalDate.of(2027, 6, 12),
                LocalDate.of(2027, 3, 28),
                null,
                Sowing.Leeway.NOT_SAID));
  }

  @Test
  void cellsThatMayBeEmptyAreReadAsNone() throws FaultsException {
    folder.change(
        "sowings.csv",
        "tomato-1,tomato,tom-a,2027-03-08,40,2300,2027-05-05,2027-05-28,2027-06-12,2027-03-28",
        "tomato-1,tomato,,2027-03-08,40,2300,2027-05-05,2027-05-28,,");

    Sowing sowing = folder.read().sowings().get(11);

    assertThat(sowing.lot()).isEqualTo("tomato");
    assertThat(sowing.bedUntil()).isNull();
    assertThat(sowing.resowUntil()).isNull();
  }

  @Test
  void whatIsNotWrittenTakesItsDefault() throws FaultsException {
    folder.change("scenario.yaml", "name: base\n", "");
    folder.change("scenario.yaml", "frost-at: 0 C\n", "");
    folder.change("scenario.yaml", "rounds: {at: \"08:00\", rest: [SUNDAY]}\n", "");
    folder.change("scenario.yaml", ", stretch-loss: 8 %/day", "");
    folder.change("scenario.yaml", ", lift: 5, vent-at: 26 C", "");
    folder.write(
        "crops.yaml",
        folder.text("crops.yaml")
            + """
                stock:
                  cells: 128
                  germination: {rate: 80 %}
                  emergence: {base: 4 C, optimum: 20 C, ceiling: 30 C, at: 18 C, half-by: 5 days, most-by: 8 days}
                  germinate-in: [Mats]
                  growing-on: {base: 4 C, optimum: 20 C, at: 16 C, takes: 30 days, holds: 10 days}
                  hardening: {takes: 8 days}
              """);

    Scenario scenario = folder.read();

    assertThat(scenario.name()).isEqualTo("scenario");
    assertThat(scenario.frostAtC()).isZero();
    assertThat(scenario.rounds().at()).isEqualTo(LocalTime.of(8, 0));
    assertThat(scenario.rounds().rest()).isEmpty();
    assertThat(scenario.places().get(0).stretchLossPerDay()).isZero();
    assertThat(scenario.places().get(2).climate()).isEqualTo(new Climate.Heated(14, 0, 35));
    assertThat(scenario.crops().get("stock"))
        .isEqualTo(
            new Crop(
                "stock",
                128,
                1,
                new Crop.Germination(0.8, 0, 0),
                new Crop.Emergence(4, 20, 30, 18, 5, 8),
                List.of("Mats"),
                0.5,
                21,
                5,
                0.25,
                new Crop.GrowingOn(4, 20, 16, 30, 0.1, 0.03, Crop.DampingOff.NONE, 10, 0.03),
                Crop.PottingOn.NEVER,
                new Crop.Hardening(8, 2, -2, 0.1, 0.02, 0.1, 0),
                Materials.NOT_KNOWN));
  }

  @Test
  void degreesFahrenheitAreReadAsDegreesC() throws FaultsException {
    folder.change("scenario.yaml", "constant: 21 C", "constant: 70 F");

    Climate climate = folder.read().places().get(1).climate();

    // Common practice: 70 F is 21.1 C.
    assertThat(climate.meanC(0)).isCloseTo(21.1, within(0.05));
  }

  @Test
  void theMarksOfOtherEditorsDoNoHarm() throws FaultsException {
    Scenario plain = folder.read();
    for (String name : List.of("scenario.yaml", "crops.yaml", "sowings.csv", "weather.csv")) {
      folder.write(name, "\uFEFF" + folder.text(name).replace("\n", "\r\n"));
    }

    Scenario marked = folder.read();

    assertThat(marked.sowings()).isEqualTo(plain.sowings());
    assertThat(marked.crops()).isEqualTo(plain.crops());
    assertThat(marked.places()).isEqualTo(plain.places());
    assertThat(marked.weather()).hasSize(6);
  }

  @Test
  void columnsMayStandInAnyOrderAndFieldsInQuotesAndBlankLinesBetween() throws FaultsException {
    folder.write(
        "sowings.csv",
        """
        crop,id,sow,lot,trays,plants-needed,bed-by,bed-from,resow-until,bed-until

        "tomato","tomato, early",2027-03-08,"tom ""a""\",40,2300,2027-05-28,2027-05-05,,
        ,,,,,,,,,
        """);

    assertThat(folder.read().sowings())
        .containsExactly(
            new Sowing(
                "tomato, early",
                "tomato",
                "tom \"a\"",
                LocalDate.of(2027, 3, 8),
                40,
                2300,
                LocalDate.of(2027, 5, 5),
                LocalDate.of(2027, 5, 28),
                null,
                null,
                null,
                Sowing.Leeway.NOT_SAID));
  }
}
