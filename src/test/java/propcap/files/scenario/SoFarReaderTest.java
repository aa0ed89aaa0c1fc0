package propcap.files.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.farm.WeatherRecord;
import propcap.files.GrowersFolder;
import propcap.files.text.Fault;
import propcap.files.text.FaultsException;
import propcap.files.text.UnsavedTexts;

/** This season's log and weather beside a scenario, on 10 April. */
class SoFarReaderTest {
  private static final String HEADER = "sowing,tray,event,date,plants,place,trays\n";
  private static final LocalDate TODAY = LocalDate.of(2027, 4, 10);

  @TempDir Path folder;
  private GrowersFolder files;

  @BeforeEach
  void aFarm() {
    files = new GrowersFolder(folder);
  }

  private ScenarioReader.Reading reading(SoFarAsked asked) {
    return ScenarioReader.read(files.path("scenario.yaml"), UnsavedTexts.none(), asked);
  }

  private SoFarAsked asked(String log, String weather) {
    return SoFarAsked.of(
        log.isEmpty() ? null : files.path(log),
        weather.isEmpty() ? null : files.path(weather),
        TODAY,
        TODAY,
        false,
        false);
  }

  private ScenarioReader.Reading withLog(String... rows) {
    files.write("log.csv", HEADER + String.join("\n", rows) + "\n");
    return reading(asked("log.csv", ""));
  }

  private static SoFar soFar(ScenarioReader.Reading reading) throws FaultsException {
    return Objects.requireNonNull(reading.sound().soFar());
  }

  private List<String> told(List<Fault> faults) {
    String prefix = folder + folder.getFileSystem().getSeparator();
    return faults.stream().map(f -> f.toString().replace(prefix, "")).toList();
  }

  /** Names of the trays of a log that had an event. */
  private static List<String> had(SoFar soFar, LoggedEvent event) {
    return soFar.trays().stream().filter(t -> t.at(event).isPresent()).map(TrayPast::name).toList();
  }

  private static TrayPast tray(SoFar soFar, String name) {
    return soFar.trays().stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void everyKindOfFaultIsToldAtOnceWithItsLine() throws Exception {
    byte[] log =
        SoFarReaderTest.class.getResourceAsStream("/propcap/files/log-faults.csv").readAllBytes();
    files.write("log.csv", log);
    String golden =
        new String(
            SoFarReaderTest.class
                .getResourceAsStream("/propcap/files/log-faults.txt")
                .readAllBytes(),
            StandardCharsets.UTF_8);
    assertThat(told(reading(asked("log.csv", "")).faults()))
        .containsExactlyElementsOf(golden.lines().toList());
  }

  @Test
  void aPlaceWithMoreTraysThanSpacesIsAFaultUnlessItIsSaidThatItWasSo() throws Exception {
    String rows = "onion-1,,sown,2027-01-18,,Mats,";
    assertThat(told(withLog(rows).faults()))
        .singleElement()
        .asString()
        .startsWith(
            "log.csv:2: Mats has 60 trays on 2027-01-18 and 36 spaces: onion-1 1, onion-1 2,")
        .endsWith(
            "onion-1 12 and 48 more; the rows of trays that have left it, or --overfull if it was"
                + " so");
    ScenarioReader.Reading read =
        reading(SoFarAsked.of(files.path("log.csv"), null, TODAY, TODAY, false, true));
    assertThat(soFar(read).trays()).hasSize(60);
    assertThat(told(read.warnings())).anyMatch(w -> w.startsWith("log.csv:2: Mats has 60 trays"));
  }

  /** With the right day the counts may well be right. */
  @Test
  void whereTheDayIsWrongNothingIsToldThatHangsOnIt() {
    assertThat(
            told(
                withLog(
                        "tomato-1,,sown,2027-03-08,,,16",
                        "tomato-1,1,off-heat,2027-04-10,65,,",
                        "tomato-1,2,off-heat,2027-04-12,65,,")
                    .faults()))
        .singleElement()
        .asString()
        .contains("date 2027-04-10 is not before today")
        .contains("that of 1 more row");
  }

  // Which trays a row speaks of.

  @Test
  void aRangeACountAndAllAreTheSameTraysWrittenThreeWays() throws Exception {
    String moved = "tomato-1,%s,off-heat,2027-03-18,65,House 1,%s";
    SoFar range =
        soFar(withLog("tomato-1,1-40,sown,2027-03-08,,,", moved.formatted("1 to 16", "")));
    SoFar count = soFar(withLog("tomato-1,,sown,2027-03-08,,,40", moved.formatted("", "16")));
    SoFar all =
        soFar(
            withLog(
                "tomato-1,,sown,2027-03-08,,,16",
                moved.formatted("", ""),
                "tomato-1,,sown,2027-03-08,,,"));
    assertThat(count).isEqualTo(range);
    assertThat(all.trays()).containsExactlyInAnyOrderElementsOf(range.trays());
    assertThat(had(range, LoggedEvent.OFF_HEAT)).hasSize(16).contains("1", "16");
  }

  @Test
  void aCountTakesTheLowestNumbersThatAreWhereTheEventTakesThemFrom() throws Exception {
    SoFar read =
        soFar(
            withLog(
                "lettuce-1,,sown,2027-02-15,,,",
                "lettuce-1,2,off-heat,2027-02-20,,,",
                "lettuce-1,,off-heat,2027-02-22,,,2",
                "lettuce-1,,thrown-out,2027-03-01,0,,1",
                "lettuce-1,,ready,2027-03-20,,,1",
                "lettuce-1,,moved-out,2027-03-22,,,"));
    assertThat(had(read, LoggedEvent.OFF_HEAT)).containsExactly("1", "2", "3");
    assertThat(had(read, LoggedEvent.THROWN_OUT)).containsExactly("1");
    assertThat(had(read, LoggedEvent.READY)).containsExactly("2");
    assertThat(had(read, LoggedEvent.MOVED_OUT)).containsExactly("2", "3");
  }

  /** A tomato is always potted on before it goes out, so that those in pots are meant. */
  @Test
  void aCountOfWhatIsAlwaysPottedOnTakesPotsOut() throws Exception {
    SoFar read =
        soFar(
            withLog(
                "tomato-1,,sown,2027-03-08,,,8",
                "tomato-1,1-8,off-heat,2027-03-18,,House 1,",
                "tomato-1,5-8,potted-on,2027-04-01,20,House 1,",
                "tomato-1,,moved-out,2027-04-08,,,3"));
    assertThat(had(read, LoggedEvent.MOVED_OUT)).containsExactly("5", "6", "7");
  }

  @Test
  void aNameThatIsNoNumberTakesTheLowestNumberThatNoOtherHas() throws Exception {
    SoFar read =
        soFar(
            withLog(
                "tomato-1,red,sown,2027-03-08,,,",
                "tomato-1,2,sown,2027-03-08,,,",
                "tomato-1,blue,sown,2027-03-08,,,"));
    assertThat(tray(read, "red").number()).isEqualTo(0);
    assertThat(tray(read, "2").number()).isEqualTo(1);
    assertThat(tray(read, "blue").number()).isEqualTo(2);
  }

  @Test
  void aTrayBeyondThePlanIsOneThatFailedSownAgainOrElseOneMore() throws Exception {
    ScenarioReader.Reading read =
        withLog(
            "tomato-1,,sown,2027-03-08,,,",
            "tomato-1,7,thrown-out,2027-03-24,3,,",
            "tomato-1,new,sown,2027-03-25,,,",
            "tomato-1,new,thrown-out,2027-04-05,0,,",
            "tomato-1,,sown,2027-04-06,,,2\n");
    SoFar soFar = soFar(read);
    assertThat(tray(soFar, "new")).matches(t -> t.number() == 6 && t.attempt() == 1);
    assertThat(tray(soFar, "42")).matches(t -> t.number() == 6 && t.attempt() == 2);
    assertThat(tray(soFar, "43")).matches(t -> t.number() == 40 && t.attempt() == 0);
    Map<String, Integer> trays =
        read.sound().sowings().stream().collect(Collectors.toMap(Sowing::id, Sowing::trays));
    assertThat(trays).containsEntry("tomato-1", 41).containsEntry("tomato-2", 36);
    assertThat(told(read.warnings()))
        .contains(
            "log.csv: tomato-1 has 1 more tray in the log than the 40 of the plan; it is taken as"
                + " sown beside them");
  }

  @Test
  void aTrayThrownOutFromTheTableIsNotOneThatFailed() throws Exception {
    SoFar read =
        soFar(
            withLog(
                "tomato-1,,sown,2027-03-08,,,",
                "tomato-1,7,off-heat,2027-03-18,,,",
                "tomato-1,7,thrown-out,2027-03-24,0,,",
                "tomato-1,41,sown,2027-03-25,,,"));
    assertThat(tray(read, "41")).matches(t -> t.number() == 40 && t.attempt() == 0);
  }

  @Test
  void aDroppedSowingIsNoneButForTheTraysThatHaveBeenSown() throws Exception {
    files.change(
        "sowings.csv", "onion-1,onion,onion-a,2027-01-18,60", "onion-1,onion,o,2027-01-18,0");
    files.change("sowings.csv", "2027-03-08,40,2300", "2027-03-08,0,2300");
    assertThat(files.read().sowings()).extracting(Sowing::id).hasSize(14).doesNotContain("onion-1");
    ScenarioReader.Reading read = withLog("tomato-1,,sown,2027-03-08,,,7");
    assertThat(read.sound().sowings())
        .hasSize(15)
        .filteredOn(s -> s.id().equals("tomato-1"))
        .extracting(Sowing::trays)
        .containsExactly(7);
    assertThat(told(read.warnings()))
        .singleElement()
        .asString()
        .contains("trays of onion-2 (0 of 50)")
        .doesNotContain("onion-1", "tomato-1");
    assertThat(told(withLog("tomato-1,,sown,2027-03-08,,,").faults()))
        .containsExactly(
            "log.csv:2: sown: all trays of tomato-1, of which the plan has none; how many in a"
                + " column trays");
  }

  // Plants.

  @Test
  void aMeanIsDealtInWholePlantsWhoseSumIsRight() throws Exception {
    SoFar read =
        soFar(
            withLog(
                "tomato-1,,sown,2027-03-08,,,",
                "tomato-1,1-7,off-heat,2027-03-18,60.4,,",
                "tomato-1,2-4,ready,2027-04-02,60.4,,"));
    List<Integer> stand =
        read.trays().stream()
            .filter(t -> t.at(LoggedEvent.OFF_HEAT).isPresent())
            .map(t -> plants(t, LoggedEvent.OFF_HEAT))
            .toList();
    assertThat(stand).allMatch(n -> n == 60 || n == 61);
    assertThat(stand.stream().mapToInt(n -> n).sum()).isEqualTo(Math.round(7 * 60.4));
    int before = 0;
    int after = 0;
    for (String name : List.of("2", "3", "4")) {
      int off = plants(tray(read, name), LoggedEvent.OFF_HEAT);
      int ready = plants(tray(read, name), LoggedEvent.READY);
      assertThat(ready).isLessThanOrEqualTo(off);
      before += off;
      after += ready;
    }
    assertThat(after).isEqualTo(181).isLessThanOrEqualTo(before);
  }

  private static int plants(TrayPast tray, LoggedEvent event) {
    return Objects.requireNonNull(tray.at(event).orElseThrow().plants());
  }

  @Test
  void whatShowsSoFarMayGrowAndTheStandMayBeMore() throws Exception {
    TrayPast tray =
        tray(
            soFar(
                withLog(
                    "tomato-1,1,sown,2027-03-08,72,,",
                    "tomato-1,1,counted,2027-03-14,10,,",
                    "tomato-1,1,counted,2027-03-15,30,,",
                    "tomato-1,1,off-heat,2027-03-16,66,,")),
            "1");
    assertThat(tray.moves()).extracting(TrayPast.Move::plants).containsExactly(72, 10, 30, 66);
  }

  // The log as a file.

  @Test
  void anEmptyLogIsNoFaultAndAScenarioMayNameIt() throws Exception {
    Scenario plain = files.read();
    assertThat(reading(SoFarAsked.of(null, null, null, TODAY, false, false)).sound().soFar())
        .isNull();
    files.change("scenario.yaml", "weather: weather.csv", "weather: weather.csv\nso-far: log.csv");
    files.write("log.csv", HEADER + "# tomato-1,1-8,sown,2027-03-08,72,Chamber,\n\n");
    ScenarioReader.Reading read =
        reading(SoFarAsked.of(null, null, null, LocalDate.of(2026, 11, 30), false, false));
    assertThat(soFar(read)).isEqualTo(new SoFar(plain.season().start(), List.of(), List.of()));
    assertThat(read.warnings()).isEmpty();
    assertThat(read.log()).contains(files.path("log.csv"));
  }

  @Test
  void withoutADayWhatAScenarioSaysOfItsSeasonIsLeftAside() throws Exception {
    files.change("scenario.yaml", "weather: weather.csv", "weather: weather.csv\nso-far: no.csv");
    assertThat(files.read().soFar()).isNull();
    assertThat(told(reading(SoFarAsked.on(TODAY)).faults()))
        .singleElement()
        .asString()
        .startsWith("scenario.yaml:6:9: no file")
        .endsWith("no.csv'; the name of a file that is there");
  }

  @Test
  void whatIsWrongWithTheScenarioAndWithTheLogIsToldTogether() {
    files.change("scenario.yaml", "kind: hardening", "kind: hardning");
    assertThat(told(withLog("tomato-1,1,swon,2027-03-08,72,,").faults()))
        .anyMatch(f -> f.startsWith("scenario.yaml:12:"))
        .anyMatch(f -> f.startsWith("log.csv:2: event is 'swon'; did you mean sown?"));
  }

  // Today.

  @Test
  void theClockIsHeldWithinTheSeasonAndADayThatIsSaidMustBeOfIt() throws Exception {
    Map.of("2026-11-30", "2027-01-11", "2027-04-10", "2027-04-10", "2028-01-01", "2027-07-05")
        .forEach(
            (clock, today) -> {
              SoFar read =
                  reading(SoFarAsked.of(null, null, null, LocalDate.parse(clock), true, false))
                      .scenario()
                      .map(Scenario::soFar)
                      .orElseThrow();
              assertThat(read.today()).isEqualTo(today);
            });
    assertThat(told(reading(SoFarAsked.on(LocalDate.of(2026, 4, 10))).faults()))
        .containsExactly(
            "scenario.yaml: 2026-04-10 is no day of its season; --on with a day from 2027-01-11 to"
                + " 2027-07-05");
  }

  @Test
  void whatWasDueAndIsNotInTheLogIsToldInALine() {
    assertThat(
            told(
                withLog("onion-1,,sown,2027-01-18,,,\nonion-2,,sown,2027-01-25,,,20\n").warnings()))
        .singleElement()
        .asString()
        .startsWith(
            "log.csv: due before 2027-04-10 and not sown by the log: trays of onion-2 (20 of 50),"
                + " snap-1 (0 of 40), ");
  }

  // Weather.

  private static String weather(LocalDate from, LocalDate to, boolean inF) {
    StringBuilder rows = new StringBuilder(inF ? "date,tmin-f,tmax-f\n" : "date,tmin,tmax\n");
    for (LocalDate day = from; day.isBefore(to); day = day.plusDays(1)) {
      double min = day.getDayOfYear() % 15 - 5;
      rows.append(day);
      for (double tempC : List.of(min, min + 10)) {
        rows.append(String.format(Locale.ROOT, ",%.1f", inF ? tempC * 1.8 + 32 : tempC));
      }
      rows.append('\n');
    }
    return rows.toString();
  }

  @Test
  void theSeasonsDaysBeforeTodayAreTakenFromItsOwnRecordInEitherUnit() throws Exception {
    LocalDate from = LocalDate.of(2027, 1, 1);
    files.write("c.csv", weather(from, TODAY.plusDays(3), false));
    files.write("f.csv", weather(from, TODAY.plusDays(3), true));
    List<WeatherRecord.Day> days = soFar(reading(asked("", "c.csv"))).weather();
    assertThat(days).hasSize(89);
    assertThat(days.get(0)).isEqualTo(new WeatherRecord.Day(LocalDate.of(2027, 1, 11), 6, 16));
    assertThat(days.get(88).date()).isEqualTo(TODAY.minusDays(1));
    List<WeatherRecord.Day> inF = soFar(reading(asked("", "f.csv"))).weather();
    for (int d = 0; d < days.size(); d++) {
      assertThat(inF.get(d).minC())
          .isCloseTo(days.get(d).minC(), org.assertj.core.data.Offset.offset(1e-9));
    }
  }

  @Test
  void daysThatTheRecordLacksAreNamed() {
    String rows = weather(LocalDate.of(2027, 1, 11), TODAY.minusDays(1), false);
    files.write(
        "c.csv", rows.replaceAll("(?m)^2027-02-0[345],.*\n", "").replaceAll("2027-03-01,.*\n", ""));
    assertThat(told(reading(asked("", "c.csv")).faults()))
        .containsExactly(
            "c.csv: no temperatures of 2027-02-03 to 2027-02-05, 2027-03-01, 2027-04-09, 5 days in"
                + " all; both of each day from 2027-01-11 to 2027-04-09");
  }

  /** The weather command has an option for it, those that simulate have not. */
  @Test
  void inWhatUnitTheDaysAreTheFileItselfMustSay() {
    String inF = weather(LocalDate.of(2027, 1, 11), TODAY, true);
    files.write("f.csv", inF.replace("tmin-f,tmax-f", "tmin,tmax"));
    assertThat(told(reading(asked("", "f.csv")).faults()))
        .singleElement()
        .asString()
        .contains(", which no air ever had, and so on ")
        .endsWith(" values; read as degrees C; degrees F belong under tmin-f,tmax-f");
    files.write("noaa.csv", "STATION,DATE,TMAX,TMIN\nUSW1,2027-01-11,41,30\n");
    assertThat(told(reading(asked("", "noaa.csv")).faults()))
        .containsExactly(
            "noaa.csv:1: daily summaries do not say what their temperatures are in; the record that"
                + " propcap weather writes of them, which asks for it");
  }

  // Several scenarios.

  @Test
  void scenariosOfOneLogGoOnFromTheHouseThatItTellsOf() throws Exception {
    files.write(
        "log.csv", HEADER + "onion-1,1-30,sown,2027-01-18,,Mats,\nonion-1,61,sown,2027-01-19,,,");
    files.change("scenario.yaml", "weather: weather.csv", "weather: weather.csv\nso-far: log.csv");
    files.write("fewer.yaml", "extends: scenario.yaml\nplaces:\n  - {name: Mats, spaces: 5}\n");
    SoFarAsked asked = SoFarAsked.on(TODAY);
    ScenarioReader.Reading first = reading(asked);
    SoFar soFar = soFar(first);
    assertThat(
            told(
                ScenarioReader.read(files.path("fewer.yaml"), UnsavedTexts.none(), asked).faults()))
        .singleElement()
        .asString()
        .contains("Mats has 30 trays");
    Scenario other =
        ScenarioReader.read(files.path("fewer.yaml"), UnsavedTexts.none(), asked.beside(first))
            .sound();
    assertThat(other.soFar()).isSameAs(soFar);
    assertThat(other.sowings().get(0).trays()).isEqualTo(61);
  }
}
