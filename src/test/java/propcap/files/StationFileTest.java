package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.entry;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stations' files in each form, worked by hand. The stations are invented. */
class StationFileTest {
  @TempDir Path folder;

  private Path file(String name, String... lines) {
    try {
      return Files.writeString(folder.resolve(name), String.join("\n", lines) + "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static LocalDate day(int dayOfMarch) {
    return LocalDate.of(2003, 3, dayOfMarch);
  }

  private static List<String> faults(@Nullable Degrees unit, Path... files) {
    FaultsException faults =
        catchThrowableOfType(FaultsException.class, () -> StationFile.read(List.of(files), unit));
    return faults.faults().stream()
        .map(f -> f.line() + ": " + f.found() + "; " + f.right())
        .toList();
  }

  /**
   * The form of NOAA's readme-by_station.txt: ID, date, element, value, measurement, quality and
   * source flag, time. -11 is -1.1 C; the minimum of the 2nd is flagged as an outlier (O), the rain
   * is none of ours, and -9999 is no value.
   */
  private static final String[] BY_STATION = {
    "XX000000001,20030301,TMAX,128,,,7,0700",
    "XX000000001,20030301,TMIN,-11,,,7,0700",
    "XX000000001,20030301,PRCP,25,T,,7,0700",
    "XX000000001,20030302,TMAX,94,,,7,0700",
    "XX000000001,20030302,TMIN,-311,,O,7,0700",
    "XX000000001,20030303,TMAX,-9999,,,7,",
    "XX000000001,20030303,TMIN,0,,,7,"
  };

  @Test
  void theGhcnsFileOfAStationIsInTenthsAndFlaggedValuesAreLeftOutAndCounted() throws Exception {
    StationFile station = StationFile.read(List.of(file("a.csv", BY_STATION)), null);
    assertThat(station.record().station()).isEqualTo("XX000000001");
    assertThat(station.record().minC()).containsExactly(entry(day(1), -1.1), entry(day(3), 0.0));
    assertThat(station.record().maxC()).containsExactly(entry(day(1), 12.8), entry(day(2), 9.4));
    assertThat(station.flagged()).containsExactly(entry("O", 1));
    assertThat(station.leftOut()).isEmpty();
  }

  @Test
  void aPackedFileIsUnpacked() throws Exception {
    Path packed = folder.resolve("a.csv.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      out.write(String.join("\n", BY_STATION).getBytes(StandardCharsets.UTF_8));
    }
    assertThat(StationFile.read(List.of(packed), null).record().minC()).hasSize(2);
  }

  @Test
  void aFileThatWasPackedOnlyInPartIsAFault() throws Exception {
    Path packed = folder.resolve("a.csv.gz");
    Files.write(packed, new byte[] {0x1f, (byte) 0x8b, 8, 0, 0, 0, 0, 0, 0, 3, 1});
    assertThat(faults(null, packed)).containsExactly("0: cannot be unpacked; a whole gzip file");
  }

  /** 50 F is 10 C; the quality flag is the second of the attributes. */
  @Test
  void dailySummariesAreReadInTheUnitThatTheyWereOrderedIn() throws Exception {
    Path file =
        file(
            "s.csv",
            "\"STATION\",\"DATE\",\"NAME\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\",\"TMIN_ATTRIBUTES\"",
            "\"XX1\",\"2003-03-01\",\"HERE, NOWHERE\",\"50\",\",,7,0700\",\"32\",\",,7\"",
            "\"XX1\",\"2003-03-02\",\"HERE, NOWHERE\",\"59\",\",I,7\",\"\",\"\"");
    StationFile station = StationFile.read(List.of(file), Degrees.F);
    assertThat(station.record().maxC()).containsExactly(entry(day(1), 10.0));
    assertThat(station.record().minC()).containsExactly(entry(day(1), 0.0));
    assertThat(station.flagged()).containsExactly(entry("I", 1));
    assertThat(faults(null, file))
        .containsExactly(
            "1: daily summaries do not say what their temperatures are in; --unit C, --unit F or"
                + " --unit tenths (of a degree C), as they were ordered");
  }

  @ParameterizedTest
  @CsvSource({"'date,tmin,tmax', F", "'date,tmin-f,tmax-f',", "'tmax-f,date,tmin-f',"})
  void aPlainTableInFahrenheitSaysSoInItsHeaderOrByUnit(String header, @Nullable Degrees unit)
      throws Exception {
    String row = header.startsWith("tmax") ? "50,2003-03-01,23" : "2003-03-01,23,50";
    StationFile station = StationFile.read(List.of(file("p.csv", header, row)), unit);
    assertThat(station.record().minC()).containsExactly(entry(day(1), -5.0));
    assertThat(station.record().maxC()).containsExactly(entry(day(1), 10.0));
  }

  @Test
  void impossibleValuesAreLeftOutEachWithItsLine() throws Exception {
    Path file =
        file(
            "p.csv",
            "date,tmin,tmax",
            "2003-03-01,5,2",
            "2003-03-02,-91,12",
            "2003-03-03,1,60.1",
            "2003-03-04,1,12",
            "2003-03-04,2,12");
    StationFile station = StationFile.read(List.of(file), null);
    assertThat(station.leftOut().stream().map(f -> f.line() + ": " + f.found()))
        .containsExactly(
            "3: tmin of 2003-03-02 is '-91'",
            "4: tmax of 2003-03-03 is '60.1'",
            "6: tmin of 2003-03-04 again, first on line 5",
            "6: tmax of 2003-03-04 again, first on line 5",
            "2: tmin above tmax on 2003-03-01");
    assertThat(station.record().minC()).containsExactly(entry(day(3), 1.0), entry(day(4), 1.0));
    assertThat(station.record().maxC()).containsExactly(entry(day(2), 12.0), entry(day(4), 12.0));
  }

  @Test
  void severalFilesAreOneRecord() throws Exception {
    Path first = file("1.csv", "date,tmin,tmax", "2003-03-01,1,9");
    Path second = file("2.csv", "date,tmin,tmax", "2003-03-02,2,9");
    assertThat(StationFile.read(List.of(first, second), null).record().minC()).hasSize(2);
  }

  @Test
  void everyFaultIsReportedAtItsLine() {
    Path file =
        file("p.csv", "date,tmin,tmax", "2003-02-30,1,9", "2003-03-01,warm,9", "2003-03-02,1,1e3");
    assertThat(faults(null, file))
        .containsExactly(
            "2: date is '2003-02-30'; a date such as 2027-03-28",
            "3: tmin is 'warm'; a number, or nothing where none was read",
            "4: tmax is '1e3'; a number, or nothing where none was read");
  }

  @Test
  void twoStationsAreNotMixed() {
    Path file = file("g.csv", BY_STATION[0], "XX000000002,20030302,TMIN,-11,,,7,0700");
    assertThat(faults(null, file))
        .containsExactly("2: station 'XX000000002' after 'XX000000001'; one station");
  }

  @Test
  void aFileOfAnotherKindIsAFault() {
    assertThat(faults(null, file("x.csv", "a;b", "1;2"))).first().asString().contains("no form");
    assertThat(faults(null, file("e.csv", "")))
        .containsExactly("0: the file is empty; a file with something in it");
    assertThat(faults(null, folder.resolve("none.csv"))).first().asString().contains("no file");
    assertThat(faults(null, file("h.csv", "date,tmin", "2003-03-01,1")))
        .containsExactly("1: no column tmax; a header with date,tmin,tmax");
  }

  @Test
  void aFileWithoutATemperatureIsAFault() {
    assertThat(faults(null, file("h.csv", "date,tmin,tmax", "2003-03-01,,")))
        .containsExactly("0: no temperature in it; days with TMIN and TMAX that stand");
    assertThat(faults(null, file("g.csv", "XX1,20030301,PRCP,25,,,7,"))).hasSize(1);
  }
}
