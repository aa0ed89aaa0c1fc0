package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.study.Forecast;

/** A forecast's files in a folder of their own: all of them, or none. */
public final class Results {
  private Results() {}

  /**
   * Refuses a folder in which results must not be written, before any work is done.
   *
   * @throws IOException saying why
   */
  public static void check(Path folder) throws IOException {
    ResultsFolder.at(folder);
  }

  /**
   * Writes the report, the summary and the tables. Older results in that folder are replaced in one
   * step, and stay whole if anything fails before it.
   *
   * @param version of this program, shown in the report and the summary
   * @param folder made if there is none
   * @return the files written, the report first
   * @throws IOException also where the folder holds something else than results
   * @throws IllegalArgumentException where a number of the forecast is not finite
   */
  public static List<Path> write(Forecast forecast, String version, Path folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("report.html", ReportPage.html(forecast, version));
    files.put(KnownResults.FORECAST.file(), SummaryJson.of(forecast, version));
    files.put("sowings.csv", Tables.sowings(forecast));
    files.put("places.csv", Tables.places(forecast));
    files.put("losses.csv", Tables.losses(forecast));
    files.put("hands.csv", Tables.hands(forecast));
    files.put("seasons.csv", Tables.seasons(forecast));
    return ResultsFolder.write(files, folder);
  }
}
