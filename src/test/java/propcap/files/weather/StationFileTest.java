package propcap.files.weather;

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
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.files.text.FaultsException;

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

  private Path packed(String name, String... lines) throws IOException {
    Path packed = folder.resolve(name);
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      out.write(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }
    return packed;
  }

  @Test
  void aPackedFileIsUnpacked() throws Exception {
    Path packed = packed("a.csv.gz", BY_STATION);
    assertThat(StationFile.read(List.of(packed), null).record().minC()).hasSize(2);
  }

  /** The same rows under the header that the service's yearly files have. */
  private static String[] withHeader(String header) {
    return Stream.concat(Stream.of(header), Stream.of(BY_STATION)).toArray(String[]::new);
  }

  private static final String HEADER = "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME";

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void theSameWithAHeaderIsReadAlike(boolean isPacked) throws Exception {
    String[] lines = withHeader(HEADER);
    Path file = isPacked ? packed("y.csv.gz", lines) : file("y.csv", lines);
    StationFile station = StationFile.read(List.of(file), null);
    assertThat(station.forms()).containsExactly("GHCN-Daily, tenths of a degree C");
    assertThat(station.record())
        .isEqualTo(StationFile.read(List.of(file("a.csv", BY_STATION)), null).record());
    assertThat(station.flagged()).containsExactly(entry("O", 1));
  }

  /** Columns go by their names. */
  @Test
  void aHeaderMayHaveItsColumnsInAnotherOrder() throws Exception {
    Path file =
        file(
            "y.csv",
            "\"DATE\",\"ID\",\"Q_FLAG\",\"DATA_VALUE\",\"ELEMENT\"",
            "2003-03-01,XX1,,-11,TMIN",
            "2003-03-01,XX1,,128,TMAX",
            "2003-03-02,XX1,X,999,TMAX");
    StationFile station = StationFile.read(List.of(file), null);
    assertThat(station.record().station()).isEqualTo("XX1");
    assertThat(station.record().minC()).containsExactly(entry(day(1), -1.1));
    assertThat(station.record().maxC()).containsExactly(entry(day(1), 12.8));
    assertThat(station.flagged()).containsExactly(entry("X", 1));
  }

  @Test
  void faultsUnderAHeaderAreAtTheirLines() {
    assertThat(faults(null, file("n.csv", "ID,DATE,ELEMENT,DATA_VALUE", "XX1,20030301,TMIN,-11")))
        .containsExactly("1: no column q_flag; a header with id,date,element,data_value,q_flag");
    assertThat(
            faults(
                null,
                file(
                    "y.csv",
                    HEADER,
                    "XX1,20030230,TMIN,-11,,,7,",
                    "XX1,20030302,TMIN,cold,,,7,",
                    "XX1,20030303,TMAX",
                    "XX1,20030304,PRCP,wet,,,7,")))
        .containsExactly(
            "2: date is '20030230'; a date such as 2027-03-28",
            "3: tmin is 'cold'; a number, or nothing where none was read",
            "4: a row of 3 fields; 8 fields, as in the header");
  }

  @Test
  void aYearOfManyStationsNamesThemOnce() {
    assertThat(
            faults(
                null,
                file(
                    "2003.csv",
                    HEADER,
                    "XX1,20030301,TMIN,-11,,,7,",
                    "XX2,20030301,TMIN,-12,,,7,",
                    "XX2,20030301,TMAX,12,,,7,",
                    "XX3,20030301,TMIN,-13,,,7,",
                    "XX4,20030301,TMIN,-13,,,7,",
                    "XX5,20030301,TMIN,-13,,,7,",
                    "XX1,20030302,TMIN,-9,,,7,")))
        .containsExactly("3: 5 stations: 'XX1', 'XX2', 'XX3' and 2 more; the rows of one station");
  }

  /**
   * A month of the fixed-width form, by its readme (NOAA, GHCN-Daily readme.txt, section III): ID
   * in columns 1 to 11, year 12 to 15, month 16 to 17, element 18 to 21, then for each of 31 days a
   * value of five, a measurement, a quality and a source flag; a missing value is -9999.
   */
  private static String month(String yearMonth, String element, String... days) {
    StringBuilder line = new StringBuilder("XX000000001").append(yearMonth).append(element);
    for (int day = 0; day < 31; day++) {
      line.append(day < days.length ? days[day] : "-9999   ");
    }
    return line.toString();
  }

  private static final String[] MONTHS = {
    month("200303", "TMAX", "  128  7", "   94  7", "-9999   "),
    month("200303", "TMIN", "  -11  7", " -311 O7", "    0H 7"),
    month("200303", "PRCP", "   25T 7"),
    month("200304", "TMIN", "   12  7")
  };

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void theFixedWidthFormIsAMonthALine(boolean isPacked) throws Exception {
    Path file = isPacked ? packed("XX000000001.dly.gz", MONTHS) : file("XX000000001.dly", MONTHS);
    StationFile station = StationFile.read(List.of(file), null);
    assertThat(station.forms()).containsExactly("GHCN-Daily, a month a line, tenths of a degree C");
    assertThat(station.record().station()).isEqualTo("XX000000001");
    assertThat(station.record().minC())
        .containsExactly(
            entry(day(1), -1.1), entry(day(3), 0.0), entry(LocalDate.of(2003, 4, 1), 1.2));
    assertThat(station.record().maxC()).containsExactly(entry(day(1), 12.8), entry(day(2), 9.4));
    assertThat(station.flagged()).containsExactly(entry("O", 1));
    assertThat(station.leftOut()).isEmpty();
  }

  /** Blanks at the end of a line are often lost on the way. */
  @Test
  void blanksAtTheEndOfALineMayBeMissing() throws Exception {
    Path file = file("s.dly", MONTHS[0].stripTrailing(), MONTHS[1].stripTrailing());
    assertThat(StationFile.read(List.of(file), null).record().minC()).hasSize(2);
  }

  @Test
  void faultsOfTheFixedWidthFormAreAtTheirLines() {
    Path file =
        file(
            "s.dly",
            MONTHS[0],
            month("200313", "TMIN", "  -11  7"),
            month("200304", "TMIN", " cold  7"),
            MONTHS[1].substring(0, 100),
            month("200302", "TMIN", "  -11  7").substring(0, 21 + 8 * 28)
                + "   12  7-9999   -9999   ");
    assertThat(faults(null, file))
        .containsExactly(
            "2: month is '13'; a month from 01 to 12",
            "3: tmin is 'cold'; a number, or nothing where none was read",
            "4: a line of 98 characters; 21 characters, then 8 for each of 31 days",
            "5: tmin of 29 February 2003 is '12'; -9999 after the month’s last day");
  }

  @Test
  void aMonthThatComesAgainIsLeftOutDayByDay() throws Exception {
    Path file = file("s.dly", MONTHS[0], month("200303", "TMAX", "  130  7", "-9999   "));
    StationFile station = StationFile.read(List.of(file), null);
    assertThat(station.leftOut().stream().map(f -> f.line() + ": " + f.found()))
        .containsExactly("2: tmax of 2003-03-01 again, first on line 1");
    assertThat(station.record().maxC()).containsEntry(day(1), 12.8);
  }

  @Test
  void formsOfOneStationMayBeReadTogetherAndTwoStationsMayNot() throws Exception {
    Path months = file("XX000000001.dly", MONTHS[3]);
    Path rows = file("y.csv", withHeader(HEADER));
    assertThat(StationFile.read(List.of(rows, months), null).record().minC()).hasSize(3);
    Path other = file("other.dly", MONTHS[3].replace("XX000000001", "XX000000002"));
    assertThat(faults(null, rows, other))
        .containsExactly("1: 2 stations: 'XX000000001' and 'XX000000002'; the rows of one station");
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
        .containsExactly("2: 2 stations: 'XX000000001' and 'XX000000002'; the rows of one station");
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
  void aDateOfAnotherAgeIsAFault() {
    assertThat(faults(null, file("p.csv", "date,tmin,tmax", "0203-03-01,1,9", "2303-03-01,1,9")))
        .containsExactly(
            "2: date is '0203-03-01'; a date such as 2027-03-28",
            "3: date is '2303-03-01'; a date such as 2027-03-28");
    assertThat(faults(null, file("s.dly", month("020303", "TMAX", "  128  7"))))
        .first()
        .isEqualTo("1: year is '0203'; a year such as 2003");
  }

  /** A mark at the start, and a sign of two bytes across the edge of what is read at once. */
  @Test
  void aTextIsReadPieceByPieceAsIfItWereOne() throws Exception {
    String rows =
        Stream.iterate(LocalDate.of(1900, 1, 1), d -> d.plusDays(1))
            .limit(20_000)
            .map(d -> d + ",1,9,\u00e9")
            .collect(Collectors.joining("\n"));
    for (String start : List.of("\uFEFF", "\uFEFF\n", "")) {
      Path file = file("p.csv", start + "date,tmin,tmax,note", rows);
      assertThat(StationFile.read(List.of(file), null).record().minC()).hasSize(20_000);
    }
  }

  @Test
  void bytesThatAreNoTextAreToldAtTheirLine() throws Exception {
    byte[] bytes =
        "date,tmin,tmax\n2003-03-01,1,9\n2003-03-02,1,9\n".getBytes(StandardCharsets.UTF_8);
    for (byte wrong : new byte[] {0, (byte) 0xff}) {
      bytes[32] = wrong;
      assertThat(faults(null, Files.write(folder.resolve("b.csv"), bytes)))
          .containsExactly("3: bytes that are no text; a text file in UTF-8");
    }
  }

  @Test
  void aFileThatIsTooLargeIsRefusedPackedOrNot() throws Exception {
    byte[] line = (" ".repeat(1023) + "\n").getBytes(StandardCharsets.UTF_8);
    Path packed = folder.resolve("large.csv.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      for (int k = 0; k <= 64 << 10; k++) {
        out.write(line);
      }
    }
    assertThat(faults(null, packed))
        .containsExactly("0: larger than 64 MiB; a file of at most 64 MiB");
  }

  @Test
  void aFileWithoutATemperatureIsAFault() {
    assertThat(faults(null, file("h.csv", "date,tmin,tmax", "2003-03-01,,")))
        .containsExactly("0: no temperature in it; days with TMIN and TMAX that stand");
    assertThat(faults(null, file("g.csv", "XX1,20030301,PRCP,25,,,7,"))).hasSize(1);
  }
}
