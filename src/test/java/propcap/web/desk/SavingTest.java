package propcap.web.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.disk.CannotWriteException;
import propcap.disk.FailingDisk;
import propcap.web.Farm;
import propcap.web.request.RefusedException;

/** What a saving leaves of the grower's files, however it ends. */
class SavingTest {
  private static final String CHANGED_PLAN = Farm.PLAN.replaceFirst(",12,", ",31,");
  private static final String CHANGED = Farm.SCENARIO.replace("spaces: 6,", "spaces: 9,");

  @TempDir Path desk;
  private int farms;

  private Path farm() throws IOException {
    return Farm.in(Files.createDirectory(desk.resolve("farm" + ++farms)));
  }

  /** Both files of the farm are changed, and the draft lies beside them. */
  private Path changedFarm() throws Exception {
    Path first = desk.resolve("changed");
    if (!Files.exists(first)) {
      change(new Desk(Farm.in(Files.createDirectory(first))), 9);
    }
    Path copy = Files.createDirectory(desk.resolve("farm" + ++farms));
    try (Stream<Path> files = Files.list(first)) {
      for (Path file : files.toList()) {
        Files.copy(file, copy.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    return copy.resolve("small.yaml");
  }

  private static void change(Desk desk, int spaces) throws IOException, RefusedException {
    desk.change(
        "", desk.version(), (editor, w) -> editor.setPlace("Chamber", "spaces", "" + spaces));
    desk.change(
        "", desk.version(), (editor, w) -> editor.setSowings(Map.of(0, Map.of("trays", "31"))));
  }

  /** But for what this process has in the making, or would have, had it been killed. */
  private static List<String> names(Path scenario) {
    String inTheMaking = ".propcap-" + ProcessHandle.current().pid() + "-";
    return Stream.of(scenario.resolveSibling("").toFile().list())
        .filter(name -> !name.startsWith(inTheMaking))
        .toList();
  }

  private static int calls(Path scenario) throws Exception {
    FailingDisk disk = FailingDisk.sound();
    new Desk(disk.at(scenario)).save(false);
    return disk.calls();
  }

  @Test
  void aKillAtAnyCallIsNoConflictAndTheSavingCanBeMadeAgain() throws Exception {
    int calls = calls(changedFarm());
    int wasSaved = 0;
    for (int last = 1; last <= calls; last++) {
      Path scenario = changedFarm();
      FailingDisk disk = FailingDisk.killedAt(last);
      assertThatThrownBy(() -> new Desk(disk.at(scenario)).save(false))
          .isInstanceOf(FailingDisk.Killed.class);
      Desk next = new Desk(scenario);
      assertThat(next.view("").conflicts()).isEmpty();
      // Both files or none.
      assertThat(List.of(Files.readString(scenario), Files.readString(plan(scenario))))
          .isIn(List.of(Farm.SCENARIO, Farm.PLAN), List.of(CHANGED, CHANGED_PLAN));
      wasSaved += next.view("").texts().texts().isEmpty() ? 1 : 0;
      next.save(false);
      assertThat(scenario).hasContent(CHANGED);
      assertThat(plan(scenario)).hasContent(CHANGED_PLAN);
      assertThat(scenario.resolveSibling("small.yaml.bak")).hasContent(Farm.SCENARIO);
      assertThat(names(scenario)).noneMatch(n -> n.contains("propcap") || n.endsWith(".new"));
    }
    assertThat(wasSaved).isBetween(1, calls - 1);
  }

  private static Path plan(Path scenario) {
    return scenario.resolveSibling("sowings.csv");
  }

  @Test
  void aDiskThatIsFullLeavesTheFilesAndTheDraft() throws Exception {
    int calls = calls(changedFarm());
    int told = 0;
    // Each call by itself is tried of the set of files; here, what becomes of the draft.
    for (int from = 1; from <= calls; from += 3) {
      Path scenario = changedFarm();
      FailingDisk disk = FailingDisk.fullFrom(from);
      Throwable e = catchThrowable(() -> new Desk(disk.at(scenario)).save(false));
      if (e != null) {
        told++;
        assertThat(e).isInstanceOf(CannotWriteException.class).hasMessageContaining("is full");
        assertThat(scenario).hasContent(Farm.SCENARIO);
        assertThat(plan(scenario)).hasContent(Farm.PLAN);
        assertThat(new Desk(scenario).view("").texts().texts()).hasSize(2);
      }
    }
    assertThat(told).isBetween(1, calls - 1);
  }

  @Test
  void rightsStayAndALinkStaysOne() throws Exception {
    Path scenario = farm();
    Path target = Files.createDirectory(desk.resolve("farm1/plans")).resolve("2027.csv");
    Files.move(plan(scenario), target);
    Files.createSymbolicLink(plan(scenario), Path.of("plans", "2027.csv"));
    var rights = PosixFilePermissions.fromString("rw-rw-r--");
    Files.setPosixFilePermissions(scenario, rights);
    var planRights = PosixFilePermissions.fromString("rw-------");
    Files.setPosixFilePermissions(target, planRights);
    Desk page = new Desk(scenario);
    change(page, 9);
    page.save(false);
    assertThat(Files.readSymbolicLink(plan(scenario))).isEqualTo(Path.of("plans", "2027.csv"));
    assertThat(target).isRegularFile().hasContent(CHANGED_PLAN);
    assertThat(scenario).hasContent(CHANGED);
    assertThat(Files.getPosixFilePermissions(scenario)).isEqualTo(rights);
    assertThat(Files.getPosixFilePermissions(target)).isEqualTo(planRights);
    assertThat(Files.getPosixFilePermissions(scenario.resolveSibling("small.yaml.bak")))
        .isEqualTo(rights);
  }

  /** Theirs was lost when the one who saved over it saved once more. */
  @Test
  void whatWasSavedOverIsNeverLostByAnotherSaving() throws Exception {
    Path scenario = farm();
    Desk page = new Desk(scenario);
    change(page, 9);
    String theirs = Farm.SCENARIO.replace("Small spring", "Their spring");
    Files.writeString(scenario, theirs);
    page.save(true);
    for (int spaces = 10; spaces < 13; spaces++) {
      change(page, spaces);
      page.save(false);
    }
    String others = theirs.replace("Their", "Other");
    Files.writeString(scenario, others);
    change(page, 20);
    page.save(true);
    assertThat(scenario.resolveSibling("small.yaml.bak")).hasContent(theirs);
    assertThat(scenario.resolveSibling("small.yaml.bak2")).hasContent(others);
    // What the page wrote itself, a step back has.
    assertThat(names(scenario)).filteredOn(n -> n.startsWith("small.yaml")).hasSize(3);
  }

  @Test
  void aCopyThatAnotherCommandKeptIsNotReplaced() throws Exception {
    Path scenario = farm();
    Path copy = Files.writeString(scenario.resolveSibling("small.yaml.bak"), "last year's");
    Desk page = new Desk(scenario);
    change(page, 9);
    assertThat(page.save(false).kept()).containsExactly("small.yaml.bak2", "sowings.csv.bak");
    assertThat(copy).hasContent("last year's");
    assertThat(scenario.resolveSibling("small.yaml.bak2")).hasContent(Farm.SCENARIO);
  }
}
