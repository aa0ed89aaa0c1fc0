package propcap.files.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;
import propcap.files.edit.Starter;
import propcap.files.text.FaultsException;

/** Logs of the starter set's tomatoes. */
class TrayLogReaderTest {
  private static final String HEADER = "sowing,tray,event,date,plants\n";

  @TempDir Path folder;
  private Path scenario;
  private Path log;

  @BeforeEach
  void aFarm() throws Exception {
    Starter.write(folder.resolve("farm"));
    scenario = folder.resolve("farm/scenario.yaml");
    log = folder.resolve("log.csv");
  }

  private List<LoggedTray> read(String text) throws Exception {
    Files.writeString(log, text);
    return TrayLogReader.read(log, scenario).trays();
  }

  private List<String> faults(String text) throws Exception {
    Files.writeString(log, text);
    FaultsException e =
        catchThrowableOfType(FaultsException.class, () -> TrayLogReader.read(log, scenario));
    return e.faults().stream().map(f -> f.toString().replace(log.toString(), "log.csv")).toList();
  }

  private String sowing() throws Exception {
    return Files.readAllLines(folder.resolve("farm/sowings.csv")).get(1).split(",", -1)[0];
  }

  @Test
  void aSowingOfThePlanHasItsCropAndTheFirstTable() throws Exception {
    List<LoggedTray> trays =
        read(
            HEADER
                + sowing()
                + ",1,off-heat,2020-03-20,\n"
                + sowing()
                + ",1,ready,2020-04-09,40\n");
    assertThat(trays).hasSize(1);
    assertThat(trays.get(0).plants(LoggedEvent.OFF_HEAT)).isEmpty();
    assertThat(trays.get(0).plants(LoggedEvent.READY)).contains(40);
  }

  @Test
  void anotherSowingNamesItsCropOnce() throws Exception {
    String crop = read(HEADER + sowing() + ",1,sown,2020-03-20,50\n").get(0).crop();
    List<LoggedTray> trays =
        read(
            "sowing,tray,event,date,plants,crop\nold,1,sown,2019-03-20,50,"
                + crop
                + "\nold,1,off-heat,2019-03-28,49,\n");
    assertThat(trays.get(0).crop()).isEqualTo(crop);
    assertThat(trays.get(0).entries()).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "S,1,redy,2020-03-20,40 | did you mean ready?",
        "S,1,eaten,2020-03-20,40 | one of sown, counted, off-heat",
        "S,1,ready,20.3.2020,40 | 2020-03-20, in a spreadsheet by cells of the form YYYY-MM-DD",
        "S,1,ready,3/20/2020,40 | a date such as",
        "S,1,ready,2020-03-20,many | a whole number from 0",
        "S,1,ready,2020-03-20,-1 | a whole number from 0",
        "S,1,ready,2020-12-20,40 | is in no year's season",
        "nowhere,1,ready,2020-03-20,40 | unknown sowing",
        ",1,ready,2020-03-20,40 | a name of one line",
        "S,,ready,2020-03-20,40 | the rows of what came before",
      })
  void aWrongRowIsAFaultAtItsLine(String row, String right) throws Exception {
    List<String> faults = faults(HEADER + row.replaceFirst("^S", sowing()) + "\n");
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0)).startsWith("log.csv:2:").contains(right);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ready,2020-03-19,40 | before 2020-03-20",
        "ready,2020-03-25,51 | but 50 before that",
        "off-heat,2020-03-25,40 | off-heat again, first on line 2",
        "sown,2020-03-25,40 | sown after it was off-heat",
      })
  void aRowThatDoesNotFollowIsAFaultAtItsLine(String row, String found) throws Exception {
    List<String> faults =
        faults(HEADER + sowing() + ",1,off-heat,2020-03-20,50\n" + sowing() + ",1," + row + "\n");
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0)).startsWith("log.csv:3:").contains(found);
  }

  @Test
  void dampingOffMayComeWhilePlugsWait() throws Exception {
    assertThat(
            read(
                HEADER
                    + sowing()
                    + ",1,off-heat,2020-03-20,50\n"
                    + sowing()
                    + ",1,ready,2020-04-10,49\n"
                    + sowing()
                    + ",1,outbreak,2020-04-12,30\n"))
        .hasSize(1);
  }

  @Test
  void cropsAndPlacesThatAreNotThereAreFaults() throws Exception {
    String head = "sowing,tray,event,date,plants,crop,place\n";
    assertThat(faults(head + "old,1,sown,2020-03-20,50,tomatoe,\n")).hasSize(1);
    assertThat(faults(head + "old,1,sown,2020-03-20,50,tomatoe,\n").get(0))
        .contains("no crop 'tomatoe'");
    assertThat(faults(head + sowing() + ",1,off-heat,2020-03-20,50,,Nowhere\n").get(0))
        .contains("no place 'Nowhere'");
  }

  @Test
  void allFaultsOfLogAndScenarioComeAtOnce() throws Exception {
    Files.writeString(
        scenario, Files.readString(scenario).replaceFirst("kind: table", "kind: tabel"));
    List<String> faults =
        faults(HEADER + "a,1,redy,2020-03-20,1\na,1,ready,yesterday,1\na,1,sown,2020-03-20,x\n");
    assertThat(faults.stream().filter(f -> f.startsWith("log.csv"))).hasSize(4);
    assertThat(faults.stream().filter(f -> f.contains("tabel"))).isNotEmpty();
  }

  @Test
  void logsThatAreNoneAreFaults() throws Exception {
    assertThat(faults("")).singleElement().asString().contains("empty");
    assertThat(faults(HEADER)).singleElement().asString().contains("no tray in the log");
    assertThat(faults("a;b\n1;2\n").get(0)).contains("the header sowing,tray,event,date,plants");
    assertThat(faults("sowing,tray,event,date\ns,1,sown,2020-03-20\n"))
        .anyMatch(f -> f.contains("no column plants"));
    assertThat(
            faults("sowing,tray,event,date,plants,pot\n" + sowing() + ",1,sown,2020-03-20,5,x\n"))
        .singleElement()
        .asString()
        .contains("unknown column 'pot'");
  }

  @Test
  void aRowOfManyTraysIsReadAsOneOfEachAndWhatShowedInTheHeatIsLeftOut() throws Exception {
    String each = "";
    for (String row :
        List.of("sown,2020-03-01,50", "off-heat,2020-03-20,48", "ready,2020-04-09,")) {
      for (int tray = 1; tray <= 3; tray++) {
        each += sowing() + "," + tray + "," + row + "\n";
      }
    }
    String many =
        """
        sowing,tray,event,date,plants,trays
        S,,sown,2020-03-01,50,3
        S,1-3,counted,2020-03-09,11.3,
        # and then
        S,1-3,counted,2020-03-11,30,
        S,1 to 3,off-heat,2020-03-20,48,
        S,,ready,2020-04-09,,
        """;
    assertThat(read(many.replace("S,", sowing() + ","))).isEqualTo(read(HEADER + each));
  }
}
