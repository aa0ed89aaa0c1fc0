package propcap;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Date;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import umontreal.ssj.simevents.Accumulate;
import umontreal.ssj.simevents.Event;
import umontreal.ssj.simevents.Sim;
import umontreal.ssj.simevents.Simulator;

/**
 * The table of docs/architecture.md: who may use whom, and what is banned. A rule about a package
 * that does not exist holds. The bans are also tried on offenders, which they must refuse.
 */
class ArchitectureTest {
  private static final JavaClasses HOUSE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("propcap");

  // Who may use whom.

  /**
   * The rooms of the house and those that each may use. Study may use chance: it draws each
   * season's luck and hands it to season. Cli may use all.
   */
  @ParameterizedTest
  @CsvSource({
    "farm,",
    "disk,",
    "chance, farm",
    "past, farm",
    "season, past chance farm",
    "plan,",
    "study, plan season past chance farm",
    "evidence, chance farm",
    "files, past farm disk",
    "results, disk",
    "report, results study evidence farm disk",
    "spark, study season farm",
    "web, report results study evidence files farm disk"
  })
  void aRoomUsesOnlyRoomsBelowIt(String room, String below) {
    rooms(room, below == null ? "" : below).check(HOUSE);
  }

  private static ArchRule rooms(String room, String below) {
    String[] allowed =
        Arrays.stream((room + " " + below).strip().split(" "))
            .map(name -> "propcap." + name + "..")
            .toArray(String[]::new);
    return classes()
        .that()
        .resideInAPackage("propcap." + room + "..")
        .should()
        .onlyDependOnClassesThat(
            resideOutsideOfPackage("propcap..").or(resideInAnyPackage(allowed)))
        .allowEmptyShould(true);
  }

  @Test
  void aRoomThatUsesOneAboveItWouldBeRefused() {
    assertThat(rooms("season", "farm").evaluate(HOUSE).hasViolation()).isTrue();
    assertThat(rooms("study", "farm season").evaluate(HOUSE).hasViolation()).isTrue();
  }

  /** What answers are told with is of no use to anyone else. */
  @ParameterizedTest
  @ValueSource(strings = {"kit", "chart"})
  void whatAnswersAreToldWithIsUsedByReportAlone(String room) {
    onlyIn("propcap.report." + room + "..", "propcap.report..").check(HOUSE);
  }

  static Stream<String> questions() {
    return HOUSE.stream()
        .map(JavaClass::getPackageName)
        .filter(name -> name.startsWith("propcap.report."))
        .map(name -> name.split("\\.", -1)[2])
        .filter(room -> !Set.of("kit", "chart", "pages").contains(room))
        .distinct();
  }

  /** The room of a question knows no other question's. */
  @ParameterizedTest
  @MethodSource("questions")
  void aQuestionIsToldWithoutAnother(String question) {
    classes()
        .that()
        .resideInAPackage("propcap.report." + question + "..")
        .should()
        .onlyDependOnClassesThat(
            resideOutsideOfPackage("propcap.report..")
                .or(
                    resideInAnyPackage(
                        "propcap.report." + question + "..",
                        "propcap.report.kit..",
                        "propcap.report.chart..")))
        .check(HOUSE);
  }

  @Test
  void everyQuestionHasItsRoom() {
    assertThat(questions()).hasSizeGreaterThanOrEqualTo(11).contains("forecast", "plan", "frost");
  }

  static Stream<Path> rooms() throws IOException {
    List<Path> rooms = new ArrayList<>();
    for (String floor : List.of("report", "study", "evidence", "files", "web", "cli")) {
      try (Stream<Path> found = Files.walk(Path.of("src/main/java/propcap", floor))) {
        found.filter(Files::isDirectory).forEach(rooms::add);
      }
    }
    return rooms.stream();
  }

  /** A room that grows beyond that has more than one thing in it. */
  @ParameterizedTest
  @MethodSource("rooms")
  void aRoomIsSeenAtAGlance(Path room) throws IOException {
    try (Stream<Path> files = Files.list(room)) {
      assertThat(files.filter(Files::isRegularFile)).hasSizeLessThanOrEqualTo(26);
    }
  }

  /** Of the numbers and names a text is made last: nobody finds them in it again. */
  @Test
  void noTextIsTakenApartAgain() {
    // Two that fold lines, and one that reads back a file of its own.
    takingApart("Lines", "CalendarFeed", "SweptSeasons").check(HOUSE);
    assertThat(takingApart("CalendarFeed", "SweptSeasons").evaluate(HOUSE).hasViolation()).isTrue();
  }

  private static ArchRule takingApart(String... readers) {
    return noClasses()
        .that()
        .resideInAnyPackage("propcap.report..", "propcap.study..", "propcap.evidence..")
        .and(
            describe(
                "are none of " + String.join(", ", readers),
                each -> !Arrays.asList(readers).contains(each.getSimpleName())))
        .should()
        .callMethodWhere(
            target(
                describe(
                    "a method that finds where something stands in a text",
                    called ->
                        called.getOwner().isEquivalentTo(String.class)
                            && called.getName().matches("split|indexOf|lastIndexOf"))));
  }

  /** The innermost rooms use nothing from elsewhere but what is named here. */
  @ParameterizedTest
  @CsvSource({
    "farm,",
    "disk,",
    "chance, umontreal.ssj..",
    "season, umontreal.ssj..",
    "plan, org.chocosolver..",
    "study, org.apache.commons.math3.."
  })
  void anInnerRoomUsesOnlyTheLibraryNamedForIt(String room, String library) {
    String[] allowed = {
      "propcap..", "java..", "org.jspecify.annotations..", library == null ? "java.." : library
    };
    classes()
        .that()
        .resideInAPackage("propcap." + room + "..")
        .should()
        .onlyDependOnClassesThat(resideInAnyPackage(allowed))
        .check(HOUSE);
  }

  @Test
  void aLibraryInTheWrongRoomWouldBeRefused() {
    assertThat(onlyIn("umontreal.ssj..", "propcap.chance..").evaluate(HOUSE).hasViolation())
        .isTrue();
  }

  @Test
  void ssjIsUsedOnlyByChanceSeasonAndEvidence() {
    onlyIn("umontreal.ssj..", "propcap.chance..", "propcap.season..", "propcap.evidence..")
        .check(HOUSE);
  }

  @Test
  void jFreeChartIsUsedOnlyByReport() {
    onlyIn("org.jfree..", "propcap.report..").check(HOUSE);
  }

  @Test
  void picocliIsUsedOnlyByCli() {
    onlyIn("picocli..", "propcap.cli..").check(HOUSE);
  }

  @Test
  void commonsMathIsUsedOnlyByStudyAndEvidence() {
    onlyIn("org.apache.commons.math3..", "propcap.study..", "propcap.evidence..").check(HOUSE);
  }

  @Test
  void theSolverIsUsedOnlyByPlan() {
    onlyIn("org.chocosolver..", "propcap.plan..").check(HOUSE);
  }

  /** The profile that compiles it looks at its classes too. */
  @Test
  void sparkIsUsedOnlyByItsEngine() {
    onlyIn("org.apache.spark..", "propcap.spark..").check(HOUSE);
    onlyIn("scala..", "propcap.spark..").check(HOUSE);
  }

  @Test
  void onlyWebServes() {
    onlyIn("com.sun.net.httpserver..", "propcap.web..").check(HOUSE);
  }

  @Test
  void yamlIsUsedOnlyByFiles() {
    onlyIn("org.snakeyaml..", "propcap.files..").check(HOUSE);
  }

  /** All that is written goes through one room; the page's draft alone is put aside or deleted. */
  @Test
  void onlyDiskWrites() {
    writingIn("propcap..", "Disk", "FileSet", "FolderLock", "WholeFile", "DraftFile").check(HOUSE);
    assertThat(writingIn("propcap.web..").evaluate(HOUSE).hasViolation()).isTrue();
    assertThat(writingIn("propcap.disk..").evaluate(HOUSE).hasViolation()).isTrue();
  }

  private static ArchRule writingIn(String room, String... writers) {
    return noClasses()
        .that()
        .resideInAPackage(room)
        .and(
            describe(
                "are none of " + String.join(", ", writers),
                each -> !Arrays.asList(writers).contains(each.getSimpleName())))
        .should()
        .callMethodWhere(
            target(
                describe(
                    "a method of Files that writes",
                    called ->
                        called.getOwner().isEquivalentTo(Files.class)
                            && called
                                .getName()
                                .matches(
                                    "(write|copy|move|delete|create|newOutput|newByte|set).*"))));
  }

  private static ArchRule onlyIn(String library, String... rooms) {
    return noClasses()
        .that()
        .resideOutsideOfPackages(rooms)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library);
  }

  @Test
  void roomsDoNotUseEachOtherInACircle() {
    slices().matching("propcap.(*)..").should().beFreeOfCycles().check(HOUSE);
    slices().matching("propcap.(**)").should().beFreeOfCycles().check(HOUSE);
  }

  /** On the way up: what seasons tell, what they cost, what comes of a plan, then questions. */
  @ParameterizedTest
  @CsvSource({
    "study.statistics,",
    "study.money, study.statistics",
    "evidence.germination, evidence",
    "evidence.stages, evidence",
    "evidence.weather, evidence",
    "files.text,",
    "files.weather, files.text",
    "files.log, files.text",
    "files.scenario, files.log files.weather files.text",
    "files.edit, files.scenario files.log files.weather files.text",
    "web.request,",
    "web.typed, web.request",
    "web.desk, web.request",
    "web.question, web.desk web.typed web.request",
    "cli.kit,",
    "cli.question, cli.kit",
    "cli.record, cli.kit"
  })
  void aRoomWithinAFloorUsesOnlyThoseBelowIt(String room, @Nullable String below) {
    String floor = room.substring(0, room.indexOf('.'));
    List<String> allowed = new ArrayList<>(List.of("propcap." + room));
    Stream.of((below == null ? "" : below).split(" "))
        .forEach(other -> allowed.add("propcap." + other));
    classes()
        .that()
        .resideInAPackage("propcap." + room)
        .should()
        .onlyDependOnClassesThat(
            resideOutsideOfPackage("propcap." + floor + "..")
                .or(resideInAnyPackage(allowed.toArray(String[]::new))))
        .check(HOUSE);
  }

  // What is banned.

  private static final ArchRule NO_STANDARD_OUTPUT =
      noClasses()
          .that()
          .resideOutsideOfPackage("propcap.cli..")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .allowEmptyShould(true);

  private static final ArchRule NO_UNNAMED_CHANCE =
      noClasses()
          .should()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.util.Random")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.util.concurrent.ThreadLocalRandom")
          .orShould()
          .callMethod(Math.class, "random");

  private static final ArchRule NO_WALL_CLOCK =
      noClasses()
          .that()
          .resideOutsideOfPackages("propcap.cli..", "propcap.web..")
          .should()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class)
          .orShould()
          .callMethodWhere(
              target(
                  describe(
                      "now of java.time",
                      called ->
                          called.getName().equals("now")
                              && called.getOwner().getPackageName().startsWith("java.time"))))
          .orShould()
          .callConstructor(Date.class);

  private static final ArchRule NO_STATIC_SIM =
      noClasses()
          .should()
          .dependOnClassesThat()
          .areAssignableTo(Sim.class)
          .orShould()
          .callMethod(Simulator.class, "getDefaultSimulator")
          .orShould()
          .callConstructor(Event.class)
          .orShould()
          .callConstructor(Accumulate.class)
          .orShould()
          .callConstructor(Accumulate.class, String.class);

  private static final ArchRule NO_VAGUE_NAMES =
      noClasses().should().haveNameMatching(".*(Manager|Handler|Helper|Utils?|Impl|Info)(\\$.*)?");

  @Test
  void onlyCliWritesToStandardOutput() {
    NO_STANDARD_OUTPUT.check(HOUSE);
    assertRefuses(NO_STANDARD_OUTPUT, Offenders.Printer.class);
  }

  @Test
  void allChanceHasASeedAndAName() {
    NO_UNNAMED_CHANCE.check(HOUSE);
    assertRefuses(NO_UNNAMED_CHANCE, Offenders.Dice.class);
  }

  @Test
  void onlyCliAndWebLookAtTheClock() {
    NO_WALL_CLOCK.check(HOUSE);
    assertRefuses(NO_WALL_CLOCK, Offenders.Millis.class);
    assertRefuses(NO_WALL_CLOCK, Offenders.Today.class);
    assertRefuses(NO_WALL_CLOCK, Offenders.RightNow.class);
  }

  @Test
  void noSimulatorIsSharedByStatics() {
    NO_STATIC_SIM.check(HOUSE);
    assertRefuses(NO_STATIC_SIM, Offenders.EventOfNoSimulator.class);
    assertRefuses(NO_STATIC_SIM, Offenders.AreaOfNoSimulator.class);
    assertRefuses(NO_STATIC_SIM, Offenders.StaticTime.class);
  }

  @Test
  void namesSayWhatAClassIs() {
    NO_VAGUE_NAMES.check(HOUSE);
    assertRefuses(NO_VAGUE_NAMES, Offenders.TrayManager.class);
    assertRefuses(NO_VAGUE_NAMES, Offenders.TrayInfo.class);
  }

  private static void assertRefuses(ArchRule ban, Class<?> offender) {
    JavaClasses only = new ClassFileImporter().importClasses(offender);
    assertThat(ban.evaluate(only).hasViolation()).isTrue();
  }
}
