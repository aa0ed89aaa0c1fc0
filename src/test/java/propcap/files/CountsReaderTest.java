package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;
import propcap.files.text.FaultsException;

/** Counts of a germination test as growers write them, and each way to write them wrong. */
class CountsReaderTest {
  private static final String HEADER = "lot,crop,temperature,tray,seeds,time,emerged\n";

  @TempDir Path folder;

  private Path write(String text) {
    try {
      return Files.writeString(folder.resolve("counts.csv"), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<CountedTray> read(String text) throws FaultsException {
    return CountsReader.read(write(text), d -> {});
  }

  private List<String> faults(String text) {
    Path file = write(text);
    FaultsException e =
        catchThrowableOfType(FaultsException.class, () -> CountsReader.read(file, d -> {}));
    assertThat(e).as("faults").isNotNull();
    return e.faults().stream().map(f -> f.toString().replace(folder + "/", "")).toList();
  }

  @Test
  void traysAreKeptApartByLotTemperatureAndName() throws FaultsException {
    List<CountedTray> trays =
        read(
            HEADER
                + """
            A,zinnia,21 C,1,50,3,10
            A,zinnia,69.8 F,1,50,5,40
            A,zinnia,15 C,1,50,5,4
            ,cosmos,15 C,1,20,5,0
            """);
    assertThat(trays).hasSize(3);
    assertThat(trays.get(0).inspections())
        .containsExactly(new Inspection(3, 10), new Inspection(5, 40));
    assertThat(trays.get(0).tempC()).isEqualTo(21);
    assertThat(trays.get(1).tempC()).isEqualTo(15);
    assertThat(trays.get(2).lot()).isEqualTo("cosmos");
  }

  @Test
  void theHeaderSaysTheUnitsAndWhetherCountsAreNew() throws FaultsException {
    CountedTray tray =
        read("""
                lot,crop,temperature-f,tray,seeds,time-hours,new
                A,zinnia,70,1,50,36,3
                A,zinnia,70,1,50,48,4
                """)
            .get(0);
    assertThat(tray.tempC()).isCloseTo(21.111111, within(1e-6));
    assertThat(tray.inspections()).containsExactly(new Inspection(1.5, 3), new Inspection(2, 7));
  }

  @Test
  void aLookAtTheSowingMayBeNoted() throws FaultsException {
    assertThat(read(HEADER + "A,zinnia,21 C,1,50,0,0\nA,zinnia,21 C,1,50,4,9\n").get(0).emerged())
        .isEqualTo(9);
  }

  @Test
  void aLookAtTheSowingAloneTellsNothing() {
    assertThat(faults(HEADER + "A,zinnia,21 C,1,50,0,0\n"))
        .containsExactly(
            "counts.csv:2: a tray that was looked at when it was sown alone; a later look");
  }

  @Test
  void allFaultsAreToldAtOnce() {
    List<String> faults =
        faults(
            HEADER
                + """
            A,zinnia,21 C,1,50,3,10
            A,zinnia,21 C,1,50,4,8
            A,zinnia,21 C,2,50,3,51
            A,zinnia,21 C,3,50,3,10
            A,zinnia,21 C,3,40,4,12
            A,zinnia,21 C,4,50,5,10
            A,zinnia,21 C,4,50,5,12
            A,zinnia,21,5,50,5,10
            A,zinnia,21 C,6,50,soon,many
            A,zinnia,21 C,7,50,0,1
            A,zinnia,21 C,8,0,4,0
            """);
    assertThat(faults)
        .containsExactly(
            "counts.csv:3: emerged is '8', fewer than the 10 before it (line 2); all seedlings so"
                + " far; a column new may hold those of each interval",
            "counts.csv:4: emerged is '51', which makes 51 seedlings of 50 seeds; no more seedlings"
                + " than seeds",
            "counts.csv:6: seeds is '40', but was 50 (line 5); the same seeds in every row of a tray",
            "counts.csv:8: time is '5', not after the inspection before it (line 7); times that rise"
                + " from row to row of a tray",
            "counts.csv:9: temperature is '21'; a unit is missing: a temperature in C or F, such as"
                + " 21 C or 70 F",
            "counts.csv:10: emerged is 'many'; a whole number from 0 to 10000",
            "counts.csv:10: time is 'soon'; a plain number, such as 6 or 6.5; its unit is in the"
                + " header",
            "counts.csv:11: emerged is '1', at time 0; no seedling at the sowing",
            "counts.csv:12: seeds is '0'; a whole number from 1 to 10000");
  }

  @Test
  void newSeedlingsMayNotAddUpToMoreThanTheSeeds() {
    assertThat(
            faults(
                """
               lot,crop,temperature,tray,seeds,time,new
               A,zinnia,21 C,1,50,3,40
               A,zinnia,21 C,1,50,4,11
               """))
        .containsExactly(
            "counts.csv:3: new is '11', which makes 51 seedlings of 50 seeds; no more seedlings than"
                + " seeds");
  }

  @Test
  void aTableOfNothingIsAFault() {
    assertThat(faults(HEADER))
        .containsExactly("counts.csv: no count in the table; a row for each inspection");
    assertThat(faults(""))
        .containsExactly("counts.csv: the file is empty; a file with something in it");
    assertThat(faults("one two three\n")).hasSize(1);
    assertThat(faults(HEADER.replace("emerged", "emergd"))).hasSize(1);
  }

  @Test
  void aMissingFileIsAFault() {
    FaultsException e =
        catchThrowableOfType(
            FaultsException.class, () -> CountsReader.read(folder.resolve("none.csv"), d -> {}));
    assertThat(e.faults()).hasSize(1);
  }
}
