package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Place;
import propcap.files.GrowersFolder;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.files.text.UnsavedTexts;

/** A place moves up or down in the list, with its comments, however its order is written. */
class PlaceOrderTest {
  @TempDir Path folder;
  private GrowersFolder files;

  @BeforeEach
  void aFolder() {
    files = new GrowersFolder(folder);
    files.write(
        "weather.csv", GrowersFolder.weather(LocalDate.of(2018, 1, 1), LocalDate.of(2018, 8, 31)));
  }

  private ScenarioEditor editor(String name) {
    return new ScenarioEditor(files.path(name), UnsavedTexts.none());
  }

  private String moved(String scenario, String name, boolean isUp) throws Exception {
    ScenarioEditor editor = editor(scenario);
    editor.movePlace(name, isUp);
    return editor.unsaved().text(files.path(scenario));
  }

  private static List<String> order(Path scenario, UnsavedTexts texts) throws FaultsException {
    return ScenarioReader.read(scenario, texts).sound().places().stream().map(Place::name).toList();
  }

  private void places(String list) {
    String text = files.text("scenario.yaml");
    files.write("scenario.yaml", text.substring(0, text.indexOf("places:")) + list);
  }

  @Test
  void itsCommentsGoWithIt() throws Exception {
    places(
        """
        places:
          # Dark.
          - {name: Chamber, kind: chamber, spaces: 60, climate: {constant: 22 C}}   # old

          # In the light.
          # The mats are new.
          - name: Mats   # of rubber
            kind: heat-bench
            spaces: 36
            climate: {constant: 21 C}   # measured

          - {name: House 1, kind: table, spaces: 330, climate: {heat-to: 14 C}}
          - {name: Yard, kind: hardening, spaces: 160, climate: {outdoor: true}}""");
    String wanted =
        """
        places:
          # In the light.
          # The mats are new.
          - name: Mats   # of rubber
            kind: heat-bench
            spaces: 36
            climate: {constant: 21 C}   # measured

          # Dark.
          - {name: Chamber, kind: chamber, spaces: 60, climate: {constant: 22 C}}   # old

          - {name: House 1, kind: table, spaces: 330, climate: {heat-to: 14 C}}
          - {name: Yard, kind: hardening, spaces: 160, climate: {outdoor: true}}""";
    assertThat(moved("scenario.yaml", "Mats", true)).endsWith(wanted);
    assertThat(moved("scenario.yaml", "Chamber", false)).endsWith(wanted);
    assertThat(moved("scenario.yaml", "Yard", true))
        .endsWith(
            "{outdoor: true}}\n  - {name: House 1, kind: table, spaces: 330, climate: {heat-to: 14 C}}");
  }

  @Test
  void inBracketsThePiecesChange() throws Exception {
    String list =
        """
        places: [{name: Mats, kind: heat-bench, spaces: 9, climate: {constant: 21 C}}, # one
          {name: Chamber, kind: chamber, spaces: 9, climate: {constant: 22 C}},
          {name: House 1, kind: table, spaces: 9, climate: {heat-to: 14 C}},
          {name: Yard, kind: hardening, spaces: 9, climate: {outdoor: true}}]
        """;
    places(list.replace("\n", "\r\n"));
    String wanted =
        """
        places: [{name: Chamber, kind: chamber, spaces: 9, climate: {constant: 22 C}}, # one
          {name: Mats, kind: heat-bench, spaces: 9, climate: {constant: 21 C}},
        """;
    assertThat(moved("scenario.yaml", "Mats", false)).contains(wanted.replace("\n", "\r\n"));
  }

  @Test
  void aWhatIfMovesWhatItAddsAndLeavesThePlansOrder() throws Exception {
    files.write(
        "what-if.yaml",
        """
        extends: scenario.yaml
        places:
          - {name: Tunnel, kind: table, spaces: 40, climate: {heat-to: 8 C}}   # borrowed
        """);
    assertThat(moved("what-if.yaml", "Tunnel", true))
        .contains("climate: {heat-to: 8 C}, after: House 1}   # borrowed");
    assertThatThrownBy(() -> moved("what-if.yaml", "Mats", true))
        .hasMessageContaining("the order of Chamber and Mats is written in the plan");
    files.write(
        "what-if.yaml", files.text("what-if.yaml").replace("}   #", ", after: Chamber}   #"));
    assertThatThrownBy(() -> moved("what-if.yaml", "Tunnel", true))
        .hasMessage(
            "a scenario that changes another puts Tunnel behind a place of that, and not first");
    assertThatThrownBy(() -> moved("scenario.yaml", "Yard", false))
        .hasMessageContaining("no place below Yard");
  }

  @Test
  void whatIsLikeTheFirstCannotStandAboveIt() throws Exception {
    files.change(
        "scenario.yaml",
        "  - {name: Mats",
        "  - {name: Chamber 2, like: Chamber, after: Chamber}\n  - {name: Mats");
    assertThatThrownBy(() -> moved("scenario.yaml", "Chamber 2", true))
        .hasMessage(
            "Chamber 2 is written as a place like another (like: ...), which must stand above it");
    assertThat(moved("scenario.yaml", "Chamber 2", false))
        .contains(
            "stretch-loss: 2 %/day}\n  - {name: Chamber 2, like: Chamber}\n  - {name: House 1");
  }

  @Test
  void listsOfAnyKindComeOutInTheOrderThatIsWanted() throws Exception {
    SplittableRandom random = new SplittableRandom(4);
    int refused = 0;
    for (int farm = 0; farm < 60; farm++) {
      List<String> names = new ArrayList<>(List.of("Chamber", "Mats", "House 1", "Yard"));
      StringBuilder list =
          new StringBuilder(
              """
              places:
                - {name: Chamber, kind: chamber, spaces: 60, climate: {constant: 22 C}}
                - {name: Mats, kind: heat-bench, spaces: 36, climate: {constant: 21 C}}
                # c1
                - {name: House 1, kind: table, spaces: 330, climate: {heat-to: 14 C}}
                - {name: Yard, kind: hardening, spaces: 160, climate: {outdoor: true}}
              """);
      for (int more = 0; more < random.nextInt(4); more++) {
        String name = "More " + more;
        boolean isLike = random.nextInt(3) == 0;
        list.append(random.nextBoolean() ? "  # of " + name + "\n" : "")
            .append("  - {name: ")
            .append(name)
            .append(
                isLike ? ", like: House 1" : ", kind: table, spaces: 9, climate: {heat-to: 9 C}")
            .append(
                random.nextBoolean() ? ", after: " + names.get(random.nextInt(names.size())) : "")
            .append("}\n");
        names.add(name);
      }
      places(list.toString());
      Path scenario = files.path("scenario.yaml");
      List<String> before = order(scenario, UnsavedTexts.none());
      int at = random.nextInt(before.size() - 1);
      List<String> wanted = new ArrayList<>(before);
      Collections.swap(wanted, at, at + 1);
      ScenarioEditor editor = editor("scenario.yaml");
      boolean isUp = random.nextBoolean();
      try {
        editor.movePlace(before.get(isUp ? at + 1 : at), isUp);
      } catch (IllegalArgumentException e) {
        assertThat(list.toString()).as(e.getMessage()).contains("like: House 1");
        refused++;
        continue;
      }
      assertThat(order(scenario, editor.unsaved())).isEqualTo(wanted);
      String after = editor.unsaved().text(scenario);
      assertThat(list.toString().lines().filter(l -> l.contains("#")))
          .allMatch(comment -> after.lines().anyMatch(comment::equals));
    }
    assertThat(refused).as("of 60").isLessThan(12);
  }
}
