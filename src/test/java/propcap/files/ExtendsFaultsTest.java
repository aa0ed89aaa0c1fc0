package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Faults of a scenario that extends another point at the file that wrote what is wrong. */
class ExtendsFaultsTest {
  private GrowersFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new GrowersFolder(path);
  }

  /** The one fault of the changes must stand at the ^ in them. */
  private void isReported(String changes, String fault) {
    String place = folder.writeMarked("other.yaml", "extends: scenario.yaml\n" + changes);
    assertThat(folder.faults("other.yaml")).containsExactly(place + ": " + fault);
  }

  @Test
  void aChangeThatDoesNotFitTheBaseIsTheChangesFault() {
    isReported(
        "crops:\n  pepper: {emergence: {^optimum: 9 C}}\n",
        "base of pepper's emergence is '10 C', not below optimum '9 C'; base below optimum");
    isReported(
        "season: {^start: 2027-08-01}\n",
        "end of the season is '2027-07-04', before start '2027-08-01'; a season that ends on or"
            + " after its start");
    isReported(
        "sowings:\n  - {match: onion-1, ^bed-by: 2027-01-01}\n",
        "bed-by of onion-1 is '2027-01-01', before bed-from '2027-03-20'; bed-by on or after"
            + " bed-from");
    isReported(
        "sowings:\n  - {match: onion-1, ^shift: -30 days}\n",
        "sow of onion-1 is '2026-12-19', outside the season; 2027-01-11 to 2027-07-04");
  }

  @Test
  void aFaultOfTheBaseIsReportedInTheBase() {
    String place = folder.change("scenario.yaml", "spaces: 36", "spaces: ^many");
    folder.write("other.yaml", "extends: scenario.yaml\nname: other\n");

    assertThat(folder.faults("other.yaml"))
        .containsExactly(place + ": spaces of Mats is 'many'; a whole number from 0 to 1000000");
  }

  @Test
  void closingTheLastPlaceIsTheClosersFault() {
    isReported(
        "places:\n  - {name: House 1, spaces: ^0}\n",
        "no open place of kind table; at least one with spaces: nothing gets through a season"
            + " without");
    folder.change("crops.yaml", "germinate-in: [Mats, House 1]", "germinate-in: [Mats]");
    isReported(
        "places:\n  - {name: Mats, spaces: ^0}\n",
        "no open place can germinate snapdragon: Mats; spaces in one of them, or another place in"
            + " germinate-in");
  }

  @Test
  void aPlaceThatIsNotThereCannotBeChangedNorFollowed() {
    isReported(
        "places:\n  - {name: ^Chambre, spaces: 5}\n",
        "no place is named 'Chambre'; did you mean Chamber?");
    isReported(
        "places:\n  - {name: ^Attic, spaces: 5}\n",
        "no place is named 'Attic'; kind, spaces and climate, or like, for a new place");
    isReported(
        "places:\n  - {name: Chamber 2, like: ^Chambers}\n",
        "like is 'Chambers'; a place: did you mean Chamber?");
    isReported(
        "places:\n  - {name: Chamber 2, like: Chamber, after: ^Mat}\n",
        "after is 'Mat'; a place: did you mean Mats?");
    isReported(
        "places:\n  - {name: Mats, ^like: Chamber}\n",
        "like for a place that is there already; a new name, or no like");
  }

  @Test
  void aCropThatIsNearlyOneOfTheListIsNoNewCrop() {
    isReported("crops:\n  ^tomatoe: {cells: 50}\n", "no crop 'tomatoe'; did you mean tomato?");
  }

  @Test
  void aNewCropNeedsAllItsKeys() {
    folder.write("other.yaml", "extends: scenario.yaml\ncrops:\n  quinoa: {cells: 50}\n");

    assertThat(folder.faults("other.yaml"))
        .containsExactly(
            "other.yaml:3:3: emergence of quinoa is missing; the key emergence",
            "other.yaml:3:3: germinate-in of quinoa is missing; the key germinate-in",
            "other.yaml:3:3: germination of quinoa is missing; the key germination",
            "other.yaml:3:3: growing-on of quinoa is missing; the key growing-on",
            "other.yaml:3:3: hardening of quinoa is missing; the key hardening");
  }

  @Test
  void aChangeOfSowingsMustFindOneAndChangeSomething() {
    isReported(
        "sowings:\n  - {match: ^tomato-9, trays: 4}\n",
        "no sowing matches 'tomato-9'; did you mean tomato-1?");
    isReported(
        "sowings:\n  - {match: ^\"begonia*\", trays: 4}\n",
        "no sowing matches 'begonia*'; the id of a sowing, with * for any letters");
    isReported(
        "sowings:\n  - ^{match: \"tomato*\"}\n",
        "a change that changes nothing; a shift or a column's new value");
    isReported(
        "sowings:\n  - {match: \"tomato*\", ^tray: 4}\n",
        "unknown key 'tray'; did you mean trays?");
    isReported(
        "sowings:\n  - {match: \"tomato*\", shift: ^7}\n",
        "shift of a change is '7'; a unit is missing: a whole number of days, such as -7 days");
    isReported(
        "sowings:\n  - {match: \"tomato*\", shift: ^1.5 days}\n",
        "shift of a change is '1.5 days'; a whole number of days, such as -7 days");
    isReported(
        "sowings:\n  - {match: tomato-1, shift: 1 day, ^sow: 2027-03-01}\n",
        "sow beside shift, which moves it; one of the two");
    isReported(
        "sowings:\n  - ^tomato-1\n",
        "'tomato-1' as a change; a map such as {match: \"tomato*\", shift: -7 days}");
  }

  @Test
  void aSowingMoreIsWholeAndOfItsOwnIdAndOneLessIsThere() {
    String dates = ", plants-needed: 9, bed-from: 2027-05-01, bed-by: 2027-05-20}\n";
    isReported(
        "sowings:\n  - {^add: onion-1, crop: onion, sow: 2027-03-01, trays: 2" + dates,
        "id 'onion-1' again, first on line 2; each sowing with an id of its own");
    isReported(
        "sowings:\n  - ^{add: onion-9, crop: onion, trays: 2" + dates,
        "sow of onion-9 is missing; the key sow");
    isReported(
        "sowings:\n  - {add: onion-9, crop: onion, sow: 2027-03-01, ^tray: 2" + dates,
        "unknown key 'tray'; did you mean trays?");
    isReported(
        "sowings:\n  - {remove: ^tomato-9}\n",
        "no sowing matches 'tomato-9'; did you mean tomato-1?");
    isReported(
        "sowings:\n  - {remove: tomato-1, ^trays: 3}\n", "unknown key 'trays'; one of remove");
  }

  @Test
  void aScenarioThatExtendsItselfIsRefused() {
    folder.write("one.yaml", "extends: two.yaml\n");
    folder.write("two.yaml", "extends: ./one.yaml\nfrost-at: 1\n");

    assertThat(folder.faults("one.yaml"))
        .containsExactly(
            "two.yaml:1:10: the scenario extends itself by way of './one.yaml'; no circle",
            "two.yaml:2:11: frost-at is '1'; a unit is missing: a temperature in C or F, such as"
                + " 21 C or 70 F");
  }

  @Test
  void aMissingBaseIsOneFaultBesideTheScenariosOwn() {
    folder.write(
        "other.yaml",
        """
        extends: none.yaml
        season: {end: 2027-07-10}
        places:
          - {name: Chamber, spaces: lots}
        crops:
          tomato: {cells: 50 cells, growing-on: {damping-off: {chance: 4 %}}}
        sowings:
          - {match: tomato-1, shift: 7}
        """);

    assertThat(folder.faults("other.yaml"))
        .containsExactly(
            "other.yaml:1:10: no file 'none.yaml'; the name of a file that is there",
            "other.yaml:4:29: spaces of Chamber is 'lots'; a whole number from 0 to 1000000",
            "other.yaml:6:19: cells of tomato is '50 cells'; a whole number from 1 to 10000",
            "other.yaml:8:30: shift of a change is '7'; a unit is missing: a whole number of"
                + " days, such as -7 days");
  }
}
