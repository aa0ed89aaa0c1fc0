package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Crop;
import propcap.files.scenario.CropBook;

/**
 * A grower with three trays of counts, a log of trays and one station file gets a crop entry with
 * its error, the frost table and a weather record, and the forecast runs on them.
 */
class RecordsToForecastTest {
  /** Three trays of 50 zinnia seeds at 21 C; nine in ten come up, half of them by day 4 or so. */
  private static final String COUNTS =
      """
      lot,crop,temperature,tray,seeds,time,emerged
      Z-1,zinnia,70 F,1,50,3,6
      Z-1,zinnia,70 F,1,50,4,21
      Z-1,zinnia,70 F,1,50,5,37
      Z-1,zinnia,70 F,1,50,7,45
      Z-1,zinnia,70 F,2,50,3,4
      Z-1,zinnia,70 F,2,50,4,24
      Z-1,zinnia,70 F,2,50,5,39
      Z-1,zinnia,70 F,2,50,7,46
      Z-1,zinnia,70 F,3,50,3,7
      Z-1,zinnia,70 F,3,50,4,22
      Z-1,zinnia,70 F,3,50,5,36
      Z-1,zinnia,70 F,3,50,7,44
      """;

  private static final String LOG =
      """
      sowing,tray,event,date,plants
      zinnia-1,a,off-heat,2024-04-19,110
      zinnia-1,a,ready,2024-05-18,106
      zinnia-1,a,moved-out,2024-05-20,106
      zinnia-1,a,planted-out,2024-05-28,103
      zinnia-1,b,off-heat,2024-04-19,112
      zinnia-1,b,ready,2024-05-17,70
      zinnia-1,c,off-heat,2024-04-20,108
      zinnia-1,c,ready,2024-05-20,105
      """;

  @TempDir Path folder;

  @BeforeEach
  void aFarmAndItsRecords() throws IOException {
    done("new", farm("").toString());
    Files.writeString(folder.resolve("counts.csv"), COUNTS);
    Files.writeString(folder.resolve("log.csv"), LOG);
    Files.writeString(folder.resolve("station.csv"), station(), StandardCharsets.UTF_8);
  }

  /** The demonstration's weather as a station of the GHCN-Daily has it, a day of it missing. */
  private static String station() throws IOException {
    StringBuilder rows = new StringBuilder();
    try (Stream<String> days = Files.lines(Path.of("demo-data/weather.csv"))) {
      for (String day : days.skip(1).filter(d -> !d.startsWith("2010-04-05")).toList()) {
        String[] values = day.split(",", -1);
        String head = "XX000000002," + values[0].replace("-", "");
        rows.append(head).append(",TMIN,").append(tenths(values[1])).append(",,,X,\n");
        rows.append(head).append(",TMAX,").append(tenths(values[2])).append(",,,X,\n");
      }
    }
    return rows.toString();
  }

  private static long tenths(String degrees) {
    return Math.round(10 * Double.parseDouble(degrees));
  }

  private Path farm(String file) {
    return folder.resolve("farm").resolve(file);
  }

  private String done(String... args) {
    Run run = Run.of(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).doesNotContain("NaN");
    return run.out();
  }

  private String asked(String out, String... args) {
    return done(
        Stream.concat(Stream.of(args), Stream.of("--out", folder.resolve(out).toString()))
            .toArray(String[]::new));
  }

  private Crop zinnia() throws Exception {
    return Objects.requireNonNull(CropBook.read(farm("crops.yaml"), d -> {}).crops().get("zinnia"));
  }

  @Test
  void threeTraysOfNotesAndAStationGiveEntryFrostTableAndForecast() throws Exception {
    String scenario = farm("scenario.yaml").toString();
    String crops = farm("crops.yaml").toString();
    String written = Files.readString(farm("crops.yaml"));
    Crop listed = zinnia();

    String counted = asked("fit", "fit", "germination", path("counts.csv"), "--write", crops);
    assertThat(counted).contains("95 % limits").contains("crops.yaml.bak");
    assertThat(Files.readString(farm("crops.yaml.bak"))).isEqualTo(written);
    assertThat(zinnia().germination().rate()).isBetween(0.88, 0.92);
    assertThat(zinnia().emergence().halfByDays()).isBetween(3.5, 4.5);
    assertThat(zinnia().growingOn()).isEqualTo(listed.growingOn());

    done("weather", path("station.csv"), "--to", farm("weather.csv").toString(), "--replace");
    assertThat(Files.readAllLines(farm("weather.csv"))).hasSize(1 + 9131);
    assertThat(farm("weather.csv.bak")).exists();

    String logged =
        asked("stages", "fit", "stages", path("log.csv"), "--scenario", scenario, "--write", crops);
    assertThat(logged).contains("by 3 trays and the crop list’s 22.0");
    // Three trays shift the list a little.
    assertThat(zinnia().growingOn().takesDays()).isBetween(22.0, 27.0);
    assertThat(zinnia().growingOn().dampingOff().chance())
        .isGreaterThan(listed.growingOn().dampingOff().chance());
    assertThat(zinnia().hardening().takesDays()).isEqualTo(listed.hardening().takesDays());

    asked("frost", "frost", farm("weather.csv").toString(), "--crops", crops);
    assertThat(Files.readString(folder.resolve("frost/frost-releases.csv"))).contains("zinnia,0.2");

    String forecast = asked("run", "run", scenario, "--seasons", "50");
    assertThat(forecast).contains("plants needed on time in a mean spring");
  }

  private String path(String file) {
    return folder.resolve(file).toString();
  }

  @Test
  void faultsOfAllRecordsAreToldAtOnceAndNothingIsChanged() throws Exception {
    String written = Files.readString(farm("crops.yaml"));
    Files.writeString(folder.resolve("counts.csv"), COUNTS.replace("1,50,5,37", "1,50,5,7"));
    Files.writeString(farm("crops.yaml"), written.replace("cells: 128", "cells: many"));

    Run run =
        Run.of("fit", "germination", path("counts.csv"), "--write", farm("crops.yaml").toString());

    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(List.of(run.err().split("\n"))).anyMatch(l -> l.contains("counts.csv:4"));
    assertThat(run.err()).contains("crops.yaml:");
    assertThat(farm("crops.yaml.bak")).doesNotExist();
  }
}
