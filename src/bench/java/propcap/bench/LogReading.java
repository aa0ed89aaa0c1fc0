package propcap.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.Nursery;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.SoFarAsked;
import propcap.files.text.FaultsException;
import propcap.files.text.UnsavedTexts;

/** How long it takes to read a season's log of 5,000 rows, a tray a row, and to walk through it. */
final class LogReading {
  private static final int ROWS = 5000;
  private static final int TURNS = 9;
  private static final LocalDate TODAY = LocalDate.of(2027, 4, 10);

  private LogReading() {}

  /** Seconds by which reading a scenario takes longer with the log, median of 9 after 3. */
  static double median(Path folder) throws IOException, FaultsException {
    Path scenario = Nursery.write(folder, 80, 2_600, 20);
    Path log = write(folder, ScenarioReader.read(scenario));
    double[] seconds = new double[TURNS];
    for (int i = -3; i < TURNS; i++) {
      double without = seconds(scenario, null);
      double with = seconds(scenario, log);
      if (i >= 0) {
        seconds[i] = with - without;
      }
    }
    Arrays.sort(seconds);
    return seconds[TURNS / 2];
  }

  private static double seconds(Path scenario, @Nullable Path log) throws FaultsException {
    long begun = System.nanoTime();
    var unused =
        ScenarioReader.read(
                scenario, UnsavedTexts.none(), SoFarAsked.of(log, null, TODAY, TODAY, true, true))
            .sound();
    return (System.nanoTime() - begun) / 1e9;
  }

  /** Sown, counted and taken off the heat, one tray after another. */
  private static Path write(Path folder, Scenario scenario) throws IOException {
    StringBuilder rows = new StringBuilder("sowing,tray,event,date,plants\n");
    int written = 0;
    for (Sowing sowing : scenario.sowings()) {
      for (int tray = 1; tray <= sowing.trays() && written < ROWS; tray++) {
        for (String event : List.of("sown,0", "counted,8", "off-heat,10")) {
          LocalDate date = sowing.sow().plusDays(Integer.parseInt(event.split(",", -1)[1]));
          if (date.isBefore(TODAY) && written++ < ROWS) {
            rows.append(
                sowing.id() + "," + tray + "," + event.split(",", -1)[0] + "," + date + ",\n");
          }
        }
      }
    }
    if (written < ROWS) {
      throw new IllegalStateException("only " + written + " rows");
    }
    return Files.writeString(folder.resolve("log.csv"), rows);
  }
}
