package propcap.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.ListedSlips.Kind;
import propcap.files.scenario.TrayLogReader;
import propcap.files.text.Fault;
import propcap.files.text.FaultsException;
import propcap.files.weather.Degrees;
import propcap.files.weather.NormalsFile;
import propcap.files.weather.StationFile;

/** The same in records that are read by themselves: of trays, of counts and of a station. */
final class ListedRecordSlips {
  private static final String LOG = "log.csv";
  private static final String STATION = "station.csv";
  private static final String NORMALS = "normals.csv";
  private static final String COUNTS = "germination-counts.csv";
  static final List<String> FILES = List.of(LOG, STATION, NORMALS, COUNTS);

  private static final int HEADER = 1;
  private static final int ROWS_A_TRAY = 3;
  private static final int TRAYS = 2;

  private final GrowersFolder folder;
  private final SplittableRandom random;
  private final Scenario scenario;

  /** Writes sound records beside a sound scenario. */
  ListedRecordSlips(GrowersFolder folder, SplittableRandom random)
      throws IOException, FaultsException {
    this.folder = folder;
    this.random = random;
    this.scenario = folder.read();
    folder.write(LOG, log());
    folder.write(STATION, folder.text("weather.csv"));
    for (String name : List.of(NORMALS, COUNTS)) {
      folder.write(name, Files.readString(Path.of("demo-data").resolve(name)));
    }
  }

  /** Two trays of each sowing, last spring's. */
  private String log() {
    StringBuilder rows = new StringBuilder("sowing,tray,event,date,plants\n");
    for (Sowing sowing : scenario.sowings()) {
      for (int tray = 1; tray <= TRAYS; tray++) {
        LocalDate sown = sowing.sow().minusYears(1);
        int cells = cells(sowing.id());
        row(rows, sowing, tray, "sown", sown, cells);
        row(rows, sowing, tray, "off-heat", sown.plusDays(9), cells - 2);
        row(rows, sowing, tray, "ready", sown.plusDays(45), cells - 4);
      }
    }
    return rows.toString();
  }

  private static void row(
      StringBuilder rows, Sowing sowing, int tray, String event, LocalDate date, int plants) {
    rows.append(String.join(",", sowing.id(), "" + tray, event, date.toString(), "" + plants))
        .append('\n');
  }

  private int cells(String id) {
    Sowing sowing =
        scenario.sowings().stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
    return Objects.requireNonNull(scenario.crops().get(sowing.crop())).cells();
  }

  List<Kind> all() {
    return List.of(
        new Kind("log rows of another century", "date is .\\d+-\\d\\d-\\d\\d.", this::century),
        new Kind(
            "more plants in a tray than cells",
            "more than the \\d+ cells|plants is '\\d+'",
            this::crowdedTray),
        new Kind(
            "a station's file in degrees F, read as C",
            "which no air ever had",
            () -> inFahrenheit(STATION)),
        new Kind(
            "monthly means in degrees F, read as C",
            "which no air ever had",
            () -> inFahrenheit(NORMALS)),
        new Kind(
            "a germination test at 49 to 300 C",
            "temperature is '\\d+ C'",
            () -> {
              int tempC = random.nextInt(49, 301);
              folder.write(COUNTS, folder.text(COUNTS) + "Z-27,zinnia," + tempC + " C,99,50,8,0\n");
              return tempC + " C";
            }));
  }

  /** What the reader of each of these records has to say. */
  List<Fault> doubts() throws FaultsException {
    List<Fault> doubts = new ArrayList<>();
    doubts.addAll(TrayLogReader.read(folder.path(LOG), folder.path("scenario.yaml")).warnings());
    doubts.addAll(StationFile.read(List.of(folder.path(STATION)), null).warnings());
    NormalsFile.read(folder.path(NORMALS), Degrees.C, doubts::add);
    CountsReader.read(folder.path(COUNTS), doubts::add);
    return doubts;
  }

  private List<String> rows() {
    return new ArrayList<>(folder.text(LOG).lines().toList());
  }

  private String rewritten(List<String> rows, int at, UnaryOperator<String[]> change) {
    rows.set(at, String.join(",", change.apply(rows.get(at).split(",", -1))));
    folder.write(LOG, String.join("\n", rows) + "\n");
    return rows.get(at);
  }

  /** Any row of a tray: its year has one or two digits wrong. */
  private String century() {
    List<String> rows = rows();
    int years = 100 * random.nextInt(1, 5) * (random.nextBoolean() ? 1 : -1) + random.nextInt(49);
    return rewritten(
        rows,
        HEADER + random.nextInt(rows.size() - HEADER),
        row -> {
          row[3] = LocalDate.parse(row[3]).plusYears(years).toString();
          return row;
        });
  }

  /** The first row of a tray: on the others there are more than before, which is a fault anyhow. */
  private String crowdedTray() {
    List<String> rows = rows();
    int tray = random.nextInt((rows.size() - HEADER) / ROWS_A_TRAY);
    return rewritten(
        rows,
        HEADER + tray * ROWS_A_TRAY,
        row -> {
          row[4] = String.valueOf(cells(row[0]) + random.nextInt(1, 12_000));
          return row;
        });
  }

  private String inFahrenheit(String file) {
    double warmer = 4 * random.nextDouble() - 2;
    List<String> rows = folder.text(file).lines().toList();
    folder.write(
        file,
        rows.stream()
            .skip(HEADER)
            .map(r -> ListedSlips.turned(r.split(",", -1), 1, warmer))
            .map(r -> String.join(",", ListedSlips.turned(r, 1.8, 32)))
            .collect(Collectors.joining("\n", rows.get(0) + "\n", "\n")));
    return warmer + " C warmer";
  }
}
