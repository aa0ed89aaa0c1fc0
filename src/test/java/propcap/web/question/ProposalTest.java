package propcap.web.question;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.web.Farm;
import propcap.web.desk.Desk;
import propcap.web.request.RefusedException;

/** What an answer proposes stands beside the plan as it was proposed, whatever is otherwise. */
class ProposalTest {
  @TempDir Path folder;
  private Path scenario;
  private Desk desk;

  @BeforeEach
  void aDesk() throws IOException {
    scenario = Farm.in(folder);
    desk = new Desk(scenario);
  }

  private Scenario read(String name) throws RefusedException {
    return desk.reading(desk.shown(name)).needs().orElseThrow().scenario();
  }

  private String putBeside(String title, String of, Scenario to)
      throws IOException, RefusedException {
    Proposal proposal = Proposal.of(title, read(of), Optional.of(to)).orElseThrow();
    return desk.addWhatIf(proposal.title(), desk.shown(of), proposal::write);
  }

  private static Scenario changed(Scenario from, SplittableRandom random) {
    List<Place> places = new ArrayList<>();
    for (Place place : from.places()) {
      places.add(random.nextBoolean() ? place : place.withSpaces(random.nextInt(1, 300)));
    }
    List<Sowing> sowings = new ArrayList<>();
    for (Sowing sowing : from.sowings()) {
      Sowing moved = random.nextBoolean() ? sowing : sowing.shifted(random.nextInt(-9, 10));
      sowings.add(random.nextBoolean() ? moved : moved.withTrays(random.nextInt(1, 40)));
    }
    return from.withPlaces(places).withSowings(sowings);
  }

  @Test
  void whateverIsProposedIsReadBackAsItWas() throws Exception {
    SplittableRandom random = new SplittableRandom(3);
    for (int i = 0; i < 40; i++) {
      // Every other one is asked of a what-if.
      String of = "";
      if (i % 2 == 1) {
        of = putBeside("Of the plan", "", changed(read(""), random));
      }
      Scenario to = changed(read(of), random);
      Scenario plan = read("");
      String file = putBeside("It: \"so\" #" + i, of, to);
      assertThat(read(file).places()).isEqualTo(to.places());
      assertThat(read(file).sowings()).isEqualTo(to.sowings());
      assertThat(read(file).name()).isEqualTo("It: \"so\" #" + i);
      assertThat(read("")).isEqualTo(plan);
      desk.discard();
    }
  }

  @Test
  void itIsOneStepAndNothingOfItIsOnDiskBeforeItIsSaved() throws Exception {
    Map<String, String> before = Farm.files(folder);
    List<Place> places = new ArrayList<>(read("").places());
    places.set(0, places.get(0).withSpaces(20));
    Optional<Scenario> larger = Optional.of(read("").withPlaces(places));
    Proposal proposal = Proposal.ofSize(read(""), larger).orElseThrow();
    assertThat(proposal.title()).isEqualTo("Chamber: 20 spaces");
    String file = desk.addWhatIf(proposal.title(), scenario, proposal::write);
    assertThat(file).isEqualTo("chamber-20-spaces.yaml");
    assertThat(Files.exists(folder.resolve(file))).isFalse();
    desk.undo();
    assertThat(desk.scenarios()).hasSize(1);
    desk.redo();
    desk.save(false);
    assertThat(Files.readAllLines(folder.resolve(file)))
        .containsExactly(
            "extends: small.yaml",
            "name: \"Chamber: 20 spaces\"",
            "places:",
            "  - {name: Chamber, spaces: 20}");
    assertThat(Farm.files(folder)).containsAllEntriesOf(before);
  }

  /** A what-if that is not saved yet is no file of the folder, and names the place all the same. */
  @Test
  void aPlaceThatIsRenamedIsRenamedInWhatIfsThatAreNotSavedToo() throws Exception {
    List<Place> places = new ArrayList<>(read("").places());
    places.set(0, places.get(0).withSpaces(20));
    String file = putBeside("Larger", "", read("").withPlaces(places));
    desk.change(
        "", desk.version(), (editor, w) -> editor.renamePlace("Chamber", "Cellar", List.of()));
    assertThat(read("").places().get(0).name()).isEqualTo("Cellar");
    assertThat(read(file).places().get(0).name()).isEqualTo("Cellar");
    assertThat(read(file).places().get(0).spaces()).isEqualTo(20);
  }

  @Test
  void whatWasEmptyIsFilled() throws Exception {
    Files.writeString(folder.resolve("sowings.csv"), Farm.PLAN.replace("2027-02-20,12,", ",,"));
    desk = new Desk(scenario);
    Scenario open = read("");
    List<Sowing> filled = new ArrayList<>(open.sowings());
    filled.set(0, filled.get(0).shifted(3).withTrays(7));
    String file = putBeside("Filled", "", open.withSowings(filled));
    assertThat(read(file).sowings()).isEqualTo(filled);
    assertThat(desk.reading(desk.shown(file)).faults()).isEmpty();
    // And what came out as it was read for the empty cells is written all the same.
    String same = putBeside("As it came", "", open);
    assertThat(desk.reading(desk.shown(same)).faults()).isEmpty();
  }

  @Test
  void aPlaceThatIsGoneMeanwhileIsNamedAndALongNameIsCut() throws Exception {
    List<Place> places = new ArrayList<>(read("").places());
    places.set(0, places.get(0).withSpaces(20));
    Scenario larger = read("").withPlaces(places);
    String file = putBeside("x".repeat(70), "", larger);
    assertThat(read(file).name()).hasSize(60);
    Proposal proposal = Proposal.ofSize(read(""), Optional.of(larger)).orElseThrow();
    desk.change(
        "", desk.version(), (editor, w) -> editor.renamePlace("Chamber", "Cellar", List.of()));
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> desk.change("", desk.version(), proposal::write))
        .withMessageContaining("Chamber is in the plan no more; ask again");
  }

  @Test
  void aSowingThatIsGoneMeanwhileIsNamedAndNothingIsPutBeside() throws Exception {
    Scenario from = read("");
    Scenario to = from.withSowings(from.sowings().stream().map(s -> s.withTrays(5)).toList());
    Proposal proposal = Proposal.of("Fewer", from, Optional.of(to)).orElseThrow();
    desk.change("", desk.version(), (editor, w) -> editor.removeSowing(1));
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> desk.addWhatIf("Fewer", scenario, proposal::write))
        .withMessageContaining("lettuce-1 is in the plan no more; ask again");
    assertThat(desk.scenarios()).hasSize(1);
  }
}
