package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;

class ExtendsTest {
  private GrowersFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new GrowersFolder(path);
  }

  private Scenario extended(String changes) throws FaultsException {
    folder.write("other.yaml", "extends: scenario.yaml\n" + changes);
    return folder.read("other.yaml");
  }

  private static Sowing sowing(Scenario scenario, String id) {
    return scenario.sowings().stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
  }

  private static Crop crop(Scenario scenario, String name) {
    return Objects.requireNonNull(scenario.crops().get(name));
  }

  private static List<String> places(Scenario scenario) {
    return scenario.places().stream().map(Place::name).toList();
  }

  @Test
  void aScenarioThatChangesNothingDiffersInItsNameAlone() throws FaultsException {
    Scenario base = folder.read();
    Scenario same = extended("");

    assertThat(same.name()).isEqualTo("other");
    assertThat(same.places()).isEqualTo(base.places());
    assertThat(same.crops()).isEqualTo(base.crops());
    assertThat(same.sowings()).isEqualTo(base.sowings());
    assertThat(same.season()).isEqualTo(base.season());
  }

  @Test
  void singleKeysReplaceAndMapsChangeKeyByKey() throws FaultsException {
    Scenario scenario =
        extended(
            "name: Longer\nfrost-at: 30 F\nseason: {end: 2027-07-31}\nrounds: {at: \"07:00\"}\n");

    assertThat(scenario.name()).isEqualTo("Longer");
    assertThat(scenario.frostAtC()).isEqualTo((30.0 - 32) * 5 / 9);
    assertThat(scenario.season().start()).isEqualTo(LocalDate.of(2027, 1, 11));
    assertThat(scenario.season().end()).isEqualTo(LocalDate.of(2027, 7, 31));
    assertThat(scenario.rounds().at()).isEqualTo(LocalTime.of(7, 0));
    assertThat(scenario.rounds().rest()).hasSize(1);
  }

  @Test
  void sowingsAreAddedChangedAndRemovedFromTopToBottom() throws FaultsException {
    Scenario scenario =
        extended(
            """
            sowings:
              - {remove: "tomato*"}
              - {add: tomato-1, crop: tomato, sow: 2027-03-20, trays: 7, plants-needed: 300, bed-from: 2027-05-05, bed-by: 2027-05-28}
              - {match: tomato-1, shift: 2 days}
            """);
    List<Sowing> tomatoes =
        scenario.sowings().stream().filter(s -> s.crop().equals("tomato")).toList();
    assertThat(tomatoes).extracting(Sowing::trays).containsExactly(7);
    assertThat(tomatoes.get(0).sow()).isEqualTo(LocalDate.of(2027, 3, 22));
    assertThat(tomatoes.get(0).lot()).isEqualTo("tomato");
    assertThat(tomatoes.get(0).bedUntil()).isNull();
    assertThat(scenario.sowings().get(scenario.sowings().size() - 1)).isEqualTo(tomatoes.get(0));
  }

  @Test
  void aPlaceTakesTheKeysGivenAndAnyClimateAsAWhole() throws FaultsException {
    Scenario scenario =
        extended("places:\n  - {name: House 1, spaces: 400, climate: {heat-to: 10 C}}\n");

    assertThat(scenario.places().get(2))
        .isEqualTo(
            new Place("House 1", PlaceKind.TABLE, 400, new Climate.Heated(10, 0, 35), 0, null));
  }

  @Test
  void aNewPlaceStandsLastOrAfterTheOneItNames() throws FaultsException {
    String house = "kind: table, spaces: 50, climate: {heat-to: 5 C}}\n";

    assertThat(places(extended("places:\n  - {name: House 2, " + house)))
        .containsExactly("Chamber", "Mats", "House 1", "Yard", "House 2");
    assertThat(places(extended("places:\n  - {name: House 0, after: Mats, " + house)))
        .containsExactly("Chamber", "Mats", "House 0", "House 1", "Yard");
  }

  @Test
  void aPlaceLikeAnotherTakesItsKeysAndStandsRightAfterItInEachCrop() throws FaultsException {
    Scenario scenario =
        extended(
            """
            places:
              - {name: Chamber 2, like: Chamber, spaces: 20}
              - {name: Chamber 3, like: Chamber, after: Chamber}
              - {name: Shelf, like: Chamber 2}
            """);

    assertThat(places(scenario))
        .containsExactly("Chamber", "Chamber 3", "Mats", "House 1", "Yard", "Chamber 2", "Shelf");
    assertThat(scenario.places().get(5))
        .isEqualTo(
            new Place("Chamber 2", PlaceKind.CHAMBER, 20, new Climate.Constant(22), 0.08, null));
    assertThat(scenario.places().get(1).spaces()).isEqualTo(60);
    assertThat(crop(scenario, "tomato").germinateIn())
        .containsExactly("Chamber", "Chamber 2", "Shelf", "Chamber 3", "Mats");
    assertThat(crop(scenario, "lettuce").germinateIn())
        .containsExactly("Mats", "Chamber", "Chamber 2", "Shelf", "Chamber 3", "House 1");
    assertThat(crop(scenario, "snapdragon").germinateIn()).containsExactly("Mats", "House 1");
  }

  @Test
  void aCropThatNamesThePlaceLikeAnotherItselfKeepsItsOwnOrder() throws FaultsException {
    Scenario scenario =
        extended(
            """
            places:
              - {name: Chamber 2, like: Chamber}
            crops:
              tomato: {germinate-in: [Chamber 2, Mats, Chamber]}
            """);

    assertThat(crop(scenario, "tomato").germinateIn())
        .containsExactly("Chamber 2", "Mats", "Chamber");
  }

  @Test
  void aHardeningAreaLikeAPlaceIsNoPlaceToGerminateIn() throws FaultsException {
    Scenario scenario = extended("places:\n  - {name: Porch, like: House 1, kind: hardening}\n");

    assertThat(crop(scenario, "onion").germinateIn()).containsExactly("Chamber", "Mats", "House 1");
  }

  @Test
  void noSpacesCloseAPlace() throws FaultsException {
    Scenario scenario = extended("places:\n  - {name: Mats, spaces: 0}\n");

    assertThat(scenario.places().get(1).isOpen()).isFalse();
  }

  @Test
  void aMapOfCropsChangesTheKeysGivenHoweverDeep() throws FaultsException {
    Scenario base = folder.read();
    Scenario scenario =
        extended(
            """
            crops:
              tomato: {growing-on: {damping-off: {chance: 1 %}}, potting-on: {when: never}}
              pepper: {cells: 50}
            """);

    Crop.GrowingOn before = crop(base, "tomato").growingOn();
    Crop.GrowingOn after = crop(scenario, "tomato").growingOn();
    assertThat(after.dampingOff()).isEqualTo(new Crop.DampingOff(0.01, 0.4));
    assertThat(after.takesDays()).isEqualTo(before.takesDays());
    assertThat(crop(scenario, "tomato").pottingOn()).isEqualTo(Crop.PottingOn.NEVER);
    assertThat(crop(scenario, "pepper").cells()).isEqualTo(50);
    assertThat(crop(scenario, "onion")).isEqualTo(crop(base, "onion"));
  }

  @Test
  void aNewCropMayBeAddedWithAllItsKeys() throws FaultsException {
    Scenario scenario =
        extended(
            """
            crops:
              leek:
                cells: 200
                germination: {rate: 80 %}
                emergence: {base: 2 C, optimum: 24 C, ceiling: 35 C, at: 20 C, half-by: 7 days, most-by: 9 days}
                germinate-in: [Mats]
                growing-on: {base: 3 C, optimum: 22 C, at: 16 C, takes: 50 days, holds: 20 days}
                hardening: {takes: 8 days}
            """);

    assertThat(scenario.crops()).hasSize(8).containsKey("leek");
  }

  @Test
  void filesNamedByTheExtendingScenarioReplaceTheBases(@TempDir Path elsewhere)
      throws FaultsException, IOException {
    Files.writeString(
        elsewhere.resolve("two.csv"),
        """
        id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until
        a,onion,,2027-02-01,3,10,2027-04-01,2027-05-01,,
        b,onion,,2027-02-02,4,10,2027-04-01,2027-05-01,,
        """);
    Files.writeString(
        elsewhere.resolve("wet.csv"),
        GrowersFolder.weather(LocalDate.of(2001, 1, 1), LocalDate.of(2002, 12, 31)));
    Files.writeString(
        elsewhere.resolve("two.yaml"),
        "extends: " + folder.path("scenario.yaml") + "\nsowings: two.csv\nweather: wet.csv\n");

    Scenario scenario = ScenarioReader.read(elsewhere.resolve("two.yaml"));

    assertThat(scenario.trays()).isEqualTo(7);
    assertThat(scenario.weather()).hasSize(2);
    assertThat(scenario.crops()).hasSize(7);
  }

  @Test
  void aShiftMovesTheSowingAndItsLastResowingButNotTheBeds() throws FaultsException {
    Sowing before = sowing(folder.read(), "tomato-2");
    Scenario scenario = extended("sowings:\n  - {match: \"tomato*\", shift: -7 days}\n");
    Sowing after = sowing(scenario, "tomato-2");

    assertThat(after.sow()).isEqualTo(LocalDate.of(2027, 3, 11));
    assertThat(after.resowUntil()).isEqualTo(LocalDate.of(2027, 3, 29));
    assertThat(after.bedFrom()).isEqualTo(before.bedFrom());
    assertThat(after.bedBy()).isEqualTo(before.bedBy());
    assertThat(after.bedUntil()).isEqualTo(before.bedUntil());
    assertThat(sowing(scenario, "tomato-1").sow()).isEqualTo(LocalDate.of(2027, 3, 1));
    assertThat(sowing(scenario, "pepper-1").sow()).isEqualTo(LocalDate.of(2027, 2, 26));
  }

  @Test
  void aChangeMaySetAnyColumnButTheId() throws FaultsException {
    Sowing pepper =
        sowing(
            extended(
                """
                sowings:
                  - match: pepper-1
                    crop: tomato
                    lot: new
                    sow: 2027-03-01
                    trays: 40
                    plants-needed: 99
                    bed-from: 2027-05-01
                    bed-by: 2027-05-02
                    bed-until: ""
                    resow-until:
                """),
            "pepper-1");

    assertThat(pepper)
        .isEqualTo(
            new Sowing(
                "pepper-1",
                "tomato",
                "new",
                LocalDate.of(2027, 3, 1),
                40,
                99,
                LocalDate.of(2027, 5, 1),
                LocalDate.of(2027, 5, 2),
                null,
                null,
                null,
                Sowing.Leeway.NOT_SAID));
  }

  @Test
  void eachScenarioOfAChainChangesTheOneBefore() throws FaultsException {
    folder.write(
        "second.yaml",
        """
        extends: scenario.yaml
        name: Second
        places:
          - {name: Chamber 2, like: Chamber, spaces: 10}
        sowings:
          - {match: "*", shift: 1 day}
        """);
    folder.write(
        "third.yaml",
        """
        extends: second.yaml
        places:
          - {name: Chamber 2, spaces: 15}
        sowings:
          - {match: onion-1, shift: 1 day}
        """);

    Scenario scenario = folder.read("third.yaml");

    assertThat(scenario.name()).isEqualTo("third");
    assertThat(scenario.places().get(4).spaces()).isEqualTo(15);
    assertThat(sowing(scenario, "onion-1").sow()).isEqualTo(LocalDate.of(2027, 1, 20));
    assertThat(sowing(scenario, "onion-2").sow()).isEqualTo(LocalDate.of(2027, 1, 26));
  }
}
