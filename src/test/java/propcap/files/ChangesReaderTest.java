package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.LoggedEvent;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.farm.Variants;
import propcap.farm.Variants.Setting;
import propcap.farm.Variants.Variant;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;

class ChangesReaderTest {
  @TempDir static Path path;
  private static GrowersFolder folder;
  private static Scenario base;

  @BeforeAll
  static void aFarm() throws FaultsException {
    folder = new GrowersFolder(path);
    // Two years are read faster than twenty.
    LocalDate start = LocalDate.of(2017, 1, 1);
    folder.write("weather.csv", GrowersFolder.weather(start, start.plusYears(2)));
    base = ScenarioReader.read(folder.path("scenario.yaml"));
  }

  private Variants read(String table, boolean isGrid) throws FaultsException {
    folder.write("changes.csv", table);
    return ChangesReader.read(folder.path("changes.csv"), Optional.of(base), isGrid);
  }

  private List<String> faults(String table, boolean isGrid) {
    return faults(table, isGrid, base);
  }

  private List<String> faults(String table, boolean isGrid, Scenario of) {
    folder.write("changes.csv", table);
    FaultsException thrown =
        catchThrowableOfType(
            FaultsException.class,
            () -> ChangesReader.read(folder.path("changes.csv"), Optional.of(of), isGrid));
    assertThat(thrown).as(table).isNotNull();
    return thrown.faults().stream()
        .map(f -> f.toString().replaceFirst(".*changes.csv:", ""))
        .toList();
  }

  private static int spaces(Variant variant, String place) {
    return variant.scenario().places().stream()
        .filter(p -> p.name().equals(place))
        .mapToInt(Place::spaces)
        .findFirst()
        .orElseThrow();
  }

  private static Sowing sowing(Variant variant, String id) {
    return variant.scenario().sowings().stream()
        .filter(s -> s.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  /** By hand: an empty cell is as it is; 120 % of 24 trays are 28.8, so 29. */
  @Test
  void aRowIsAScenario() throws FaultsException {
    Variants variants =
        read(
            """
            name,spaces of Chamber,shift of tomato*,trays of lettuce*,hours
            one,90,,,
            ,,-7 days,120 %,12/day
            """,
            false);
    assertThat(variants.columns())
        .containsExactly("spaces of Chamber", "shift of tomato*", "trays of lettuce*", "hours");
    assertThat(variants.all())
        .extracting(Variant::name)
        .containsExactly(
            "base", "one", "tomato* 7 days earlier, 120 % trays of lettuce*, 12 hours a day");
    Variant one = variants.all().get(1);
    assertThat(spaces(one, "Chamber")).isEqualTo(90);
    assertThat(one.scenario().sowings()).isEqualTo(base.sowings());
    Variant two = variants.all().get(2);
    assertThat(spaces(two, "Chamber")).isEqualTo(60);
    assertThat(sowing(two, "tomato-1").sow()).isEqualTo("2027-03-01");
    assertThat(sowing(two, "tomato-1").resowUntil()).isEqualTo("2027-03-21");
    assertThat(sowing(two, "lettuce-1").trays()).isEqualTo(29);
    assertThat(sowing(two, "pepper-1")).isEqualTo(sowing(one, "pepper-1"));
    assertThat(two.scenario().labour().hoursPerDay()).isEqualTo(12);
    assertThat(two.settings())
        .containsExactly(
            new Setting("60", 60.0),
            new Setting("-7 days", -7.0),
            new Setting("120 %", 120.0),
            new Setting("12/day", 12.0));
    assertThat(variants.all().get(0).settings())
        .containsExactly(
            new Setting("60", 60.0),
            new Setting("0 days", 0.0),
            new Setting("100 %", 100.0),
            new Setting("not limited", null));
  }

  @Test
  void traysAreANumberForEachSowingToo() throws FaultsException {
    Variants variants = read("trays of lettuce*\n30\n", false);
    assertThat(sowing(variants.all().get(1), "lettuce-4").trays()).isEqualTo(30);
    assertThat(variants.all().get(0).settings()).containsExactly(new Setting("24", 24.0));
    assertThat(read("trays of *\n30\n", false).all().get(0).settings())
        .containsExactly(new Setting("as planned", null));
  }

  /** Twenty of the 24 trays of lettuce-1 are in the house; the others of the plan may be fewer. */
  @Test
  void whatHasBeenSownCannotBeFewer() throws FaultsException {
    LocalDate today = LocalDate.of(2027, 2, 20);
    var sown = new TrayPast.Move(LoggedEvent.SOWN, 35, null, "Chamber", 1);
    var tray = new TrayPast("lettuce-1", "20", 19, 0, List.of(sown), -1, 0, 30);
    Scenario inSeason = base.withSoFar(new SoFar(today, List.of(tray), List.of()));
    for (String few : List.of("19", "75 %")) {
      assertThat(faults("trays of lettuce*\n" + few + "\n", true, inSeason))
          .containsExactly(
              "2: trays of lettuce* is '"
                  + few
                  + "', and 20 of lettuce-1 have been sown; no fewer than have been sown, or"
                  + " sowings that are still to come");
    }
    folder.write("changes.csv", "trays of lettuce*,trays of tomato*\n20,\n,1\n");
    assertThat(ChangesReader.read(folder.path("changes.csv"), Optional.of(inSeason), false).all())
        .hasSize(3);
  }

  /** Two by three less the one that is as it is, in the order of the columns. */
  @Test
  void aGridCrossesTheValuesOfItsColumns() throws FaultsException {
    Variants variants =
        read("spaces of Chamber,shift of tomato*\n60,-7 days\n90,0 days\n,7 days\n60,\n", true);
    assertThat(variants.all())
        .extracting(Variant::name)
        .containsExactly(
            "base",
            "60 spaces of Chamber, tomato* 7 days earlier",
            "60 spaces of Chamber, tomato* 7 days later",
            "90 spaces of Chamber, tomato* 7 days earlier",
            "90 spaces of Chamber, tomato* as planned",
            "90 spaces of Chamber, tomato* 7 days later");
    Variant last = variants.all().get(5);
    assertThat(spaces(last, "Chamber")).isEqualTo(90);
    assertThat(sowing(last, "tomato-2").sow()).isEqualTo("2027-03-25");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          spaces of Chambr;;40                | 1: unknown column 'spaces of Chambr'; did you mean spaces of Chamber?
          spaces of Chamber,shift of tomto-1;;40, | 1: column 'shift of tomto-1': no sowing matches 'tomto-1'; did you mean tomato-1?
          trays of tomto-1;;12                | 1: column 'trays of tomto-1': no sowing matches 'tomto-1'; did you mean tomato-1?
          shift of *;;7                       | 2: shift of * is '7'; a unit is missing: a whole number of days, such as -7 days
          shift of *;;400 days                | outside the season; fewer days, or a longer season
          spaces of Chamber;;-4               | 2: spaces of Chamber is '-4'; a whole number from 0 to 1000000
          trays of *;;0                       | 2: trays of * is '0'; trays of each sowing, such as 12, or a share such as 120 %
          trays of *;;0 %                     | 2: trays of * is '0 %'; 1 to 1000 %
          hours;;12                           | 2: hours is '12'; a unit is missing: a number of hours a day, such as 12/day
          spaces of House 1;;0                | 2: with 0 spaces of House 1: a season needs a place of kind table; changes that leave a farm which can work
          name,spaces of Chamber;;one,        | 2: a row that changes nothing; a change, or no such row: the scenario as it is is tried in any case
          name,spaces of Chamber;;one,40;;one,50 | 3: 'one' again, first line 2; a name of its own
          spaces of Chamber;;40;;40           | 3: '40 spaces of Chamber' again, first line 2; each change once
          name,spaces of Chamber;;base,40     | 2: 'base' again, first the scenario that is changed; a name of its own
          spaces of Chamber;;                 | 1: no change in the table; a row for each scenario
          name;;one                           | 1: no column that changes anything; one of name, spaces of Chamber
          spaces of Chamber,spaces of Chamber;;40,50 | 1: column 'spaces of Chamber' again; each column once
          spaces of Chamber;;40,50            | 2: a row of 2 fields; 1 fields, as in the header
          """)
  void eachFaultIsToldWithItsLineAndWhatWouldBeRight(String table, String told) {
    assertThat(faults(table.strip().replace(";;", "\n"), false))
        .singleElement()
        .asString()
        .contains(told);
  }

  @Test
  void aGridHasFaultsOfItsOwn() {
    assertThat(faults("name,spaces of Chamber\na,40\n", true))
        .containsExactly(
            "1: column name in a grid; no such column: the scenarios of a grid are named by what"
                + " they change");
    assertThat(faults("spaces of Chamber,spaces of Mats\n40,\n", true))
        .containsExactly(
            "1: nothing in column 'spaces of Mats'; a value or more, or no such column");
    StringBuilder large = new StringBuilder("spaces of Chamber,spaces of Mats\n");
    for (int n = 1; n <= 50; n++) {
      large.append(n).append(',').append(n).append('\n');
    }
    assertThat(faults(large.toString(), true))
        .containsExactly(" a grid of 2500 scenarios; at most 2000: fewer columns or fewer values");
  }

  @Test
  void allFaultsAreToldAtOnceAndSomeWithoutTheScenario() {
    String table = "spaces of Chamber,shift of tomato*,hours\n-1,7,12\n40,400 days,\n,,x\n";
    assertThat(faults(table, false)).hasSize(5);
    folder.write("changes.csv", table);
    FaultsException thrown =
        catchThrowableOfType(
            FaultsException.class,
            () -> ChangesReader.read(folder.path("changes.csv"), Optional.empty(), false));
    assertThat(thrown.faults()).hasSize(4);
  }
}
